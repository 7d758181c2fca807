using Underturf.Numerics;
using Underturf.Reasoning.Moves.Planning;

namespace Underturf.Simulation.Decisions;

/// <summary>
/// A frozen suite of small decisions, each drawn from its number: what may be wrong at the places of a small ground, what can be found out about it where, and
/// what mends it. All numbers are invented, of the order of the practice book's, and stay as they are when the book changes.
/// </summary>
public static class DecisionSuite
{
    /// <summary>So few that the exact optimum can be worked out.</summary>
    public const int MostHypotheses = 12, MostMoves = 12;

    private const int FewestHypotheses = 4, FewestMoves = 4;

    private const double LeastWrongMinutes = 60, MostWrongMinutes = 240, SettledMinutes = 8;

    public static Decision Make(ulong seed, int number)
    {
        var chance = new SeededGenerator(seed).Fork($"decision {number}");
        var ground = new SuiteGround(chance.Fork("ground"));
        var faults = new SuiteFaults(chance.Fork("faults"), ground, FewestHypotheses + chance.NextInt(MostHypotheses - FewestHypotheses + 1));
        var moves = new SuiteMoves(chance.Fork("moves"), ground, faults).Draw(FewestMoves + chance.NextInt(MostMoves - FewestMoves + 1));
        var wrongMinutes = LeastWrongMinutes + ((MostWrongMinutes - LeastWrongMinutes) * chance.NextDouble());
        return new Decision(faults.Chances, moves, faults.Acts, ground.WalkMinutes, wrongMinutes, SettledMinutes);
    }
}
