using Underturf.FieldLog;
using Underturf.Quantities;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Telling;

/// <summary>Two notes of the same thing in the same way that cannot both be right, no work between them.</summary>
/// <param name="What">How it was taken and of what.</param>
/// <param name="First">The entry and what it shows.</param>
/// <param name="Second">The later one.</param>
/// <param name="Stations">Whose wires it is about; empty for a supply.</param>
internal sealed record Conflict(string What, (string Entry, string Seen) First, (string Entry, string Seen) Second, IReadOnlyList<string> Stations, string Controller, string Place)
{
    public required double Minutes { get; init; }

    public required string Caution { get; init; }

    /// <summary>The note that taking it again leads to, without what will be seen.</summary>
    public required Fact Asks { get; init; }

    /// <summary>True where no work since, and no later note, has answered which of the two was wrong.</summary>
    public required bool IsOpen { get; init; }

    /// <summary>A run: both may be right where a valve sticks now and then.</summary>
    public bool IsRun { get; init; }

    /// <summary>Whether a world makes both likely, so that they do not speak against each other in it.</summary>
    public Func<World, Outlook, bool> Reconciles { get; init; } = (_, _) => false;

    public Problem Notice => IsRun
        ? new Problem(
            $"{First.Entry} and {Second.Entry}",
            $"{What}: {First.Seen}, then {Second.Seen}, and no work lies between",
            "Run it again; strike what was noted wrongly, or leave both where it comes and goes",
            Severity.Notice)
        : new Problem(
            $"{First.Entry} and {Second.Entry}",
            $"{What}: {First.Seen} and {Second.Seen} cannot both be right, and no work{(Stations.Count == 0 ? " on the supply" : string.Empty)} lies between",
            $"Take the reading again, then strike the wrong note{(Stations.Count == 0 ? string.Empty : "; if the display would not settle, note it as drifting")}");

    /// <summary>The two notes beside each other.</summary>
    public string Why => $"{First.Entry}: {First.Seen} and {Second.Entry}: {Second.Seen} cannot both be right, no work between";
}
