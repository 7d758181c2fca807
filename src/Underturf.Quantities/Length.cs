namespace Underturf.Quantities;

/// <summary>A length or distance.</summary>
public readonly record struct Length(double Metres) : IQuantity<Length>
{
    public static Dimension Dimension => Dimension.Length;

    public double Si => Metres;

    public static Length FromSi(double si) => new(si);
}
