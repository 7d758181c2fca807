using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>Controller, stations, boxes, valves, and the wire between them.</summary>
internal static class WiringCodecs
{
    public static IReadOnlyList<KindCodec> All { get; } =
    [
        KindCodec.Standard(Controller, Controller),
        KindCodec.Standard(Station, Station),
        KindCodec.Standard(Box, Box),
        KindCodec.Standard(Valve, Valve),
        KindCodec.Standard(Coil, Coil),
        KindCodec.Standard(End, End),
        KindCodec.Standard(Splice, Splice),
        KindCodec.Standard(Cable, Cable),
    ];

    private static ControllerFact Controller(Fields f) => new()
    {
        Id = f.Text("id"),
        Label = f.OptionalText("label"),
        Position = f.Position("position"),
        Terminals = f.Whole("terminals", least: 1),
        Supply = f.Quantity<Voltage>("supply"),
        Rated = f.Quantity<ApparentPower>("rated"),
        Frequency = f.Quantity<Frequency>("frequency"),
        Master = f.OptionalText("master"),
        PumpRelay = f.PumpRelay("pumpRelay"),
        Sensor = f.OptionalText("sensor"),
    };

    private static void Controller(BodyWriter w, ControllerFact fact)
    {
        w.Text("id", fact.Id);
        w.Text("label", fact.Label);
        w.Position("position", fact.Position);
        w.Whole("terminals", fact.Terminals);
        w.Quantity("supply", fact.Supply);
        w.Quantity("rated", fact.Rated);
        w.Quantity("frequency", fact.Frequency);
        w.Text("master", fact.Master);
        w.PumpRelay("pumpRelay", fact.PumpRelay);
        w.Text("sensor", fact.Sensor);
    }

    private static StationFact Station(Fields f) => new()
    {
        Id = f.Text("id"),
        Controller = f.Text("controller"),
        Terminal = f.Whole("terminal", least: 1),
        Label = f.OptionalText("label"),
        Waters = f.Texts("waters"),
        Minutes = f.OptionalNumber("minutes"),
        Common = f.OptionalText("common"),
    };

    private static void Station(BodyWriter w, StationFact fact)
    {
        w.Text("id", fact.Id);
        w.Text("controller", fact.Controller);
        w.Whole("terminal", fact.Terminal);
        w.Text("label", fact.Label);
        w.Texts("waters", fact.Waters);
        w.Number("minutes", fact.Minutes);
        w.Text("common", fact.Common);
    }

    private static BoxFact Box(Fields f) => new()
    {
        Id = f.Text("id"),
        Label = f.OptionalText("label"),
        Position = f.Position("position"),
        Size = f.OptionalText("size"),
    };

    private static void Box(BodyWriter w, BoxFact fact)
    {
        w.Text("id", fact.Id);
        w.Text("label", fact.Label);
        w.Position("position", fact.Position);
        w.Text("size", fact.Size);
    }

    private static ValveFact Valve(Fields f) => new()
    {
        Id = f.Text("id"),
        Label = f.OptionalText("label"),
        Box = f.OptionalText("box"),
        Position = f.Position("position"),
        Station = f.OptionalText("station"),
        Size = f.Quantity<Length>("size"),
        Elevation = f.Height("elevation"),
        Body = f.OptionalText("body"),
        Screws = f.OptionalWhole("screws", least: 0),
        Thread = f.OptionalText("thread"),
        Waters = f.OptionalText("waters"),
        Make = f.OptionalText("make"),
    };

    private static void Valve(BodyWriter w, ValveFact fact)
    {
        w.Text("id", fact.Id);
        w.Text("label", fact.Label);
        w.Text("box", fact.Box);
        w.Position("position", fact.Position);
        w.Text("station", fact.Station);
        w.Quantity("size", fact.Size);
        w.Quantity("elevation", fact.Elevation);
        w.Text("body", fact.Body);
        w.Whole("screws", fact.Screws);
        w.Text("thread", fact.Thread);
        w.Text("waters", fact.Waters);
        w.Text("make", fact.Make);
    }

    private static CoilFact Coil(Fields f) => new()
    {
        Id = f.Text("id"),
        Valve = f.Text("valve"),
        Ohms = f.Quantity<Resistance>("ohms"),
        Make = f.OptionalText("make"),
    };

    private static void Coil(BodyWriter w, CoilFact fact)
    {
        w.Text("id", fact.Id);
        w.Text("valve", fact.Valve);
        w.Quantity("ohms", fact.Ohms);
        w.Text("make", fact.Make);
    }

    private static EndFact End(Fields f) => new()
    {
        Id = f.Text("id"),
        Place = f.Text("place"),
        Label = f.OptionalText("label"),
        Colour = f.OptionalText("colour"),
        Gauge = f.Gauge("gauge"),
        Mates = f.Texts("mates"),
        FarEnd = f.OptionalText("farEnd"),
        Cable = f.OptionalText("cable"),
        Station = f.OptionalText("station"),
        Common = f.OptionalFlag("common"),
    };

    private static void End(BodyWriter w, EndFact fact)
    {
        w.Text("id", fact.Id);
        w.Text("place", fact.Place);
        w.Text("label", fact.Label);
        w.Text("colour", fact.Colour);
        w.Gauge("gauge", fact.Gauge);
        w.Texts("mates", fact.Mates);
        w.Text("farEnd", fact.FarEnd);
        w.Text("cable", fact.Cable);
        w.Text("station", fact.Station);
        w.OptionalFlag("common", fact.Common);
    }

    private static SpliceFact Splice(Fields f) => new()
    {
        Id = f.Text("id"),
        Place = f.Text("place"),
        Joins = f.Texts("joins"),
        Connector = f.OptionalText("connector"),
    };

    private static void Splice(BodyWriter w, SpliceFact fact)
    {
        w.Text("id", fact.Id);
        w.Text("place", fact.Place);
        w.Texts("joins", fact.Joins);
        w.Text("connector", fact.Connector);
    }

    private static CableFact Cable(Fields f) => new()
    {
        Id = f.Text("id"),
        From = f.Text("from"),
        To = f.Text("to"),
        Length = f.Quantity<Length>("length"),
        Gauge = f.Gauge("gauge"),
        CommonGauge = f.Gauge("commonGauge"),
        Conductors = f.OptionalWhole("conductors", least: 1),
        Carries = f.Texts("carries"),
        Route = f.Positions("route"),
    };

    private static void Cable(BodyWriter w, CableFact fact)
    {
        w.Text("id", fact.Id);
        w.Text("from", fact.From);
        w.Text("to", fact.To);
        w.Quantity("length", fact.Length);
        w.Gauge("gauge", fact.Gauge);
        w.Gauge("commonGauge", fact.CommonGauge);
        w.Whole("conductors", fact.Conductors);
        w.Texts("carries", fact.Carries);
        w.Positions("route", fact.Route);
    }
}
