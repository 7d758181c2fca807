using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>What was done to tell conductors apart.</summary>
internal static class NamingCodecs
{
    public static IReadOnlyList<KindCodec> All { get; } =
    [
        KindCodec.Standard(Touch, Touch),
        KindCodec.Standard(Resistor, Resistor),
    ];

    private static TouchFact Touch(Fields f) => new()
    {
        How = f.Text("how"),
        Place = f.Text("place"),
        Put = f.Texts("put"),
        Against = f.OptionalText("against"),
        Touched = f.Texts("touched"),
        Answered = f.Texts("answered"),
        Value = f.OptionalShown("value"),
    };

    private static void Touch(BodyWriter w, TouchFact fact)
    {
        w.Text("how", fact.How);
        w.Text("place", fact.Place);
        w.Texts("put", fact.Put);
        w.Text("against", fact.Against);
        w.Texts("touched", fact.Touched);
        w.Texts("answered", fact.Answered);
        w.OptionalShown("value", fact.Value);
    }

    private static ResistorFact Resistor(Fields f) => new() { End = f.Text("end"), Ohms = f.Quantity<Resistance>("ohms") };

    private static void Resistor(BodyWriter w, ResistorFact fact)
    {
        w.Text("end", fact.End);
        w.Quantity("ohms", fact.Ohms);
    }
}
