namespace Underturf.Networks.Wiring.HalfWave;

/// <summary>The current of a coil through a period, against the one that holds its plunger in.</summary>
/// <param name="AverageAmperes">The direct part, with the sign of the coil's own direction.</param>
/// <param name="RmsAmperes">Direct part included. The pull grows with the square of the current, so its mean goes with this.</param>
/// <param name="LeastAmperes">The smallest size of the current within the period; at zero only a shading ring or inertia holds.</param>
/// <param name="HoldInAmperes">Rms amperes that hold the plunger in.</param>
public readonly record struct CoilDuty(double AverageAmperes, double RmsAmperes, double LeastAmperes, double HoldInAmperes)
{
    /// <summary>Does the mean pull hold the plunger?</summary>
    public bool Holds => RmsAmperes >= HoldInAmperes;

    internal static CoilDuty Of(Waveform current, double holdInAmperes)
    {
        var least = double.PositiveInfinity;
        foreach (var amperes in current.Samples)
        {
            least = Math.Min(least, Math.Abs(amperes));
        }

        var crosses = current.Least() < 0 && current.Most() > 0;
        return new CoilDuty(current.Average(), current.Rms(), crosses ? 0 : least, holdInAmperes);
    }
}
