using Underturf.Networks.Wiring;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>An ohm reading with its solution.</summary>
internal sealed record DeadReading(Prediction Prediction, OhmsReading Solution)
{
    /// <summary>
    /// The reading with ohms put in series with an element. Where the element carries the whole current (share squared is one) they add to
    /// the reading and change nothing else; where it carries none they do nothing; in between the circuit has to be solved again.
    /// </summary>
    /// <param name="logSpread">Standard deviation of the logarithm of the ohms.</param>
    /// <returns>The prediction, or nothing where it has to be solved.</returns>
    public Prediction? InSeries(int element, double ohms, double logSpread)
    {
        if (Prediction.IsOpen)
        {
            return Prediction with { IsTouched = true };
        }

        var slope = Solution.Sensitivity(element);
        if (!slope.Succeeded || (slope.Value > Rounding && slope.Value < 1 - Rounding))
        {
            return null;
        }

        var carried = slope.Value > 0.5 ? ohms : 0;
        return Prediction with
        {
            Mean = Prediction.Mean + carried,
            Variance = Prediction.Variance + (carried * logSpread * carried * logSpread),
            IsTouched = true,
        };
    }

    private const double Rounding = 1e-9;
}
