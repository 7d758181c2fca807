namespace Underturf.Papers;

/// <summary>
/// Shortening that keeps what tells one name from another. Of a list whole items go and "and 3 more" says so; of a single name the middle goes,
/// because names of a garden differ at both ends ("north long border 1", "north long border 2").
/// </summary>
internal static class Shorten
{
    private const string Gap = " … ";

    /// <summary>The items as one text of at most so many lines.</summary>
    public static string List(IReadOnlyList<string> items, TextStyle style, double widthPoints, int mostLines)
    {
        for (var shown = items.Count; shown > 1; shown--)
        {
            var text = string.Join(", ", items.Take(shown)) + (shown < items.Count ? $" and {items.Count - shown} more" : string.Empty);
            if (Fits(text, style, widthPoints, mostLines))
            {
                return text;
            }
        }

        var more = items.Count > 1 ? $" and {items.Count - 1} more" : string.Empty;
        return items.Count == 0 ? string.Empty : Name(items[0], style, widthPoints, mostLines, more);
    }

    /// <summary>One name of at most so many lines, its middle left out where it is too long.</summary>
    public static string Name(string name, TextStyle style, double widthPoints, int mostLines, string after = "")
    {
        var plain = PlainText.Of(name);
        if (Fits(plain + after, style, widthPoints, mostLines))
        {
            return plain + after;
        }

        // Fits is monotone in how much is kept, so halving finds the most.
        var (least, most) = (0, Math.Min(plain.Length, 2000));
        while (least < most)
        {
            var middle = (least + most + 1) / 2;
            (least, most) = Fits(Kept(plain, middle) + after, style, widthPoints, mostLines) ? (middle, most) : (least, middle - 1);
        }

        return Kept(plain, least) + after;
    }

    private static string Kept(string plain, int letters)
    {
        var head = (letters * 3 / 5) + 1;
        var tail = letters - head;
        head -= head < plain.Length && char.IsHighSurrogate(plain[head - 1]) ? 1 : 0;
        tail -= tail > 0 && char.IsLowSurrogate(plain[^tail]) ? 1 : 0;
        return tail <= 0 ? plain[..Math.Min(head, plain.Length)] + "…" : WholeHead(plain[..head]) + Gap + WholeTail(plain[^tail..]);
    }

    /// <summary>Without a word broken off at its end, where it is not most of what is left.</summary>
    private static string WholeHead(string head) => head.LastIndexOf(' ') is var space && space > head.Length / 2 ? head[..space] : head.TrimEnd();

    /// <summary>Without a word broken off at its start.</summary>
    private static string WholeTail(string tail) => tail.IndexOf(' ', StringComparison.Ordinal) is var space && space >= 0 && space < tail.Length / 2 ? tail[(space + 1)..] : tail;

    private static bool Fits(string text, TextStyle style, double widthPoints, int mostLines) =>
        Typeface.WidthPoints(text, style) <= widthPoints * mostLines && TextWrap.Lines(text, style, widthPoints).Count <= mostLines;
}
