namespace Underturf.Reasoning;

/// <summary>Moves in an order of their own, and others that take their places among them.</summary>
internal static class Ranked
{
    /// <summary>Each goes before the first that saves less beyond its own minutes; the others stay in their order.</summary>
    public static IEnumerable<Move> With(IReadOnlyList<Move> moves, IEnumerable<Move> others)
    {
        var more = new Queue<Move>(others.OrderByDescending(Saves));
        foreach (var move in moves)
        {
            while (more.TryPeek(out var next) && Saves(next) > Saves(move))
            {
                yield return more.Dequeue();
            }

            yield return move;
        }

        foreach (var move in more)
        {
            yield return move;
        }
    }

    private static double Saves(Move move) => move.Worth - move.Minutes;
}
