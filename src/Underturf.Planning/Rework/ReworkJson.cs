using System.Text.Json;
using System.Text.Json.Serialization;

namespace Underturf.Planning.Rework;

/// <summary>A plan as JSON, for other programs: names as in the records, camelCase.</summary>
public static class ReworkJson
{
    public static string Write(ReworkAnswer answer) => JsonSerializer.Serialize(answer, ReworkJsonContext.Default.ReworkAnswer);
}

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, WriteIndented = true, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull, UseStringEnumConverter = true)]
[JsonSerializable(typeof(ReworkAnswer))]
internal sealed partial class ReworkJsonContext : JsonSerializerContext;
