using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>
/// From WGS 84 to metres east and north of a property's datum, by the radii of curvature there: M = a(1 − e²)/(1 − e² sin² φ)^1.5 along the meridian,
/// N = a/√(1 − e² sin² φ) across it; east = N cos φ Δλ, north = M Δφ. Over a property the earth's own curve makes less than a centimetre a kilometre.
/// Source: WGS 84 ellipsoid, NGA.STND.0036.
/// </summary>
public static class DatumPlane
{
    private const double SemiMajorMetres = 6_378_137;
    private const double Flattening = 1 / 298.257223563;

    public static Outcome<Position> At(Fix fix, PropertyFact? property)
    {
        if (property is not { Latitude: { } latitude, Longitude: { } longitude })
        {
            return new Problem("this property", "has no latitude and longitude noted for its datum", "Note the property again with both, then the device's position can be put on the plan");
        }

        var squared = Flattening * (2 - Flattening);
        var phi = Radians(latitude);
        var root = Math.Sqrt(1 - (squared * Math.Sin(phi) * Math.Sin(phi)));
        var across = SemiMajorMetres / root;
        var along = SemiMajorMetres * (1 - squared) / (root * root * root);
        return new Position(
            across * Math.Cos(phi) * Radians(Math.IEEERemainder(fix.LongitudeDegrees - longitude, 360)),
            along * Radians(fix.LatitudeDegrees - latitude));
    }

    private static double Radians(double degrees) => degrees * Math.PI / 180;
}
