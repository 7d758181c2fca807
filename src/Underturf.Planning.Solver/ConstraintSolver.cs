using Google.OrTools.Sat;
using Underturf.Planning.Choosing;

namespace Underturf.Planning.Solver;

/// <summary>The same programs by a general solver of constraints: native code, one thread and a fixed seed, so that it chooses the same each time.</summary>
public sealed class ConstraintSolver : IChoiceSolver
{
    public ChoiceResult Solve(ChoiceProgram program)
    {
        program.Check();
        var model = new CpModel();
        var taken = program.Needs.Select((need, i) => need.Select((_, j) => model.NewBoolVar($"need {i} option {j}")).ToArray()).ToArray();
        foreach (var options in taken)
        {
            model.AddExactlyOne(options);
        }

        for (var thing = 0; thing < program.Stock.Count; thing++)
        {
            var uses = Uses(program, thing).ToList();
            model.Add(LinearExpr.WeightedSum(uses.Select(u => taken[u.Need][u.Option]), uses.Select(u => u.Times)) <= program.Stock[thing]);
        }

        model.Minimize(LinearExpr.WeightedSum(taken.SelectMany(t => t), program.Needs.SelectMany(n => n.Select(o => o.Cost))));
        using var solver = new CpSolver { StringParameters = "num_workers:1,random_seed:1" };
        if (solver.Solve(model) is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible))
        {
            throw new InvalidOperationException("A program that always has an answer got none.");
        }

        int[] chosen = [.. taken.Select(t => Array.FindIndex(t, v => solver.BooleanValue(v)))];
        return new ChoiceResult(chosen, program.CostOf(chosen)!.Value, (long)Math.Round(solver.BestObjectiveBound));
    }

    private static IEnumerable<(int Need, int Option, int Times)> Uses(ChoiceProgram program, int thing) =>
        from need in Enumerable.Range(0, program.Needs.Count)
        from option in Enumerable.Range(0, program.Needs[need].Count)
        let times = program.Needs[need][option].Uses.Count(u => u == thing)
        where times > 0
        select (need, option, times);
}
