using Underturf.Reasoning.Moves.Planning;

namespace Underturf.Simulation.Decisions;

/// <summary>The arithmetic of a small decision, apart from the planner's, which is held against it.</summary>
internal sealed class SmallDecision
{
    private readonly Decision decision;
    private readonly double[][] actCost;
    private readonly double[][] least;
    private readonly double[][] cures;
    private readonly double[][][] outcomes;

    public SmallDecision(Decision decision)
    {
        this.decision = decision;
        var places = Enumerable.Range(0, decision.WalkMinutes.Count).ToArray();
        cures = [.. decision.Acts.Select(a => a.Cures.Select(c => c ? 1.0 : 0).ToArray())];
        actCost = [.. places.Select(p => decision.Acts.Select(a => (a.Place is { } at ? decision.WalkMinutes[p][at] : 0) + a.Minutes).ToArray())];
        least = [.. places.Select(p => decision.Chances.Select((_, h) => actCost[p].Where((_, a) => decision.Acts[a].Cures[h]).Append(decision.WrongMinutes).Min()).ToArray())];
        outcomes = [.. decision.Moves.Select(m => Enumerable.Range(0, m.Outcomes[0].Count).Select(o => m.Outcomes.Select(row => row[o]).ToArray()).ToArray())];
    }

    /// <summary>Minutes of a move, its walk included.</summary>
    public double Minutes(int move, int from) => decision.WalkMinutes[from][decision.Moves[move].Place] + decision.Moves[move].Minutes;

    /// <summary>Expected minutes of the best act now, or of doing nothing and being wrong, times the chance to be here.</summary>
    public double Act(double[] mass, double total, int place)
    {
        var best = decision.WrongMinutes * total;
        for (var act = 0; act < cures.Length; act++)
        {
            var cured = 0.0;
            for (var h = 0; h < mass.Length; h++)
            {
                cured += mass[h] * cures[act][h];
            }

            best = Math.Min(best, (actCost[place][act] * total) + (decision.WrongMinutes * (total - cured)));
        }

        return best;
    }

    /// <summary>Expected minutes if the truth were told, times the chance to be here.</summary>
    public double Known(double[] mass, int place)
    {
        var sum = 0.0;
        for (var h = 0; h < mass.Length; h++)
        {
            sum += mass[h] * least[place][h];
        }

        return sum;
    }

    /// <summary>What is left of belief after each outcome of a move.</summary>
    public (double[] Mass, double Total)[] After(double[] mass, int move)
    {
        var next = new (double[] Mass, double Total)[outcomes[move].Length];
        for (var o = 0; o < next.Length; o++)
        {
            var (left, total) = (new double[mass.Length], 0.0);
            for (var h = 0; h < left.Length; h++)
            {
                left[h] = mass[h] * outcomes[move][o][h];
                total += left[h];
            }

            next[o] = (left, total);
        }

        return next;
    }
}
