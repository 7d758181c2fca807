using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>Pipes, what they feed, and what was done and seen with the water.</summary>
internal static class WaterCodecs
{
    public static IReadOnlyList<KindCodec> All { get; } =
    [
        KindCodec.Standard(WaterSupply, WaterSupply),
        KindCodec.Standard(Fitting, Fitting),
        KindCodec.Standard(Pipe, Pipe),
        KindCodec.Standard(IsolationValve, IsolationValve),
        KindCodec.Standard(Outlet, Outlet),
        KindCodec.Standard(Setting, Setting),
        KindCodec.Standard(Watch, Watch),
        KindCodec.Standard(Catch, Catch),
    ];

    private static WaterSupplyFact WaterSupply(Fields f) => new()
    {
        Id = f.Text("id"),
        Label = f.OptionalText("label"),
        Position = f.Position("position"),
        Elevation = f.Height("elevation"),
        Meter = f.Quantity<Length>("meter"),
        MeterAt = f.Quantity<Flow>("meterAt"),
        MeterLoss = f.Quantity<Pressure>("meterLoss"),
        Backflow = f.OptionalText("backflow"),
        BackflowKind = f.OptionalText("backflowKind"),
        BackflowSize = f.Quantity<Length>("backflowSize"),
        BackflowAt = f.Quantity<Flow>("backflowAt"),
        BackflowLoss = f.Quantity<Pressure>("backflowLoss"),
        Price = f.OptionalNumber("price"),
        PriceOf = f.Quantity<Volume>("priceOf"),
    };

    private static void WaterSupply(BodyWriter w, WaterSupplyFact fact)
    {
        w.Text("id", fact.Id);
        w.Text("label", fact.Label);
        w.Position("position", fact.Position);
        w.Quantity("elevation", fact.Elevation);
        w.Quantity("meter", fact.Meter);
        w.Quantity("meterAt", fact.MeterAt);
        w.Quantity("meterLoss", fact.MeterLoss);
        w.Text("backflow", fact.Backflow);
        w.Text("backflowKind", fact.BackflowKind);
        w.Quantity("backflowSize", fact.BackflowSize);
        w.Quantity("backflowAt", fact.BackflowAt);
        w.Quantity("backflowLoss", fact.BackflowLoss);
        w.Number("price", fact.Price);
        w.Quantity("priceOf", fact.PriceOf);
    }

    private static FittingFact Fitting(Fields f) => new()
    {
        Id = f.Text("id"),
        Label = f.OptionalText("label"),
        Position = f.Position("position"),
        Elevation = f.Height("elevation"),
    };

    private static void Fitting(BodyWriter w, FittingFact fact)
    {
        w.Text("id", fact.Id);
        w.Text("label", fact.Label);
        w.Position("position", fact.Position);
        w.Quantity("elevation", fact.Elevation);
    }

    private static PipeFact Pipe(Fields f) => new()
    {
        Id = f.Text("id"),
        From = f.Text("from"),
        To = f.Text("to"),
        Length = f.Quantity<Length>("length"),
        Series = f.OptionalText("series"),
        Size = f.OptionalText("size"),
        Inside = f.Quantity<Length>("inside"),
        Route = f.Positions("route"),
    };

    private static void Pipe(BodyWriter w, PipeFact fact)
    {
        w.Text("id", fact.Id);
        w.Text("from", fact.From);
        w.Text("to", fact.To);
        w.Quantity("length", fact.Length);
        w.Text("series", fact.Series);
        w.Text("size", fact.Size);
        w.Quantity("inside", fact.Inside);
        w.Positions("route", fact.Route);
    }

    private static IsolationValveFact IsolationValve(Fields f) => new()
    {
        Id = f.Text("id"),
        Label = f.OptionalText("label"),
        Position = f.Position("position"),
        Elevation = f.Height("elevation"),
        Box = f.OptionalText("box"),
        Size = f.Quantity<Length>("size"),
        Shuts = f.Texts("shuts"),
    };

    private static void IsolationValve(BodyWriter w, IsolationValveFact fact)
    {
        w.Text("id", fact.Id);
        w.Text("label", fact.Label);
        w.Position("position", fact.Position);
        w.Quantity("elevation", fact.Elevation);
        w.Text("box", fact.Box);
        w.Quantity("size", fact.Size);
        w.Texts("shuts", fact.Shuts);
    }

    private static OutletFact Outlet(Fields f) => new()
    {
        Id = f.Text("id"),
        Station = f.Text("station"),
        What = f.Text("what"),
        Count = f.Whole("count", 1),
        Flow = f.Quantity<Flow>("flow"),
        Pressure = f.Quantity<Pressure>("pressure"),
        Fitting = f.OptionalText("fitting"),
        Elevation = f.Height("elevation"),
    };

    private static void Outlet(BodyWriter w, OutletFact fact)
    {
        w.Text("id", fact.Id);
        w.Text("station", fact.Station);
        w.Text("what", fact.What);
        w.Whole("count", fact.Count);
        w.Quantity("flow", fact.Flow);
        w.Quantity("pressure", fact.Pressure);
        w.Text("fitting", fact.Fitting);
        w.Quantity("elevation", fact.Elevation);
    }

    private static SettingFact Setting(Fields f) => new()
    {
        Of = f.Text("of"),
        State = f.Choice("state", "shut", "open", "partly open"),
    };

    private static void Setting(BodyWriter w, SettingFact fact)
    {
        w.Text("of", fact.Of);
        w.Text("state", fact.State);
    }

    private static CatchFact Catch(Fields f)
    {
        var fact = new CatchFact
        {
            Station = f.Text("station"),
            Minutes = f.OptionalNumber("minutes"),
            Cans = f.Quantities<Length>("cans", "9 mm"),
            Where = f.Positions("where"),
        };
        if (fact.Where.Count > 0 && fact.Where.Count != fact.Cans.Count)
        {
            f.Wrong("where", $"has {fact.Where.Count} positions for {fact.Cans.Count} cans", "Write one position for each can, in the same order, or none");
        }

        return fact;
    }

    private static void Catch(BodyWriter w, CatchFact fact)
    {
        w.Text("station", fact.Station);
        w.Number("minutes", fact.Minutes);
        w.Quantities("cans", fact.Cans);
        w.Positions("where", fact.Where);
    }

    private static WatchFact Watch(Fields f) => new()
    {
        Station = f.OptionalText("station"),
        About = f.OptionalText("about"),
        Seen = f.Texts("seen"),
        Where = f.Positions("where"),
        Minutes = f.OptionalNumber("minutes"),
    };

    private static void Watch(BodyWriter w, WatchFact fact)
    {
        w.Text("station", fact.Station);
        w.Text("about", fact.About);
        w.Texts("seen", fact.Seen);
        w.Positions("where", fact.Where);
        w.Number("minutes", fact.Minutes);
    }
}
