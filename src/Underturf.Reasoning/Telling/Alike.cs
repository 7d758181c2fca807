namespace Underturf.Reasoning.Telling;

/// <summary>Puts together the explanations that no move tells apart; by what the moves would show, never by a fault's name.</summary>
internal static class Alike
{
    /// <summary>
    /// Two explanations are alike when no outcome of any one move separates them by more: at even odds its outcome would name the right one with
    /// a chance of at most 55 %.
    /// </summary>
    public const double Limit = 0.1;

    /// <summary>Groups of explanations by their index, each by falling probability; the first of a group stands for it.</summary>
    /// <param name="shown">So many of the sample's groups, the likeliest, are told.</param>
    public static IReadOnlyList<IReadOnlyList<int>> Group(Sample sample, IReadOnlyList<Foreseen> moves, int shown)
    {
        var told = new List<List<int>>();
        for (var g = 0; g < shown; g++)
        {
            if (told.Find(t => AreAlike(sample, moves, t[0], g)) is { } same)
            {
                same.Add(g);
            }
            else
            {
                told.Add([g]);
            }
        }

        return told;
    }

    private static bool AreAlike(Sample sample, IReadOnlyList<Foreseen> moves, int one, int other) =>
        moves.Count > 0 && moves.All(m => m.Apart(sample, one, other) <= Limit);
}
