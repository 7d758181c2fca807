using Underturf.FieldLog;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Water;

/// <summary>A reading of water, in SI.</summary>
/// <param name="Station">The one station that ran; null where nothing did, or several together.</param>
/// <param name="Sigma">Standard deviation of what was read about what was there.</param>
/// <param name="Shut">Isolation valves and valves that stood shut by hand.</param>
internal sealed record WaterReading(Moment Moment, WaterProbe Probe, string? Station, double Si, double Sigma, string Text, IReadOnlySet<string> Shut)
{
    /// <summary>Stations that ran together, in order; none where one ran or nothing.</summary>
    public IReadOnlyList<string> Together { get; init; } = [];

    /// <summary>Everything was off.</summary>
    public bool IsIdle => Station is null && Together.Count == 0;

    /// <summary>Whatever ran.</summary>
    public IReadOnlyList<string> Running => Station is { } one ? [one] : Together;

    /// <summary>The part of <see cref="Sigma"/> that is new with each reading of the same thing.</summary>
    public double Own { get; init; } = Sigma;

    /// <summary>The part that it shares with all readings of its instrument, as a share of what was read.</summary>
    public double Shared { get; init; }

    /// <summary>Where it was taken, where that was said.</summary>
    public string? Place { get; init; }

    /// <summary>What a leak runs while it was taken, as a share of what it runs with everything off: a station that runs draws the pressure down.</summary>
    public double Drawn { get; init; } = 1;
}

/// <summary>Somebody looked.</summary>
/// <param name="Station">The station that ran; null where nothing did.</param>
/// <param name="About">Where nothing ran: the station that was looked at; null for all.</param>
internal sealed record WaterWatch(Moment Moment, string? Station, string? About, IReadOnlyList<string> Seen, IReadOnlyList<Position> Where);
