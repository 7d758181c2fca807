using System.Security.Cryptography;

namespace Underturf.FieldLog;

/// <summary>SHA-256 as 64 lower-case hexadecimal digits: the one form in which a log writes hashes.</summary>
internal static class Sha256Hex
{
    public const int Length = 64;

    public static string Of(ReadOnlySpan<byte> bytes)
    {
        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(bytes, hash);
        return Convert.ToHexStringLower(hash);
    }

    public static bool IsWellFormed(string text) => text.Length == Length && text.All(char.IsAsciiHexDigitLower);
}
