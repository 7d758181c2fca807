using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>The property and what stands on it.</summary>
internal static class GroundCodecs
{
    public static IReadOnlyList<KindCodec> All { get; } =
    [
        KindCodec.Standard(Property, Property),
        KindCodec.Standard(Ground, Ground),
        KindCodec.Standard(Tie, Tie),
    ];

    private static PropertyFact Property(Fields f) => new()
    {
        Name = f.Text("name"),
        Zone = f.Text("zone"),
        Units = f.OptionalChoice("units", "us", "si") ?? "us",
        Latitude = f.OptionalNumber("latitude", -90, 90),
        Longitude = f.OptionalNumber("longitude", -180, 180),
        Area = f.Quantity<Area>("area"),
    };

    private static void Property(BodyWriter w, PropertyFact fact)
    {
        w.Text("name", fact.Name);
        w.Text("zone", fact.Zone);
        w.Text("units", fact.Units);
        w.Number("latitude", fact.Latitude);
        w.Number("longitude", fact.Longitude);
        w.Quantity("area", fact.Area);
    }

    private static GroundFact Ground(Fields f) => new()
    {
        Id = f.Text("id"),
        What = f.Choice("what", "hardscape", "bed", "lawn", "building", "wall", "tree", "water", "utility mark", "other"),
        Label = f.OptionalText("label"),
        Shape = Shape(f),
        Trunk = f.Quantity<Length>("trunk"),
    };

    private static IReadOnlyList<Position> Shape(Fields f)
    {
        var shape = f.Positions("shape");
        if (shape.Count == 0)
        {
            f.Wrong(
                "shape",
                "has no position",
                "Write one position for a point, two or more for a line or outline, for example [[0, 0], [12.5, 3]]");
        }

        return shape;
    }

    private static void Ground(BodyWriter w, GroundFact fact)
    {
        w.Text("id", fact.Id);
        w.Text("what", fact.What);
        w.Text("label", fact.Label);
        w.Positions("shape", fact.Shape);
        w.Quantity("trunk", fact.Trunk);
    }

    private static TieFact Tie(Fields f) => new()
    {
        Thing = f.Text("thing"),
        Mark = f.Text("mark"),
        Corner = f.Position("corner"),
        Distance = f.NeededQuantity<Length>("distance", "41.5 ft"),
        Spread = f.Quantity<Length>("spread"),
    };

    private static void Tie(BodyWriter w, TieFact fact)
    {
        w.Text("thing", fact.Thing);
        w.Text("mark", fact.Mark);
        w.Position("corner", fact.Corner);
        w.Quantity<Length>("distance", fact.Distance);
        w.Quantity("spread", fact.Spread);
    }
}
