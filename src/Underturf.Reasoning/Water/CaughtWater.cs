using Underturf.FieldLog;

namespace Underturf.Reasoning.Water;

/// <summary>What cans caught that were set out over a station.</summary>
/// <param name="Evenness">
/// Distribution uniformity of the lowest quarter: mean depth of the quarter of the cans that caught least, by the mean of all (Merriam and Keller,
/// "Farm irrigation system evaluation", 1978; from memory). A quarter of a number that is no multiple of four takes the can at the limit in part.
/// </param>
/// <param name="MetresPerSecond">Rate of application: the mean depth by the time it ran; nothing where nobody noted that.</param>
public sealed record CaughtWater(int Cans, double Evenness, double? MetresPerSecond)
{
    /// <summary>"evenness 0.62 of 12 cans, 14 mm/h".</summary>
    public string Say(WaterSay say) => $"evenness {WaterSay.Share(Evenness)} of {Cans} cans{(MetresPerSecond is { } rate ? $", {say.Rate(rate)}" : string.Empty)}";

    /// <summary>Nothing where no can caught anything.</summary>
    internal static CaughtWater? Of(CatchFact fact)
    {
        double[] depths = [.. fact.Cans.Select(c => c.Metres).Order()];
        var mean = depths.Average();
        return mean > 0 ? new CaughtWater(depths.Length, LowestQuarter(depths) / mean, fact.Minutes is > 0 and var minutes ? mean / (60 * minutes) : null) : null;
    }

    private static double LowestQuarter(double[] rising)
    {
        var (quarter, sum) = (rising.Length / 4.0, 0.0);
        for (var i = 0; i < quarter; i++)
        {
            sum += Math.Min(1, quarter - i) * rising[i];
        }

        return sum / quarter;
    }
}
