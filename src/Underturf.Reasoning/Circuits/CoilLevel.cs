using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Circuits;

/// <summary>A controller's usual coil against the practice book's: the logarithm of their ratio, with its standard deviation.</summary>
internal readonly record struct CoilLevel(double Log, double LogSpread)
{
    /// <summary>The ratio itself.</summary>
    public double Factor => Math.Exp(Log);

    /// <summary>
    /// The spread is that of the grid's posterior with nothing wrong on what stations share, and of the grid's own step (even over it: step^2/12).
    /// </summary>
    public static CoilLevel Of(Case matter, IEnumerable<Cluster> clusters, string controller, double log)
    {
        var (levels, weights) = (matter.Levels.LogLevels, matter.Levels.LogPrior.ToArray());
        foreach (var cluster in clusters.Where(c => matter.Paths[c.Stations[0]].Controller == controller))
        {
            for (var i = 0; i < weights.Length; i++)
            {
                weights[i] += cluster.LogTotal[i];
            }
        }

        var shares = weights.Select(w => Math.Exp(w - weights.Max())).ToArray();
        var mean = shares.Zip(levels, (s, l) => s * l).Sum() / shares.Sum();
        var variance = shares.Zip(levels, (s, l) => s * (l - mean) * (l - mean)).Sum() / shares.Sum();
        var step = levels[1] - levels[0];
        return new CoilLevel(log, Math.Sqrt(variance + (step * step / 12)));
    }
}
