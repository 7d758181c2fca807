using Underturf.Reasoning.Moves.Planning;

namespace Underturf.Simulation.Decisions;

/// <summary>
/// The least expected minutes of a small decision, by dynamic programming over every move, every outcome and every place. Nothing is approximated: a
/// branch is left out only where a bound shows that it cannot be better.
/// </summary>
public sealed class ExactOptimum
{
    /// <summary>Outcomes of no chance but for rounding.</summary>
    private const double Never = 1e-13;

    private readonly Decision decision;
    private readonly SmallDecision small;
    private readonly Dictionary<long, double> known = [];
    private readonly bool[] made;
    private readonly long[] digit;

    private ExactOptimum(Decision decision)
    {
        this.decision = decision;
        small = new SmallDecision(decision);
        made = new bool[decision.Moves.Count];
        digit = [.. decision.Moves.Select((_, m) => decision.WalkMinutes.Count * (long)Math.Pow(Situation.MostOutcomes + 1, m))];
    }

    /// <summary>Expected minutes of the best plan for somebody who stands at the first place.</summary>
    public static double Minutes(Decision decision) => new ExactOptimum(decision).Value([.. decision.Chances], decision.Chances.Sum(), 0, 0);

    /// <param name="shown">What the moves made have shown: a digit each, and the outcome's number plus one in it.</param>
    private double Value(double[] mass, double total, int place, long shown)
    {
        if (known.TryGetValue(shown + place, out var value))
        {
            return value;
        }

        value = small.Act(mass, total, place);
        foreach (var (move, next) in Promising(mass, total, place, value))
        {
            made[move] = true;
            value = Math.Min(value, Follow(small.Minutes(move, place) * total, move, next, shown, value));
            made[move] = false;
        }

        known[shown + place] = value;
        return value;
    }

    /// <summary>Moves that could be better than acting now and where they lead, the best by one step first, so that the others are soon ruled out.</summary>
    private List<(int Move, (double[] Mass, double Total)[] Next)> Promising(double[] mass, double total, int place, double act)
    {
        var moves = new List<(double Minutes, int Move, (double[] Mass, double Total)[] Next)>();
        for (var move = 0; move < made.Length; move++)
        {
            var (there, minutes) = (decision.Moves[move].Place, small.Minutes(move, place) * total);
            if (!made[move] && minutes + small.Known(mass, there) < act)
            {
                var next = small.After(mass, move);
                moves.Add((minutes + next.Sum(n => small.Act(n.Mass, n.Total, there)), move, next));
            }
        }

        moves.Sort((a, b) => a.Minutes != b.Minutes ? a.Minutes.CompareTo(b.Minutes) : a.Move.CompareTo(b.Move));
        return [.. moves.Select(m => (m.Move, m.Next))];
    }

    /// <summary>Minutes by way of a move; infinite as soon as it is seen to be no better than what is known.</summary>
    private double Follow(double minutes, int move, (double[] Mass, double Total)[] next, long shown, double best)
    {
        var place = decision.Moves[move].Place;
        var cheapest = Cheapest();
        var floors = next.Select(n => Floor(n.Mass, n.Total, place, cheapest)).ToArray();
        var sum = minutes + floors.Sum();
        for (var outcome = 0; outcome < next.Length; outcome++)
        {
            if (sum >= best)
            {
                return double.PositiveInfinity;
            }

            var (mass, total) = next[outcome];
            sum += total > Never ? Value(mass, total, place, shown + (digit[move] * (outcome + 1))) - floors[outcome] : 0;
        }

        return sum;
    }

    /// <summary>No plan is shorter: one acts, or makes at least the cheapest move left and at best knows all then.</summary>
    private double Floor(double[] mass, double total, int place, double cheapest) =>
        total > Never ? Math.Min(small.Act(mass, total, place), small.Known(mass, place) + (cheapest * total)) : 0;

    private double Cheapest()
    {
        var cheapest = double.PositiveInfinity;
        for (var move = 0; move < made.Length; move++)
        {
            cheapest = made[move] ? cheapest : Math.Min(cheapest, decision.Moves[move].Minutes);
        }

        return cheapest;
    }
}
