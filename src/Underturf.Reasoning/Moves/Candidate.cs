namespace Underturf.Reasoning.Moves;

/// <summary>Something that could be found out about a subject.</summary>
/// <param name="Place">Id of the place where it is done.</param>
/// <param name="Key">The same for the same thing done for another subject.</param>
/// <param name="Chances">For each world of the subject (row) the chance of each outcome.</param>
internal sealed record Candidate(MoveStep Step, string Place, string Key, IReadOnlyList<double[]> Chances);
