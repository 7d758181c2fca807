using Underturf.FieldLog;

namespace Underturf.Papers;

/// <summary>From metres on the property to the drawing's own units, one scale both ways, north up.</summary>
internal sealed record PlanFrame(double UnitsPerMetre, double WestMetres, double NorthMetres, double Left, double Top, double Width, double Height)
{
    public const double SheetWidth = 1440, MapLeft = 40, MapTop = 112, MapWidth = 1040;

    private const double LeastHeight = 560, MostHeight = 1100, LeastMetres = 20, Border = 70;

    public static PlanFrame Of(IEnumerable<Position> positions)
    {
        var all = positions.DefaultIfEmpty().ToList();
        var (west, east) = (all.Min(p => p.EastMetres), all.Max(p => p.EastMetres));
        var (south, north) = (all.Min(p => p.NorthMetres), all.Max(p => p.NorthMetres));
        var (wide, high) = (Math.Max(east - west, LeastMetres), Math.Max(north - south, LeastMetres));
        var scale = Math.Min((MapWidth - (2 * Border)) / wide, (MostHeight - (2 * Border)) / high);
        var height = Math.Clamp((high * scale) + (2 * Border), LeastHeight, MostHeight);
        return new PlanFrame(
            scale,
            ((west + east) / 2) - (MapWidth / 2 / scale),
            ((south + north) / 2) + (height / 2 / scale),
            MapLeft,
            MapTop,
            MapWidth,
            height);
    }

    public (double X, double Y) At(Position p) => (Left + ((p.EastMetres - WestMetres) * UnitsPerMetre), Top + ((NorthMetres - p.NorthMetres) * UnitsPerMetre));
}
