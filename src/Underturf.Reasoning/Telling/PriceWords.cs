namespace Underturf.Reasoning.Telling;

/// <summary>One job has several prices, each of another part of it: what each of them includes, said in the same words wherever it is printed.</summary>
public static class PriceWords
{
    public const string Move = "Minutes of a move: the way there, finding the place where nobody has, and the work there.";

    public const string Repair = "Minutes and price of a repair: the work there, shutting off and parts; not the way there, which moves counts.";

    public const string Rework = "In it: ways, finding and proving conductors, laying them, joints, terminals and checks.";

    /// <summary>Of parting valves that share a conductor, as a move or a repair.</summary>
    public const string JointOnly = "the joint alone; with conductor, terminal and checks: rework";
}
