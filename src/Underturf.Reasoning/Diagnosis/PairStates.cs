namespace Underturf.Reasoning.Diagnosis;

/// <summary>The one or two clusters of a pair as they were weighed, one after the other.</summary>
/// <param name="Log">log of the chance of all their notes.</param>
/// <param name="First">What the first says.</param>
/// <param name="Outlook">What the others and these say.</param>
internal sealed record PairStates(int[] Touched, Dictionary<int, States> States, double Log, IReadOnlyList<Site> First, Outlook Outlook);
