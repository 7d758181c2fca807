using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Underturf.Quantities;

namespace Underturf.FieldApp.Thinking;

/// <summary>An outcome as it travels from the worker to the page: a byte that says which, then the answer or the problem.</summary>
internal static class Travel
{
    private const byte Answered = 0;
    private const byte Refused = 1;

    public static byte[] Write<T>(Outcome<T> outcome, JsonTypeInfo<T> form) => outcome.Succeeded
        ? [Answered, .. JsonSerializer.SerializeToUtf8Bytes(outcome.Value, form)]
        : [Refused, .. JsonSerializer.SerializeToUtf8Bytes(outcome.Problem!, TravelJson.Default.Problem)];

    public static Outcome<T> Read<T>(ReadOnlySpan<byte> bytes, JsonTypeInfo<T> form) => bytes[0] == Answered
        ? JsonSerializer.Deserialize(bytes[1..], form)!
        : JsonSerializer.Deserialize(bytes[1..], TravelJson.Default.Problem)!;
}
