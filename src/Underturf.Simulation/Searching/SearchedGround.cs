namespace Underturf.Simulation;

/// <summary>
/// Searching as it really goes in a made-up property: ground is gone over strip by strip, so that half of it covered finds half, and going over
/// it again finds little more; the model's detection falls off exponentially instead. What a way cannot see it never finds.
/// </summary>
internal sealed class SearchedGround(SearchScene scene)
{
    /// <summary>Found where ground was covered once, and of what is left where it was covered three times.</summary>
    private const double Once = 0.9, Again = 0.9;

    /// <summary>Among roots a rod is held up and a hole takes longer; no number of the practice book.</summary>
    private const double RootedSpeed = 0.65;

    private static readonly Dictionary<string, double> Speeds = new(StringComparer.Ordinal) { ["look over"] = 14, ["probe rod"] = 1, ["hand dig"] = 0.06 };

    private readonly Dictionary<string, double> covered = new(StringComparer.Ordinal);

    /// <summary>Chance that it has not been found yet.</summary>
    public double Missing { get; private set; } = 1;

    /// <summary>Minutes in which so much ground is covered once.</summary>
    public static double Minutes(string how, double squareMetres) => squareMetres / Speeds[how];

    /// <summary>Searches a piece of ground evenly.</summary>
    /// <param name="holds">It lies there.</param>
    /// <returns>Minutes spent on average: who finds it does so half way.</returns>
    public double Search(string how, bool holds, double squareMetres, double minutes) => Search(how, holds, squareMetres, minutes, minutes);

    /// <param name="squareMetres">Of the piece that may hold it.</param>
    /// <param name="there">Minutes spent in that piece.</param>
    /// <param name="minutes">Minutes spent in all.</param>
    public double Search(string how, bool holds, double squareMetres, double there, double minutes)
    {
        var before = Missing;
        if (holds && scene.Seen[how])
        {
            var was = covered.GetValueOrDefault(how);
            covered[how] = was + ((scene.AmongRoots && how != "look over" ? RootedSpeed : 1) * there / Minutes(how, squareMetres));
            Missing *= (1 - Found(covered[how])) / (1 - Found(was));
        }

        return minutes * (before + Missing) / 2;
    }

    private static double Found(double coverage) => (Once * Math.Min(1, coverage)) + ((1 - Once) * Again * Math.Clamp((coverage - 1) / 2, 0, 1));
}
