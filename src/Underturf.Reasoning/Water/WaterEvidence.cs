using Underturf.FieldLog;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Water;

/// <summary>
/// What the meter of a station that ran alone says of how many places its wires water, or that they water none: a message, so that its readings enter
/// belief once. All else that the water may have is summed out.
/// </summary>
/// <param name="logChances">For each number of places, the first none, ln of how likely its readings of water are beside the likeliest number.</param>
/// <param name="logUnmodelled">The same where the wires may have anything.</param>
/// <param name="run">A run of it that nobody has watched.</param>
internal sealed class WaterEvidence(Moment moment, string station, double[] logChances, double logUnmodelled, RunEvidence run) : Evidence(moment, [station])
{
    /// <summary>Words for each number of places.</summary>
    public required IReadOnlyList<string> Expected { get; init; }

    /// <summary>The water has its own faults for a reading that is off.</summary>
    public override bool CanBeMisread => false;

    protected override double LogChanceUnmodelled => logUnmodelled;

    public override double Surprise(Outlook outlook) => -LogChanceActive([], outlook, null) / Math.Log(10);

    public override double ChanceToRepeat(Suspect[] active, Outlook outlook) => Math.Exp(LogChanceActive(active, outlook, null));

    /// <summary>What the wiring makes of the station: chance of each number of places, the first none.</summary>
    public static double[] Places(RunEvidence run, Suspect[] active, Outlook outlook, int most)
    {
        var shut = run.ChancesOf(active, outlook).StaysShut;
        var chances = new double[most + 1];
        chances[0] = shut;
        chances[Math.Min(most, 1 + run.MorePlaces(active))] = 1 - shut;
        return chances;
    }

    protected override double LogChanceActive(Suspect[] active, Outlook outlook, JointReadings? before) =>
        Math.Log(Math.Max(double.Epsilon, Places(run, active, outlook, logChances.Length - 1).Zip(logChances, (chance, log) => chance * Math.Exp(log)).Sum()));

    protected override string PredictedActive(Suspect[] active, Outlook outlook)
    {
        var chances = Places(run, active, outlook, logChances.Length - 1);
        return Expected[Array.IndexOf(chances, chances.Max())];
    }
}
