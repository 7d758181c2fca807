namespace Underturf.Simulation.Trials;

/// <summary>One line of the virtual technician's diary.</summary>
/// <param name="Action">What was done, as the notebook offers it.</param>
/// <param name="Where">Label of the place.</param>
/// <param name="WalkMinutes">Walking there from where the technician stood, and finding a place that nobody had found.</param>
/// <param name="Minutes">At the place.</param>
/// <param name="Seen">What was noted.</param>
public sealed record TrialStep(string Action, string Where, double WalkMinutes, double Minutes, string Seen)
{
    public TrialDeed Deed { get; init; }

    /// <summary>What the notebook holds likeliest of the same question afterwards; nothing where the question is closed.</summary>
    public string? Top { get; init; }

    /// <summary>Probability of that.</summary>
    public double TopProbability { get; init; }
}

/// <summary>What kind of step it was.</summary>
public enum TrialDeed
{
    /// <summary>A reading, a run or a look.</summary>
    Move,

    /// <summary>A repair that mended something.</summary>
    Repair,

    /// <summary>A repair that mended nothing.</summary>
    WrongRepair,

    /// <summary>Run and read again after a repair.</summary>
    Proof,
}
