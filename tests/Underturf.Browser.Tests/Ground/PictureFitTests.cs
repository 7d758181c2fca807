using Underturf.FieldApp;
using Underturf.FieldLog;

namespace Underturf.Browser;

/// <summary>How a picture lies by its control points.</summary>
public sealed class PictureFitTests
{
    private static readonly PictureFit flat = PictureFit.Upright(400, 300, new Position(100, 50), 0.5);

    [Fact]
    public void A_new_picture_lies_north_up_around_the_middle()
    {
        Assert.Equal(new Position(0, 125), flat.At(0, 0));
        Assert.Equal(new Position(100, 50), flat.At(200, 150));
        Assert.Equal((200.0, 150.0), flat.PixelAt(new Position(100, 50)));
    }

    [Fact]
    public void One_point_moves_the_picture_and_turns_nothing()
    {
        var moved = PictureFit.Of([new ControlPoint(0, 0, 7, 9)], flat);
        Assert.Equal((new Position(7, 9), 0.5, 0.0), (moved.At(0, 0), moved.Real, moved.Imaginary));
    }

    [Fact]
    public void Two_points_turn_and_scale_it_so_that_both_fit()
    {
        var fit = PictureFit.Of([new ControlPoint(0, 0, 10, 10), new ControlPoint(100, 0, 10, 40)], flat);
        Assert.Equal((0.0, 0.3), (Math.Round(fit.Real, 12), Math.Round(fit.Imaginary, 12)));
        var down = fit.At(0, 100);
        Assert.Equal((40.0, 10.0), (Math.Round(down.EastMetres, 9), Math.Round(down.NorthMetres, 9)));
    }

    [Theory]
    [InlineData(0.01, 3.1, -500, 20)]
    [InlineData(0.3, -1.2, 40, -7)]
    [InlineData(2, 0, 0, 0)]
    public void Points_of_a_picture_that_lies_in_any_way_give_back_that_way_and_one_tapped_wrongly_shows_as_a_miss(double metresPerPixel, double turn, double east, double north)
    {
        var truth = new PictureFit(metresPerPixel * Math.Cos(turn), metresPerPixel * Math.Sin(turn), east, north);
        var points = new (int Across, int Down)[] { (10, 20), (390, 40), (200, 280) }.Select(p => Tapped(truth, p.Across, p.Down)).ToList();
        var fit = PictureFit.Of(points, flat);
        Assert.Equal((truth.Real, truth.Imaginary, 0.0), (fit.Real, fit.Imaginary, fit.MissMetres(points)), new Near());
        points[2] = points[2] with { EastMetres = points[2].EastMetres + (300 * metresPerPixel) };
        Assert.True(PictureFit.Of(points, flat).MissMetres(points) > 50 * metresPerPixel);
    }

    [Fact]
    public void Two_taps_on_one_spot_keep_the_turn_that_it_had()
    {
        var fit = PictureFit.Of([new ControlPoint(5, 5, 1, 1), new ControlPoint(5, 5, 3, 3)], flat);
        Assert.Equal((0.5, 0.0), (fit.Real, fit.Imaginary));
        Assert.Equal(new Position(2, 2), fit.At(5, 5));
    }

    private static ControlPoint Tapped(PictureFit truth, double across, double down)
    {
        var at = truth.At(across, down);
        return new ControlPoint(across, down, at.EastMetres, at.NorthMetres);
    }

    private sealed class Near : IEqualityComparer<(double, double, double)>
    {
        public bool Equals((double, double, double) x, (double, double, double) y) =>
            Math.Abs(x.Item1 - y.Item1) + Math.Abs(x.Item2 - y.Item2) + Math.Abs(x.Item3 - y.Item3) < 1e-9;

        public int GetHashCode((double, double, double) obj) => 0;
    }
}
