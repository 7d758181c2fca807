namespace Underturf.Property.Practice;

/// <summary>What a probe puts its instrument across.</summary>
public enum Measure
{
    StationOhms,
    ReversedOhms,
    OtherCommonOhms,
    BetweenStationsOhms,
    OutwardOhms,
    CoilOhms,
    JoinedOhms,
    EarthOhms,
    TerminalVolts,
    CoilVolts,
    StationAmps,
    SupplyVolts,
}

/// <summary>What all ways of measuring have in common.</summary>
public static class Measures
{
    /// <summary>True where a supply feeds what is measured.</summary>
    public static bool IsFed(this Measure measure) => measure is Measure.TerminalVolts or Measure.CoilVolts or Measure.StationAmps or Measure.SupplyVolts;
}

/// <summary>Where one stands to take a reading.</summary>
public enum Stand
{
    Controller,
    Box,
    Valve,
}

/// <summary>A way to take a reading.</summary>
/// <param name="Minutes">At the place, walking and digging not included.</param>
public sealed record ProbePractice(
    string Name,
    string Source,
    string Say,
    string Instrument,
    Measure Measures,
    Stand At,
    string Caution,
    double Minutes = 0);

/// <summary>How far a watcher's report of a running station can be trusted.</summary>
/// <param name="PartnerNamed">Chance that a place watered by way of another station is noted under that station's own name of it.</param>
/// <param name="AnothersPlace">Chance that a further place, watered otherwise, is one that another station is noted to water.</param>
public sealed record RunPractice(
    string Source,
    double Minutes,
    double PlaceNoticed,
    double PlaceImagined,
    double WrongPlaceNoticed,
    double WrongPlaceImagined,
    double PartnerNamed,
    double AnothersPlace,
    double BehaviourMistaken,
    string Say,
    string Caution);

/// <summary>Opening a place and looking.</summary>
/// <param name="Imagined">Chance to note something that is not there.</param>
public sealed record LookPractice(string Source, double Minutes, double Imagined, string Say, string Caution);

/// <summary>Getting there.</summary>
/// <param name="UnknownMetres">Distance assumed to a place without a position.</param>
/// <param name="FindMinutes">Minutes to find and expose a place that nobody has found yet.</param>
public sealed record WalkPractice(string Source, double MetresPerMinute, double UnknownMetres, double FindMinutes);
