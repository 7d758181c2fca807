namespace Underturf.Simulation;

/// <summary>How large a made-up property is and how its technician errs.</summary>
/// <param name="Stations">How many stations; nothing for 6 to 20.</param>
/// <param name="Faults">How many faults; nothing for one or two in a small property, one to six in a whole one.</param>
/// <param name="TailShare">Share of readings whose error is drawn four times as wide as the instrument's.</param>
/// <param name="WrongShare">Share of readings noted under another station than the one read.</param>
/// <param name="LookShare">Share of boxes that the technician opens and looks into.</param>
/// <param name="OtherGaugeShare">Share of runs along which the gauge changes.</param>
/// <param name="SpareEnds">Conductor ends in boxes that nobody knows the use of.</param>
/// <param name="BuriedShare">Share of boxes that nobody has found.</param>
/// <param name="SameStationShare">Share of faults that fall on a station which has one.</param>
/// <param name="SecondEngineShare">Share of the readings of the wiring that another engine solves than the one that belief uses.</param>
/// <param name="FirstLookOnly">The visit is what a trial begins with: every station run and its ohms swept, nothing else.</param>
public sealed record WorldShape(
    int? Stations = null,
    int? Faults = null,
    double TailShare = 0,
    double WrongShare = 0,
    double LookShare = 0,
    double OtherGaugeShare = 0,
    int SpareEnds = 0,
    double BuriedShare = 0,
    double SameStationShare = 0,
    double SecondEngineShare = 0,
    bool FirstLookOnly = false)
{
    /// <summary>What the coverage study is made of: small, and read without a slip.</summary>
    public static WorldShape Small { get; } = new();

    /// <summary>
    /// A property as one takes it over: built in phases, boxes lost, gauges changed half way, now and then a bad reading, a slip of the pen,
    /// a station with two faults.
    /// </summary>
    public static WorldShape Whole(int stations, int? faults) => new(stations, faults)
    {
        TailShare = 0.05,
        WrongShare = 0.01,
        LookShare = 0.3,
        OtherGaugeShare = 0.1,
        SpareEnds = stations / 5,
        BuriedShare = 0.12,
        SameStationShare = 0.1,
    };

    /// <summary>What a trial begins with: small where no number of stations is given, else whole; visited for the complaint and the sweep only.</summary>
    public static WorldShape Trial(int? stations, int? faults) => (stations is { } many ? Whole(many, faults) : Small with { Faults = faults }) with { FirstLookOnly = true };
}
