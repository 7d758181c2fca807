using CsCheck;
using Underturf.Numerics;

namespace Underturf.Tests.Numerics;

public sealed class ContourRingsTests
{
    [Fact]
    public void One_value_above_gives_a_diamond_round_it()
    {
        var ring = Assert.Single(ContourRings.Of([0, 0, 0, 0, 4, 0, 0, 0, 0], 3, 1));
        Assert.Equal([(0.25, 1), (1, 0.25), (1, 1.75), (1.75, 1)], ring.Order());
    }

    [Fact]
    public void A_value_at_the_border_is_closed_outside_the_grid() => Assert.Equal(4, Assert.Single(ContourRings.Of([2], 1, 1)).Count);

    [Fact]
    public void A_hole_runs_the_other_way_round()
    {
        double[] values = [.. Enumerable.Repeat(2.0, 25)];
        values[12] = 0;
        var areas = ContourRings.Of(values, 5, 1).Select(Area).Order().ToList();
        Assert.Equal(2, areas.Count);
        Assert.Equal(-0.5, areas[0], 12);
        Assert.True(areas[1] > 16);
    }

    [Fact]
    public void Whatever_the_values_every_ring_closes_and_lies_at_the_level() => Gen.Double[0, 2].Array[42].Sample(values =>
    {
        foreach (var ring in ContourRings.Of(values, 7, 1))
        {
            Assert.True(ring.Count >= 4);
            Assert.All(ring.Zip(ring.Skip(1).Append(ring[0])), pair => Assert.InRange(Math.Abs(pair.First.X - pair.Second.X) + Math.Abs(pair.First.Y - pair.Second.Y), 0, 2));
            Assert.All(ring, p => Assert.Equal(1, Between(values, p), 9));
        }
    }, iter: 500);

    private static double Between(double[] values, (double X, double Y) at)
    {
        double Value(int x, int y) => x < 0 || y < 0 || x >= 7 || y >= 6 ? 0 : values[(y * 7) + x];
        var (x, y) = ((int)Math.Floor(at.X), (int)Math.Floor(at.Y));
        return at.Y == y ? Value(x, y) + ((at.X - x) * (Value(x + 1, y) - Value(x, y))) : Value(x, y) + ((at.Y - y) * (Value(x, y + 1) - Value(x, y)));
    }

    private static double Area(IReadOnlyList<(double X, double Y)> ring) =>
        ring.Select((p, i) => (p.X * ring[(i + 1) % ring.Count].Y) - (ring[(i + 1) % ring.Count].X * p.Y)).Sum() / 2;
}
