using Underturf.Reasoning.Moves.Planning;

namespace Underturf.Simulation.Decisions;

/// <summary>Where somebody stands in a small decision: what is believed, at which place, and which moves have shown what.</summary>
public sealed class Situation
{
    /// <summary>Outcomes of a move at most, so that a key fits a number.</summary>
    public const int MostOutcomes = 3;

    /// <summary>Outcomes of no chance but for rounding.</summary>
    private const double Never = 1e-13;

    private readonly SmallDecision small;
    private readonly double[] masses;
    private readonly int[] shown;

    private Situation(Decision decision, SmallDecision small, double[] masses, int place, int[] shown)
    {
        (Decision, this.small, this.masses, Place, this.shown) = (decision, small, masses, place, shown);
        Total = masses.Sum();
        Key = shown.Aggregate((long)place, (key, outcome) => (key * (MostOutcomes + 1)) + outcome);
    }

    public Decision Decision { get; }

    public int Place { get; }

    /// <summary>Chance of each hypothesis together with all that was shown.</summary>
    public IReadOnlyList<double> Masses => masses;

    /// <summary>Chance to be here.</summary>
    public double Total { get; }

    /// <summary>The same for situations that are alike: what was shown, in any order, and where one stands.</summary>
    public long Key { get; }

    /// <summary>Moves made so far.</summary>
    public IReadOnlySet<int> Made => Enumerable.Range(0, shown.Length).Where(IsMade).ToHashSet();

    /// <summary>Chance of each hypothesis now.</summary>
    public IReadOnlyList<double> Belief => [.. masses.Select(m => m / Total)];

    public static Situation Start(Decision decision) =>
        new(decision, new SmallDecision(decision), [.. decision.Chances], 0, new int[decision.Moves.Count]);

    public bool IsMade(int move) => shown[move] > 0;

    /// <summary>Minutes of a move from here, its walk included.</summary>
    public double Minutes(int move) => small.Minutes(move, Place);

    public double Walk(int to) => Decision.WalkMinutes[Place][to];

    /// <summary>The situations that a move can lead to.</summary>
    public IEnumerable<Situation> After(int move)
    {
        var next = small.After(masses, move);
        for (var o = 0; o < next.Length; o++)
        {
            if (next[o].Total > Never)
            {
                int[] longer = [.. shown];
                longer[move] = o + 1;
                yield return new Situation(Decision, small, next[o].Mass, Decision.Moves[move].Place, longer);
            }
        }
    }

    /// <summary>Expected minutes of the best act now, or of doing nothing and being wrong, times the chance to be here.</summary>
    public double ActMinutes() => small.Act(masses, Total, Place);
}
