namespace Underturf.Quantities;

/// <summary>An absolute temperature.</summary>
public readonly record struct Temperature(double Kelvins) : IQuantity<Temperature>
{
    public static Dimension Dimension => Dimension.Temperature;

    public double Si => Kelvins;

    public static Temperature FromSi(double si) => new(si);
}
