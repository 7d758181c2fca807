namespace Underturf.FieldLog;

/// <summary>Giving valves their own conductors and numbers.</summary>
internal static class ReworkingCodecs
{
    public static IReadOnlyList<KindCodec> All { get; } =
    [
        KindCodec.Standard(Step, Step),
        KindCodec.Standard(Renumbered, Renumbered),
    ];

    private static ReworkStepFact Step(Fields f) => new()
    {
        Station = f.Text("station"),
        Did = f.Choice("did", ReworkDeeds.All),
        Place = f.OptionalText("place"),
        Wire = f.OptionalText("wire"),
        Terminal = f.OptionalWhole("terminal", 1),
    };

    private static void Step(BodyWriter w, ReworkStepFact fact)
    {
        w.Text("station", fact.Station);
        w.Text("did", fact.Did);
        w.Text("place", fact.Place);
        w.Text("wire", fact.Wire);
        w.Whole("terminal", fact.Terminal);
    }

    private static RenumberedFact Renumbered(Fields f) => new()
    {
        Station = f.Text("station"),
        From = f.Text("from"),
        Was = f.Text("was"),
        Now = f.Text("now"),
        Valve = f.OptionalText("valve"),
        Waters = f.OptionalText("waters"),
    };

    private static void Renumbered(BodyWriter w, RenumberedFact fact)
    {
        w.Text("station", fact.Station);
        w.Text("from", fact.From);
        w.Text("was", fact.Was);
        w.Text("now", fact.Now);
        w.Text("valve", fact.Valve);
        w.Text("waters", fact.Waters);
    }
}
