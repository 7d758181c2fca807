namespace Underturf.Quantities;

/// <summary>A frequency.</summary>
public readonly record struct Frequency(double Hertz) : IQuantity<Frequency>
{
    public static Dimension Dimension => Dimension.Frequency;

    public double Si => Hertz;

    public static Frequency FromSi(double si) => new(si);
}
