using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Location;

/// <summary>Ground near utility marks and in the protected ground of trees: ways of searching are slower there, or not used.</summary>
internal sealed class CarefulGround
{
    private readonly IReadOnlyList<Zone> zones;
    private readonly GroundCells cells;
    private readonly string reach;
    private readonly Dictionary<SearchWay, double[]?> paces = [];

    public CarefulGround(PropertyView view, PracticeBook practice, GroundCells cells, bool usUnits)
    {
        this.cells = cells;
        reach = Say.Small(practice.Day.HandDigMetres, usUnits);
        zones = !cells.IsGrid ? [] :
        [
            .. view.Ground.Where(g => g.Value is { What: GroundShape.UtilityMark, Shape.Count: > 0 }).Select(g => new Zone(true, view.Name(g.Key), GroundShape.Of(g.Value), practice.Day.HandDigMetres)),
            .. RootFinder.Of(view, practice.Repairing.Roots).Select(t => new Zone(false, t.Name, t.Trunk, t.RadiusMetres)),
        ];
    }

    /// <summary>For each cell the share of its speed that a way has there, zero where it is not used; nothing where no cell is otherwise than the next.</summary>
    public double[]? Pace(SearchWay way)
    {
        if (!paces.TryGetValue(way, out var pace))
        {
            paces[way] = pace = Paced(way);
        }

        return pace;
    }

    private double[]? Paced(SearchWay way)
    {
        if (zones.All(z => z.Pace(way) == 1))
        {
            return null;
        }

        var pace = new double[cells.Count];
        Array.Fill(pace, 1);
        foreach (var zone in zones)
        {
            foreach (var cell in cells.Around(zone.Shape.Points, zone.Metres).Where(c => zone.Holds(cells.Middle(c))))
            {
                pace[cell] = Math.Min(pace[cell], zone.Pace(way));
            }
        }

        return pace;
    }

    /// <summary>What to mind where some points are searched in a way, beyond what holds everywhere.</summary>
    public string Caution(SearchWay way, IReadOnlyList<Position> searched) => string.Join(' ', zones
        .Where(z => z.Pace(way) < 1 && searched.Any(at => z.Shape.DistanceMetresTo(at) <= z.Metres + cells.SideMetres))
        .Select(z => z.IsMark ? $"{(way.NotNearMarks ? "Not" : "By hand only")} within {reach} of {z.Name}." : $"Among the roots of {z.Name}: slowly, cut none.")
        .Distinct());

    /// <summary>Ground within a distance of a mark or trunk.</summary>
    private sealed record Zone(bool IsMark, string Name, GroundShape Shape, double Metres)
    {
        public bool Holds(Position at) => Shape.DistanceMetresTo(at) <= Metres;

        public double Pace(SearchWay way) => IsMark && way.NotNearMarks ? 0 : way.Careful;
    }
}
