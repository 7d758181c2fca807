namespace Underturf.Quantities;

/// <summary>What a transformer is rated for.</summary>
public readonly record struct ApparentPower(double VoltAmperes) : IQuantity<ApparentPower>
{
    public static Dimension Dimension => Dimension.ApparentPower;

    public double Si => VoltAmperes;

    public static ApparentPower FromSi(double si) => new(si);
}
