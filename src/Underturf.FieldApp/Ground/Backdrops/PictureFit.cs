using System.Numerics;
using Underturf.FieldLog;

namespace Underturf.FieldApp;

/// <summary>A point of a picture, in pixels from its upper left corner, and where it is on the ground.</summary>
public sealed record ControlPoint(double Across, double Down, double EastMetres, double NorthMetres);

/// <summary>
/// How a picture lies on the ground: turned, at one scale both ways, and moved. With z = across − i·down in pixels and w = east + i·north in metres, w = m·z + t.
/// </summary>
/// <param name="Real">Real part of m, metres a pixel.</param>
/// <param name="Imaginary">Imaginary part of m.</param>
/// <param name="EastMetres">Where the upper left corner lies.</param>
public sealed record PictureFit(double Real, double Imaginary, double EastMetres, double NorthMetres)
{
    private Complex M => new(Real, Imaginary);

    private Complex T => new(EastMetres, NorthMetres);

    /// <summary>North up, its middle at a place.</summary>
    public static PictureFit Upright(int width, int height, Position middle, double metresPerPixel) =>
        new(metresPerPixel, 0, middle.EastMetres - (width * metresPerPixel / 2), middle.NorthMetres + (height * metresPerPixel / 2));

    /// <summary>
    /// The fit with the least squares of distances on the ground: with both sides taken from their means, m = Σ z̄·w / Σ |z|². One point only moves the picture
    /// as it lay; so do points that are all one.
    /// </summary>
    public static PictureFit Of(IReadOnlyList<ControlPoint> points, PictureFit before)
    {
        if (points.Count == 0)
        {
            return before;
        }

        var (z, w) = (points.Select(Pixel).ToList(), points.Select(Ground).ToList());
        var (zMean, wMean) = (Mean(z), Mean(w));
        var spread = z.Sum(one => Square(one - zMean));
        var m = spread > 0 ? z.Zip(w, (a, b) => Complex.Conjugate(a - zMean) * (b - wMean)).Aggregate(Complex.Zero, Complex.Add) / spread : Complex.Zero;
        m = Square(m) > 0 ? m : before.M;
        var t = wMean - (m * zMean);
        return new PictureFit(m.Real, m.Imaginary, t.Real, t.Imaginary);
    }

    public Position At(double across, double down)
    {
        var w = (M * new Complex(across, -down)) + T;
        return new Position(w.Real, w.Imaginary);
    }

    /// <summary>The pixel at a place.</summary>
    public (double Across, double Down) PixelAt(Position at)
    {
        var z = (new Complex(at.EastMetres, at.NorthMetres) - T) / M;
        return (z.Real, -z.Imaginary);
    }

    /// <summary>How far the points lie from where they should, as root mean square; two always fit.</summary>
    public double MissMetres(IReadOnlyList<ControlPoint> points) =>
        points.Count == 0 ? 0 : Math.Sqrt(points.Average(point => Square((M * Pixel(point)) + T - Ground(point))));

    private static Complex Pixel(ControlPoint point) => new(point.Across, -point.Down);

    private static Complex Ground(ControlPoint point) => new(point.EastMetres, point.NorthMetres);

    private static Complex Mean(List<Complex> numbers) => numbers.Aggregate(Complex.Zero, Complex.Add) / numbers.Count;

    private static double Square(Complex number) => (number.Real * number.Real) + (number.Imaginary * number.Imaginary);
}
