namespace Underturf.Networks.Hydraulics;

/// <summary>Where elements meet, or a body of water that holds its level.</summary>
/// <param name="Name">For reports only.</param>
/// <param name="ElevationMetres">Height of a junction; of a body of water, the head that it holds.</param>
/// <param name="IsReservoir">Holds its head whatever flows.</param>
/// <param name="WithdrawnCubicMetresPerSecond">Taken whatever the pressure.</param>
public readonly record struct PipeNode(string Name, double ElevationMetres, bool IsReservoir, double WithdrawnCubicMetresPerSecond);

/// <summary>An outlet and the junction that it is on.</summary>
public readonly record struct PlacedOutlet(string Name, int Node, Outlet Outlet);
