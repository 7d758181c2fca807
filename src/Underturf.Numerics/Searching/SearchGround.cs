namespace Underturf.Numerics;

/// <summary>Cells in the plane that are to be searched, and the stops they are searched from.</summary>
public sealed class SearchGround
{
    /// <summary>Of the weight worth searching: so much may lie beside the stops before they are made larger.</summary>
    private const double MostLeftShare = 0.05;

    /// <summary>With travel a little more is searched at a stop than without; cells with less than this of the rate at which one stops are left out.</summary>
    private const double LeastRateShare = 0.5;

    private const double Growth = 1.4;

    private readonly double[] xMetres;
    private readonly double[] yMetres;
    private readonly double[] weights;
    private readonly double[] ratesPerMinute;

    public SearchGround(ReadOnlySpan<double> xMetres, ReadOnlySpan<double> yMetres, ReadOnlySpan<double> weights, ReadOnlySpan<double> ratesPerMinute)
    {
        (this.xMetres, this.yMetres, this.weights, this.ratesPerMinute) = (xMetres.ToArray(), yMetres.ToArray(), weights.ToArray(), ratesPerMinute.ToArray());
        if (xMetres.Length != yMetres.Length || xMetres.Length != weights.Length)
        {
            throw new ArgumentException("Each cell needs a place, a weight and a rate.", nameof(weights));
        }

        Plan = SearchPlan.Of(weights, ratesPerMinute);
    }

    /// <summary>The whole ground searched without any way.</summary>
    public SearchPlan Plan { get; }

    /// <summary>
    /// Gathers the cells that are worth searching round the best of them: the best cell not yet near a stop becomes one, until nearly all the weight is near; then each cell belongs
    /// to the nearest. Where that takes too many stops, they are made larger.
    /// </summary>
    /// <param name="radiusMetres">What is searched from one place, if the stops are enough.</param>
    /// <param name="worthMinutes">What finding it is worth; cells not worth a search belong to no stop.</param>
    public IReadOnlyList<SearchStop> Stops(double radiusMetres, int mostStops, double worthMinutes)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(radiusMetres);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(mostStops);
        var cells = Worthwhile(worthMinutes);
        var leaders = new StopLeaders(xMetres, yMetres, weights, cells);
        var radius = radiusMetres;
        while (!leaders.Cover(radius, mostStops, MostLeftShare))
        {
            radius *= Growth;
        }

        return [.. leaders.Groups(2 * radius).Where(group => group.Count > 0).Select(Stop)];
    }

    /// <summary>The best cell first.</summary>
    private ReadOnlySpan<int> Worthwhile(double worthMinutes)
    {
        var stop = Plan.Curve.StopMinutes(worthMinutes);
        var least = LeastRateShare * Plan.Curve.RatePerMinute(stop);
        var order = Plan.Order;
        var count = 0;
        while (stop > 0 && count < order.Length && weights[order[count]] * ratesPerMinute[order[count]] >= least)
        {
            count++;
        }

        return order[..count];
    }

    private SearchStop Stop(List<int> cells)
    {
        var (x, y, weight) = (0.0, 0.0, 0.0);
        foreach (var cell in cells)
        {
            x += weights[cell] * xMetres[cell];
            y += weights[cell] * yMetres[cell];
            weight += weights[cell];
        }

        double[] here = [.. cells.Select(cell => weights[cell])];
        return new SearchStop(x / weight, y / weight, cells, SearchPlan.Of(here, [.. cells.Select(cell => ratesPerMinute[cell])]));
    }
}
