using Underturf.Numerics;
using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>A cluster's notes weighed with a suspect that its stations share with others.</summary>
/// <param name="Joints">The joint states considered beside it, with log(prior * likelihood) for each level.</param>
internal sealed record SharedWeight(IReadOnlyList<Cluster.Joint> Joints, double[] LogTotal);

/// <summary>
/// Weighs clusters under suspects on the common, the supply or everywhere, and under pairs. Beside such a suspect only the likeliest private
/// states of a cluster are weighed; the prior of the rest is counted as sound.
/// </summary>
internal sealed class SharedWeigher(Case owner)
{
    private const int MostBeside = 6;

    private readonly Dictionary<(Cluster, string), IReadOnlyList<Cluster.Joint>> beside = [];

    public bool Affects(Suspect suspect, Cluster cluster) => cluster.Stations.Any(s => Affects(suspect, owner.Paths[s]));

    public static bool Affects(Suspect suspect, StationPath path) => suspect.Fault?.Scope switch
    {
        FaultScope.CommonConductor or FaultScope.CommonSplice => path.Legs.Any(l => new LegKey(l.Id, l.To) == suspect.Leg),
        FaultScope.Sensor or FaultScope.Supply or FaultScope.Everywhere => true,
        FaultScope.Pair => suspect.Station == path.Station || suspect.Other == path.Station,
        _ => false,
    };

    public bool AffectsStation(Suspect suspect, string station) => Affects(suspect, owner.Paths[station]);

    /// <summary>All notes of the cluster with the suspect wrong and the stations themselves sound.</summary>
    public double[] Sound(Cluster cluster, Suspect suspect)
    {
        var weight = new double[owner.Levels.LogPrior.Length];
        foreach (var item in cluster.Evidence)
        {
            item.Weigh([suspect], owner.Levels, owner.Cures, weight);
        }

        return weight;
    }

    public SharedWeight Weigh(Cluster cluster, Suspect suspect)
    {
        var joints = Beside(cluster, suspect)
            .Select(joint => joint with { LogWeight = Weight(joint with { Suspects = [suspect, .. joint.Suspects] }, cluster.Evidence) })
            .ToList();
        return new SharedWeight(joints, Cluster.Total(joints, owner.Levels.LogPrior.Length));
    }

    /// <summary>
    /// The private states likeliest by the notes that the shared suspect leaves alone: a station cut off by the common still shows its own
    /// leak to earth.
    /// </summary>
    private IReadOnlyList<Cluster.Joint> Beside(Cluster cluster, Suspect suspect)
    {
        var alone = cluster.Evidence.Where(e => IsLeftAlone(e, suspect)).ToList();
        var key = (cluster, string.Join(' ', alone.Select(e => e.Entry)));
        if (!beside.TryGetValue(key, out var chosen))
        {
            var kept = cluster.Joints
                .OrderByDescending(j => j.IsSound)
                .ThenByDescending(j => Peak(alone.Count == cluster.Evidence.Count ? j.LogWeight : Weight(j, alone)))
                .Take(MostBeside)
                .ToList();
            var rest = 1 - kept.Where(j => !j.IsSound).Sum(j => Math.Exp(j.LogPrior));
            chosen = [.. kept.Select(j => j.IsSound ? j with { LogPrior = Math.Log(rest) } : j)];
            beside[key] = chosen;
        }

        return chosen;
    }

    private bool IsLeftAlone(Evidence evidence, Suspect suspect)
    {
        var (with, without) = (new double[owner.Levels.LogPrior.Length], new double[owner.Levels.LogPrior.Length]);
        evidence.Weigh([suspect], owner.Levels, owner.Cures, with);
        evidence.Weigh([], owner.Levels, owner.Cures, without);
        return with.AsSpan().SequenceEqual(without);
    }

    private double[] Weight(Cluster.Joint joint, IReadOnlyList<Evidence> evidence)
    {
        var weight = new double[owner.Levels.LogPrior.Length];
        Array.Fill(weight, joint.LogPrior);
        foreach (var item in evidence)
        {
            item.Weigh(joint.Suspects, owner.Levels, owner.Cures, weight);
        }

        return weight;
    }

    private double Peak(double[] weight)
    {
        var sums = new double[weight.Length];
        for (var i = 0; i < sums.Length; i++)
        {
            sums[i] = weight[i] + owner.Levels.LogPrior[i];
        }

        return LogMath.LogSumExp(sums);
    }
}
