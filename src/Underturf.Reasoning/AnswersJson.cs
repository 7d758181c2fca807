using System.Text.Json;
using System.Text.Json.Serialization;

namespace Underturf.Reasoning;

/// <summary>Answers as JSON, for other programs: names as in the records, camelCase.</summary>
public static class AnswersJson
{
    public static string Write(Answers answers) => JsonSerializer.Serialize(answers, AnswersJsonContext.Default.Answers);

    public static string Write(IReadOnlyList<ReadingLine> readings) => JsonSerializer.Serialize(readings, AnswersJsonContext.Default.IReadOnlyListReadingLine);

    public static string Write(IReadOnlyList<Move> moves) => JsonSerializer.Serialize(moves, AnswersJsonContext.Default.IReadOnlyListMove);

    public static string Write(NamingAnswer naming) => JsonSerializer.Serialize(naming, AnswersJsonContext.Default.NamingAnswer);

    public static string Write(LocationAnswer location) => JsonSerializer.Serialize(location, AnswersJsonContext.Default.LocationAnswer);

    public static string Write(TieAnswer ties) => JsonSerializer.Serialize(ties, AnswersJsonContext.Default.TieAnswer);

    public static string Write(Water.FlowAnswer flow) => JsonSerializer.Serialize(flow, AnswersJsonContext.Default.FlowAnswer);

    public static string Write(Water.PlacesToDry places) => JsonSerializer.Serialize(places, AnswersJsonContext.Default.PlacesToDry);

    public static string Write(Water.IsolationAnswer isolation) => JsonSerializer.Serialize(isolation, AnswersJsonContext.Default.IsolationAnswer);

    public static string Write(CircuitAnswer circuit) => JsonSerializer.Serialize(circuit, AnswersJsonContext.Default.CircuitAnswer);
}

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, WriteIndented = true, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(Answers))]
[JsonSerializable(typeof(CircuitAnswer))]
[JsonSerializable(typeof(NamingAnswer))]
[JsonSerializable(typeof(Water.FlowAnswer))]
[JsonSerializable(typeof(Water.IsolationAnswer))]
[JsonSerializable(typeof(Water.PlacesToDry))]
[JsonSerializable(typeof(LocationAnswer))]
[JsonSerializable(typeof(TieAnswer))]
[JsonSerializable(typeof(IReadOnlyList<Move>))]
[JsonSerializable(typeof(IReadOnlyList<ReadingLine>))]
internal sealed partial class AnswersJsonContext : JsonSerializerContext;
