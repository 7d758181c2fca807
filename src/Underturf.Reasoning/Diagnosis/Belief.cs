namespace Underturf.Reasoning.Diagnosis;

/// <summary>Probabilities of what could be wrong with one station: each set of suspects that are wrong together.</summary>
/// <param name="Suspects">One private suspect, one on the common, or a pair; empty for "all sound".</param>
internal sealed record World(IReadOnlyList<Suspect> Suspects, double Probability)
{
    public bool IsSound => Suspects.Count == 0;
}

/// <summary>The posterior over all that could be wrong at one controller.</summary>
/// <param name="Shared">Suspects on the common, the supply and everywhere, "all sound" among them.</param>
/// <param name="Stations">For each station the worlds in which it lives; probabilities sum to one.</param>
/// <param name="LogLevel">Posterior mean of the log of the usual coil against the practice book's.</param>
/// <param name="LogEvidence">log of the chance of all notes together.</param>
internal sealed record Belief(
    IReadOnlyList<(Suspect Suspect, double Probability)> Shared,
    IReadOnlyDictionary<string, IReadOnlyList<World>> Stations,
    double LogLevel,
    double LogEvidence);
