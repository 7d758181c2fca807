using Underturf.Quantities;

namespace Underturf.Networks.Wiring.Instruments;

/// <summary>
/// Ohms from a conductor to an earth pin with the leads both ways. Copper in wet soil and a steel pin make a battery that adds to one
/// reading and takes from the other.
/// </summary>
/// <remarks>
/// With test currents I and J, a = R + E / I and b = R - E / J, hence R = (I a + J b) / (I + J) and E = I J (a - b) / (I + J); in one range
/// the mean and half the difference times the current (exact).
/// </remarks>
/// <param name="Ohms">Of the leakage, the couple taken out.</param>
/// <param name="Galvanic">Volts that opposed the first reading.</param>
public sealed record EarthOhms(MeasuredOhms Ohms, MeasuredVolts Galvanic)
{
    private const string Place = "ohms to earth";

    /// <param name="forward">Plus lead on the conductor.</param>
    /// <param name="reversed">Plus lead on the pin.</param>
    public static Outcome<EarthOhms> From(Ohmmeter meter, Shown forward, Shown reversed)
    {
        if (forward.IsOverRange || reversed.IsOverRange)
        {
            return new Problem(
                Place,
                forward.IsOverRange && reversed.IsOverRange
                    ? "both readings are over the range: no leak that this meter sees"
                    : "one of the two readings is over the range",
                "Take both in the same coarse range, or note the pair as it is");
        }

        var (a, b) = (meter.Read(forward), meter.Read(reversed));
        var (i, j) = (meter.TestAmperesOf(forward), meter.TestAmperesOf(reversed));
        var (shareA, shareB) = (i / (i + j), j / (i + j));
        var ohms = (shareA * a.Ohms) + (shareB * b.Ohms);
        var volts = i * shareB * (a.Ohms - b.Ohms);
        return new EarthOhms(
            new MeasuredOhms(ohms, double.Hypot(shareA * a.SpreadOhms, shareB * b.SpreadOhms)),
            new MeasuredVolts(volts, i * shareB * double.Hypot(a.SpreadOhms, b.SpreadOhms)));
    }
}
