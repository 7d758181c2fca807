using Underturf.FieldLog;

namespace Underturf.Papers;

internal enum ThingKind
{
    Controller,
    Box,
    Valve,
    IsolationValve,
    PointOfConnection,
}

/// <summary>Something buried or mounted that has a place on the plan.</summary>
/// <param name="Detail">A second line: which stations' valves a box holds.</param>
/// <param name="HoldsValves">True for a box in which a valve was found.</param>
internal sealed record PlanThing(string Id, ThingKind Kind, string Name, string Detail, Position At, Grade Grade, bool HoldsValves);
