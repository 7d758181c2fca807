namespace Underturf.Planning.Choosing;

/// <summary>A way to serve a need.</summary>
/// <param name="Uses">Numbers of the things that it takes one each of.</param>
public sealed record ChoiceOption(long Cost, IReadOnlyList<int> Uses);

/// <summary>For each need exactly one option is chosen, so that the costs add up to the least and nothing is taken more often than it is there.</summary>
/// <param name="Needs">For each need its options; at least one of them takes nothing, so that there is always an answer.</param>
/// <param name="Stock">How often each thing is there.</param>
public sealed record ChoiceProgram(IReadOnlyList<IReadOnlyList<ChoiceOption>> Needs, IReadOnlyList<int> Stock)
{
    /// <exception cref="InvalidOperationException">A need has no option that takes nothing: a bug of whoever made the program.</exception>
    public void Check()
    {
        if (Needs.Any(n => n.All(o => o.Uses.Count > 0)))
        {
            throw new InvalidOperationException("Every need wants an option that takes nothing.");
        }
    }

    /// <summary>What a choice costs; nothing where it takes more than is there.</summary>
    public long? CostOf(IReadOnlyList<int> chosen)
    {
        var left = Stock.ToArray();
        var cost = 0L;
        for (var i = 0; i < Needs.Count; i++)
        {
            cost += Needs[i][chosen[i]].Cost;
            foreach (var thing in Needs[i][chosen[i]].Uses)
            {
                left[thing]--;
            }
        }

        return left.Any(l => l < 0) ? null : cost;
    }
}

/// <summary>What was chosen.</summary>
/// <param name="Chosen">For each need the number of its option.</param>
/// <param name="Bound">No choice costs less than this.</param>
public sealed record ChoiceResult(IReadOnlyList<int> Chosen, long Cost, long Bound)
{
    public bool IsBest => Cost == Bound;
}

/// <summary>A method that solves such programs.</summary>
public interface IChoiceSolver
{
    ChoiceResult Solve(ChoiceProgram program);
}
