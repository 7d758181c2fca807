using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Reasoning;

/// <summary>From which marks to tape a thing: what stays where it is, within a tape's length, with nothing in the way.</summary>
internal sealed class MarkFinder(PropertyView view, TapingPractice taping, Sight sight, string thing)
{
    /// <summary>Marks this near the thing are as good as the thing itself, and tell no direction.</summary>
    private const double LeastMetres = 0.5;

    /// <summary>The two that leave the smallest ellipse, by its longer axis.</summary>
    public MarkPair? Best(Position at)
    {
        var marks = Near(at);
        (MarkPoint First, MarkPoint Second, SpreadEllipse Ellipse)? best = null;
        for (var i = 0; i < marks.Count; i++)
        {
            for (var j = i + 1; j < marks.Count; j++)
            {
                var spread = RangeFix.SpreadAt([marks[i].Range, marks[j].Range], at.EastMetres, at.NorthMetres);
                var ellipse = spread.Ellipse(TieSolver.Share);
                if (double.IsFinite(spread.Xx) && !(best?.Ellipse.LongMetres <= ellipse.LongMetres))
                {
                    best = (marks[i].Point, marks[j].Point, ellipse);
                }
            }
        }

        return best is { } found ? new MarkPair(found.First, found.Second, found.Ellipse.LongMetres, found.Ellipse.ShortMetres) : null;
    }

    /// <summary>The one whose distances to two places differ most for its spread.</summary>
    public MarkPoint? Deciding(Position one, Position other) => Near(one)
        .Where(mark => sight.Blocked(mark.Point.At, other, LeastMetres) is null)
        .Select(mark => (mark.Point, Apart: Math.Abs(mark.Point.DistanceMetres - mark.Point.At.DistanceMetresTo(other)) / mark.Range.SpreadMetres))
        .Where(mark => mark.Apart > taping.DisagreeSpreads)
        .OrderByDescending(mark => mark.Apart)
        .Select(mark => mark.Point).FirstOrDefault();

    private List<(MarkPoint Point, RangeTo Range)> Near(Position at) => [.. Points()
        .Select(mark => (mark.Id, mark.At, Metres: mark.At.DistanceMetresTo(at), mark.Grade))
        .Where(mark => mark.Metres <= taping.TapeMetres && mark.Metres >= LeastMetres && sight.Blocked(mark.At, at, LeastMetres) is null)
        .OrderBy(mark => mark.Metres)
        .Select(mark => (new MarkPoint(mark.Id, MarkWords.Of(view, mark.Id, mark.At), mark.At, mark.Metres), Range(mark.At, mark.Metres, mark.Id, mark.Grade)))];

    private IEnumerable<(string Id, Position At, Grade Grade)> Points() => view.Ground
        .Where(ground => taping.Marks.Contains(ground.Value.What))
        .SelectMany(ground => ground.Value.Shape.Select(at => (ground.Key, at, ground.Value.Sure)))
        .Concat(view.Controllers.Where(c => c.Value.Position is not null && c.Key != thing).Select(c => (c.Key, c.Value.Position!.Value, c.Value.Sure)));

    private RangeTo Range(Position at, double metres, string mark, Grade grade)
    {
        var taped = taping.SpreadMetres(new Tie(thing, mark, at, Length.FromSi(metres), null, Grade.Measured));
        var stands = taping.MarkMetres.Of(grade);
        return new RangeTo(at.EastMetres, at.NorthMetres, metres, Math.Sqrt((taped * taped) + (stands * stands)));
    }
}
