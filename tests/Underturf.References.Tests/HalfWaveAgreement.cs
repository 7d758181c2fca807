using Underturf.Networks.Wiring.HalfWave;
using Underturf.Simulation.SecondEngine;

namespace Underturf.References.Tests;

/// <summary>
/// Average, rms and rectified mean of currents and voltages, ours against a transient of ngspice. The project asks for 1 % of the value; below
/// the floors both engines' steps show, at the corners where diodes start and stop. The studies use this file too.
/// </summary>
internal sealed class HalfWaveAgreement(double amperesFloor, double voltsFloor)
{
    private const double Relative = 0.01;

    private readonly Comparison amperes = new(Relative, amperesFloor);
    private readonly Comparison volts = new(Relative, voltsFloor);
    private string? unsettled;

    /// <summary>Of one shared conductor: 1 % of a milliampere, 10 mV.</summary>
    internal static HalfWaveAgreement OfOneConductor() => new(1e-5, 0.01);

    /// <summary>Of a property, whose stations carry an ampere in all: 30 microamperes, 50 mV.</summary>
    internal static HalfWaveAgreement OfProperty() => new(3e-5, 0.05);

    internal int Count => amperes.Count + volts.Count;

    internal double WorstShare => Math.Max(amperes.WorstShare, volts.WorstShare);

    /// <summary>What is out of bounds, or none.</summary>
    internal string? Disagreement => unsettled ?? amperes.Disagreement ?? volts.Disagreement;

    internal void AddAmperes(Waveform ours, NgspiceTransient reference, string vector, string what) => Add(amperes, ours, reference, vector, amperesFloor, what);

    internal void AddVolts(Waveform ours, NgspiceTransient reference, string vector, string what) => Add(volts, ours, reference, vector, voltsFloor, what);

    private void Add(Comparison comparison, Waveform ours, NgspiceTransient reference, string vector, double floor, string what)
    {
        var scale = reference.Rms(vector);
        if (!(Math.Abs(scale - reference.Rms(vector, periodsAgo: 1)) <= (1e-3 * scale) + floor))
        {
            unsettled ??= $"{what}: the transient has not settled";
        }

        comparison.Add(reference.Average(vector), ours.Average(), $"{what}, average");
        comparison.Add(scale, ours.Rms(), $"{what}, rms");
        comparison.Add(reference.AlternatingMean(vector), ours.AlternatingMean(), $"{what}, rectified mean");
    }
}
