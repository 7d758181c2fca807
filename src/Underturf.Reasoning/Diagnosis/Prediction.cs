namespace Underturf.Reasoning.Diagnosis;

/// <summary>What an instrument would show, with its spread, before the instrument's own error.</summary>
/// <param name="Mean">In the SI unit of the reading, with coils at the practice book's ohms.</param>
/// <param name="LevelSlope">Change of the mean when all coils on the property's level have e times the ohms, to first order in the ohms.</param>
/// <param name="Variance">Of all that is not shared: lengths, soil, single coils, the fault's own ohms.</param>
/// <param name="IsOpen">No path: what wet soil passes is all that is left.</param>
/// <param name="IsTouched">The suspect lies in the measured path.</param>
internal readonly record struct Prediction(double Mean, double LevelSlope, double Variance, bool IsOpen, bool IsTouched)
{
    /// <summary>The mean with the property's usual coil at <c>exp(logLevel)</c> times the practice book's ohms.</summary>
    public double MeanAt(double logLevel) => Math.Max(0, Mean + (LevelSlope * (Math.Exp(logLevel) - 1)));
}
