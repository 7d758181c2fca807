using System.Text.Json;
using System.Text.Json.Serialization;
using Underturf.FieldLog;

namespace Underturf.Simulation;

/// <summary>A made-up property: what its technician noted, and what is really wrong.</summary>
public sealed record World(LogDocument Log, IReadOnlyList<TrueFault> Faults)
{
    /// <summary>Readings noted under another station than the one read.</summary>
    public IReadOnlyList<EntryId> WrongNotes { get; init; } = [];

    /// <summary>The truth as JSON, to be kept apart from the log.</summary>
    public byte[] TruthBytes(ulong seed) => JsonSerializer.SerializeToUtf8Bytes(
        new WorldTruth(seed, Faults, [.. WrongNotes.Select(w => w.ToString())]), WorldJson.Default.WorldTruth);
}

/// <summary>What is really wrong in a made-up property.</summary>
internal sealed record WorldTruth(ulong Seed, IReadOnlyList<TrueFault> Faults, IReadOnlyList<string> WrongNotes);

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, WriteIndented = true, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(WorldTruth))]
internal sealed partial class WorldJson : JsonSerializerContext;
