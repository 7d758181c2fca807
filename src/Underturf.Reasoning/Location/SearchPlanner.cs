using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Location;

/// <summary>
/// Plans searches: which ground in which order, in which way and for how long, walking counted, until going on costs more than finding is worth.
/// Each way finds what it can see at its own rate; of what it cannot see, the next slower way finds its share.
/// </summary>
internal sealed class SearchPlanner(PracticeBook practice, GroundCells cells, CarefulGround careful)
{
    private const int MostStops = 24;

    /// <summary>Nobody is surer than this that what is missing lies in the last piece of ground.</summary>
    private const double LeastMissing = 0.05;

    private readonly LocatingPractice book = practice.Locating;

    /// <summary>Ways that are owned, the fastest first.</summary>
    public IReadOnlyList<SearchWay> Ways { get; } = [.. practice.Locating.Searching.Where(w => w.Owned).OrderByDescending(w => w.SquareMetresPerMinute)];

    /// <summary>What is left to be found in each way in each cell, a mean over the things: ground is searched for all of them at once.</summary>
    /// <param name="shares">Of each thing its chance in each cell.</param>
    /// <param name="covered">Of each thing, for each of the ways, how often each cell was covered; nothing where it never was.</param>
    public SearchTask Task(IReadOnlyList<double[]> shares, IReadOnlyList<IReadOnlyList<double[]?>> covered)
    {
        var visible = covered.Select(ways => ways.Select((so, w) => Visible(Ways[w], so)).ToList()).ToList();
        var paces = Ways.Select(careful.Pace).ToList();
        var (task, weights) = (new SearchTask(), new double[Ways.Count]);
        foreach (var cell in Likely(shares))
        {
            Array.Clear(weights);
            foreach (var (t, share) in shares.Index())
            {
                var left = share[cell] / shares.Count;
                for (var w = 0; w < weights.Length; w++)
                {
                    var seen = paces[w]?[cell] == 0 ? 0 : visible[t][w](cell);
                    weights[w] += left * seen;
                    left *= 1 - seen;
                }
            }

            for (var w = 0; w < weights.Length; w++)
            {
                task.Add(cells.Middle(cell), w, weights[w], (paces[w]?[cell] ?? 1) * Ways[w].SquareMetresPerMinute / cells.Area(cell));
            }
        }

        return task;
    }

    /// <summary>Expected minutes of the best search, what is never found counted in, were there no way to walk.</summary>
    public double LossMinutes(SearchTask task) => SearchPlan.Of(task.Weights, task.Rates).Curve.LossMinutes(book.UnfoundMinutes);

    public (IReadOnlyList<SearchStop> Stops, SearchWalk Walk) Walk(SearchTask task, Position from)
    {
        var ground = new SearchGround(task.East, task.North, task.Weights, task.Rates);
        var stops = ground.Stops(book.StopMetres, MostStops, book.UnfoundMinutes);
        return (stops, SearchWalk.Best(SearchErrand.InPlane(stops, from.EastMetres, from.NorthMetres, practice.Walk.MetresPerMinute, book.UnfoundMinutes)));
    }

    /// <summary>Share of what lies in a cell that a way can still find there, after it was covered in vain.</summary>
    private static Func<int, double> Visible(SearchWay way, double[]? covered) => cell =>
    {
        var missed = covered is null ? 1 : Math.Exp(-covered[cell]);
        return way.Sees * missed / (1 - way.Sees + (way.Sees * missed));
    };

    /// <summary>
    /// Cells that some way may be worth searching for: where a minute finds so little that it could not pay even when nearly all else is ruled out, none is.
    /// </summary>
    private IEnumerable<int> Likely(IReadOnlyList<double[]> shares)
    {
        var best = Ways.Max(w => w.SquareMetresPerMinute * w.Sees) * book.UnfoundMinutes / shares.Count;
        var all = RowMath.Sum(shares);
        return Enumerable.Range(0, cells.Count).Where(c => all[c] * best > LeastMissing * cells.Area(c));
    }
}

/// <summary>Pieces of searching to choose from: a cell and a way each.</summary>
internal sealed class SearchTask
{
    private readonly List<double> east = [], north = [], weights = [], rates = [];
    private readonly List<int> ways = [];

    public double[] East => [.. east];

    public double[] North => [.. north];

    public double[] Weights => [.. weights];

    public double[] Rates => [.. rates];

    public int Way(int piece) => ways[piece];

    public Position Place(int piece) => new(east[piece], north[piece]);

    public void Add(Position at, int way, double weight, double ratePerMinute)
    {
        if (weight > 0)
        {
            east.Add(at.EastMetres);
            north.Add(at.NorthMetres);
            weights.Add(weight);
            rates.Add(ratePerMinute);
            ways.Add(way);
        }
    }
}
