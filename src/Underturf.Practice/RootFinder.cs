using Underturf.FieldLog;
using Underturf.Property.Practice;

namespace Underturf.Property;

/// <summary>Ground that trees need: a radius round each trunk by the local rule.</summary>
public static class RootFinder
{
    /// <summary>A thicker trunk than this is not expected where nobody noted one.</summary>
    private const double UsualTrunkMetres = 1;

    /// <summary>Protected ground of every tree of which the trunk is noted.</summary>
    public static IReadOnlyList<TreeGround> Of(PropertyView view, RootsPractice roots) =>
    [
        .. Trees(view, roots).Where(t => t.Value.Trunk is not null)
            .Select(t => new TreeGround(t.Key, view.Name(t.Key), GroundShape.Of(t.Value), t.Value.Trunk!.Value.Metres, Radius(t.Value.Trunk.Value.Metres, roots))),
    ];

    /// <summary>r = max (f d, r0), d the diameter of the trunk at breast height.</summary>
    public static double Radius(double trunkMetres, RootsPractice roots) => Math.Max(roots.LeastMetres, roots.TrunkFactor * trunkMetres);

    /// <summary>The nearest tree without a trunk whose ground may reach a place; nothing where none may.</summary>
    public static string? Unmeasured(PropertyView view, RootsPractice roots, Position at) => Trees(view, roots)
        .Where(t => t.Value.Trunk is null)
        .Select(t => (t.Key, Metres: GroundShape.Of(t.Value).DistanceMetresTo(at)))
        .Where(t => t.Metres <= Radius(UsualTrunkMetres, roots))
        .OrderBy(t => t.Metres).Select(t => view.Name(t.Key)).FirstOrDefault();

    private static IEnumerable<KeyValuePair<string, GroundFact>> Trees(PropertyView view, RootsPractice roots) => view.Ground
        .Where(g => g.Value is { What: "tree", Shape.Count: > 0 } && !roots.NotFor.Any(w => $"{g.Value.Label} {g.Value.Note}".Contains(w, StringComparison.OrdinalIgnoreCase)));
}

/// <summary>The protected ground of one tree.</summary>
public sealed record TreeGround(string Id, string Name, GroundShape Trunk, double TrunkMetres, double RadiusMetres);
