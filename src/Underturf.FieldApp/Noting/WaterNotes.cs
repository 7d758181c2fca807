using System.Globalization;
using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>What the forms about water offer, and what they write.</summary>
internal static class WaterNotes
{
    /// <summary>How a valve stands that somebody turned, as the log has it.</summary>
    public static IReadOnlyList<string> States { get; } = ["shut", "open", "partly open"];

    /// <summary>What can be seen of water, in the words of the practice book.</summary>
    public static IReadOnlyList<Choice> Sights { get; } = [.. PracticeBook.Default.Water.Sights.Select(sight => new Choice(sight.Name, sight.Say))];

    /// <summary>What can be turned by hand: isolation valves, then the flow controls of valves.</summary>
    public static IReadOnlyList<Choice> Turned(PropertyView view) =>
        [.. Choice.ByName(view.IsolationValves.Keys, view), .. Choice.ByName(view.Valves.Keys, view)];

    /// <summary>Says what was turned.</summary>
    public static string Say(SettingFact turned, PropertyView view) =>
        $"{(view.Valves.ContainsKey(view.Identity.Of(turned.Of)) ? "flow control of " : "")}{view.Name(turned.Of)} {turned.State}";

    /// <summary>Says what was seen on a walk.</summary>
    public static string Say(WatchFact watch, PropertyView view) =>
        $"walk{(watch.Station is { } ran ? $" with {view.Name(ran)} running" : ", everything off")}{(watch.About is { } about ? $", {view.Name(about)}" : "")}: {(watch.Seen.Count == 0 ? "nothing odd" : string.Join(", ", watch.Seen))}";

    /// <summary>Says what cans caught.</summary>
    public static string Say(CatchFact caught, PropertyView view) => $"{Count(caught.Cans.Count)} on {view.Name(caught.Station)}";

    /// <summary>"1 can", "12 cans".</summary>
    public static string Count(int cans) => cans == 1 ? "1 can" : $"{cans} cans";

    public static IReadOnlyList<string> CanUnits { get; } = ["mm", "in"];

    /// <summary>Those that were added, and one that still stands on the pad.</summary>
    public static IReadOnlyList<string> Cans(NoteDraft draft) => [.. draft.Cans, .. CanOnPad(draft) is { } last ? [last] : Array.Empty<string>()];

    /// <summary>The can that is being typed; nothing where the pad shows none that can be read.</summary>
    public static string? CanOnPad(NoteDraft draft) => OnPad(draft) is { Succeeded: true, Value.Value: { } can } ? can.Text : null;

    private static Outcome<Shown> OnPad(NoteDraft draft) => PadText.Read(draft.Value, draft.Unit, CanUnits);

    /// <summary>What the cans of a draft caught; a can that cannot be read is told with what to do.</summary>
    public static Outcome<Fact> Catch(NoteDraft draft, string station)
    {
        if (draft.Value.Length > 0 && CanOnPad(draft) is null)
        {
            return OnPad(draft).Problem ?? new Problem("can", "is over no range", "Type what the can caught, or take it away");
        }

        var cans = Cans(draft).Select(can => Units.Parse(can, Dimension.Length)).ToList();
        if (cans.Find(can => !can.Succeeded) is { Problem: { } unread })
        {
            return unread;
        }

        double? minutes = double.TryParse(draft.Minutes, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var read) ? read : null;
        return draft.Minutes.Length > 0 && minutes is null
            ? new Problem("minutes", "are no number", "Write how many minutes it ran, for example 10")
            : new CatchFact { Station = station, Minutes = minutes, Cans = [.. cans.Select(can => new Length(can.Value))] };
    }

    /// <summary>What somebody had chosen in a form of another kind is no sight and no station.</summary>
    public static WatchFact Watch(NoteDraft draft) => new()
    {
        Station = draft.Stations.FirstOrDefault(),
        About = draft.Stations.Count == 0 ? draft.Target : null,
        Seen = [.. draft.Found.Where(seen => Sights.Any(sight => sight.Id == seen))],
    };
}
