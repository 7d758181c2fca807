using System.Text.Json.Serialization;
using Underturf.FieldLog;

namespace Underturf.Reasoning.Water;

/// <summary>What water does here, nothing broken: what comes in, what each station takes, and what runs though nothing should.</summary>
/// <param name="Together">True where the stations run together; otherwise each alone.</param>
/// <param name="Idle">What most likely runs with everything off, in words; nothing where nothing does.</param>
/// <param name="Unknown">What nobody has noted, so that it is taken to lose nothing.</param>
public sealed record FlowAnswer(
    string Engine,
    string Book,
    SupplyFlow Supply,
    bool Together,
    IReadOnlyList<StationFlow> Stations,
    string? Idle,
    WaterLoss? Lost,
    IReadOnlyList<string> Unknown)
{
    /// <summary>What is believed of each station, and which valve shuts off what.</summary>
    public WaterReport? Report { get; init; }
}

/// <summary>What comes in.</summary>
/// <param name="State">What is most likely of it, in words.</param>
/// <param name="Probability">Of that.</param>
public sealed record SupplyFlow(double StaticPascals, double StaticSpreadPascals, double LossPascals, double LossSpreadPascals, double LossAtCubicMetresPerSecond, string State, double Probability);

/// <summary>One station.</summary>
/// <param name="ReadCubicMetresPerSecond">As the meter showed it last, the station alone.</param>
/// <param name="SupplyPascals">At the point of connection meanwhile.</param>
/// <param name="OutletPascals">Least at its outlets.</param>
/// <param name="FastestMetresPerSecond">In the narrowest place of its way; null where no bore is noted.</param>
/// <param name="FastestPipe">Where that is.</param>
/// <param name="TooFast">So fast that a closing valve bangs.</param>
/// <param name="RisePascals">What closing its valve adds for a moment, at most; null where no length is noted.</param>
public sealed record StationFlow(
    string Station,
    string Number,
    IReadOnlyList<string> Waters,
    double CubicMetresPerSecond,
    double SpreadCubicMetresPerSecond,
    double? ReadCubicMetresPerSecond,
    double SupplyPascals,
    double OutletPascals,
    double OutletSpreadPascals,
    double? FastestMetresPerSecond,
    string? FastestPipe,
    bool TooFast,
    double? RisePascals)
{
    /// <summary>What cans caught last; nothing where none were set out.</summary>
    public CaughtWater? Caught { get; init; }

    /// <summary>Whether pipes that are noted lead to it.</summary>
    [JsonConverter(typeof(JsonStringEnumConverter<StationPiping>))]
    public StationPiping Piping { get; init; }

    /// <summary>The valves that it is reckoned with, by what the wires say; nothing where that is one.</summary>
    public ValveCount? Valves { get; init; }
}

/// <summary>What is noted of the pipe that leads to a station's valve.</summary>
public enum StationPiping
{
    /// <summary>It leads there from a point of connection.</summary>
    Noted,

    /// <summary>There is one, but it is joined to nothing that water comes from: the station is reckoned straight behind the point of connection.</summary>
    Apart,

    /// <summary>Nobody has noted any: the same.</summary>
    Unknown,
}

/// <summary>Valves that one station runs.</summary>
/// <param name="Grade">Measured where they were noted; inferred where only readings say so.</param>
/// <param name="Probability">That there are just so many.</param>
public sealed record ValveCount(int Count, [property: JsonConverter(typeof(JsonStringEnumConverter<Grade>))] Grade Grade, double Probability)
{
    /// <summary>"2 valves (inferred, 90 % sure)".</summary>
    [JsonIgnore]
    public string Say => $"{Count} valves ({Grade.ToString().ToLowerInvariant()}{(Grade == Grade.Inferred ? $", {Diagnosis.Say.Share(Probability)} sure" : string.Empty)})";
}
