using Underturf.Reasoning.Moves.Planning;

namespace Underturf.Reasoning.Moves;

/// <summary>Everything about one subject that is worth doing in one visit: a first move, and what one would most likely do there next anyway.</summary>
/// <param name="Moves">Numbers of the candidates, in order.</param>
/// <param name="Worth">Minutes of expected loss that they save together, their own and the walk's not taken off.</param>
internal sealed record Batch(IReadOnlyList<int> Moves, double Worth)
{
    /// <summary>More steps than this in one go are a day's work, not a move; what one sees by then decides anew.</summary>
    private const int MostSteps = 4;

    /// <summary>Outcomes rarer than this are left out of the count; what they could change is below what is shown.</summary>
    private const double Rare = 2e-3;

    /// <summary>A step belongs to the visit where the plan goes on with it after most outcomes.</summary>
    private const double Most = 0.5;

    public static Batch Of(SubjectPlan subject, int first, int mostSteps = MostSteps)
    {
        var place = subject.PlaceOf(subject.Candidates[first].Place);
        var (moves, paths) = (new List<int> { first }, After(subject, [(subject.Belief, 1)], first));
        while (true)
        {
            var (made, most) = (moves.ToHashSet(), Search.MostWork / paths.Count);
            var plans = paths.Select(p => (p.Chance, Plan: subject.Planner.Next(p.Belief, place, made, most))).ToList();
            var next = plans.Where(p => p.Plan.Move is not null).GroupBy(p => p.Plan.Move!.Value).Select(g => (Move: g.Key, Chance: g.Sum(p => p.Chance))).DefaultIfEmpty().MaxBy(g => g.Chance);
            if (moves.Count >= mostSteps || next.Chance <= Most || subject.PlaceOf(subject.Candidates[next.Move].Place) != place)
            {
                return new Batch(moves, subject.ActMinutes - plans.Sum(p => p.Chance * p.Plan.Minutes));
            }

            moves.Add(next.Move);
            paths = After(subject, paths, next.Move);
        }
    }

    /// <summary>What one may believe after a move, and how likely that is.</summary>
    private static List<(double[] Belief, double Chance)> After(SubjectPlan subject, List<(double[] Belief, double Chance)> paths, int move)
    {
        var chances = subject.Candidates[move].Chances;
        var after = new List<(double[] Belief, double Chance)>();
        foreach (var (belief, chance) in paths)
        {
            for (var o = 0; o < chances[0].Length; o++)
            {
                double[] left = [.. belief.Select((b, w) => b * chances[w][o])];
                var total = left.Sum();
                if (total * chance > Rare)
                {
                    after.Add(([.. left.Select(l => l / total)], total * chance));
                }
            }
        }

        var all = after.Sum(a => a.Chance);
        return [.. after.Select(a => (a.Belief, a.Chance / all))];
    }
}
