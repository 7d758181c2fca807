namespace Underturf.Reasoning.Moves.Planning;

/// <summary>What to do next.</summary>
/// <param name="Move">The number of the move; nothing where acting at once is best.</param>
/// <param name="Act">The act that is best now; nothing where doing nothing and being wrong costs least.</param>
/// <param name="Minutes">Expected minutes from here to the end, by the best plan that was looked at.</param>
/// <param name="ActMinutes">Expected minutes of acting at once.</param>
/// <param name="Settled">True where acting at once loses less, against knowing all, than it is worth thinking about.</param>
/// <param name="Options">Every move that tells something, and the expected minutes to the end by way of it; fewest first.</param>
public sealed record Plan(int? Move, int? Act, double Minutes, double ActMinutes, bool Settled, IReadOnlyList<PlanOption> Options);

/// <summary>A first move.</summary>
/// <param name="Minutes">Expected minutes to the end, its own and its walk's among them.</param>
/// <param name="DoubtShare">Share of the doubt that it takes away by itself; doubt is the chance that two draws from the belief need different acts.</param>
public readonly record struct PlanOption(int Move, double Minutes, double DoubtShare);

/// <summary>
/// Chooses the next move of a decision. It looks ahead over moves and their outcomes, deeper and deeper until the tree is done or a fixed amount of arithmetic is
/// used up, so that the answer depends on the decision alone (docs/models/moves.md).
/// </summary>
public sealed class Planner
{
    private readonly Sheet sheet;
    private readonly int most;

    public Planner(Decision decision)
        : this(decision, Search.MostWork)
    {
    }

    /// <param name="most">Chances multiplied at most.</param>
    internal Planner(Decision decision, int most) => (sheet, this.most) = (new Sheet(decision), most);

    /// <param name="belief">Chance of each hypothesis now.</param>
    /// <param name="place">Where one stands.</param>
    /// <param name="made">Moves that are not made again.</param>
    public Plan Next(IReadOnlyList<double> belief, int place, IReadOnlySet<int> made) => Next(belief, place, made, most);

    internal Plan Next(IReadOnlyList<double> belief, int place, IReadOnlySet<int> made, int work) => new Search(sheet, made, work).Best(sheet.Masses(belief), place);
}
