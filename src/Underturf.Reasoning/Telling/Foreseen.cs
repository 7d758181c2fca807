namespace Underturf.Reasoning.Telling;

/// <summary>A move that could be made now, and what it would show in each of some worlds.</summary>
/// <param name="Action">What to do and of what.</param>
/// <param name="Where">Label of the place.</param>
/// <param name="Outcomes">What a technician would see, in words; the columns of <paramref name="Chances"/>.</param>
/// <param name="Chances">Rows are worlds; each sums to one.</param>
/// <param name="Fine">The same by finer outcomes, for telling two worlds apart.</param>
internal sealed record Foreseen(string Action, string Where, IReadOnlyList<string> Outcomes, double[][] Chances, double[][] Fine)
{
    public Foreseen(string action, string where, IReadOnlyList<string> outcomes, double[][] chances)
        : this(action, where, outcomes, chances, chances)
    {
    }

    /// <summary>True where it takes a note again that may be wrong.</summary>
    public bool IsAgain { get; init; }

    /// <summary>
    /// Total variation between what two groups of worlds predict: half the sum of differences. At even odds one look at the outcome names
    /// the right group with chance (1 + it) / 2.
    /// </summary>
    public double Apart(Sample sample, int one, int other)
    {
        var sum = 0.0;
        for (var o = 0; o < Fine[0].Length; o++)
        {
            sum += Math.Abs(sample.Mean(one, Fine, o) - sample.Mean(other, Fine, o));
        }

        return sum / 2;
    }
}
