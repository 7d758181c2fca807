using Underturf.FieldLog;
using Underturf.Numerics;

namespace Underturf.Simulation;

/// <summary>A rectangle of ground.</summary>
/// <param name="What">hardscape, bed, lawn or building.</param>
internal readonly record struct Patch(string What, double EastMetres, double NorthMetres, double WideMetres, double DeepMetres)
{
    public IReadOnlyList<Position> Corners =>
    [
        At(0, 0), At(1, 0), At(1, 1), At(0, 1),
    ];

    public Position Inside(SeededGenerator chance) => At(chance.NextDouble(), chance.NextDouble());

    /// <summary>Somewhere along its edge, by length.</summary>
    public Position OnEdge(SeededGenerator chance)
    {
        var (along, share) = (chance.NextDouble() * (WideMetres + DeepMetres), chance.NextInt(2));
        return along < WideMetres ? At(along / WideMetres, share) : At(share, (along - WideMetres) / DeepMetres);
    }

    private Position At(double east, double north) =>
        new(Math.Round(EastMetres + (east * WideMetres), 1), Math.Round(NorthMetres + (north * DeepMetres), 1));
}
