using System.Text.Json;
using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.Papers;

/// <summary>Outlines of likely ground and the stops of the search as GeoJSON (RFC 7946), in WGS 84.</summary>
public static class HeatGeoJson
{
    /// <summary>Seven decimals of a degree are about a centimetre.</summary>
    private const int Decimals = 7;

    /// <returns>The file, or the problem that nobody has noted where on the earth the property lies.</returns>
    public static Outcome<byte[]> Make(LocationAnswer location, PropertyFact? property)
    {
        if (Datum.Of(property) is not { } datum)
        {
            return new Problem("property", "has no latitude and longitude, which GeoJSON needs", "Note the property again with the latitude and longitude of its datum, or draw an SVG");
        }

        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteString("type", "FeatureCollection");
            json.WriteStartArray("features");
            foreach (var thing in location.Things)
            {
                Ground(json, thing, datum);
            }

            Stops(json, location.Route, datum);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        return stream.ToArray();
    }

    private static void Ground(Utf8JsonWriter json, HiddenThing thing, Datum datum)
    {
        foreach (var (probability, rings) in thing.Heat is { } heat ? HeatContours.Of(heat) : [])
        {
            Begin(json, "MultiPolygon");
            json.WriteStartArray("coordinates");
            foreach (var polygon in Nested.Of(rings))
            {
                json.WriteStartArray();
                foreach (var ring in polygon)
                {
                    json.WriteStartArray();
                    foreach (var at in ring.Append(ring[0]))
                    {
                        Write(json, at, datum);
                    }

                    json.WriteEndArray();
                }

                json.WriteEndArray();
            }

            json.WriteEndArray();
            End(json, [("thing", thing.Name), ("probability", probability)]);
        }
    }

    private static void Stops(Utf8JsonWriter json, SearchRoute? route, Datum datum)
    {
        foreach (var (i, step) in (route?.Steps ?? []).Index().Where(s => s.Item.At is not null))
        {
            Begin(json, "Point");
            json.WritePropertyName("coordinates");
            Write(json, step.At!.Value, datum);
            End(json, [("stop", i + 1), ("minutes", Math.Round(step.Minutes, 1)), ("probability", Math.Round(step.Found, 4))]);
        }
    }

    private static void Begin(Utf8JsonWriter json, string geometry)
    {
        json.WriteStartObject();
        json.WriteString("type", "Feature");
        json.WriteStartObject("geometry");
        json.WriteString("type", geometry);
    }

    private static void End(Utf8JsonWriter json, IEnumerable<(string Name, object Value)> properties)
    {
        json.WriteEndObject();
        json.WriteStartObject("properties");
        foreach (var (name, value) in properties)
        {
            json.WritePropertyName(name);
            if (value is string text)
            {
                json.WriteStringValue(text);
            }
            else
            {
                json.WriteNumberValue(Convert.ToDouble(value, System.Globalization.CultureInfo.InvariantCulture));
            }
        }

        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, Position at, Datum datum)
    {
        var (latitude, longitude) = datum.On(at);
        json.WriteStartArray();
        json.WriteNumberValue(Math.Round(longitude, Decimals));
        json.WriteNumberValue(Math.Round(latitude, Decimals));
        json.WriteEndArray();
    }
}
