using System.Text;

namespace Underturf.Papers;

/// <summary>Text into lines of a width: broken between words, within a word only where the word alone is wider.</summary>
internal static class TextWrap
{
    /// <summary>At least one line, so that an empty text keeps its place.</summary>
    public static IReadOnlyList<string> Lines(string text, TextStyle style, double widthPoints)
    {
        var lines = new List<string>();
        var line = string.Empty;
        foreach (var word in Words(PlainText.Of(text)))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (Typeface.WidthPoints(longer, style) <= widthPoints)
            {
                line = longer;
                continue;
            }

            if (line.Length > 0)
            {
                lines.Add(line);
            }

            line = Break(word, style, widthPoints, lines);
        }

        lines.Add(line);
        return lines;
    }

    /// <summary>A percent sign stays with its figure.</summary>
    private static List<string> Words(string text)
    {
        var words = new List<string>();
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (word[0] == '%' && words.Count > 0)
            {
                words[^1] = $"{words[^1]} {word}";
            }
            else
            {
                words.Add(word);
            }
        }

        return words;
    }

    /// <summary>Adds the full lines of a word that is too wide and gives back what is left of it.</summary>
    private static string Break(string word, TextStyle style, double widthPoints, List<string> lines)
    {
        var file = Typeface.File(style.Weight);
        var piece = new StringBuilder();
        var width = 0.0;
        foreach (var letter in word.EnumerateRunes())
        {
            var advance = file.Advance(letter) * style.SizePoints;
            if (width + advance > widthPoints && piece.Length > 0)
            {
                lines.Add(piece.ToString());
                piece.Clear();
                width = 0;
            }

            piece.Append(letter.ToString());
            width += advance;
        }

        return piece.ToString();
    }
}
