using Underturf.Property.Practice;

namespace Underturf.Simulation.Trials;

/// <summary>One property as every policy and the ideal observer worked it.</summary>
/// <param name="ByPolicy">In the order of <see cref="Trial.PolicyNames"/>.</param>
public sealed record PropertyTrial(ulong Seed, IReadOnlyList<TrialResult> ByPolicy, IReadOnlyList<ScoredStatement> Ideal)
{
    /// <summary>By the notebook's own moves.</summary>
    public TrialResult Own => ByPolicy[0];
}

/// <summary>Figures over many properties.</summary>
public static class TrialScores
{
    /// <summary>A probability below this counts as this: one blunder is not to drown all else.</summary>
    private const double LeastProbability = 1e-3;

    private const int Bins = 10;

    public static double MeanLoss(IReadOnlyList<PropertyTrial> properties, int policy, PracticeBook book) => properties.Average(p => p.ByPolicy[policy].LossMinutes(book));

    public static double MeanSearch(IReadOnlyList<PropertyTrial> properties, int policy, PracticeBook book) => properties.Average(p => p.ByPolicy[policy].SearchMinutes(book));

    /// <summary>The rule of thumb with the least mean loss.</summary>
    public static int BestRule(IReadOnlyList<PropertyTrial> properties, PracticeBook book) =>
        Enumerable.Range(1, Trial.PolicyNames.Count - 1).MinBy(i => MeanLoss(properties, i, book));

    /// <summary>What was said of the stations that were asked about at the start.</summary>
    public static IEnumerable<ScoredStatement> AtStart(IEnumerable<PropertyTrial> properties) => properties.SelectMany(p => p.Own.Statements).Where(s => s.AtStart);

    /// <summary>Share of the statements whose likeliest class is right.</summary>
    public static double TopRight(IEnumerable<ScoredStatement> statements) => statements.Select(s => s.Right ? 1.0 : 0).DefaultIfEmpty(double.NaN).Average();

    /// <summary>Mean difference between the stated probability of the likeliest class and how often it was right, over ten bins, weighted by their size.</summary>
    public static double CalibrationError(IEnumerable<ScoredStatement> statements)
    {
        var stated = statements.Where(s => s.Stated is not null).Select(s => (s.Stated!.Top, Right: s.Right ? 1.0 : 0)).ToList();
        return stated.GroupBy(s => Math.Min(Bins - 1, (int)(s.Top * Bins))).Sum(g => Math.Abs(g.Average(s => s.Top) - g.Average(s => s.Right)) * g.Count() / stated.Count);
    }

    /// <summary>Mean natural logarithm of the probability that was given to what is right; nearer to nothing is better.</summary>
    public static double LogScore(IEnumerable<ScoredStatement> statements, Func<StatedChances, double?> chance) => statements
        .Select(s => s.Stated is { } stated ? chance(stated) : null)
        .OfType<double>()
        .Select(p => Math.Log(Math.Max(p, LeastProbability)))
        .DefaultIfEmpty(double.NaN)
        .Average();
}
