using Underturf.Numerics;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>
/// The usual coil's level is known so badly beforehand that one normal distribution would be bent out of shape by the first reading. A normal prior is
/// a mixture of narrower ones (their centres normal again), each of which is fitted by itself; on a large property the readings of a
/// few stations say which one to begin with.
/// </summary>
internal sealed class LevelStarts(Case owner, IReadOnlyList<Cluster> clusters, Unknowns unknowns)
{
    /// <summary>Spread of a component against the prior's; with centres half a spread apart the sum is normal within 1e-4.</summary>
    private const double Width = 0.4;

    private const int Reach = 6;

    /// <summary>Properties up to this size are fitted under every component.</summary>
    private const int Small = 12;

    /// <summary>Components below the best by this much in the logarithm are left out.</summary>
    private const double Negligible = 30;

    /// <summary>The same where only the likeliest is asked for.</summary>
    private const double Clear = 12;

    /// <summary>The fits to average over, with the logarithms of their weights while nothing shared is wrong.</summary>
    public IReadOnlyList<(OutlookFit Fit, double LogWeight)> Fits()
    {
        if (clusters.Count > Small)
        {
            var informative = clusters.Where(c => c.Evidence.OfType<ReadingEvidence>().Any(e => e.Shown.Value is not null)).Take(Small).ToList();
            var best = Likely(informative, Clear)[0];
            return [(OutlookFit.Of(owner, clusters, Outlook.Prior(unknowns.Count, 0, owner.Book.Coil.LevelSpread), best.Prior), 0)];
        }

        var modes = new List<Mode>();
        foreach (var (prior, logWeight) in Likely(clusters, Negligible))
        {
            if (modes.Find(m => m.Covers(prior)) is { } mode)
            {
                mode.Join(prior, logWeight);
            }
            else
            {
                modes.Add(new Mode(OutlookFit.Of(owner, clusters, prior, null), prior, logWeight));
            }
        }

        return [.. modes.Select(m => (m.Fit, m.LogWeight))];
    }

    /// <summary>A fit, and the weight of all components that would come to the same.</summary>
    private sealed class Mode(OutlookFit fit, Outlook prior, double logPrior)
    {
        public OutlookFit Fit => fit;

        public double LogWeight { get; private set; } = logPrior + fit.LogEvidence;

        /// <summary>The notes alone say the level, so that a neighbouring prior would change nothing but the weight.</summary>
        public bool Covers(Outlook other) =>
            fit.Posterior.LogLevelSpread < 0.3 * prior.LogLevelSpread && Math.Abs(fit.Posterior.LogLevel - other.LogLevel) < 4 * other.LogLevelSpread;

        public void Join(Outlook other, double logOther) =>
            LogWeight = LogMath.LogAdd(LogWeight, logOther + fit.LogEvidence + LogDensity(other) - LogDensity(prior));

        private double LogDensity(Outlook component)
        {
            var away = (fit.Posterior.LogLevel - component.LogLevel) / component.LogLevelSpread;
            return -0.5 * away * away;
        }
    }

    private IEnumerable<(Outlook Prior, double LogWeight)> Components()
    {
        var spread = owner.Book.Coil.LevelSpread;
        var between = spread * Math.Sqrt(1 - (Width * Width));
        for (var i = -Reach; i <= Reach; i++)
        {
            var centre = 0.5 * spread * i;
            yield return (Outlook.Prior(unknowns.Count, centre, Width * spread), -0.5 * centre * centre / (between * between));
        }
    }

    /// <summary>
    /// Components not out of the question, the likeliest first, by readings alone: what a run shows may have one cause for all stations, and that is weighed
    /// later. Each cluster is asked only of those that the clusters before it left.
    /// </summary>
    private List<(Outlook Prior, double LogWeight)> Likely(IReadOnlyList<Cluster> some, double margin)
    {
        var left = Components().Select(c => (c.Prior, c.LogWeight, Rough: c.LogWeight)).ToList();
        foreach (var cluster in some.Select(Read))
        {
            if (left.Count == 1)
            {
                break;
            }

            left = [.. left.Select(c => c with { Rough = c.Rough + new StateFinder(owner).Find(cluster, [], c.Prior, deep: false).LogTotal })];
            var best = left.Max(c => c.Rough);
            left.RemoveAll(c => c.Rough <= best - margin);
        }

        return [.. left.OrderByDescending(c => c.Rough).Select(c => (c.Prior, c.LogWeight))];
    }

    private static Cluster Read(Cluster cluster) => new()
    {
        Stations = [.. cluster.Stations.Select(s => s.By(e => e is ReadingEvidence))],
        Ties = cluster.Ties,
    };
}
