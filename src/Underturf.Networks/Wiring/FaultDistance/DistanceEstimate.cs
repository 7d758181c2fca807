namespace Underturf.Networks.Wiring.FaultDistance;

/// <summary>Where a fault is along a run, to first order in all that is uncertain.</summary>
/// <param name="Metres">
/// Along the conductor from the near end. It may lie outside the run by up to three standard deviations of that gap: as evidence the
/// number must not be bent to the end.
/// </param>
/// <param name="SpreadMetres">Standard deviation.</param>
/// <param name="Sources">What makes the spread, the largest first; the squares add up to the square of the whole.</param>
public sealed record DistanceEstimate(double Metres, double SpreadMetres, IReadOnlyList<SpreadSource> Sources);

/// <summary>The part of a spread that one unknown makes.</summary>
/// <param name="Name">The unknown, in the reader's words.</param>
/// <param name="SpreadMetres">The standard deviation that would be left if all else were known.</param>
public sealed record SpreadSource(string Name, double SpreadMetres);
