using Underturf.FieldLog;

namespace Underturf.Property;

/// <summary>What is there and what is missing, counted from the log.</summary>
/// <param name="Terminals">Station terminals of all controllers.</param>
/// <param name="InUse">Terminals with a station on them.</param>
/// <param name="ValvesFound">Valves that somebody has found.</param>
/// <param name="StationsWithoutValve">Stations for which no valve was found: where hidden valves must be.</param>
/// <param name="ValvesWithoutStation">Valves that no station is known to run; a master valve is run by all.</param>
/// <param name="EndsWithoutMate">Conductor ends that nobody saw joined to another.</param>
/// <param name="LeftAs">The last state in which each place was left.</param>
/// <param name="Asked">Questions that people opened and nobody closed.</param>
public sealed record Stock(
    int Terminals,
    int InUse,
    int ValvesFound,
    IReadOnlyList<string> StationsWithoutValve,
    IReadOnlyList<string> ValvesWithoutStation,
    IReadOnlyList<string> EndsWithoutMate,
    IReadOnlyList<Observed<LeftAsFact>> LeftAs,
    IReadOnlyList<Observed<QuestionOpenedFact>> Asked)
{
    public static Stock Of(PropertyHistory history)
    {
        var (view, facts) = (history.Now, history.Facts);
        var mated = view.Ends.Values.SelectMany(e => e.Mates).Concat(view.Splices.Values.SelectMany(s => s.Joins)).Select(view.Identity.Of).ToHashSet(StringComparer.Ordinal);
        var closed = facts.QuestionsClosed.Select(q => q.Fact.Id).ToHashSet(StringComparer.Ordinal);
        var masters = view.Controllers.Values.Select(c => c.Master).OfType<string>().Select(view.Identity.Of).ToHashSet(StringComparer.Ordinal);
        return new Stock(
            view.Controllers.Values.Sum(c => c.Terminals),
            view.Stations.Count,
            view.Valves.Count,
            [.. view.Stations.Keys.Where(s => !view.ValvesOf(s).Any())],
            [.. view.Valves.Where(v => v.Value.Station is null && !masters.Contains(v.Key)).Select(v => v.Key)],
            [.. view.Ends.Where(e => e.Value.Mates.Count == 0 && !mated.Contains(e.Key)).Select(e => e.Key)],
            [.. facts.LeftAs.GroupBy(l => view.Identity.Of(l.Fact.Place)).Select(g => g.Last())],
            [.. facts.QuestionsOpened.Where(q => !closed.Contains(q.Fact.Id))]);
    }
}
