using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;

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

    /// <summary>What somebody had chosen in a form of another kind is no sight and no station.</summary>
    public static WatchFact Watch(NoteDraft draft) => new()
    {
        Station = draft.Stations.FirstOrDefault(),
        About = draft.Stations.Count == 0 ? draft.Target : null,
        Seen = [.. draft.Found.Where(seen => Sights.Any(sight => sight.Id == seen))],
    };
}
