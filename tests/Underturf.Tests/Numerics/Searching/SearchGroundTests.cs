using Underturf.Numerics;

namespace Underturf.Tests.Numerics;

/// <summary>Cells of a ground gathered to stops. Numbers made up.</summary>
public sealed class SearchGroundTests
{
    private const int Side = 100;

    [Fact]
    public void Each_hump_of_the_ground_becomes_a_stop_at_its_middle()
    {
        var stops = Ground((20, 30, 2), (70, 80, 2)).Stops(radiusMetres: 6, mostStops: 10, worthMinutes: 500);
        Assert.Contains(stops, stop => stop.DistanceMetres(20, 30) < 1);
        Assert.Contains(stops, stop => stop.DistanceMetres(70, 80) < 1);
        Assert.InRange(stops.Count, 2, 6);
    }

    [Fact]
    public void No_cell_is_in_two_stops_and_nearly_all_that_is_worth_searching_is_in_one()
    {
        var ground = Ground((20, 30, 3), (70, 80, 8), (50, 20, 5));
        var stops = ground.Stops(5, 12, 500);
        int[] cells = [.. stops.SelectMany(stop => stop.Cells)];
        Assert.Equal(cells.Length, cells.Distinct().Count());
        Assert.InRange(stops.Count, 3, 12);
        var found = ground.Plan.Curve.Found(ground.Plan.Curve.StopMinutes(500));
        Assert.True(stops.Sum(stop => stop.Plan.Curve.Weight) > 0.9 * found);
    }

    [Fact]
    public void Where_stops_are_few_they_reach_further()
    {
        var ground = Ground((20, 30, 12), (70, 80, 12));
        Assert.True(ground.Stops(3, 60, 5000).Count > 8);
        Assert.InRange(ground.Stops(3, 8, 5000).Count, 2, 8);
    }

    [Fact]
    public void A_ground_not_worth_searching_has_no_stops() => Assert.Empty(Ground((20, 30, 12)).Stops(5, 12, worthMinutes: 0.5));

    [Fact]
    public void Walking_from_stop_to_stop_comes_near_to_a_search_without_ways_where_ways_are_short()
    {
        var ground = Ground((20, 30, 2), (70, 80, 2), (50, 20, 3));
        var errand = SearchErrand.InPlane(ground.Stops(5, 20, 2000), 0, 0, metresPerMinute: 60, worthMinutes: 2000, setUpMinutes: 1);
        var (walk, stop) = (SearchWalk.Best(errand), ground.Plan.Curve.StopMinutes(2000));
        var without = stop - ground.Plan.Curve.SparedMinutes(stop) + (2000 * (1 - ground.Plan.Curve.Found(stop)));
        Assert.InRange(walk.LossMinutes / without, 1, 1.1);
    }

    private static SearchGround Ground(params (double X, double Y, double Spread)[] humps)
    {
        var (x, y, weights) = (new double[Side * Side], new double[Side * Side], new double[Side * Side]);
        for (var k = 0; k < weights.Length; k++)
        {
            (x[k], y[k]) = (k % Side, k / Side);
            weights[k] = humps.Sum(h => Math.Exp(-(((x[k] - h.X) * (x[k] - h.X)) + ((y[k] - h.Y) * (y[k] - h.Y))) / (2 * h.Spread * h.Spread)) / (h.Spread * h.Spread));
        }

        var total = weights.Sum();
        return new SearchGround(x, y, [.. weights.Select(w => 0.9 * w / total)], [.. weights.Select(_ => 2.0)]);
    }
}
