using Underturf.Quantities;

namespace Underturf.Networks.Hydraulics.Emptying;

/// <summary>When a hole is dry, from two levels in it and the time between, where nobody knows the pipes.</summary>
public static class TimedLevels
{
    /// <summary>
    /// Three laws bound it, for levels h over where it runs dry: a pump takes the same all the time (h falls evenly), water leaves by its weight
    /// (sqrt h falls evenly), or it seeps away (h falls by the same share).
    /// </summary>
    /// <param name="firstMetres">Level over the height below which the hole counts as dry.</param>
    /// <param name="secondMetres">Level later, lower.</param>
    /// <param name="secondsBetween">Between the two.</param>
    /// <param name="errorMetres">How far each reading may be off.</param>
    /// <param name="leastHoleSquareMetres">Area of the water's surface, at least.</param>
    /// <param name="mostHoleSquareMetres">At most.</param>
    /// <returns>Seconds from the second reading on and what is left in the hole by then, or why it cannot be told yet.</returns>
    public static Outcome<EmptyingEstimate> UntilDry(
        double firstMetres, double secondMetres, double secondsBetween, double errorMetres, double leastHoleSquareMetres, double mostHoleSquareMetres)
    {
        if (!(secondsBetween > 0 && errorMetres > 0 && secondMetres >= 0 && leastHoleSquareMetres >= 0 && mostHoleSquareMetres >= leastHoleSquareMetres))
        {
            return new Problem("levels in the hole", "are not two readings of one fall", "Give two levels over the bottom, the time between them and how well they were read");
        }

        if (firstMetres - secondMetres <= 2 * errorMetres)
        {
            return firstMetres < secondMetres
                ? new Problem("levels in the hole", "rise: something still feeds it", "Find and shut what feeds it, then read again")
                : new Problem("levels in the hole", "differ by no more than they can be read", "Wait longer and read again");
        }

        var (low, high) = (Math.Max(secondMetres - errorMetres, 0), secondMetres + errorMetres);
        return new EmptyingEstimate(
            leastHoleSquareMetres * low,
            mostHoleSquareMetres * high,
            low * secondsBetween / (firstMetres + errorMetres - low),
            SeepingSeconds(firstMetres - errorMetres, high, secondsBetween, errorMetres));
    }

    /// <summary>By the slowest law, down to what can be read: t = ln(h2 / e) / ln(h1 / h2) of the time between.</summary>
    private static double SeepingSeconds(double first, double second, double between, double error) =>
        second <= error ? 0 : between * Math.Log(second / error) / Math.Log(first / second);
}
