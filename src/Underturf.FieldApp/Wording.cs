using System.Globalization;

namespace Underturf.FieldApp;

/// <summary>How the page says numbers.</summary>
public static class Wording
{
    /// <summary>A probability as a whole per cent; never a flat 0 or 100, which would claim certainty.</summary>
    public static string Percent(double probability) => probability switch
    {
        < 0.005 => "<1 %",
        > 0.995 => ">99 %",
        _ => $"{Whole(100 * probability)} %",
    };

    /// <summary>Width of a bar for a probability, as a CSS length.</summary>
    public static string Width(double probability) =>
        $"{(100 * Math.Clamp(probability, 0, 1)).ToString("0.#", CultureInfo.InvariantCulture)}%";

    /// <summary>How much is done, as a number of HTML.</summary>
    public static string Share(double share) => Math.Clamp(share, 0, 1).ToString("0.###", CultureInfo.InvariantCulture);

    /// <summary>A day, as people write it: "2 April 2031".</summary>
    public static string Day(DateTimeOffset at) => at.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>Minutes, whole; under one minute says so.</summary>
    public static string Minutes(double minutes) => minutes < 1 ? "<1 min" : $"{Whole(minutes)} min";

    /// <summary>A number of photos.</summary>
    public static string Photos(int count) => count == 1 ? "1 photo" : $"{count} photos";

    /// <summary>A number of notes.</summary>
    public static string Notes(long count) => count == 1 ? "1 note" : $"{count} notes";

    /// <summary>Which way a reading speaks, under a heading that says "speaks".</summary>
    public static string Way(string speaks) => speaks.StartsWith("speaks ", StringComparison.Ordinal) ? speaks["speaks ".Length..] : speaks;

    /// <summary>A base-ten logarithm of a likelihood ratio as the odds it stands for, whichever way they go; nothing where it says little.</summary>
    public static string Odds(double weight)
    {
        var times = Math.Pow(10, Math.Abs(weight));
        return times < 1.5 ? "" : times >= 1000 ? "over 1000 to 1" : $"{times.ToString(times < 10 ? "0.#" : "0", CultureInfo.InvariantCulture)} to 1";
    }

    /// <summary>What the core says in the middle of a sentence, at the beginning of one.</summary>
    public static string Sentence(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    private static string Whole(double value) => Math.Round(value).ToString("0", CultureInfo.InvariantCulture);
}
