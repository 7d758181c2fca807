using System.Text.Json;
using System.Text.Json.Serialization;

namespace Underturf.Planning.Day;

/// <summary>A day as JSON, for other programs: names as in the records, camelCase.</summary>
public static class DayJson
{
    public static string Write(DayAnswer answer) => JsonSerializer.Serialize(answer, DayJsonContext.Default.DayAnswer);
}

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, WriteIndented = true, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull, UseStringEnumConverter = true)]
[JsonSerializable(typeof(DayAnswer))]
internal sealed partial class DayJsonContext : JsonSerializerContext;
