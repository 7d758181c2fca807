using Underturf.FieldLog;
using Underturf.Numerics;

namespace Underturf.Simulation;

/// <summary>
/// Where boxes lie: within a few feet of hardscape or a building corner, in beds rather than open lawn, now and then anywhere. The shares
/// are drawn for each property about those of common practice, so that no search can know them.
/// </summary>
internal sealed class BoxPlacement
{
    private const double FewFeetMetres = 0.8;

    private readonly Terrain terrain;
    private readonly SeededGenerator chance;
    private readonly (Func<Position> Draw, double Weight)[] habits;

    public BoxPlacement(Terrain terrain, SeededGenerator chance)
    {
        this.terrain = terrain;
        this.chance = chance;
        habits =
        [
            (() => terrain.Nearby(Patch("hardscape").OnEdge(chance), FewFeetMetres), Share(0.35)),
            (() => terrain.Nearby(chance.Pick(Patch("building").Corners), FewFeetMetres), Share(0.08)),
            (() => Patch("bed").Inside(chance), Share(0.3)),
            (() => Patch("lawn").Inside(chance), Share(0.15)),
            (() => new Position(Math.Round(chance.NextDouble() * terrain.WideMetres, 1), Math.Round(chance.NextDouble() * terrain.WideMetres, 1)), Share(0.12)),
        ];
    }

    /// <summary>So many boxes, no two at one point.</summary>
    public IReadOnlyList<Position> Draw(int count)
    {
        var places = new List<Position>();
        while (places.Count < count)
        {
            var place = chance.PickWeighted(habits)();
            if (places.Concat(terrain.Controllers).All(p => p.DistanceMetresTo(place) > 1))
            {
                places.Add(place);
            }
        }

        return places;
    }

    private double Share(double usual) => usual * Math.Exp(0.6 * chance.NextNormal());

    private Patch Patch(string what) => chance.Pick([.. terrain.Of(what)]);
}
