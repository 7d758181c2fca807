namespace Underturf.Reasoning;

/// <summary>"I am at box 4, and I have 40 minutes."</summary>
/// <param name="At">Id or label of the place where one stands; the controller of each question where nothing is said.</param>
/// <param name="Minutes">How long one has; as long as it takes where nothing is said.</param>
public sealed record Standpoint(string? At = null, double? Minutes = null);
