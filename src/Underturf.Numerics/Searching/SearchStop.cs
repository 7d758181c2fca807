namespace Underturf.Numerics;

/// <summary>Cells that are searched from one place, as one errand.</summary>
/// <param name="XMetres">Middle of the cells by weight.</param>
/// <param name="Cells">Their numbers in the ground they were taken from.</param>
/// <param name="Plan">How minutes there are shared out over them, in the order of <paramref name="Cells"/>.</param>
public sealed record SearchStop(double XMetres, double YMetres, IReadOnlyList<int> Cells, SearchPlan Plan)
{
    public double DistanceMetres(double xMetres, double yMetres) => Math.Sqrt(((XMetres - xMetres) * (XMetres - xMetres)) + ((YMetres - yMetres) * (YMetres - yMetres)));
}
