using System.Text.Json;
using System.Text.Json.Serialization;
using Underturf.FieldLog;

namespace Underturf.Simulation;

/// <summary>A made-up property: what its technician noted, and what is really wrong.</summary>
public sealed record World(LogDocument Log, IReadOnlyList<TrueFault> Faults)
{
    /// <summary>Readings noted under another station than the one read.</summary>
    public IReadOnlyList<EntryId> WrongNotes { get; init; } = [];

    /// <summary>Readings that another engine solved than the one that belief uses.</summary>
    public IReadOnlyList<EntryId> BySecondEngine { get; init; } = [];

    /// <summary>How a whole property was built.</summary>
    internal PropertyPlan? Plan { get; init; }

    /// <summary>The wires as they really are.</summary>
    internal TrueWiring? Truth { get; init; }

    /// <summary>The truth as JSON, to be kept apart from the log.</summary>
    public byte[] TruthBytes(ulong seed) => JsonSerializer.SerializeToUtf8Bytes(
        new WorldTruth(seed, Faults, Named(WrongNotes), BySecondEngine.Count > 0 ? Named(BySecondEngine) : null, Plan is null ? null : PlanTruth.Of(Plan)),
        WorldJson.Default.WorldTruth);

    private static string[] Named(IReadOnlyList<EntryId> entries) => [.. entries.Select(e => e.ToString())];
}

/// <summary>What is really wrong in a made-up property.</summary>
internal sealed record WorldTruth(
    ulong Seed,
    IReadOnlyList<TrueFault> Faults,
    IReadOnlyList<string> WrongNotes,
    IReadOnlyList<string>? BySecondEngine,
    PlanTruth? Property);

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, WriteIndented = true, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(WorldTruth))]
internal sealed partial class WorldJson : JsonSerializerContext;
