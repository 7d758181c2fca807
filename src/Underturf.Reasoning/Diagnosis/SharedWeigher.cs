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

    private readonly Dictionary<Cluster, IReadOnlyList<Cluster.Joint>> beside = [];

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
        var joints = Beside(cluster).Select(joint =>
        {
            var weight = new double[owner.Levels.LogPrior.Length];
            Array.Fill(weight, joint.LogPrior);
            foreach (var item in cluster.Evidence)
            {
                item.Weigh([suspect, .. joint.Suspects], owner.Levels, owner.Cures, weight);
            }

            return joint with { LogWeight = weight };
        }).ToList();
        return new SharedWeight(joints, Cluster.Total(joints, owner.Levels.LogPrior.Length));
    }

    private IReadOnlyList<Cluster.Joint> Beside(Cluster cluster)
    {
        if (!beside.TryGetValue(cluster, out var chosen))
        {
            var kept = cluster.Joints
                .OrderByDescending(j => j.IsSound)
                .ThenByDescending(j => Peak(j.LogWeight))
                .Take(MostBeside)
                .ToList();
            var rest = 1 - kept.Where(j => !j.IsSound).Sum(j => Math.Exp(j.LogPrior));
            chosen = [.. kept.Select(j => j.IsSound ? j with { LogPrior = Math.Log(rest) } : j)];
            beside[cluster] = chosen;
        }

        return chosen;
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
