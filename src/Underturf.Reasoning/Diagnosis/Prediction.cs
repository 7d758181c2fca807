using Underturf.Property.Practice;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>What an instrument would show, and how that hangs on what is not known, before the instrument's own chance error.</summary>
/// <param name="Mean">In the SI unit of the reading, with every shared unknown at its usual value.</param>
/// <param name="LevelSlope">Change of the mean when all coils on the property's level have twice the ohms, to first order in the ohms.</param>
/// <param name="OwnVariance">Of what no other reading shares: drift from one reading to the next.</param>
/// <param name="IsOpen">No path: what wet soil passes is all that is left.</param>
/// <param name="IsTouched">A suspect lies in the measured path.</param>
/// <param name="Shared">The unknowns it hangs on, by their numbers in <see cref="Unknowns"/>, the level left out.</param>
/// <param name="Slopes">Change of the mean for one standard deviation of each of them.</param>
internal sealed record Prediction(double Mean, double LevelSlope, double OwnVariance, bool IsOpen, bool IsTouched, int[] Shared, double[] Slopes)
{
    /// <summary>How many of <see cref="Amounts"/> each suspect has: its ohms, then the coil and the wire of a further valve, and where in its stretch it sits.</summary>
    public const int AmountsOfOne = 4;

    public const int FurtherCoil = 1;

    public const int FurtherWire = 2;

    public const int Along = 3;

    /// <summary>
    /// Change of the mean for one standard deviation of what is not known of each suspect, so that readings of one fault share it. Empty where that is counted
    /// in the own variance.
    /// </summary>
    public double[] Amounts { get; init; } = [];

    /// <summary>The same on half waves, of which the instrument shows a share that is not known well; how far it is off stays with the reading.</summary>
    public Prediction On(Spread? halfWave) => halfWave is null ? this : Of(halfWave.Median, halfWave.LogSpread);

    private Prediction Of(double share, double logSpread) => this with
    {
        Mean = share * Mean,
        LevelSlope = share * LevelSlope,
        OwnVariance = share * share * (OwnVariance + (Mean * Mean * logSpread * logSpread)),
        Slopes = [.. Slopes.Select(s => share * s)],
        Amounts = [.. Amounts.Select(a => share * a)],
    };

    /// <summary>No path.</summary>
    public static Prediction Open(bool touched) => new(double.PositiveInfinity, 0, 0, true, touched, [], []);

    /// <summary>Nothing to show: no volts, no current.</summary>
    public static Prediction Nothing(bool touched) => new(0, 0, 0, false, touched, [], []);
}
