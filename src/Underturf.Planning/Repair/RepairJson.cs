using System.Text.Json;
using System.Text.Json.Serialization;

namespace Underturf.Planning.Repair;

/// <summary>A repair as JSON, for other programs: names as in the records, camelCase.</summary>
public static class RepairJson
{
    public static string Write(RepairAnswer answer) => JsonSerializer.Serialize(answer, RepairJsonContext.Default.RepairAnswer);

    public static string Write(RepairListAnswer answer) => JsonSerializer.Serialize(answer, RepairJsonContext.Default.RepairListAnswer);
}

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, WriteIndented = true, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull, UseStringEnumConverter = true)]
[JsonSerializable(typeof(RepairAnswer))]
[JsonSerializable(typeof(RepairListAnswer))]
internal sealed partial class RepairJsonContext : JsonSerializerContext;
