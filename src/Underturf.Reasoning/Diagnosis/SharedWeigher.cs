using Underturf.Numerics;
using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>A cluster's notes weighed with a suspect that its stations share with others.</summary>
/// <param name="Joints">The joint states considered beside it, with log(prior * likelihood) for each level.</param>
internal sealed record SharedWeight(IReadOnlyList<Cluster.Joint> Joints, double[] LogTotal);

/// <summary>
/// Weighs clusters under suspects on the common, the supply or everywhere, and under pairs. Beside such a suspect only the likeliest private
/// states of a cluster are weighed one by one.
/// </summary>
internal sealed class SharedWeigher(Case owner)
{
    private const int MostBeside = 6;

    private readonly Dictionary<(Cluster, string), Company> companies = [];

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
    public double[] Sound(Cluster cluster, Suspect suspect) => Weight(0, [suspect], cluster.Evidence);

    /// <summary>The cluster with the suspect wrong too; nothing where none of its notes would show that.</summary>
    public SharedWeight? Weigh(Cluster cluster, Suspect suspect)
    {
        var alone = cluster.Evidence.Where(e => IsLeftAlone(e, suspect)).ToList();
        if (alone.Count == cluster.Evidence.Count)
        {
            return null;
        }

        var beside = Beside(cluster, alone);
        var joints = beside.Kept.Select(j => j with { LogWeight = Weight(j.LogPrior, [suspect, .. j.Suspects], cluster.Evidence) }).ToList();
        if (beside.Rest is { } rest)
        {
            joints.Add(rest with { LogWeight = [.. rest.LogWeight.Select((w, i) => w + joints[0].LogWeight[i] - beside.Sound[i])] });
        }

        return new SharedWeight(joints, Cluster.Total(joints, owner.Levels.LogPrior.Length));
    }

    /// <summary>
    /// The private states likeliest by the notes that the shared suspect leaves alone: a station cut off by the common still shows its own
    /// leak to earth. The rest is weighed together by those notes, and by the others as if sound.
    /// </summary>
    private Company Beside(Cluster cluster, IReadOnlyList<Evidence> alone)
    {
        var key = (cluster, string.Join(' ', alone.Select(e => e.Entry)));
        if (!companies.TryGetValue(key, out var company))
        {
            var ranked = cluster.Joints
                .Select(j => j with { LogWeight = Weight(j.LogPrior, j.Suspects, alone) })
                .OrderByDescending(j => j.IsSound)
                .ThenByDescending(j => Peak(j.LogWeight))
                .ToList();
            var rest = ranked.Skip(MostBeside).ToList();
            company = new Company(
                [.. ranked.Take(MostBeside)],
                rest.Count == 0 ? null : ranked[0] with { LogWeight = Cluster.Total(rest, owner.Levels.LogPrior.Length) },
                ranked[0].LogWeight);
            companies[key] = company;
        }

        return company;
    }

    private bool IsLeftAlone(Evidence evidence, Suspect suspect)
    {
        var (with, without) = (new double[owner.Levels.LogPrior.Length], new double[owner.Levels.LogPrior.Length]);
        evidence.Weigh([suspect], owner.Levels, owner.Cures, with);
        evidence.Weigh([], owner.Levels, owner.Cures, without);
        return with.AsSpan().SequenceEqual(without);
    }

    private double[] Weight(double logPrior, IReadOnlyList<Suspect> suspects, IReadOnlyList<Evidence> evidence)
    {
        var weight = new double[owner.Levels.LogPrior.Length];
        Array.Fill(weight, logPrior);
        foreach (var item in evidence)
        {
            item.Weigh(suspects, owner.Levels, owner.Cures, weight);
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

    /// <summary>The states kept, the sound one first; the rest as one; the sound one by the notes left alone.</summary>
    private sealed record Company(IReadOnlyList<Cluster.Joint> Kept, Cluster.Joint? Rest, double[] Sound);
}
