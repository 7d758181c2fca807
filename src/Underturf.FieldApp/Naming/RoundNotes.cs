using Underturf.FieldLog;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.FieldApp;

/// <summary>What is noted of a round, of the resistors fitted for it, and of a name that it gave.</summary>
public static class RoundNotes
{
    /// <summary>Every end that was tapped was touched.</summary>
    public static TouchFact Marked(string place, NamingRound round, IReadOnlyDictionary<string, bool> marks) => Touch(place, round) with
    {
        Touched = [.. round.Touch.Where(marks.ContainsKey)],
        Answered = [.. round.Touch.Where(end => marks.GetValueOrDefault(end))],
    };

    /// <summary>One answered and ended the round, or none did.</summary>
    public static TouchFact One(string place, NamingRound round, string? answered) => Touch(place, round) with
    {
        Touched = answered is null || !round.UntilOne ? round.Touch : [.. round.Touch.TakeWhile(end => end != answered), answered],
        Answered = answered is null ? [] : [answered],
    };

    public static TouchFact Read(string place, NamingRound round, Shown value) => Touch(place, round) with { Touched = round.Touch, Value = value };

    /// <param name="clicked">Id of the station whose valve clicked; nothing where none of those listened to did.</param>
    public static TouchFact Clicked(string place, OnwardTest test, string? clicked) => new()
    {
        How = test.How,
        Place = place,
        Put = [test.End],
        Touched = [.. test.Valves.Select(valve => valve.Wire!)],
        Answered = clicked is null ? [] : [clicked],
    };

    public static ResistorFact Fitted(ResistorFit fit) => new() { End = fit.End, Ohms = Resistance.FromSi(fit.Ohms) };

    public static ResistorFact TakenOff(string end) => new() { End = end };

    /// <summary>The name of an end, written down: it follows from the touches and is no evidence beside them.</summary>
    /// <param name="wire">Id of a station, of a controller (its common), or of a loose end that is the same conductor.</param>
    public static EndFact Named(string place, string end, string wire, Property.PropertyView view) => view.Stations.ContainsKey(wire)
        ? new EndFact { Id = end, Place = place, Station = wire, Sure = Grade.Inferred }
        : view.Controllers.ContainsKey(wire)
            ? new EndFact { Id = end, Place = place, Common = true, Sure = Grade.Inferred }
            : new EndFact { Id = end, Place = place, FarEnd = wire, Sure = Grade.Inferred };

    private static TouchFact Touch(string place, NamingRound round) => new() { How = round.How, Place = place, Put = round.Put, Against = round.Against };
}
