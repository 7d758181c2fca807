using System.Text.Json.Serialization;
using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Property.Practice;

/// <summary>Wire as it is assumed where the log does not say.</summary>
/// <param name="GaugeSpread">Standard deviation of the logarithm of a run's ohms for a metre where nobody noted its gauge.</param>
/// <param name="Detour">A run is this much longer than the straight line between its ends.</param>
/// <param name="BranchMetres">Median length of wire to a further valve that nobody noted.</param>
/// <param name="UnfoundBox">Chance that a run passes through a box that nobody has found.</param>
/// <param name="CommonsApart">Chance that two cables of a controller with several commons return by different ones.</param>
/// <param name="CommonForAll">Chance that cables that end in one place, with stations that return by one common, have one conductor and one splice for it there.</param>
/// <param name="OpenOhms">What a parted conductor still passes through wet soil.</param>
public sealed record WirePractice(
    string Source,
    double StationAwg,
    double CommonAwg,
    double GaugeSpread,
    double SoilCelsius,
    double SoilSpreadCelsius,
    double SoundSpliceOhms,
    double SoundLeakOhms,
    double SoundLeakSpread,
    LengthSpreads LengthSpread,
    double UnknownRunMetres,
    double Detour,
    double BranchMetres,
    double BranchSpread,
    double UnfoundBox,
    double CommonsApart,
    double CommonForAll,
    Spread OpenOhms)
{
    [JsonIgnore]
    public double SoilKelvins => Units.From(SoilCelsius, "C");
}

/// <summary>Relative spread of a length by how it is known.</summary>
public sealed record LengthSpreads(double Measured, double Told, double Estimated, double Inferred, double Unknown);

/// <summary>Coils where the log does not say.</summary>
/// <param name="LevelSpread">Spread of the property's usual coil about <paramref name="Ohms"/>: one unknown shared by all coils.</param>
/// <param name="Differ">Spread of one coil about those bought with it.</param>
/// <param name="BatchSpread">Spread of the coils of one box, bought together, about the property's usual coil.</param>
/// <param name="Noted">Spread of a coil about the ohms noted for it.</param>
/// <param name="InrushReactanceOhms">At the book's frequency of supply, plunger out: decides whether it pulls in.</param>
/// <param name="HoldingReactanceOhms">At the book's frequency of supply, plunger in.</param>
public sealed record CoilPractice(
    string Source,
    double Ohms,
    double LevelSpread,
    double Differ,
    double BatchSpread,
    double Noted,
    double InrushReactanceOhms,
    double HoldingReactanceOhms,
    double PullInVolts,
    double PullInSpread,
    double ChatterVolts);

/// <summary>The transformer where the log does not say.</summary>
/// <param name="Volts">With nothing running.</param>
/// <param name="RatedVolts">At rated load. Its share of <paramref name="Volts"/> holds for any transformer whose plate is noted.</param>
/// <param name="RatedVoltAmperes">What it may deliver.</param>
/// <param name="TouchVolts">More than this on a field wire is not the controller's.</param>
public sealed record SupplyPractice(string Source, double Volts, double VoltsSpread, double Hertz, double RatedVolts, double RatedVoltAmperes, double TouchVolts, string TouchCaution)
{
    /// <summary>Whether a display shows more volts than a controller gives: mains may be on that wire, whatever else is wrong.</summary>
    public bool IsUnsafe(Shown shown) => shown.Value is { Dimension: Dimension.Voltage } value && Math.Abs(value.Si) > TouchVolts;
}

/// <summary>The coil of a relay that starts a pump, where the log does not say.</summary>
/// <param name="ReactanceOhms">At the supply's frequency, pulled in.</param>
/// <param name="LogSpread">Spread of its ohms.</param>
public sealed record RelayPractice(string Source, double Ohms, double ReactanceOhms, [property: JsonPropertyName("spread")] double LogSpread);

/// <summary>An instrument: its error is accuracy times the reading plus a floor; it displays in steps up to its most.</summary>
/// <param name="Accuracy">Standard deviation as a share of the reading, what all its readings share included.</param>
/// <param name="Bias">Standard deviation, as a share of the reading, of the error that all its readings share.</param>
/// <param name="Floor">Standard deviation at zero, in the SI unit of its dimension.</param>
/// <param name="Step">Smallest step of the display.</param>
/// <param name="Least">Smallest value that "something not modelled" is spread over.</param>
/// <param name="Most">Largest value on the display; above it shows over-range.</param>
public sealed record InstrumentPractice(
    string Name,
    string Source,
    Dimension Dimension,
    bool Owned,
    double Accuracy,
    double Bias,
    double Floor,
    double Step,
    double Least,
    double Most)
{
    /// <summary>Standard deviation of its own error at a reading: share and floor add as independent errors do.</summary>
    public double Sigma(double si) => Math.Sqrt((Accuracy * si * Accuracy * si) + (Floor * Floor));

    /// <summary>Variance of the part of that which is each reading's own.</summary>
    public double OwnVariance(double si) => (((Accuracy * Accuracy) - (Bias * Bias)) * si * si) + (Floor * Floor);
}
