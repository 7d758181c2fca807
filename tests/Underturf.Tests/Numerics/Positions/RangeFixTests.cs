using Underturf.Numerics;

namespace Underturf.Tests.Numerics;

/// <summary>Places from distances. Numbers made up; expected ones by right triangles and by simulation.</summary>
public sealed class RangeFixTests(ITestOutputHelper output)
{
    [Fact]
    public void Two_distances_of_a_right_triangle_leave_the_place_and_its_mirror()
    {
        var fixes = RangeFix.Of([new RangeTo(0, 0, 3, 0.01), new RangeTo(5, 0, 4, 0.01)]);
        Assert.Equal(2, fixes.Count);
        Assert.All(fixes, fix => Assert.Equal((1.8, 2.4, 0.5), (Math.Round(fix.XMetres, 9), Math.Round(Math.Abs(fix.YMetres), 9), Math.Round(fix.Share, 9))));
        Assert.Equal(0, fixes[0].YMetres + fixes[1].YMetres, 1e-9);

        // Rays cross at a right angle: the spread is that of the distances, the same every way.
        Assert.All(fixes, fix => Assert.Equal((0.01, 0.01), (Math.Round(Math.Sqrt(fix.Spread.Xx), 9), Math.Round(Math.Sqrt(fix.Spread.Yy), 9))));
    }

    [Fact]
    public void What_speaks_for_one_side_decides_and_what_rules_out_both_is_not_believed()
    {
        RangeTo[] ranges = [new(0, 0, 3, 0.01), new(5, 0, 4, 0.01)];
        Assert.Equal(1, RangeFix.Of(ranges, (_, y) => y > 0 ? 1 : 0)[0].Share);
        Assert.Equal(0.9, RangeFix.Of(ranges, (_, y) => y > 0 ? 9 : 1)[0].Share, 1e-9);
        Assert.Equal(0.5, RangeFix.Of(ranges, (_, _) => 0)[0].Share, 1e-9);
    }

    [Fact]
    public void Exact_distances_give_the_exact_place()
    {
        for (var seed = 1UL; seed <= 200; seed++)
        {
            var (x, y, ranges) = Draw(seed, 3 + (int)(seed % 4), noise: 0);
            var best = RangeFix.Of(ranges)[0];
            Assert.Equal(x, best.XMetres, 1e-6);
            Assert.Equal(y, best.YMetres, 1e-6);
            Assert.Equal(0, best.Misfit, 1e-9);
        }
    }

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(5)]
    public void Ellipses_of_95_in_100_hold_the_truth_95_times_in_100(int count)
    {
        const int Cases = 2000;
        var held = 0;
        for (var seed = 1UL; seed <= Cases; seed++)
        {
            var (x, y, ranges) = Draw(seed, count, noise: 1);
            var fix = RangeFix.Of(ranges).MinBy(f => ((f.XMetres - x) * (f.XMetres - x)) + ((f.YMetres - y) * (f.YMetres - y)))!;
            held += Holds(fix, x, y) ? 1 : 0;
        }

        output.WriteLine($"{count} distances: {100.0 * held / Cases:F1} %");
        Assert.InRange(100.0 * held / Cases, 93, 97);
    }

    [Fact]
    public void A_place_on_the_line_of_its_marks_is_one_place_drawn_out_across_the_line()
    {
        var held = 0;
        var random = new SeededGenerator(3);
        for (var k = 0; k < 500; k++)
        {
            RangeTo[] ranges = [new(-10, 0, 10 + (0.05 * random.NextNormal()), 0.05), new(12, 0, 12 + (0.05 * random.NextNormal()), 0.05)];
            var fixes = RangeFix.Of(ranges);
            Assert.Single(fixes);
            var ellipse = fixes[0].Spread.Ellipse(0.95);
            Assert.InRange(ellipse.LongMetres, 0.5, 4);
            Assert.InRange(ellipse.ShortMetres, 0.05, 0.3);
            Assert.Equal(1, Math.Abs(Math.Sin(ellipse.TurnRadians)), 0.05);
            held += Holds(fixes[0], 0, 0) ? 1 : 0;
        }

        Assert.InRange(held / 500.0, 0.93, 1);
    }

    [Fact]
    public void Circles_that_do_not_meet_give_the_place_between_them_and_say_how_badly_it_fits()
    {
        var fix = RangeFix.Of([new RangeTo(0, 0, 4, 0.1), new RangeTo(10, 0, 5, 0.1)]).Single();
        // The mean of a crescent lies a little inside its bow.
        Assert.Equal(4.5, fix.XMetres, 0.1);
        Assert.Equal(0, fix.YMetres, 1e-6);
        Assert.Equal(50, fix.Misfit, 0.01);
    }

    [Theory]
    [InlineData(0.05, 0.05)]
    [InlineData(0.05, 0.4)]
    public void Circles_that_miss_each_other_by_far_still_give_a_place_with_a_spread(double first, double second)
    {
        var fix = RangeFix.Of([new RangeTo(0, 0, 4, first), new RangeTo(120, 0, 5, second)]).Single();
        Assert.InRange(fix.XMetres, 4, 115);
        Assert.InRange(fix.Spread.Ellipse(0.95).LongMetres, 0.01, 100);
    }

    [Fact]
    public void An_ellipse_has_its_axes_where_the_spread_is_largest_and_least()
    {
        var ellipse = new PlaneSpread(4, 0, 1).Ellipse(0.95);
        Assert.Equal((4.895, 2.448, 0), (Math.Round(ellipse.LongMetres, 3), Math.Round(ellipse.ShortMetres, 3), ellipse.TurnRadians));
        Assert.Equal(Math.PI / 4, new PlaneSpread(2, 1, 2).Ellipse(0.5).TurnRadians, 1e-12);
        Assert.Equal((0, 2.448), (Math.Round(ellipse.Edge(Math.PI / 2).XMetres, 9), Math.Round(ellipse.Edge(Math.PI / 2).YMetres, 3)));
    }

    [Fact]
    public void One_distance_is_refused() => Assert.Throws<ArgumentException>(() => RangeFix.Of([new RangeTo(0, 0, 1, 1)]));

    private static bool Holds(RangeFix fix, double x, double y)
    {
        var (dx, dy, spread) = (x - fix.XMetres, y - fix.YMetres, fix.Spread);
        return ((dx * dx * spread.Yy) - (2 * dx * dy * spread.Xy) + (dy * dy * spread.Xx)) / spread.Determinant <= -2 * Math.Log(0.05);
    }

    /// <summary>Marks anywhere within thirty metres, spreads of two to twenty centimetres.</summary>
    private static (double X, double Y, RangeTo[] Ranges) Draw(ulong seed, int count, double noise)
    {
        var random = new SeededGenerator(seed).Fork("ranges");
        var (x, y) = (60 * random.NextDouble(), 60 * random.NextDouble());
        return (x, y, [.. Enumerable.Range(0, count).Select(_ =>
        {
            var (mx, my, spread) = (x + (60 * (random.NextDouble() - 0.5)), y + (60 * (random.NextDouble() - 0.5)), 0.02 + (0.18 * random.NextDouble()));
            return new RangeTo(mx, my, Math.Abs(new RangeTo(mx, my, 0, 1).Seen(x, y).Metres + (noise * spread * random.NextNormal())), spread);
        })]);
    }
}
