using Microsoft.AspNetCore.Components;
using Underturf.FieldLog;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.FieldApp;

/// <summary>Looking for what is hidden: its heat and the stops of the search on the map, its card beside it.</summary>
public sealed partial class GroundPlace
{
    private LocatedThing? heated;

    /// <summary>Where what is looked for lies, as the page has it worked out.</summary>
    [Parameter, EditorRequired]
    public LocatingDesk Looking { get; set; } = null!;

    /// <summary>True where what was worked out counts every note.</summary>
    [Parameter]
    public bool IsNewest { get; set; }

    /// <summary>What is looked for; nothing where it is no longer hidden.</summary>
    private HiddenName? Sought => Hand.Seeking is { } seek ? Opened?.Hidden.FirstOrDefault(hidden => hidden.Id == seek.Thing) : null;

    private LocatedThing? Likely => Sought is { } sought && Looking.Ask?.Thing == sought.Id ? Looking.Answer : null;

    private void Seek(string thing)
    {
        Hand.Seek(thing);
        Redraw();
    }

    private void StopSeeking()
    {
        Hand.Look(null);
        Redraw();
    }

    /// <summary>Stores what was found; the card goes where nothing of it is hidden any more.</summary>
    private async Task<Problem?> StoreFoundAsync(Func<string, Fact> write)
    {
        var trouble = await Store(write);
        if (trouble is null)
        {
            StopSeeking();
        }

        return trouble;
    }

    /// <summary>Draws the heat where it has changed.</summary>
    private void DrawLikely()
    {
        if (!mapped || left || ReferenceEquals(heated, Likely))
        {
            return;
        }

        heated = Likely;
        Map.Mark(heated is null ? GroundSign.Of(marks) : []);
        IReadOnlyList<Position> stops = [.. (heated?.Answer.Route?.Told ?? []).Select(step => step.At).OfType<Position>()];
        Map.Heat(heated?.Heat);
        Map.Route(stops, Hand.Seeking is { HasTurned: false });
        if (Hand.Seeking is { } seek)
        {
            (seek.Stops, seek.HasTurned) = (stops, heated is not null);
        }
    }
}
