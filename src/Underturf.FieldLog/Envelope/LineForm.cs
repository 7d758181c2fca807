using System.Text;
using System.Text.Json;

namespace Underturf.FieldLog;

/// <summary>
/// The outer form of a sealed line, <c>{"head":H,"body":B,"digest":"D"}</c>. It is exact to the byte: what the digest does not
/// cover (its own tail) can then not change unseen.
/// </summary>
internal static class LineForm
{
    /// <summary>Length of <c>,"digest":"D"}</c>.</summary>
    public const int TailLength = 11 + Sha256Hex.Length + 2;

    private static ReadOnlySpan<byte> Opening => "{\"head\":"u8;

    private static ReadOnlySpan<byte> Between => ",\"body\":"u8;

    private static ReadOnlySpan<byte> Tail => ",\"digest\":\""u8;

    private static ReadOnlySpan<byte> Erasure => ",\"body\":null"u8;

    /// <summary>The line with its digest, from the exact bytes of its head and body.</summary>
    public static byte[] Seal(ReadOnlySpan<byte> head, ReadOnlySpan<byte> body)
    {
        byte[] covered = [.. Opening, .. head, .. Between, .. body];
        return [.. covered, .. Tail, .. Encoding.ASCII.GetBytes(Sha256Hex.Of(covered)), .. "\"}"u8];
    }

    /// <summary>Finds the parts of a line that is known to be sound JSON; nothing where the outer form is not exact.</summary>
    public static LineParts? Split(ReadOnlyMemory<byte> line)
    {
        var span = line.Span;
        if (span.Length < TailLength || !span.StartsWith(Opening))
        {
            return null;
        }

        var covered = span[..^TailLength];
        var tail = span[^TailLength..];
        if (!tail.StartsWith(Tail) || !tail.EndsWith("\"}"u8))
        {
            return null;
        }

        var reader = new Utf8JsonReader(covered[Opening.Length..], isFinalBlock: false, state: default);
        if (!reader.Read() || reader.TokenType != JsonTokenType.StartObject || !reader.TrySkip())
        {
            return null;
        }

        var headEnd = Opening.Length + (int)reader.BytesConsumed;
        return covered[headEnd..].StartsWith(Between) ? Parts(line, headEnd) : null;
    }

    public static bool IsErased(ReadOnlySpan<byte> line) => line.Length > TailLength && line[..^TailLength].EndsWith(Erasure);

    private static LineParts Parts(ReadOnlyMemory<byte> line, int headEnd) => new(
        line[Opening.Length..headEnd],
        line[(headEnd + Between.Length)..^TailLength],
        line[..^TailLength],
        Encoding.ASCII.GetString(line.Span.Slice(line.Length - TailLength + Tail.Length, Sha256Hex.Length)));
}

/// <summary>The exact bytes of a sealed line's parts.</summary>
/// <param name="Covered">What the digest is taken over.</param>
/// <param name="Digest">The digest as it stands in the line.</param>
internal sealed record LineParts(ReadOnlyMemory<byte> Head, ReadOnlyMemory<byte> Body, ReadOnlyMemory<byte> Covered, string Digest);
