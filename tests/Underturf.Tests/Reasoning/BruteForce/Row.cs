using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Tests.Reasoning.BruteForce;

/// <summary>One reading of a closed path, linear in what is not known.</summary>
/// <param name="Base">Mean with every unknown at its usual value.</param>
/// <param name="Level">Change of the mean when all coils have twice the ohms.</param>
/// <param name="At">The unknowns that other stations share, by number.</param>
/// <param name="Slopes">Change of the mean for one standard deviation of each.</param>
/// <param name="Local">The same for what is not known of the station's own faults.</param>
/// <param name="Own">Variance of what no other reading shares, the instrument's not counted.</param>
/// <param name="Instrument">Nothing for what nobody reads: the volts at a coil.</param>
/// <param name="Step">Width of what is shown as one figure.</param>
internal sealed record Row(double Base, double Level, int[] At, double[] Slopes, double[] Local, double Own, InstrumentPractice? Instrument, double Shown, double Step)
{
    /// <param name="slotOf">The number of an unknown of a fault that stations share; below zero, less one, the number among the station's own.</param>
    public static Row Of(Prediction prediction, InstrumentPractice? instrument, double shown, double step, Func<int, int> slotOf)
    {
        var (at, slopes, local) = (prediction.Shared.ToList(), prediction.Slopes.ToList(), new double[3 * Prediction.AmountsOfOne]);
        for (var i = 0; i < prediction.Amounts.Length; i++)
        {
            if (slotOf(i) is var slot and >= 0)
            {
                at.Add(slot);
                slopes.Add(prediction.Amounts[i]);
            }
            else
            {
                local[-slotOf(i) - 1] = prediction.Amounts[i];
            }
        }

        var kept = Enumerable.Range(0, at.Count).Where(i => slopes[i] != 0).ToList();
        return new Row(prediction.Mean, prediction.LevelSlope, [.. kept.Select(i => at[i])], [.. kept.Select(i => slopes[i])], local.Any(l => l != 0) ? local : [], prediction.OwnVariance, instrument, shown, step);
    }

    /// <summary>Variance of what it has for itself: what no other reading shares, the instrument's chance error, and that of rounding.</summary>
    public double Noise(double mean) => Own + (Instrument?.OwnVariance(mean) ?? 0) + (Step * Step / 12);

    public double LocalWith(Row other)
    {
        var sum = 0.0;
        for (var i = 0; i < Local.Length && i < other.Local.Length; i++)
        {
            sum += Local[i] * other.Local[i];
        }

        return sum;
    }
}
