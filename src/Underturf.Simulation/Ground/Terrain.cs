using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Quantities;

namespace Underturf.Simulation;

/// <summary>The surface of a made-up property: buildings with the controllers at their corners, drive and paths, beds, lawns, trees.</summary>
internal sealed class Terrain
{
    /// <summary>Roots that are in the way reach so many diameters of the trunk.</summary>
    private const double RootReach = 14;

    private readonly SeededGenerator chance;
    private readonly List<Patch> patches = [];
    private readonly List<(Position At, double TrunkMetres)> trees = [];

    /// <param name="controllers">One or two; each has its building.</param>
    /// <param name="wideMetres">The property is about that wide and deep.</param>
    public Terrain(SeededGenerator chance, int controllers, double wideMetres, int boxes)
    {
        this.chance = chance;
        WideMetres = wideMetres;
        Controllers = [.. new[] { new Position(0, 0), new Position(Math.Round(0.8 * wideMetres), Math.Round(0.8 * wideMetres)) }.Take(controllers)];
        foreach (var at in Controllers)
        {
            var (wide, deep) = (chance.Between(8, 25), chance.Between(6, 15));
            patches.Add(new Patch("building", at.EastMetres - wide, at.NorthMetres - deep, wide, deep));
        }

        Pave(2 + (boxes / 12));
        Plant(3 + (boxes / 3));
        patches.AddRange(Enumerable.Range(0, 2 + (boxes / 5)).Select(_ => new Patch("lawn", Somewhere(), Somewhere(), chance.Between(8, 30), chance.Between(8, 30))));
        trees.AddRange(Enumerable.Range(0, 2 + (boxes / 2)).Select(_ => (Nearby(chance.Pick(patches).Inside(chance), 3), chance.Between(0.1, 0.9))));
    }

    public double WideMetres { get; }

    public IReadOnlyList<Position> Controllers { get; }

    public IEnumerable<Patch> Of(string what) => patches.Where(p => p.What == what);

    public IEnumerable<GroundFact> Facts() => patches
        .Select((p, i) => new GroundFact { Id = $"g{i + 1}", What = p.What, Shape = p.Corners })
        .Concat(trees.Select((t, i) => new GroundFact { Id = $"t{i + 1}", What = "tree", Shape = [t.At], Trunk = new Length(Math.Round(t.TrunkMetres, 2)) }));

    public bool IsAmongRoots(Position at) => trees.Any(t => t.At.DistanceMetresTo(at) <= RootReach * t.TrunkMetres);

    /// <summary>A place a little beside another.</summary>
    public Position Nearby(Position at, double spreadMetres) => new(
        Math.Round(at.EastMetres + (spreadMetres * chance.HeavyTailed() / 2), 1),
        Math.Round(at.NorthMetres + (spreadMetres * chance.HeavyTailed() / 2), 1));

    private double Somewhere() => chance.NextDouble() * WideMetres;

    /// <summary>A drive from the first building, and paths across.</summary>
    private void Pave(int paths)
    {
        patches.Add(new Patch("hardscape", 1, -4, WideMetres, 4));
        for (var p = 0; p < paths; p++)
        {
            var (length, across) = (chance.Between(0.3, 1) * WideMetres, chance.Between(1.2, 2.5));
            var (east, north) = (chance.NextDouble() * (WideMetres - length), Somewhere());
            patches.Add(p % 2 == 0 ? new Patch("hardscape", east, north, length, across) : new Patch("hardscape", north, east, across, length));
        }
    }

    /// <summary>Beds lie along buildings and paths.</summary>
    private void Plant(int beds)
    {
        var beside = Of("building").Concat(Of("hardscape")).ToList();
        for (var b = 0; b < beds; b++)
        {
            var at = chance.Pick(beside).OnEdge(chance);
            patches.Add(new Patch("bed", at.EastMetres, at.NorthMetres, chance.Between(2, 10), chance.Between(1.5, 4)));
        }
    }
}
