namespace Underturf.Reasoning.Diagnosis;

/// <summary>Probabilities of what could be wrong with one station: each set of suspects that are wrong together.</summary>
/// <param name="Suspects">Private ones, those on the common, a pair; empty for "all sound".</param>
internal sealed record World(Suspect[] Suspects, double Probability)
{
    public bool IsSound => Suspects.Length == 0;

    /// <summary>Nothing is to be mended: all is sound, or a sound part is another than was thought.</summary>
    public bool AsksNothing => Array.TrueForAll(Suspects, s => s.Fault.AsksNothing);
}

/// <summary>The posterior over all that could be wrong at one controller.</summary>
/// <param name="Stations">For each station the worlds in which it lives; probabilities sum to one.</param>
/// <param name="Posterior">What all notes say of the shared unknowns.</param>
/// <param name="LeftOut">A bound of the probability that the states left out would have.</param>
internal sealed record Belief(IReadOnlyDictionary<string, IReadOnlyList<World>> Stations, Outlook Posterior, double LeftOut, Func<string, Outlook> OutlookOf);
