namespace Underturf.FieldLog;

/// <summary>The kinds that a reader knows. Tests and later rooms may know more than the standard ones.</summary>
public sealed class KindCatalogue
{
    private readonly Dictionary<string, KindCodec> byKind;
    private readonly Dictionary<Type, KindCodec> byType;

    public KindCatalogue(IEnumerable<KindCodec> codecs)
    {
        All = [.. codecs];
        byKind = All.ToDictionary(c => c.Kind, StringComparer.Ordinal);
        byType = All.ToDictionary(c => c.Type);
    }

    /// <summary>Every kind of <see cref="FactKinds"/>.</summary>
    public static KindCatalogue Standard { get; } =
        new([.. GroundCodecs.All, .. WiringCodecs.All, .. EvidenceCodecs.All, .. NamingCodecs.All, .. SearchingCodecs.All, .. WaterCodecs.All, .. DoingCodecs.All, .. ReworkingCodecs.All, .. PermitCodecs.All]);

    public IReadOnlyList<KindCodec> All { get; }

    public KindCodec? Find(string kind) => byKind.GetValueOrDefault(kind);

    /// <exception cref="KeyNotFoundException">The fact's type has no codec: a bug.</exception>
    internal KindCodec Of(Fact fact) => byType[fact.GetType()];
}
