using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>
/// Bayes over one controller's part: at most one fault on what stations share, at most one pair, at most one private fault a station, the
/// usual coil integrated over its grid. Given the shared fault and the coil level, clusters are independent, so the sum over all
/// combinations is a product over clusters (docs/models/diagnosis.md).
/// </summary>
internal sealed class BeliefEngine
{
    /// <summary>Shared suspects and pairs whose weight is below the best by this much in the logarithm are left out.</summary>
    private const double LogNegligible = 14;

    private readonly Case owner;
    private readonly IReadOnlyList<Cluster> clusters;
    private readonly SharedWeigher weigher;
    private readonly int levels;
    private readonly int peak;

    private BeliefEngine(Case owner, string controller, IReadOnlyList<Cluster> all)
    {
        this.owner = owner;
        clusters = [.. all.Where(c => owner.Paths[c.Stations[0]].Controller == controller)];
        weigher = new SharedWeigher(owner);
        levels = owner.Levels.LogPrior.Length;
        peak = Enumerable.Range(0, levels).MaxBy(i => owner.Levels.LogPrior[i] + clusters.Sum(c => c.LogTotal[i]));
    }

    public static Belief Of(Case owner, string controller, IReadOnlyList<Cluster> clusters) =>
        new BeliefEngine(owner, controller, clusters).Infer(controller);

    private Belief Infer(string controller)
    {
        var shared = SharedCandidates(controller);
        var pairs = PairCandidates(controller);
        var weights = shared.SelectMany(c => c.LogWeight.Select((w, i) => w + LogPairs(pairs, c, i))).ToArray();
        var logEvidence = LogMath.LogSumExp(weights);
        var posterior = new PosteriorSum(clusters, weigher, owner);
        foreach (var candidate in shared)
        {
            var pairShare = pairs.Where(p => !candidate.Touches(p)).ToList();
            for (var i = 0; i < levels; i++)
            {
                var weight = Math.Exp(candidate.LogWeight[i] - logEvidence);
                posterior.Add(candidate, pairShare, i, weight);
            }
        }

        return posterior.Result(logEvidence);
    }

    private static double LogPairs(IReadOnlyList<PairCandidate> pairs, SharedCandidate shared, int level)
    {
        var sum = 1.0;
        foreach (var pair in pairs)
        {
            sum += shared.Touches(pair) ? 0 : Math.Exp(pair.LogRatio[level]);
        }

        return Math.Log(sum);
    }

    private List<SharedCandidate> SharedCandidates(string controller)
    {
        var suspects = owner.Suspects.Shared(controller);
        var logOdds = Math.Log(suspects.Sum(s => s.Weight));
        var rough = suspects.Select(s => (Suspect: s, LogWeight: Rough(s, Math.Log(s.Weight) - logOdds))).ToList();
        var best = rough.Max(r => LogMath.LogSumExp(r.LogWeight));
        return [.. rough
            .Where(r => r.Suspect.Fault is null || LogMath.LogSumExp(r.LogWeight) > best - LogNegligible)
            .Select(r => Full(r.Suspect, Math.Log(r.Suspect.Weight) - logOdds))];
    }

    /// <summary>With every affected station sound: cheap, and enough to drop what is out of the question.</summary>
    private double[] Rough(Suspect suspect, double logPrior) => Weight(logPrior, cluster =>
        suspect.Fault is not null && weigher.Affects(suspect, cluster)
            ? suspect.Fault.Scope is FaultScope.Supply or FaultScope.Everywhere ? cluster.LogTotal : weigher.Sound(cluster, suspect)
            : cluster.LogTotal);

    private SharedCandidate Full(Suspect suspect, double logPrior)
    {
        var affected = clusters
            .Where(c => suspect.Fault is not null && weigher.Affects(suspect, c))
            .Select(c => (Cluster: c, Weight: weigher.Weigh(c, suspect)))
            .Where(c => c.Weight is not null)
            .ToDictionary(c => c.Cluster, c => c.Weight!);
        return new SharedCandidate(suspect, affected, Weight(logPrior, c => affected.TryGetValue(c, out var w) ? w.LogTotal : c.LogTotal));
    }

    private double[] Weight(double logPrior, Func<Cluster, double[]> of)
    {
        var weight = new double[levels];
        for (var i = 0; i < levels; i++)
        {
            weight[i] = logPrior + owner.Levels.LogPrior[i];
        }

        foreach (var total in clusters.Select(of))
        {
            for (var i = 0; i < levels; i++)
            {
                weight[i] += total[i];
            }
        }

        return weight;
    }

    /// <summary>A pair is weighed where one of its stations looks unsound by itself; two sound-looking ones keep their small prior.</summary>
    private List<PairCandidate> PairCandidates(string controller)
    {
        var odd = clusters.Where(IsOdd).ToHashSet();
        var stations = odd.SelectMany(c => c.Stations).ToHashSet(StringComparer.Ordinal);
        return [.. owner.Suspects.Pairs(controller)
            .Where(p => stations.Contains(p.Station!) || stations.Contains(p.Other!))
            .Select(p => Pair(p, odd))
            .OfType<PairCandidate>()];
    }

    /// <summary>
    /// The pair against no pair; nothing where it is out of the question. A cluster that looks sound by itself gains next to nothing by a
    /// pair, so the odd ones are weighed first and most pairs end there.
    /// </summary>
    private PairCandidate? Pair(Suspect suspect, HashSet<Cluster> odd)
    {
        var touched = clusters.Where(c => weigher.Affects(suspect, c)).OrderByDescending(odd.Contains).ToList();
        var ratio = new double[levels];
        Array.Fill(ratio, Math.Log(suspect.Weight));
        foreach (var cluster in touched)
        {
            if (!odd.Contains(cluster) && ratio.Max() < -LogNegligible)
            {
                return null;
            }

            var with = weigher.Sound(cluster, suspect);
            for (var i = 0; i < levels; i++)
            {
                ratio[i] += with[i] - cluster.LogTotal[i];
            }
        }

        return ratio.Max() < -LogNegligible ? null : new PairCandidate(suspect, touched, ratio);
    }

    /// <summary>At the coil level that all stations together make likeliest: its private suspects say so, or one of its notes is surprising with nothing broken, whoever may be to blame.</summary>
    private bool IsOdd(Cluster cluster)
    {
        var sound = cluster.Joints.First(j => j.IsSound);
        return Math.Exp(sound.LogWeight[peak] - cluster.LogTotal[peak]) < owner.Book.Questions.OpenBelow
            || cluster.Evidence.Any(e => e is not LookEvidence && e.Surprise(owner.Levels.LogLevels[peak]) > Surprising);
    }

    /// <summary>One in ten, in powers of ten.</summary>
    private const double Surprising = 1;
}

/// <summary>A shared suspect with its weight at each coil level and the clusters that it changes.</summary>
internal sealed record SharedCandidate(Suspect Suspect, IReadOnlyDictionary<Cluster, SharedWeight> Affected, double[] LogWeight)
{
    public bool Touches(PairCandidate pair) => pair.Clusters.Any(Affected.ContainsKey);
}

/// <summary>A pair with its weight, at each coil level, against no pair.</summary>
internal sealed record PairCandidate(Suspect Suspect, IReadOnlyList<Cluster> Clusters, double[] LogRatio);
