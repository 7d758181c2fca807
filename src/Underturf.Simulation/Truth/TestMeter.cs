using Underturf.Networks.Wiring.HalfWave;

namespace Underturf.Simulation;

/// <summary>
/// How the technician's meter works inside, which matters where diodes are: the current that each of its ohm ranges drives and the volts it
/// has for it, and whether its alternating ranges square or rectify. Drawn once for a property; hand-held meters, from memory.
/// </summary>
internal sealed class TestMeter
{
    private const double LowTestShare = 0.25, RectifyingShare = 0.5;
    private static readonly (double MostOhms, double Amperes)[] UsualRanges =
        [(400, 7e-4), (4e3, 1.6e-4), (40e3, 2.5e-5), (400e3, 2.5e-6), (4e6, 2.5e-7), (40e6, 4e-8)];

    public TestMeter(TrueNumbers numbers)
    {
        var even = numbers.Even("test volts");
        var volts = even < LowTestShare ? 0.35 + (0.6 * even) : 1.2 + (2 * even);
        var factor = Math.Exp(0.3 * numbers.Draw("test current"));
        Ranges = [.. UsualRanges.Select(r => (r.MostOhms, TestDrive.ConstantCurrent(r.Amperes * factor, volts)))];
        Response = numbers.Even("rectifying") < RectifyingShare ? MeterResponse.MeanResponding : MeterResponse.TrueRms;
    }

    /// <summary>From fine to coarse: the first that shows a figure is read.</summary>
    public IReadOnlyList<(double MostOhms, TestDrive Drive)> Ranges { get; }

    public MeterResponse Response { get; }
}
