namespace Underturf.Simulation.Decisions;

/// <summary>A rule by which technicians choose what to test next. It is given the posterior, the stopping rule and the minutes of travel of the planner.</summary>
/// <param name="Name">As technicians say it.</param>
/// <param name="Rank">The move of least rank is made; ties go to the move of fewest minutes, walk included.</param>
public sealed record RuleOfThumb(string Name, Func<Situation, int, double> Rank)
{
    /// <summary>A move that changes no chance by as much as this tells nothing; nobody makes it.</summary>
    private const double Nothing = 1e-6;

    public static IReadOnlyList<RuleOfThumb> All { get; } =
    [
        new("controller outwards", (here, move) => here.Decision.WalkMinutes[0][here.Decision.Moves[move].Place]),
        new("halve the run", (here, move) => here.After(move).Max(s => s.Total)),
        new("nearest first", (here, move) => here.Walk(here.Decision.Moves[move].Place)),
        new("most likely first", (here, move) => -Telling(here, move, Likeliest(here))),
        new("cheapest first", (here, move) => here.Minutes(move)),
    ];

    /// <summary>The next move of the rule; nothing where no move is left that tells anything.</summary>
    public int? Choose(Situation here)
    {
        int? best = null;
        var least = (Rank: 0.0, Minutes: 0.0);
        for (var move = 0; move < here.Decision.Moves.Count; move++)
        {
            if (!here.IsMade(move) && Tells(here, move))
            {
                var rank = (Math.Round(Rank(here, move), 9), here.Minutes(move));
                (best, least) = best is null || rank.CompareTo(least) < 0 ? (move, rank) : (best, least);
            }
        }

        return best;
    }

    private static bool Tells(Situation here, int move) => here.After(move).Any(s => s.Masses.Zip(here.Masses).Any(m => Math.Abs((m.First / s.Total) - (m.Second / here.Total)) > Nothing));

    private static int Likeliest(Situation here) => Enumerable.Range(0, here.Masses.Count).MaxBy(h => here.Masses[h]);

    /// <summary>How far a move tells one hypothesis from all others together: half the sum of the differences of its outcomes' chances.</summary>
    private static double Telling(Situation here, int move, int hypothesis)
    {
        var outcomes = here.Decision.Moves[move].Outcomes;
        var others = here.Total - here.Masses[hypothesis];
        return Enumerable.Range(0, outcomes[0].Count)
            .Sum(o => Math.Abs(outcomes[hypothesis][o] - (here.Masses.Select((m, h) => h == hypothesis ? 0 : m * outcomes[h][o]).Sum() / others))) / 2;
    }
}
