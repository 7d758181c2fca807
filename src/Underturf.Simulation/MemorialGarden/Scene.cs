using System.Text.Json;
using System.Text.Json.Serialization;

namespace Underturf.Simulation;

/// <summary>One note of a scene: who wrote it and when, and what it says.</summary>
/// <param name="Fill">True where the virtual technician fills in what the instrument or the ground shows.</param>
internal sealed record SceneNote(string Writer, DateTimeOffset Noted, JsonElement Body, bool Fill = false);

/// <summary>What is really wrong in a scene.</summary>
/// <param name="Creep">What runs while nothing should.</param>
internal sealed record SceneTruth(string About, ulong Seed, double SupplyVolts, IReadOnlyList<SceneFault> Faults, SceneCreep Creep);

/// <summary>One true fault.</summary>
/// <param name="Until">When work cured it; nothing where it is still there.</param>
internal sealed record SceneFault(
    string Fault,
    string? Station = null,
    string? Other = null,
    string? Place = null,
    double Amount = 0,
    int MoreCoils = 0,
    IReadOnlyList<string>? Waters = null,
    DateTimeOffset? Until = null)
{
    public TrueFault AsFault => new(Fault, Station, Other, Place, Amount, MoreCoils, Waters ?? []);
}

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(SceneNote))]
[JsonSerializable(typeof(SceneTruth))]
internal sealed partial class SceneJson : JsonSerializerContext;
