using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Location;

/// <summary>Lays cells over the property: a grid where there is a plan, the named spots where there is none.</summary>
internal sealed class GroundFinder(PropertyHistory history, PropertyView view, LocatingPractice book, LocationMemory memory)
{
    /// <summary>More take longer than a technician waits; larger properties get larger cells.</summary>
    private const int MostCells = 160_000;

    /// <summary>Lines of spots lie so far apart that nothing on one is near anything on another.</summary>
    private const double ApartMetres = 20_000;

    /// <summary>Places of the spots, by id: along its line each, lines far apart.</summary>
    public IReadOnlyDictionary<string, Position> SpotPlaces { get; } = Lay(view);

    private bool HasPlan => view.Ground.Count > 0 || view.Spots.Count == 0;

    /// <summary>Nothing where neither a position nor a spot is noted.</summary>
    public GroundCells? Find()
    {
        if (!HasPlan)
        {
            var spots = SpotPlaces.Keys.Order(StringComparer.Ordinal).ToList();
            return GroundCells.Of(spots, [.. spots.Select(s => SpotPlaces[s])], [.. spots.Select(Area)]);
        }

        var near = Nearness.Of(Positions());
        var points = Positions().Where(near.Holds).ToList();
        if (points.Count == 0)
        {
            return null;
        }

        var (west, east) = (points.Min(p => p.EastMetres) - book.MarginMetres, points.Max(p => p.EastMetres) + book.MarginMetres);
        var (south, north) = (points.Min(p => p.NorthMetres) - book.MarginMetres, points.Max(p => p.NorthMetres) + book.MarginMetres);
        var side = Math.Max(book.CellMetres, Math.Sqrt((east - west) * (north - south) / MostCells));
        var (southWest, northEast) = (new Position(west, south), new Position(east, north));
        return memory.Keep(() => GroundCells.Grid(southWest, northEast, side), southWest, northEast, side);
    }

    private double Area(string spot) => view.Spots[spot].Across is { Metres: > 0 } across ? across.Metres * across.Metres : book.StopMetres * book.StopMetres;

    private IEnumerable<Position> Positions() =>
        view.Ground.Values.SelectMany(g => g.Shape)
            .Concat(view.Controllers.Values.Select(c => c.Position).OfType<Position>())
            .Concat(view.Boxes.Values.Select(b => b.Position).OfType<Position>())
            .Concat(view.Valves.Values.Select(v => v.Position).OfType<Position>())
            .Concat(view.Cables.Values.SelectMany(c => c.Route))
            .Concat(history.Facts.Traces.SelectMany(t => t.Fact.Route))
            .Concat(history.Facts.Signs.SelectMany(s => s.Fact.Where));

    private static Dictionary<string, Position> Lay(PropertyView view)
    {
        var lines = view.Spots.Select(s => s.Value.Line ?? $"/{s.Key}").Distinct().Order(StringComparer.Ordinal).ToList();
        return view.Spots.ToDictionary(s => s.Key, s => new Position(s.Value.Along?.Metres ?? 0, ApartMetres * lines.IndexOf(s.Value.Line ?? $"/{s.Key}")), StringComparer.Ordinal);
    }
}
