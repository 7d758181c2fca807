using System.Text;

namespace Underturf.Papers;

internal enum Weight
{
    Regular,
    SemiBold,
    Bold,
}

/// <summary>The typeface of the papers in its three weights, from the bytes that the room carries.</summary>
internal static class Typeface
{
    /// <summary>Stands for a letter that the typeface lacks.</summary>
    public const char StandIn = '?';

    private static readonly FontFile[] files = [Load("regular"), Load("semibold"), Load("bold")];

    public static FontFile File(Weight weight) => files[(int)weight];

    public static double WidthPoints(string text, TextStyle style)
    {
        var file = File(style.Weight);
        return text.EnumerateRunes().Sum(file.Advance) * style.SizePoints;
    }

    /// <summary>The text with a stand-in for each letter that the typeface lacks (and for all beyond the basic plane).</summary>
    public static string Printable(string text)
    {
        var file = File(Weight.Regular);
        var shown = new StringBuilder(text.Length);
        foreach (var letter in text.EnumerateRunes())
        {
            shown.Append(letter.IsBmp && file.Has(letter) ? (char)letter.Value : StandIn);
        }

        return shown.ToString();
    }

    private static FontFile Load(string name)
    {
        using var stream = typeof(Typeface).Assembly.GetManifestResourceStream($"fonts/{name}.ttf")
            ?? throw new InvalidOperationException($"The typeface fonts/{name}.ttf is not in the room");
        using var copy = new MemoryStream();
        stream.CopyTo(copy);
        return new FontFile(copy.ToArray());
    }
}
