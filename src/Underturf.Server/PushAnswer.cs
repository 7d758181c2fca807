using System.Text.Json;
using System.Text.Json.Serialization;
using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Server;

/// <summary>What the server says to lines that it was handed.</summary>
/// <param name="Added">How many of them it lacked and has now.</param>
/// <param name="Refused">Each that it did not take, and why.</param>
internal sealed record PushAnswer(int Added, IReadOnlyList<Problem> Refused)
{
    public static byte[] Write(LogIntake taken) => Write(new PushAnswer(taken.Added.Count, taken.Refused));

    public static byte[] Write(PushAnswer answer) => JsonSerializer.SerializeToUtf8Bytes(answer, PushAnswerJson.Default.PushAnswer);
}

/// <summary>How the answer is written.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(PushAnswer))]
internal sealed partial class PushAnswerJson : JsonSerializerContext;
