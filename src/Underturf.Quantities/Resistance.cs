namespace Underturf.Quantities;

/// <summary>An electrical resistance.</summary>
public readonly record struct Resistance(double Ohms) : IQuantity<Resistance>
{
    public static Dimension Dimension => Dimension.Resistance;

    public double Si => Ohms;

    public static Resistance FromSi(double si) => new(si);
}
