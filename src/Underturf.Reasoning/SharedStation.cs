using Underturf.FieldLog;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning;

/// <summary>A station whose one conductor runs several valves.</summary>
/// <param name="Station">Id.</param>
/// <param name="Grade">Measured where its valves were noted; inferred where only readings say so.</param>
/// <param name="Probability">That it is shared at all.</param>
/// <param name="CountProbability">That it runs just this many valves.</param>
/// <param name="Path">Its wires as they lie, further valves that nobody has found included.</param>
/// <param name="Valves">One for each valve, first the one that keeps the conductor.</param>
/// <param name="Repair">The repair of the practice book that parts them.</param>
public sealed record SharedStation(
    string Station,
    Grade Grade,
    double Probability,
    double CountProbability,
    StationPath Path,
    IReadOnlyList<SharedValve> Valves,
    string Repair);

/// <summary>One of the valves on a shared conductor.</summary>
/// <param name="End">It and its place among the station's wires.</param>
/// <param name="Waters">What it waters, where that is known.</param>
/// <param name="Joint">Where its wire leaves those of the valves before it; nothing for the first, which keeps the conductor.</param>
/// <param name="JointProbability">That it leaves them there.</param>
/// <param name="Branch">Legs of the path that are its alone.</param>
public sealed record SharedValve(ValveEnd End, string? Waters, string? Joint, double JointProbability, IReadOnlyList<Leg> Branch);

/// <summary>A conductor that carries nothing.</summary>
/// <param name="Wire">Id of its end at the controller.</param>
/// <param name="Controller">Id.</param>
/// <param name="Place">Id of the place where its other end was found; nothing where nobody found it.</param>
/// <param name="End">Id of that end, where it is one that was noted.</param>
/// <param name="Missing">What is not proven of it to that place, in words; nothing where all is.</param>
public sealed record SpareWire(string Wire, string Name, string Controller, string? Place, string? End, IReadOnlyList<string> Missing)
{
    public bool IsProven => Place is not null && Missing.Count == 0;
}
