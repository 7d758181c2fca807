namespace Underturf.Reasoning.Water;

/// <summary>What water does here, in words, for whoever stands in the field.</summary>
/// <param name="Supply">What comes in.</param>
/// <param name="Idle">What runs with everything off.</param>
/// <param name="Unknown">What nobody has noted, and what counts for nothing.</param>
public sealed record FlowLines(string Supply, string Idle, IReadOnlyList<FlowLine> Stations, IReadOnlyList<string> Unknown);

/// <summary>One station, running alone.</summary>
/// <param name="Gives">"13.2 ± 2.2 gpm, 60 ± 15 psi at the outlets".</param>
/// <param name="Read">What the meter showed of it last; null where nobody has read.</param>
/// <param name="Way">What is known of its way: how fast the water runs where it is narrowest, or that no pipe is known; null where no pipe of the property is.</param>
/// <param name="Remark">What limits it, or may bang; null for nothing.</param>
public sealed record FlowLine(string Station, string Number, string Waters, string Gives, string? Read, string? Way, string? Remark);
