using Underturf.Property.Practice;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>Makes the clusters of one controller.</summary>
internal sealed class ClusterBuilder(Case owner)
{
    private readonly ILookup<string, Evidence> byStation = owner.Evidence.SelectMany(e => e.Stations.Select(s => (s, e))).ToLookup(p => p.s, p => p.e);

    public IReadOnlyList<Cluster> Build(string controller) => [.. Groups(controller).Select(stations => new Cluster
    {
        Stations = [.. stations.Select(Notes)],
        Ties = [.. stations.SelectMany(s => byStation[s]).Where(IsTie).Distinct()],
    })];

    private StationNotes Notes(string station)
    {
        var evidence = byStation[station].Where(e => !IsTie(e)).OrderBy(Effort).ToList();
        return new StationNotes(owner.Paths[station], evidence, [.. owner.Suspects.Private(owner.Paths[station]), .. WrongNotes(station).Select(s => new SuspectFamily(s))]);
    }

    private static int Effort(Evidence evidence) => evidence switch { LookEvidence => 0, ReadingEvidence { IsFed: false } => 1, ReadingEvidence => 2, _ => 3 };

    /// <summary>A look into a box speaks of each station by itself; a reading between two stations of both.</summary>
    private static bool IsTie(Evidence evidence) => evidence.Stations.Count > 1 && evidence is not LookEvidence;

    private IEnumerable<Suspect> WrongNotes(string station) =>
        from fault in owner.Book.Faults
        where fault.Scope == FaultScope.Note
        from note in byStation[station]
        where note.CanBeMisread && note.Stations[0] == station
        select Suspect.Of(new SuspectSeat(fault, station) { Note = note.Entry }, fault.Rate);

    private IEnumerable<IReadOnlyList<string>> Groups(string controller)
    {
        var group = owner.Paths.Values.Where(p => p.Controller == controller).ToDictionary(p => p.Station, p => p.Station, StringComparer.Ordinal);
        string Root(string s) => group[s] == s ? s : group[s] = Root(group[s]);
        foreach (var tie in owner.Evidence.Where(e => IsTie(e) && group.ContainsKey(e.Stations[0])))
        {
            group[Root(tie.Stations[1])] = Root(tie.Stations[0]);
        }

        return group.Keys.ToList().GroupBy(Root).Select(g => (IReadOnlyList<string>)[.. g.Order(StringComparer.Ordinal)]);
    }
}
