namespace Underturf.Quantities;

/// <summary>A volume, of water as a rule.</summary>
public readonly record struct Volume(double CubicMetres) : IQuantity<Volume>
{
    public static Dimension Dimension => Dimension.Volume;

    public double Si => CubicMetres;

    public static Volume FromSi(double si) => new(si);
}
