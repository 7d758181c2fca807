using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using Underturf.Quantities;

namespace Underturf.Server;

/// <summary>What a device must know to read the log or add to it. It travels in the code that a phone is shown, in the part of an address that browsers keep to themselves.</summary>
internal sealed class PairingSecret
{
    private const int Bytes = 16;

    /// <summary>How the page's requests name it.</summary>
    private const string Scheme = "Bearer ";

    private readonly byte[] expected;

    private PairingSecret(string text)
    {
        Text = text;
        expected = Encoding.ASCII.GetBytes(Scheme + text);
    }

    public string Text { get; }

    /// <summary>The secret of a folder, drawn once; take the file away to send every paired device back to the code.</summary>
    public static Outcome<PairingSecret> Of(string folder)
    {
        var file = Path.Combine(folder, "pairing");
        try
        {
            if (!File.Exists(file))
            {
                OwnFile.Write(file, Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(Bytes)));
            }

            var text = File.ReadAllText(file).Trim();
            return text.Length >= Bytes && text.All(letter => char.IsAsciiLetterOrDigit(letter) || letter is '-' or '_')
                ? new PairingSecret(text)
                : new Problem(file, "holds no pairing secret", "Take the file away; the next start draws a new one");
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return new Problem(file, $"cannot be used: {error.Message.TrimEnd('.')}", "Check its permissions, or name another folder with --data");
        }
    }

    /// <summary>Whether a request names the secret, in a time that tells nothing of how much of it was right.</summary>
    public bool IsNamedBy(string? authorization) => CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(authorization ?? ""), expected);
}
