namespace Underturf.Reasoning.Moves.Planning;

/// <summary>
/// A decision without words: what may be so, what can be found out and for how many minutes, and what can be done about it. Everything that a plan
/// needs and nothing of irrigation, so that plans can be held against the exact optimum.
/// </summary>
/// <param name="Chances">Of each hypothesis; they sum to one.</param>
/// <param name="Moves">What tells hypotheses apart; each is made once at most.</param>
/// <param name="Acts">What ends the search.</param>
/// <param name="WalkMinutes">From a place (row) to a place (column); no way round is shorter than the direct one.</param>
/// <param name="WrongMinutes">Charged once where the act does not cure; that ends the search too.</param>
/// <param name="SettledMinutes">Whoever expects to lose less than this by acting at once, against knowing all, acts.</param>
public sealed record Decision(
    IReadOnlyList<double> Chances,
    IReadOnlyList<DecisionMove> Moves,
    IReadOnlyList<DecisionAct> Acts,
    IReadOnlyList<IReadOnlyList<double>> WalkMinutes,
    double WrongMinutes,
    double SettledMinutes);

/// <summary>Something that can be found out at a place.</summary>
/// <param name="Place">The number of the place.</param>
/// <param name="Minutes">At the place.</param>
/// <param name="Outcomes">For each hypothesis (row) the chance of each outcome; a row sums to one.</param>
public sealed record DecisionMove(int Place, double Minutes, IReadOnlyList<IReadOnlyList<double>> Outcomes);

/// <summary>Something that can be done.</summary>
/// <param name="Place">The number of the place; nothing where it needs no walk, as leaving alone does not.</param>
/// <param name="Minutes">At the place.</param>
/// <param name="Cures">Whether it cures each hypothesis.</param>
public sealed record DecisionAct(int? Place, double Minutes, IReadOnlyList<bool> Cures);
