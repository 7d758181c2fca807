namespace Underturf.Reasoning.Telling;

/// <summary>
/// Finds what would change the answer: the outcome of one move after which another explanation leads, the likeliest such outcome; where none
/// does, the one that shakes the leading explanation most. By Bayes over the worlds.
/// </summary>
internal sealed class OverturnFinder(Sample sample, IReadOnlyList<IReadOnlyList<int>> told, IReadOnlyList<Foreseen> moves)
{
    /// <summary>What is rarer than this is not worth saying.</summary>
    private const double Rare = 1e-4;

    /// <summary>A leading explanation that loses less than this is not shaken.</summary>
    private const double Shaken = 0.05;

    /// <param name="doubted">True where the leading explanation doubts a note: what changes that is to take it again.</param>
    public Overturn? Find(Func<int, string> summaryOf, bool doubted) =>
        (doubted ? Find(summaryOf, [.. moves.Where(m => m.IsAgain)]) : null) ?? Find(summaryOf, moves);

    private Overturn? Find(Func<int, string> summaryOf, IReadOnlyList<Foreseen> from)
    {
        var best = from
            .SelectMany(m => Enumerable.Range(0, m.Outcomes.Count).Select(o => (Move: m, Outcome: o, After: After(m, o))))
            .Where(c => c.After.Chance > Rare && (c.After.Leader != 0 || c.After.Shares[0] < Before(0) - Shaken))
            .OrderByDescending(c => c.After.Leader != 0)
            .ThenBy(c => c.Move.IsAgain)
            .ThenByDescending(c => c.After.Leader != 0 ? c.After.Chance : -c.After.Shares[0])
            .FirstOrDefault();
        if (best.Move is null)
        {
            return null;
        }

        var rival = best.After.Leader;
        return new Overturn(best.Move.Action, best.Move.Where, best.Move.Outcomes[best.Outcome], summaryOf(rival), rival != 0, Before(rival), best.After.Shares[rival], best.After.Chance);
    }

    private double Before(int explanation) => told[explanation].Sum(g => sample.Groups[g].Probability);

    private (double Chance, double[] Shares, int Leader) After(Foreseen move, int outcome)
    {
        var shares = told.Select(t => t.Sum(g => sample.Groups[g].Probability * sample.Mean(g, move.Chances, outcome))).ToArray();
        var chance = shares.Sum();
        for (var i = 0; i < shares.Length; i++)
        {
            shares[i] /= Math.Max(chance, double.Epsilon);
        }

        return (chance, shares, Array.IndexOf(shares, shares.Max()));
    }
}
