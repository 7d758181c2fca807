namespace Underturf.FieldLog;

/// <summary>What was read, tried, looked at and told.</summary>
internal static class EvidenceCodecs
{
    public static IReadOnlyList<KindCodec> All { get; } =
    [
        KindCodec.Standard(Reading, Reading),
        KindCodec.Standard(Test, Test),
        KindCodec.Standard(Look, Look),
        KindCodec.Standard(Told, Told),
        KindCodec.Standard(Photo, Photo),
    ];

    private static ReadingFact Reading(Fields f) => new()
    {
        How = f.Text("how"),
        Stations = f.Texts("stations"),
        Place = f.OptionalText("place"),
        Value = f.Shown("value"),
        Instrument = f.OptionalText("instrument"),
        Drifting = f.OptionalFlag("drifting") ?? false,
    };

    private static void Reading(BodyWriter w, ReadingFact fact)
    {
        w.Text("how", fact.How);
        w.Texts("stations", fact.Stations);
        w.Text("place", fact.Place);
        w.Shown("value", fact.Value);
        w.Text("instrument", fact.Instrument);
        w.Flag("drifting", fact.Drifting);
    }

    private static TestFact Test(Fields f) => new()
    {
        Station = f.Text("station"),
        Watered = f.Texts("watered"),
        Behaved = f.OptionalChoice("behaved", "opens", "chatters", "stays shut"),
    };

    private static void Test(BodyWriter w, TestFact fact)
    {
        w.Text("station", fact.Station);
        w.Texts("watered", fact.Watered);
        w.Text("behaved", fact.Behaved);
    }

    private static LookFact Look(Fields f) => new()
    {
        Place = f.Text("place"),
        Found = f.Texts("found"),
        Stations = f.Texts("stations"),
        Minutes = f.OptionalNumber("minutes"),
    };

    private static void Look(BodyWriter w, LookFact fact)
    {
        w.Text("place", fact.Place);
        w.Texts("found", fact.Found);
        w.Texts("stations", fact.Stations);
        w.Number("minutes", fact.Minutes);
    }

    private static ToldFact Told(Fields f) => new()
    {
        Who = f.Text("who"),
        Text = f.Text("text"),
        About = f.OptionalText("about"),
    };

    private static void Told(BodyWriter w, ToldFact fact)
    {
        w.Text("who", fact.Who);
        w.Text("text", fact.Text);
        w.Text("about", fact.About);
    }

    private static PhotoFact Photo(Fields f) => new()
    {
        Hash = f.Hash("hash"),
        Media = f.Choice("media", [.. PhotoFile.MediaTypes]),
        Width = f.OptionalWhole("width", 1),
        Height = f.OptionalWhole("height", 1),
        Place = f.OptionalText("place"),
        About = f.OptionalText("about"),
        Caption = f.OptionalText("caption"),
    };

    private static void Photo(BodyWriter w, PhotoFact fact)
    {
        w.Text("hash", fact.Hash);
        w.Text("media", fact.Media);
        w.Whole("width", fact.Width);
        w.Whole("height", fact.Height);
        w.Text("place", fact.Place);
        w.Text("about", fact.About);
        w.Text("caption", fact.Caption);
    }
}
