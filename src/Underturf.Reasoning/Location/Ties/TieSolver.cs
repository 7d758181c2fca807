using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property;
using Underturf.Property.Practice;

namespace Underturf.Reasoning;

/// <summary>Places one thing by its ties: the ties alone say where, what else is known says on which side.</summary>
/// <param name="noted">Where the plan has it, and how far that may be off.</param>
internal sealed class TieSolver(TapingPractice taping, Sight sight, PropertyView view, bool us, IReadOnlyList<UsedTie> ties, (Position At, double SpreadMetres)? noted)
{
    /// <summary>Of the ellipse that is told, and of the side that counts as decided.</summary>
    public const double Share = 0.95;

    /// <summary>Metres that may lie in a building, in standard deviations of ties and marks.</summary>
    private const double Overlap = 3;

    private readonly RangeTo[] ranges = [.. ties.Select(tie => tie.Range)];

    public TieFinding Solve()
    {
        var doubt = new TieCheck(taping, ties, Fixes, us).Find();
        var used = Enumerable.Range(0, ties.Count).Where(i => i != doubt?.LeftOut).ToList();
        var fixes = Fixes(used);
        var best = fixes[0];
        var decided = best.Share >= Share;

        // Where they do not agree and nobody knows which is wrong, all of them are worse than they say.
        var worse = doubt is { LeftOut: null } ? Math.Max(1, best.Misfit / Math.Max(1, used.Count - 2)) : 1;
        var spots = fixes.Take(decided ? 1 : 2).Select(fix => Spot(fix, worse)).ToList();
        List<TieDoubt> doubts = [.. doubt is null ? [] : new[] { doubt.Words }];
        if (decided && Misplaced(best, worse) is { } misplaced)
        {
            doubts.Add(misplaced);
        }

        return new TieFinding(spots, best, used, decided, decided ? Why(used) : null, doubts) { SpreadFactor = worse };
    }

    private IReadOnlyList<RangeFix> Fixes(IReadOnlyList<int> used) => RangeFix.Of([.. used.Select(i => ranges[i])], (x, y) => Possible(x, y) * Hinted(x, y));

    private double Possible(double x, double y) => Blocking(new Position(x, y)) is null ? 1 : 0;

    private string? Blocking(Position at) => ties.Select(tie => sight.Blocked(tie.At, at, Overlap * tie.Range.SpreadMetres)).FirstOrDefault(id => id is not null);

    private double Hinted(double x, double y) =>
        noted is not { } hint ? 1 : Math.Exp(-Math.Pow(hint.At.DistanceMetresTo(new Position(x, y)) / hint.SpreadMetres, 2) / 2);

    /// <summary>What told the place from its mirror; nothing where the ties alone do.</summary>
    private string? Why(IReadOnlyList<int> used)
    {
        var alone = RangeFix.Of([.. used.Select(i => ranges[i])]);
        if (alone[0].Share >= Share)
        {
            return null;
        }

        var ruledOut = alone.Select(fix => Blocking(new Position(fix.XMetres, fix.YMetres))).FirstOrDefault(id => id is not null);
        return ruledOut is null ? "its place on the plan decides" : $"on the other side {view.Name(ruledOut)} would be in the way";
    }

    /// <summary>Where the plan has it, if that is further off than both may be.</summary>
    private TieDoubt? Misplaced(RangeFix fix, double worse)
    {
        if (noted is not { } hint)
        {
            return null;
        }

        var off = hint.At.DistanceMetresTo(new Position(fix.XMetres, fix.YMetres));
        var spread = Math.Sqrt((hint.SpreadMetres * hint.SpreadMetres) + (worse * Math.Max(fix.Spread.Xx, fix.Spread.Yy)));
        return off > taping.DisagreeSpreads * spread ? new TieDoubt($"its ties put it {Tie.Say(off, us)} from its place on the plan", "Move it on the plan, or tape it again") : null;
    }

    private static TiedSpot Spot(RangeFix fix, double worse)
    {
        var ellipse = fix.Spread.Scaled(worse).Ellipse(Share);
        var bearing = 90 - (ellipse.TurnRadians * 180 / Math.PI);
        return new TiedSpot(new Position(fix.XMetres, fix.YMetres), fix.Share, ellipse.LongMetres, ellipse.ShortMetres, ((bearing % 180) + 180) % 180);
    }
}

/// <summary>What the ties of a thing come to.</summary>
/// <param name="Used">Numbers of the ties that were used.</param>
internal sealed record TieFinding(IReadOnlyList<TiedSpot> Spots, RangeFix Fix, IReadOnlyList<int> Used, bool Decided, string? Why, IReadOnlyList<TieDoubt> Doubts)
{
    public double SpreadFactor { get; init; } = 1;
}
