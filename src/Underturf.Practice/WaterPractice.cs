using System.Text.Json.Serialization;

namespace Underturf.Property.Practice;

/// <summary>What a reading of water is a reading of.</summary>
public enum WaterMeasure
{
    /// <summary>Flow through the meter, with the stations that run, or with none.</summary>
    MeterFlow,

    /// <summary>Pressure at the point of connection with nothing running.</summary>
    StaticPressure,

    /// <summary>The same with the named stations running.</summary>
    RunningPressure,

    /// <summary>Pressure at the outlets of the named station, running.</summary>
    OutletPressure,

    /// <summary>Seconds until a station's valve is open.</summary>
    OpeningTime,

    /// <summary>Seconds until it is shut.</summary>
    ClosingTime,

    /// <summary>How high water stands in a hole.</summary>
    HoleLevel,

    /// <summary>How evenly a station waters: of cans that were set out, the mean of the lowest quarter by the mean of all.</summary>
    Evenness,
}

/// <summary>An instrument for water: its error is accuracy times the reading plus a floor; it displays in steps.</summary>
/// <param name="Accuracy">Standard deviation as a share of the reading, of which all its readings have a part in common.</param>
/// <param name="Floor">Standard deviation at zero, in the SI unit of its dimension.</param>
/// <param name="Step">Smallest step of the display.</param>
/// <param name="Repeat">The part of its accuracy that is new with each reading of the same thing; all of it where nothing is said.</param>
public sealed record WaterInstrument(string Name, string Source, Quantities.Dimension Dimension, bool Owned, double Accuracy, double Floor, double Step, double? Repeat = null)
{
    /// <summary>Standard deviation of what is read about what is there, the display's own step counted in.</summary>
    /// <param name="step">As it was written, where that is coarser.</param>
    public double Sigma(double si, double step) => double.Hypot(Shared * si, Own(si, step));

    /// <summary>The part of it that is new with each reading of the same thing.</summary>
    public double Own(double si, double step)
    {
        var shown = Math.Max(Step, step);
        return Math.Sqrt((New * si * New * si) + (Floor * Floor) + (shown * shown / 12));
    }

    /// <summary>The part that all its readings have in common, as a share of the reading.</summary>
    [JsonIgnore]
    public double Shared => Math.Sqrt(Math.Max(0, (Accuracy * Accuracy) - (New * New)));

    private double New => Repeat ?? Accuracy;
}

/// <summary>A way to take a reading of water.</summary>
public sealed record WaterProbe(string Name, string Source, string Say, string Instrument, WaterMeasure Measures, double Minutes, string Caution);

/// <summary>Something that one who walks along sees.</summary>
/// <param name="Imagined">Chance to note it where nothing is wrong.</param>
public sealed record WaterSight(string Name, string Source, string Say, double Imagined);

/// <summary>What a fault of the water sits on.</summary>
public enum WaterScope
{
    /// <summary>One station's valve lets water through that it should not.</summary>
    Valve,

    /// <summary>A piece of mainline between isolation valves.</summary>
    Main,

    /// <summary>What a station waters with, and its valve while it runs.</summary>
    Station,

    /// <summary>All that comes in at the point of connection.</summary>
    Supply,

    /// <summary>The meter itself.</summary>
    Meter,

    /// <summary>Somebody else draws water behind the meter, now and then.</summary>
    Elsewhere,
}

/// <summary>One fault of the water as data: where it sits, how often it does, and what it does to flows, pressures, times and to what one sees.</summary>
public sealed record WaterFault
{
    public required string Id { get; init; }

    public required string Source { get; init; }

    public required string Say { get; init; }

    public required WaterScope Scope { get; init; }

    /// <summary>Chance that one part of its scope has it; of a mainline for each 100 m.</summary>
    public required double Rate { get; init; }

    /// <summary>What runs where nothing should.</summary>
    public Spread? LeaksLitresPerMinute { get; init; }

    /// <summary>What a running station gives, as a share of what it gave.</summary>
    public Spread? FlowFactor { get; init; }

    /// <summary>What a running station gives besides.</summary>
    public Spread? AddsLitresPerMinute { get; init; }

    /// <summary>Pressure at the outlets, as a share of the usual.</summary>
    public Spread? OutletPressureFactor { get; init; }

    /// <summary>Pressure at rest, as a share of the usual.</summary>
    public Spread? StaticFactor { get; init; }

    /// <summary>Head lost on the way to the point of connection, as a share of the usual.</summary>
    public Spread? LossFactor { get; init; }

    public Spread? OpeningFactor { get; init; }

    /// <summary>How evenly the station waters, as a share of the usual.</summary>
    public Spread? EvennessFactor { get; init; }

    public Spread? ClosingFactor { get; init; }

    /// <summary>Chances that one who looks sees something of it, by the names of sights.</summary>
    public IReadOnlyDictionary<string, double> Seen { get; init => field = value ?? Nothing; } = Nothing;

    /// <summary>Name of the repair, of these or of the wiring; empty where nothing is to be mended.</summary>
    public required string Repair { get; init; }

    /// <summary>True where it lets a lateral run out of its lowest outlet: how likely that is, and how well it is seen, goes by what stands over that.</summary>
    public bool Drains { get; init; }

    [JsonIgnore]
    public double Odds => Rate / (1 - Rate);

    private static Dictionary<string, double> Nothing { get; } = [];

    [JsonIgnore]
    internal IEnumerable<Spread> Spreads =>
        new[] { LeaksLitresPerMinute, FlowFactor, AddsLitresPerMinute, OutletPressureFactor, StaticFactor, LossFactor, OpeningFactor, ClosingFactor, EvennessFactor }.OfType<Spread>();
}

/// <summary>What is to be expected where nobody has noted better.</summary>
/// <param name="StaticKilopascals">Pressure at rest.</param>
/// <param name="LossKilopascals">Lost on the way to the point of connection while the usual station runs.</param>
/// <param name="StationLitresPerMinute">Of a station.</param>
/// <param name="StationsDiffer">How far the stations of one property differ, as the spread of a logarithm.</param>
/// <param name="OutletsDiffer">How far a station's flow is from what its outlets add up to.</param>
/// <param name="OutletKilopascals">Pressure at the outlets.</param>
/// <param name="PressuresDiffer">How far it differs between the stations of one property, as the spread of a logarithm.</param>
/// <param name="OpeningSeconds">Until a valve is open.</param>
/// <param name="ClosingSeconds">Until it is shut.</param>
/// <param name="ValveKilopascals">Lost in a station's valve at the usual flow.</param>
/// <param name="Evenness">Of a station: the mean of the lowest quarter of cans by the mean of all.</param>
/// <param name="CansDiffer">Spread of the logarithm of an evenness found with one can; with n of them it is less by the root of n.</param>
/// <param name="LeastEvenness">Less than this is as uneven as can be: it stands in where a quarter of the cans stayed dry.</param>
/// <param name="MeterShare">Of <paramref name="LossKilopascals"/>, what the meter takes; the loss of one that is noted stands in for it.</param>
/// <param name="BackflowShare">The same of the backflow device.</param>
public sealed record WaterUsual(
    string Source,
    Spread StaticKilopascals,
    Spread LossKilopascals,
    Spread StationLitresPerMinute,
    double StationsDiffer,
    double OutletsDiffer,
    Spread OutletKilopascals,
    double PressuresDiffer,
    Spread OpeningSeconds,
    Spread ClosingSeconds,
    double ValveKilopascals,
    Spread Evenness,
    double CansDiffer,
    double LeastEvenness,
    double MeterShare,
    double BackflowShare);

/// <summary>The water side: what is read and seen, what can be wrong, and what is usual.</summary>
/// <param name="Unmodelled">Chance that what was read has a cause that is not in the book.</param>
/// <param name="LeastLitresPerMinute">What that is spread over: from here.</param>
/// <param name="MostLitresPerMinute">To here.</param>
/// <param name="LeakExponent">x of q = k p^x for what leaks: it runs less while a station draws the pressure down.</param>
/// <param name="SupplyHidden">Chance that a fault of the supply shows at the point of connection alone: the stations' own valves hold the pressure.</param>
/// <param name="MainMetres">Length of mainline assumed where no pipes are noted.</param>
/// <param name="WetMetres">How far from a leak the ground is wet.</param>
/// <param name="WatchMinutes">To walk along a running station.</param>
/// <param name="RoundMinutes">To look at the lowest outlets of a station on a round past all of them.</param>
/// <param name="UncuredMinutes">What it costs to leave a station or a supply that does badly.</param>
/// <param name="LeftDays">Days that something runs on where it is not found.</param>
/// <param name="CubicMetreMinutes">What a cubic metre of water is worth, in minutes of work.</param>
public sealed record WaterPractice(
    string Source,
    IReadOnlyList<WaterInstrument> Instruments,
    IReadOnlyList<WaterProbe> Probes,
    IReadOnlyList<WaterSight> Sights,
    IReadOnlyList<WaterFault> Faults,
    IReadOnlyList<RepairPractice> Repairs,
    IReadOnlyList<OutletPractice> Outlets,
    IReadOnlyList<PipePractice> Pipes,
    IReadOnlyList<MeterPractice> Meters,
    IReadOnlyList<BackflowPractice> Backflows,
    WaterUsual Usual,
    IsolatingPractice Isolating,
    LowHeadPractice LowHead,
    double Unmodelled,
    double LeastLitresPerMinute,
    double MostLitresPerMinute,
    double LeakExponent,
    double SupplyHidden,
    double MainMetres,
    double WetMetres,
    double WatchMinutes,
    double RoundMinutes,
    double UncuredMinutes,
    double LeftDays,
    double CubicMetreMinutes)
{
    public WaterProbe? Probe(string name) => Probes.FirstOrDefault(p => p.Name == name);

    /// <summary>What can be read with the instruments that are carried.</summary>
    public bool IsOwned(WaterProbe probe) => Instrument(probe).Owned;

    /// <summary>A meter of a nominal size, a little off where it was noted in millimetres.</summary>
    public MeterPractice? MeterOf(Quantities.Length size) => Meters.FirstOrDefault(m => Math.Abs((size.Metres * 1000 / m.Millimetres) - 1) < 0.04);

    public WaterProbe? ProbeOf(WaterMeasure measures) => Probes.FirstOrDefault(p => p.Measures == measures);

    public WaterInstrument Instrument(WaterProbe probe) => Instruments.First(i => i.Name == probe.Instrument);

    public IEnumerable<WaterFault> Of(WaterScope scope) => Faults.Where(f => f.Scope == scope);
}
