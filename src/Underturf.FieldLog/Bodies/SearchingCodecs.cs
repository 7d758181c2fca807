using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>What is hidden, and what tells where.</summary>
internal static class SearchingCodecs
{
    public static IReadOnlyList<KindCodec> All { get; } =
    [
        KindCodec.Standard(Sought, Sought),
        KindCodec.Standard(Spot, Spot),
        KindCodec.Standard(Trace, Trace),
        KindCodec.Standard(Sign, Sign),
        KindCodec.Standard(Search, Search),
    ];

    private static SoughtFact Sought(Fields f) => new()
    {
        Id = f.Text("id"),
        What = f.Text("what"),
        Label = f.OptionalText("label"),
        Station = f.OptionalText("station"),
        Cable = f.OptionalText("cable"),
    };

    private static void Sought(BodyWriter w, SoughtFact fact)
    {
        w.Text("id", fact.Id);
        w.Text("what", fact.What);
        w.Text("label", fact.Label);
        w.Text("station", fact.Station);
        w.Text("cable", fact.Cable);
    }

    private static SpotFact Spot(Fields f) => new()
    {
        Id = f.Text("id"),
        Label = f.OptionalText("label"),
        Beside = f.Texts("beside"),
        Line = f.OptionalText("line"),
        Along = f.Quantity<Length>("along"),
        Across = f.Quantity<Length>("across"),
    };

    private static void Spot(BodyWriter w, SpotFact fact)
    {
        w.Text("id", fact.Id);
        w.Text("label", fact.Label);
        w.Texts("beside", fact.Beside);
        w.Text("line", fact.Line);
        w.Quantity("along", fact.Along);
        w.Quantity("across", fact.Across);
    }

    private static TraceFact Trace(Fields f) => new()
    {
        How = f.Text("how"),
        Of = f.Texts("of"),
        Route = f.Positions("route"),
        Spots = f.Texts("spots"),
        Ended = f.Text("ended"),
    };

    private static void Trace(BodyWriter w, TraceFact fact)
    {
        w.Text("how", fact.How);
        w.Texts("of", fact.Of);
        w.Positions("route", fact.Route);
        w.Texts("spots", fact.Spots);
        w.Text("ended", fact.Ended);
    }

    private static SignFact Sign(Fields f) => new()
    {
        How = f.Text("how"),
        About = f.OptionalText("about"),
        Where = f.Positions("where"),
        Spots = f.Texts("spots"),
        From = f.OptionalText("from"),
        Distance = f.Quantity<Length>("distance"),
        Spread = f.Quantity<Length>("spread"),
    };

    private static void Sign(BodyWriter w, SignFact fact)
    {
        w.Text("how", fact.How);
        w.Text("about", fact.About);
        w.Positions("where", fact.Where);
        w.Texts("spots", fact.Spots);
        w.Text("from", fact.From);
        w.Quantity("distance", fact.Distance);
        w.Quantity("spread", fact.Spread);
    }

    private static SearchFact Search(Fields f) => new()
    {
        How = f.Text("how"),
        About = f.OptionalText("about"),
        Where = f.Positions("where"),
        Within = f.Quantity<Length>("within"),
        Spots = f.Texts("spots"),
        Minutes = f.OptionalNumber("minutes"),
        Found = f.Texts("found"),
    };

    private static void Search(BodyWriter w, SearchFact fact)
    {
        w.Text("how", fact.How);
        w.Text("about", fact.About);
        w.Positions("where", fact.Where);
        w.Quantity("within", fact.Within);
        w.Texts("spots", fact.Spots);
        w.Number("minutes", fact.Minutes);
        w.Texts("found", fact.Found);
    }
}
