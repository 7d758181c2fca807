namespace Underturf.Reasoning.Diagnosis;

/// <summary>Sums the weights of all combinations into probabilities of the worlds of each station.</summary>
internal sealed class PosteriorSum(IReadOnlyList<Cluster> clusters, SharedWeigher weigher, Case owner)
{
    private readonly Dictionary<Suspect, double> shared = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<Cluster, double[]> unaffected = clusters.ToDictionary(c => c, _ => new double[owner.Levels.LogPrior.Length]);
    private readonly Dictionary<(Cluster, Suspect), double[]> affected = [];
    private readonly Dictionary<(Cluster, Suspect), SharedWeight> sharedWeights = [];
    private readonly Dictionary<(Cluster, Suspect), double> paired = [];
    private double logLevel;

    /// <summary>Takes in one shared suspect at one coil level: its weight is shared out between "no pair" and the pairs.</summary>
    /// <param name="weight">Posterior weight without pairs; with them it is larger by their ratios.</param>
    public void Add(SharedCandidate candidate, IReadOnlyList<PairCandidate> pairs, int level, double weight)
    {
        var ratios = pairs.Select(p => Math.Exp(p.LogRatio[level])).ToArray();
        var all = weight * (1 + ratios.Sum());
        if (all < 1e-12)
        {
            return;
        }

        shared[candidate.Suspect] = shared.GetValueOrDefault(candidate.Suspect) + all;
        logLevel += all * owner.Levels.LogLevels[level];
        foreach (var cluster in clusters)
        {
            var alone = all;
            for (var p = 0; p < ratios.Length; p++)
            {
                if (pairs[p].Clusters.Contains(cluster))
                {
                    var key = (cluster, pairs[p].Suspect);
                    paired[key] = paired.GetValueOrDefault(key) + (weight * ratios[p]);
                    alone -= weight * ratios[p];
                }
            }

            Slot(candidate, cluster)[level] += Math.Max(0, alone);
        }
    }

    public Belief Result(double logEvidence)
    {
        var stations = new Dictionary<string, IReadOnlyList<World>>(StringComparer.Ordinal);
        foreach (var cluster in clusters)
        {
            for (var s = 0; s < cluster.Stations.Count; s++)
            {
                stations[cluster.Stations[s]] = Worlds(cluster, s);
            }
        }

        return new Belief([.. shared.Select(p => (p.Key, p.Value))], stations, logLevel, logEvidence);
    }

    private double[] Slot(SharedCandidate candidate, Cluster cluster)
    {
        if (!candidate.Affected.TryGetValue(cluster, out var weight))
        {
            return unaffected[cluster];
        }

        var key = (cluster, candidate.Suspect);
        if (!affected.TryGetValue(key, out var slot))
        {
            slot = new double[owner.Levels.LogPrior.Length];
            affected[key] = slot;
            sharedWeights[key] = weight;
        }

        return slot;
    }

    private List<World> Worlds(Cluster cluster, int station)
    {
        var sums = new Dictionary<(Suspect? Private, Suspect? Shared), double>();
        void Put(Suspect? own, Suspect? other, double probability) => sums[(own, other)] = sums.GetValueOrDefault((own, other)) + probability;
        Spread(cluster.Joints, cluster.LogTotal, unaffected[cluster], (joint, p) => Put(Unsound(joint.Suspects[station]), null, p));
        foreach (var ((_, suspect), slot) in affected.Where(a => a.Key.Item1 == cluster))
        {
            var weight = sharedWeights[(cluster, suspect)];
            var own = weigher.AffectsStation(suspect, cluster.Stations[station]) ? suspect : null;
            Spread(weight.Joints, weight.LogTotal, slot, (joint, p) => Put(Unsound(joint.Suspects[station]), own, p));
        }

        foreach (var ((_, suspect), probability) in paired.Where(p => p.Key.Item1 == cluster))
        {
            Put(null, weigher.AffectsStation(suspect, cluster.Stations[station]) ? suspect : null, probability);
        }

        var total = sums.Values.Sum();
        return [.. sums
            .Select(p => new World([.. new[] { p.Key.Private, p.Key.Shared }.OfType<Suspect>()], p.Value / total))
            .OrderByDescending(w => w.Probability)];
    }

    private static Suspect? Unsound(Suspect suspect) => suspect.Fault is null ? null : suspect;

    private static void Spread(IReadOnlyList<Cluster.Joint> joints, double[] logTotal, double[] slot, Action<Cluster.Joint, double> put)
    {
        foreach (var joint in joints)
        {
            var sum = 0.0;
            for (var i = 0; i < slot.Length; i++)
            {
                sum += slot[i] > 0 ? slot[i] * Math.Exp(joint.LogWeight[i] - logTotal[i]) : 0;
            }

            if (sum > 1e-9)
            {
                put(joint, sum);
            }
        }
    }
}
