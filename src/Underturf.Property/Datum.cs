using Underturf.FieldLog;

namespace Underturf.Property;

/// <summary>Where on the earth the property's datum lies.</summary>
public sealed record Datum(double LatitudeDegrees, double LongitudeDegrees)
{
    /// <summary>WGS 84: semi-major axis and flattening (NIMA TR8350.2, from memory).</summary>
    private const double EquatorMetres = 6_378_137, Flattening = 1 / 298.257223563;

    /// <summary>Nothing where nobody noted it.</summary>
    public static Datum? Of(PropertyFact? property) => property is { Latitude: { } latitude, Longitude: { } longitude } ? new Datum(latitude, longitude) : null;

    /// <summary>
    /// Latitude and longitude of a point, by the radii of curvature at the datum: within a centimetre for a kilometre, away from the poles.
    /// </summary>
    public (double LatitudeDegrees, double LongitudeDegrees) On(Position at)
    {
        var radians = LatitudeDegrees * Math.PI / 180;
        var square = Flattening * (2 - Flattening);
        var left = 1 - (square * Math.Sin(radians) * Math.Sin(radians));
        var across = EquatorMetres / Math.Sqrt(left);
        var along = across * (1 - square) / left;
        return (LatitudeDegrees + (at.NorthMetres / along * 180 / Math.PI), LongitudeDegrees + (at.EastMetres / (across * Math.Cos(radians)) * 180 / Math.PI));
    }
}
