using Underturf.Numerics;
using Underturf.Property;
using Underturf.Property.Practice;

namespace Underturf.Reasoning;

/// <summary>Finds the tie that the others speak against: each is held against the place that the others give.</summary>
internal sealed class TieCheck(TapingPractice taping, IReadOnlyList<UsedTie> ties, Func<IReadOnlyList<int>, IReadOnlyList<RangeFix>> fixes, bool us)
{
    public TieCheckFinding? Find()
    {
        int[] all = [.. Enumerable.Range(0, ties.Count)];
        return ties.Count == 2 ? Pair(fixes(all)[0]) : ties.Count > 2 ? Several(all) : null;
    }

    /// <summary>Two that do not reach each other.</summary>
    private TieCheckFinding? Pair(RangeFix fix)
    {
        if (Math.Sqrt(fix.Misfit) <= taping.DisagreeSpreads)
        {
            return null;
        }

        var apart = ties.Sum(tie => Math.Abs(tie.Range.OffMetres(fix.XMetres, fix.YMetres)));
        return new TieCheckFinding(null, new TieDoubt($"the ties from {ties[0].From} and from {ties[1].From} miss each other by {Tie.Say(apart, us)}", "Tape both again"));
    }

    private TieCheckFinding? Several(int[] all)
    {
        var off = all.Select(i => Off(i, Others(i))).ToArray();
        if (off.Max(o => o.Spreads) <= taping.DisagreeSpreads)
        {
            return null;
        }

        // How well the others agree once one is left out says how likely it is the wrong one.
        var likely = all.Select(i => Math.Exp(-Least(Others(i)) / 2)).ToArray();
        var suspects = all.Where(i => likely[i] > (1 - TieSolver.Share) * likely.Max()).OrderByDescending(i => likely[i]).ToList();
        return suspects is [var culprit] && Agree(Others(culprit))
            ? new TieCheckFinding(culprit, new TieDoubt($"the tie from {ties[culprit].From} is {Tie.Say(off[culprit].Metres, us)} off what the others say", "Tape it again"))
            : new TieCheckFinding(null, new TieDoubt($"its ties do not agree: {string.Join(" or ", suspects.Select(i => $"the one from {ties[i].From} is off by {Tie.Say(off[i].Metres, us)}"))}", "Tape them again"));

        int[] Others(int one) => [.. all.Where(i => i != one)];
    }

    /// <summary>How far a tie is off what the others say, in metres and in standard deviations of both.</summary>
    private (double Metres, double Spreads) Off(int tie, IReadOnlyList<int> others) => fixes(others).Where(fix => fix.Share > 0).Select(fix =>
    {
        var range = ties[tie].Range;
        var (_, x, y) = range.Seen(fix.XMetres, fix.YMetres);
        var metres = Math.Abs(range.OffMetres(fix.XMetres, fix.YMetres));
        return (metres, metres / Math.Sqrt((range.SpreadMetres * range.SpreadMetres) + fix.Spread.Along(x, y)));
    }).MinBy(off => off.Item2);

    private bool Agree(IReadOnlyList<int> some)
    {
        return Math.Sqrt(Least(some) / Math.Max(1, some.Count - 2)) <= taping.DisagreeSpreads;
    }

    private double Least(IReadOnlyList<int> some) => fixes(some).Where(fix => fix.Share > 0).Min(fix => fix.Misfit);
}

/// <param name="LeftOut">Number of the tie that is certainly wrong; nothing where it can be one of several.</param>
internal sealed record TieCheckFinding(int? LeftOut, TieDoubt Words);
