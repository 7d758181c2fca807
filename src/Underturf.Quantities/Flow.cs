namespace Underturf.Quantities;

/// <summary>A volume flow.</summary>
public readonly record struct Flow(double CubicMetresPerSecond) : IQuantity<Flow>
{
    public static Dimension Dimension => Dimension.Flow;

    public double Si => CubicMetresPerSecond;

    public static Flow FromSi(double si) => new(si);
}
