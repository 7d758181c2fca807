namespace Underturf.Simulation.Decisions;

/// <summary>What a way of choosing costs in a small decision: every outcome that can follow is followed, nothing is drawn.</summary>
public static class PolicyCost
{
    /// <summary>Expected minutes.</summary>
    /// <param name="choose">The next move; nothing to act at once.</param>
    public static double Minutes(Situation here, Func<Situation, int?> choose) => Value(here, choose, []);

    private static double Value(Situation here, Func<Situation, int?> choose, Dictionary<long, double> known)
    {
        if (!known.TryGetValue(here.Key, out var value))
        {
            value = choose(here) is { } move
                ? (here.Minutes(move) * here.Total) + here.After(move).Sum(s => Value(s, choose, known))
                : here.ActMinutes();
            known[here.Key] = value;
        }

        return value;
    }
}
