using Underturf.Property.Practice;

namespace Underturf.Simulation;

/// <summary>
/// Searching as it really goes in a made-up property: what is covered half is found half the time and what is covered whole nine times of
/// ten, not by the model's exponential; what a way cannot see it never finds.
/// </summary>
internal sealed class SearchedGround(SearchScene scene, LocatingPractice book)
{
    private const double Whole = 0.9;

    private readonly Dictionary<string, double> covered = new(StringComparer.Ordinal);

    /// <summary>Chance that it has not been found yet.</summary>
    public double Missing { get; private set; } = 1;

    /// <summary>Searches a square or disc of ground; minutes count by the chance that they are still needed.</summary>
    /// <returns>Minutes spent, on average over finding it half way.</returns>
    public double Search(string how, bool holds, double squareMetres, double minutes)
    {
        var before = Missing;
        if (holds && scene.Seen[how])
        {
            var was = covered.GetValueOrDefault(how);
            var now = was + (book.SearchBy(how)!.SquareMetresPerMinute * minutes / squareMetres);
            covered[how] = now;
            Missing *= (1 - Found(now)) / (1 - Found(was));
        }

        return minutes * (before + Missing) / 2;
    }

    private static double Found(double coverage) => Whole * Math.Min(1, coverage) + ((1 - Whole) * 0.9 * Math.Clamp((coverage - 1) / 2, 0, 1));
}
