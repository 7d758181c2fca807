using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Location;

/// <summary>
/// What to do next for the things of one group: search now, or first trace, listen or ask. Each is weighed by the expected minutes until all
/// is found or given up, over what it would tell; the walk between pieces of ground is left out on all sides alike.
/// </summary>
internal sealed class ChoiceFinder(WhereWords words, PracticeBook practice, GroundCells cells, SearchPlanner planner)
{
    /// <summary>Places that stand for all where it may lie, each as likely as the next.</summary>
    private const int Samples = 5;

    /// <summary>Points at which listening is weighed.</summary>
    private const int Points = 3;

    private readonly LocatingPractice book = practice.Locating;
    private readonly LayerMaker maker = new(cells);

    public IReadOnlyList<SearchChoice> Find(SoughtGroup group, LocationBelief belief, IReadOnlyList<IReadOnlyList<double[]?>> covered, Position from)
    {
        var first = planner.Ways.Count == 0 ? null : planner.Ways[0];
        var ahead = new Ahead(group, belief, shares => planner.LossMinutes(planner.Task(shares, covered)));
        var now = first is null ? book.UnfoundMinutes : ahead.Loss(belief.Shares);
        return
        [
            .. new[] { first is null ? null : new SearchChoice("search", "search where it is likeliest", 0, now, null, first.Caution) }
                .Concat(book.Tracing.Where(w => w.Owned && group.Things.Any(t => t.Station is not null || t.Stretches is not null)).Select(w => Trace(w, ahead, from)))
                .Concat(book.Signs.Where(s => s is { Owned: true, Minutes: > 0 }).SelectMany(s => s.Form == SignForm.Perceived ? Listen(s, ahead, from) : [Ask(s, ahead)]))
                .OfType<SearchChoice>()
                .OrderBy(c => c.LossMinutes),
        ];
    }

    private SearchChoice Trace(TracingWay way, Ahead ahead, Position from)
    {
        var metres = ahead.Places(cells).Select(c => cells.Middle(c).DistanceMetresTo(from)).DefaultIfEmpty(0).Average() * practice.Wire.Detour;
        var minutes = way.ReadyMinutes + (metres / way.MetresPerMinute);
        var loss = book.Ends.Sum(end => end.Share * Made(ahead, end.Hit, end.SpreadMetresBy(way))) / book.Ends.Sum(e => e.Share);
        return new SearchChoice(way.Name, way.Say, minutes, minutes + loss, null, way.Caution);
    }

    private SearchChoice Ask(LocatingSign sign, Ahead ahead) => new(sign.Name, sign.Say, sign.Minutes, sign.Minutes + Made(ahead, sign.Hit, sign.SpreadMetres), null, sign.Caution);

    /// <summary>Loss after a sign within a spread of the thing, or of none: then it is anywhere on the ground.</summary>
    private double Made(Ahead ahead, double hit, double spread)
    {
        double After(int cell) => ahead.Loss(Clue.MadeByOne(string.Empty, string.Empty, ahead.All, hit, maker.Near([GroundShape.Point(cells.Middle(cell))], spread)));
        var places = ahead.Places(cells);
        return places.Count == 0 ? ahead.Loss(ahead.Belief.Shares) : (hit * places.Average(After)) + ((1 - hit) * After(cells.Count / 3));
    }

    private IEnumerable<SearchChoice> Listen(LocatingSign sign, Ahead ahead, Position from)
    {
        var best = new PieceFinder(cells, 2 * sign.SpreadMetres).Find(RowMath.Sum(ahead.Belief.Shares), Points).Select(piece => Listen(sign, ahead, cells.Middle(piece.Middle), from)).MinBy(c => c.LossMinutes);
        return best is null ? [] : [best];
    }

    private SearchChoice Listen(LocatingSign sign, Ahead ahead, Position at, Position from)
    {
        var silent = maker.Unperceived([at], sign.Hit, sign.SpreadMetres);
        var clues = new[] { true, false }.Select(heard => ClueFinder.Perceived(string.Empty, ahead.All, sign, heard, silent)).ToList();
        var chance = ahead.Chance(clues[0]);
        var minutes = sign.Minutes + (at.DistanceMetresTo(from) / practice.Walk.MetresPerMinute);
        return new SearchChoice(sign.Name, sign.Say, minutes, minutes + (chance * ahead.Loss(clues[0])) + ((1 - chance) * ahead.Loss(clues[1])), cells.IsGrid ? words.Say(at) : null, sign.Caution);
    }

    /// <summary>What the belief would be after a note, and what a search would then cost.</summary>
    private sealed class Ahead(SoughtGroup group, LocationBelief belief, Func<IReadOnlyList<double[]>, double> loss)
    {
        public LocationBelief Belief => belief;

        public IReadOnlyList<bool> All { get; } = [.. group.Things.Select(_ => true)];

        public double Loss(IReadOnlyList<double[]> shares) => loss(shares);

        public double Loss(Clue clue) => loss(After(clue).Shares);

        /// <summary>Chance of a note beforehand.</summary>
        public double Chance(Clue clue) => clue.Cases.Sum(k => k.Weight * k.Layers.Select((layer, t) => layer is null ? 1 : (belief.None[t] * layer.None) + RowMath.Dot(belief.Shares[t], layer.Cells)).Aggregate(1.0, (a, b) => a * b));

        /// <summary>Cells that stand for where the first of the things may be.</summary>
        public IReadOnlyList<int> Places(GroundCells cells)
        {
            var (share, places, sum) = (belief.Shares[0], new List<int>(), 0.0);
            var total = share.Sum();
            for (var c = 0; c < cells.Count && places.Count < Samples; c++)
            {
                sum += share[c];
                if (sum >= total * (places.Count + 0.5) / Samples && total > 0)
                {
                    places.Add(c);
                }
            }

            return places;
        }

        private LocationBelief After(Clue clue) => LocationBelief.Of([.. belief.Shares.Select((s, t) => Share(s, 1 - belief.None[t]))], belief.None, [clue]);

        private static double[] Share(double[] shares, double there) => there > 0 ? [.. shares.Select(s => s / there)] : shares;
    }
}
