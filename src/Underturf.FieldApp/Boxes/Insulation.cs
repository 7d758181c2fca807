namespace Underturf.FieldApp;

/// <summary>How insulation that is named in words is drawn: a body and, where there is one, a stripe. The words stand beside it always.</summary>
/// <param name="Body">One of <see cref="Usual"/>.</param>
/// <param name="Stripe">One of <see cref="Usual"/>.</param>
public sealed record Insulation(string Body, string? Stripe)
{
    private static readonly Dictionary<string, string> otherWords = new(StringComparer.OrdinalIgnoreCase) { ["gray"] = "grey", ["violet"] = "purple", ["beige"] = "tan" };

    /// <summary>The colours that are offered, and that can be drawn.</summary>
    public static IReadOnlyList<string> Usual { get; } = ["red", "white", "black", "blue", "green", "yellow", "orange", "brown", "purple", "grey", "pink", "tan"];

    /// <summary>Nothing where no word of it is a colour that can be drawn.</summary>
    public static Insulation? Of(string? words)
    {
        var colours = (words ?? "").Split([' ', '/', '-', ',', '(', ')'], StringSplitOptions.RemoveEmptyEntries)
            .Select(word => otherWords.GetValueOrDefault(word, word.ToLowerInvariant())).Where(word => Usual.Contains(word)).Take(2).ToList();
        return colours.Count == 0 ? null : new Insulation(colours[0], colours.ElementAtOrDefault(1));
    }
}
