using System.Globalization;
using System.Text;

namespace Underturf.Papers;

/// <summary>Somebody's text made safe to set: no control characters, no half letters, nothing that turns the writing direction of what follows.</summary>
internal static class PlainText
{
    public static string Of(string text)
    {
        var plain = new StringBuilder(text.Length);
        foreach (var letter in text.EnumerateRunes())
        {
            var category = Rune.GetUnicodeCategory(letter);
            if (category is UnicodeCategory.Control or UnicodeCategory.SpaceSeparator or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator)
            {
                Space(plain);
            }
            else if (category is not (UnicodeCategory.Format or UnicodeCategory.OtherNotAssigned or UnicodeCategory.Surrogate))
            {
                plain.Append(letter.ToString());
            }
        }

        return plain.ToString().TrimEnd();
    }

    private static void Space(StringBuilder plain)
    {
        if (plain.Length > 0 && plain[^1] != ' ')
        {
            plain.Append(' ');
        }
    }
}
