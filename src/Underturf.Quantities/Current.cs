namespace Underturf.Quantities;

/// <summary>A current, rms where it alternates.</summary>
public readonly record struct Current(double Amperes) : IQuantity<Current>
{
    public static Dimension Dimension => Dimension.Current;

    public double Si => Amperes;

    public static Current FromSi(double si) => new(si);
}
