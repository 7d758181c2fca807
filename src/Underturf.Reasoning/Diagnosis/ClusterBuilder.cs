using Underturf.Property.Practice;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>Makes the clusters of a case and weighs their joint states.</summary>
internal sealed class ClusterBuilder(Case owner)
{
    /// <summary>Joint states weighed for one cluster of several stations; each station brings its most probable suspects.</summary>
    private const int MostJoints = 4000;

    private readonly ILookup<string, Evidence> byStation = owner.Evidence.SelectMany(e => e.Stations.Select(s => (s, e))).ToLookup(p => p.s, p => p.e);

    public IReadOnlyList<Cluster> Build() => [.. Groups().Select(Build)];

    private Cluster Build(IReadOnlyList<string> stations)
    {
        var evidence = stations.SelectMany(s => byStation[s]).Distinct().ToList();
        var joints = stations.Select(Alone).ToList() is [var only] ? only : Product(stations, evidence);
        return new Cluster
        {
            Stations = stations,
            Evidence = evidence,
            Joints = joints,
            LogTotal = Cluster.Total(joints, owner.Levels.LogPrior.Length),
        };
    }

    private List<Cluster.Joint> Alone(string station)
    {
        var evidence = byStation[station].ToList();
        var suspects = owner.Suspects.Private(owner.Paths[station]).Concat(Notes(station, evidence)).ToList();
        var total = Math.Log(suspects.Sum(s => s.Weight));
        var own = evidence.Where(e => IsOwn(e, station)).ToList();
        return [.. suspects.Select(s => Weigh([s], Math.Log(s.Weight) - total, own))];
    }

    private List<Cluster.Joint> Product(IReadOnlyList<string> stations, List<Evidence> evidence)
    {
        var most = Math.Max(4, (int)Math.Pow(MostJoints, 1.0 / stations.Count));
        var tied = evidence.Where(e => e.Stations.Count > 1 && e is not LookEvidence).ToList();
        IEnumerable<Cluster.Joint> joints = [new Cluster.Joint([], 0, new double[owner.Levels.LogPrior.Length])];
        foreach (var station in stations)
        {
            var likely = Likely(Alone(station), most);
            joints = joints.SelectMany(j => likely.Select(own => Combine(j, own)));
        }

        return [.. joints.Select(j => j with { LogWeight = Added(j.LogWeight, j.Suspects, tied) })];
    }

    /// <summary>The most probable suspects and always the sound one.</summary>
    private List<Cluster.Joint> Likely(List<Cluster.Joint> alone, int most) =>
        [.. alone.OrderByDescending(j => j.IsSound).ThenByDescending(j => j.LogWeight.Zip(owner.Levels.LogPrior, (w, p) => w + p).Max()).Take(most)];

    private static Cluster.Joint Combine(Cluster.Joint a, Cluster.Joint b) =>
        new([.. a.Suspects, .. b.Suspects], a.LogPrior + b.LogPrior, [.. a.LogWeight.Zip(b.LogWeight, (x, y) => x + y)]);

    private Cluster.Joint Weigh(IReadOnlyList<Suspect> suspects, double logPrior, IReadOnlyList<Evidence> evidence)
    {
        var weight = new double[owner.Levels.LogPrior.Length];
        Array.Fill(weight, logPrior);
        return new Cluster.Joint(suspects, logPrior, Added(weight, suspects, evidence));
    }

    private double[] Added(double[] weight, IReadOnlyList<Suspect> suspects, IReadOnlyList<Evidence> evidence)
    {
        foreach (var item in evidence)
        {
            item.Weigh(suspects, owner.Levels, owner.Cures, weight);
        }

        return weight;
    }

    /// <summary>A look into a box speaks of each station by itself; a reading between two stations of both.</summary>
    private static bool IsOwn(Evidence evidence, string station) => evidence.Stations.Count == 1 || (evidence is LookEvidence && evidence.Stations.Contains(station));

    private IEnumerable<Suspect> Notes(string station, IReadOnlyList<Evidence> evidence) =>
        from fault in owner.Book.Faults
        where fault.Scope == FaultScope.Note
        from note in evidence
        where note.CanBeMisread && note.Stations[0] == station
        select new Suspect { Fault = fault, Station = station, Note = note.Entry, Weight = fault.Rate / (1 - fault.Rate) };

    private IEnumerable<IReadOnlyList<string>> Groups()
    {
        var group = owner.Paths.Keys.ToDictionary(s => s, s => s, StringComparer.Ordinal);
        string Root(string s) => group[s] == s ? s : group[s] = Root(group[s]);
        foreach (var tie in owner.Evidence.Where(e => e is not LookEvidence && e.Stations.Count > 1))
        {
            group[Root(tie.Stations[1])] = Root(tie.Stations[0]);
        }

        return owner.Paths.Keys.GroupBy(Root).Select(g => (IReadOnlyList<string>)[.. g.Order(StringComparer.Ordinal)]);
    }
}
