namespace Underturf.Reasoning.Water;

/// <summary>What can be named as a place that is to be without pressure.</summary>
public sealed record PlacesToDry(string Engine, string Book, IReadOnlyList<PlaceToDry> Places);

/// <summary>One of them.</summary>
/// <param name="Kind">"station", "valve", "box", "fitting", "pipe" or "isolation valve".</param>
/// <param name="Name">As people call it: any of its names will do.</param>
public sealed record PlaceToDry(string Kind, string Id, string Name);
