namespace Underturf.Simulation;

/// <summary>How large a made-up property is and how its technician errs.</summary>
/// <param name="Stations">How many stations; nothing for 6 to 20.</param>
/// <param name="Faults">How many faults; nothing for one or two.</param>
/// <param name="TailShare">Share of readings whose error is drawn four times as wide as the instrument's.</param>
/// <param name="WrongShare">Share of readings noted under another station than the one read.</param>
/// <param name="LookShare">Share of boxes that the technician opens and looks into.</param>
/// <param name="OtherGaugeShare">Share of cable runs of another gauge than usual.</param>
/// <param name="SpareEnds">Conductor ends in boxes that nobody knows the use of.</param>
/// <param name="SecondEngineShare">Share of the readings of the wiring that another engine solves than the one that belief uses.</param>
public sealed record WorldShape(
    int? Stations = null,
    int? Faults = null,
    double TailShare = 0,
    double WrongShare = 0,
    double LookShare = 0,
    double OtherGaugeShare = 0,
    int SpareEnds = 0,
    double SecondEngineShare = 0)
{
    /// <summary>What the coverage study is made of: small, and read without a slip.</summary>
    public static WorldShape Small { get; } = new();

    /// <summary>A property as one takes it over: now and then a bad reading, a slip of the pen, another gauge, spare ends.</summary>
    public static WorldShape Whole(int stations, int faults) => new(stations, faults, 0.05, 0.01, 0.3, 0.15, stations / 5);
}
