using System.Text.Json.Serialization;

namespace Underturf.Reasoning.Water;

/// <summary>How to get a place without pressure, and how to work there.</summary>
/// <param name="Id">Of the place.</param>
/// <param name="Place">As people call it.</param>
/// <param name="Stands">What stands shut already and parts the place from the supply; minutes are those to get there.</param>
/// <param name="Shut">What to shut, in walking order.</param>
/// <param name="Minutes">Until all is shut.</param>
/// <param name="Holds">Chance that all of it holds.</param>
/// <param name="Dry">Numbers of the stations that have no water meanwhile.</param>
/// <param name="Needed">Where a valve is needed, because none that is noted shuts the place off alone; nothing where one does.</param>
/// <param name="IfNot">What to shut instead where one does not hold.</param>
/// <param name="Relieve">How to let the pressure out, and how to prove that there is none.</param>
/// <param name="Hole">How the water leaves, and what that takes; nothing where no heights and no levels are noted.</param>
/// <param name="Refill">How to fill it again.</param>
public sealed record IsolationAnswer(
    string Engine,
    string Book,
    string Id,
    string Place,
    IReadOnlyList<ShutStep> Stands,
    IReadOnlyList<ShutStep> Shut,
    double Minutes,
    double Holds,
    IReadOnlyList<string> Dry,
    string? Needed,
    IReadOnlyList<ShutOtherwise> IfNot,
    IReadOnlyList<string> Relieve,
    HoleAnswer? Hole,
    IReadOnlyList<string> Refill,
    string Caution)
{
    /// <summary>Numbers of the stations that may have no water either: nobody has noted what feeds them.</summary>
    public IReadOnlyList<string> MayGoDry { get; init; } = [];

    /// <summary>Everything is shut that water comes in by: no station of it has any.</summary>
    public bool EveryStationDry { get; init; }

    [JsonIgnore]
    public string SayDry => DryWords.Certain(Dry, EveryStationDry);

    /// <summary>Nothing where none may.</summary>
    [JsonIgnore]
    public string? SayMayGoDry => DryWords.Perhaps(MayGoDry);
}

/// <summary>One thing to shut.</summary>
/// <param name="WalkMinutes">From the one before.</param>
public sealed record ShutStep(string Name, string Id, double WalkMinutes, double TurnMinutes)
{
    /// <summary>Chance that it holds, by what the meter showed while it was shut; null where nobody has read.</summary>
    public double? Holds { get; init; }
}

/// <summary>What to shut where one valve does not hold.</summary>
/// <param name="Valve">As people call it.</param>
public sealed record ShutOtherwise(string Valve, IReadOnlyList<string> Shut);

/// <summary>Water in the hole.</summary>
/// <param name="From">What the figures rest on.</param>
/// <param name="LeastCubicMetres">That come; null where only the time is known.</param>
/// <param name="Ways">Ways to work, quickest first.</param>
public sealed record HoleAnswer(string From, double? LeastCubicMetres, double? MostCubicMetres, double LeastSeconds, double MostSeconds, IReadOnlyList<HoleWay> Ways);

/// <summary>A way to work in a wet hole.</summary>
/// <param name="LeastMinutes">Until the valve is rebuilt.</param>
/// <param name="Condition">What must hold for it.</param>
public sealed record HoleWay(string Say, double LeastMinutes, double MostMinutes, string Condition)
{
    /// <summary>Minutes that go by before the work begins, where it is not done in the water.</summary>
    [JsonIgnore]
    public (double Least, double Most)? Before { get; init; }
}
