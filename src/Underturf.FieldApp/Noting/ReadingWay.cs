using Underturf.Property.Practice;

namespace Underturf.FieldApp;

/// <summary>A way to take a reading, as the form asks for it.</summary>
/// <param name="Name">As the log names it.</param>
/// <param name="Least">How many stations it must name.</param>
/// <param name="Stations">How many stations it can name.</param>
/// <param name="Elsewhere">True where the instrument is not at the controller, so that a place is asked for.</param>
/// <param name="Units">What the display can show, the usual one first.</param>
public sealed record ReadingWay(string Name, int Least, int Stations, bool Elsewhere, IReadOnlyList<string> Units)
{
    private static readonly string[] ohms = ["ohm", "kohm", "Mohm"];
    private static readonly string[] volts = ["V", "mV"];
    private static readonly string[] amperes = ["A", "mA"];
    private static readonly string[] flows = ["gpm", "L/min", "m3/h"];
    private static readonly string[] pressures = ["psi", "kPa", "bar"];
    private static readonly string[] times = ["s", "min"];
    private static readonly string[] lengths = ["in", "cm", "ft"];

    /// <summary>Every way that the practice book names, those that belief weighs first.</summary>
    public static IReadOnlyList<ReadingWay> All { get; } =
        [.. PracticeBook.Default.Probes.Select(Of), .. PracticeBook.Default.Water.Probes.Where(p => p.Measures != WaterMeasure.Evenness).Select(Of)];

    /// <summary>What comes in: of one station that runs, or with everything off.</summary>
    public static ReadingWay Meter { get; } = Of(PracticeBook.Default.Water.ProbeOf(WaterMeasure.MeterFlow)!);

    public static ReadingWay Named(string name) => All.FirstOrDefault(way => way.Name == name) ?? new ReadingWay(name, 0, 0, false, [.. ohms, .. volts, .. amperes, .. flows, .. pressures, .. times]);

    private static ReadingWay Of(WaterProbe probe) => new(
        probe.Name,
        probe.Measures is WaterMeasure.StaticPressure or WaterMeasure.MeterFlow or WaterMeasure.HoleLevel ? 0 : 1,
        probe.Measures is WaterMeasure.StaticPressure or WaterMeasure.HoleLevel ? 0 : 1,
        probe.Measures == WaterMeasure.HoleLevel,
        probe.Measures switch
        {
            WaterMeasure.MeterFlow => flows,
            WaterMeasure.OpeningTime or WaterMeasure.ClosingTime => times,
            WaterMeasure.HoleLevel => lengths,
            _ => pressures,
        });

    private static ReadingWay Of(ProbePractice probe) => new(
        probe.Name,
        StationsOf(probe),
        StationsOf(probe),
        probe.At != Stand.Controller,
        probe.Measures switch
        {
            Measure.TerminalVolts or Measure.CoilVolts or Measure.SupplyVolts => volts,
            Measure.StationAmps => amperes,
            _ => ohms,
        });

    private static int StationsOf(ProbePractice probe) => probe.Measures switch { Measure.BetweenStationsOhms => 2, Measure.SupplyVolts => 0, _ => 1 };
}
