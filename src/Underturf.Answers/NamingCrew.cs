namespace Underturf.Reasoning;

/// <summary>Who names conductors, and how: what is not said is as in the practice book.</summary>
/// <param name="People">One walks for each change of what is put on; two call it out.</param>
/// <param name="Remote">True where one can switch stations from the box.</param>
/// <param name="Plan">Part of the names of the plans to choose from; the cheapest of all where nothing is said.</param>
/// <param name="Source">True where a portable 24 V source can be carried along: it puts a live wire or a test coil on wires far from a controller, at valves or at the ends of a box.</param>
public sealed record NamingCrew(int? People = null, bool? Remote = null, string? Plan = null, bool Source = false);
