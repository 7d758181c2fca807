namespace Underturf.Quantities;

/// <summary>An area of ground.</summary>
public readonly record struct Area(double SquareMetres) : IQuantity<Area>
{
    public static Dimension Dimension => Dimension.Area;

    public double Si => SquareMetres;

    public static Area FromSi(double si) => new(si);
}
