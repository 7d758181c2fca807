namespace Underturf.Quantities;

/// <summary>A gauge pressure.</summary>
public readonly record struct Pressure(double Pascals) : IQuantity<Pressure>
{
    public static Dimension Dimension => Dimension.Pressure;

    public double Si => Pascals;

    public static Pressure FromSi(double si) => new(si);
}
