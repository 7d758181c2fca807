using Underturf.Reasoning.Water;

namespace Underturf.Planning.Day.Interim;

/// <summary>What to do with a station tonight.</summary>
public enum Tonight
{
    /// <summary>It can run by itself, in a programme for the time being.</summary>
    Run,

    /// <summary>Only while somebody stands by.</summary>
    ByHand,

    /// <summary>It must not run.</summary>
    MustNot,

    /// <summary>It stays dry whatever the programme says: its water or its power is off, or its circuit is open.</summary>
    StaysDry,
}

/// <summary>What may run tonight, as things stand now.</summary>
/// <param name="Stations">Those that must not run first, then by number.</param>
/// <param name="ProgrammeMinutes">Of all that can run by themselves, one after the other.</param>
/// <param name="Overnight">What to shut for the night, and why.</param>
public sealed record InterimAnswer(IReadOnlyList<StationTonight> Stations, double ProgrammeMinutes, IReadOnlyList<string> Overnight, WaterLoss? Lost)
{
    public IEnumerable<StationTonight> Of(Tonight what) => Stations.Where(s => s.What == what);
}

/// <summary>A station tonight.</summary>
/// <param name="What">As things stand now.</param>
/// <param name="Then">Once the places are closed that today's order closes.</param>
/// <param name="Minutes">That it runs.</param>
/// <param name="Harm">Minutes of loss expected if it runs with nobody there.</param>
/// <param name="HandHarm">The same with somebody there, his own minutes counted in.</param>
/// <param name="DryLoss">Minutes of loss if it does not run.</param>
/// <param name="Waters">Chance that it waters at all.</param>
/// <param name="Why">What speaks against it, the gravest first.</param>
public sealed record StationTonight(string Station, string Number, string WatersWhat, Tonight What, Tonight Then, double Minutes, double Harm, double HandHarm, double DryLoss, double Waters, IReadOnlyList<RunReason> Why);

/// <summary>Something that may go wrong while it runs.</summary>
/// <param name="Chance">That it is so.</param>
/// <param name="Harm">Minutes of loss that it is expected to cost with nobody there.</param>
/// <param name="Told">Who was told, where it is a state in which a place was left.</param>
public sealed record RunReason(string Say, double Chance, double Harm, string? Told = null);
