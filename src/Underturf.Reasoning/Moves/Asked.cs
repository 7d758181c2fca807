using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Moves;

/// <summary>The note that a step leads to, without what will be seen.</summary>
internal static class Asked
{
    public static ReadingFact Reading(string how, IReadOnlyList<string> stations, string? place) =>
        new() { How = how, Stations = stations, Place = place, Value = Shown.OverRange };

    public static LookFact Look(string place) => new() { Place = place };

    public static TestFact Run(string station) => new() { Station = station };

    /// <summary>The same reading or run once more.</summary>
    public static Fact Again(Evidence note, PracticeBook book) => note is ReadingEvidence reading
        ? Reading(book.Probes.First(p => p.Measures == reading.Measures).Name, reading.Stations, reading.Place)
        : Run(note.Stations[0]);

    /// <summary>
    /// Work at a place, on the station whose fault it cures. On what stations share it names the place alone, the controller where nobody can say it; on a station's own
    /// that has no place, such as two swapped conductors, the station alone.
    /// </summary>
    public static WorkFact Work(string did, string place, Suspect? cured, Subject subject) => new()
    {
        Did = did,
        Place = cured is { Place: null, Station: not null } ? null : place,
        Target = cured is { Station: null } ? null : cured?.Station ?? subject.Stations[0],
    };
}
