namespace Underturf.Reasoning.Water;

/// <summary>How water comes from the meter to something that runs.</summary>
internal enum PassageKind
{
    /// <summary>What is shut holds it back.</summary>
    None,

    Open,

    /// <summary>Through one shut valve that does not hold.</summary>
    Through,

    /// <summary>Through one or the other of two.</summary>
    EitherOf,

    /// <summary>Through one and then the other.</summary>
    BothOf,
}

/// <summary>How water comes from the meter to something that runs, through which of the doubted valves.</summary>
/// <param name="First">Number of the valve among those that are doubted; -1 for none.</param>
internal readonly record struct Passage(PassageKind Kind, int First = -1, int Second = -1)
{
    public static readonly Passage None = new(PassageKind.None);

    public static readonly Passage Open = new(PassageKind.Open);

    public bool Shows => Kind != PassageKind.None;

    /// <summary>The same for the same.</summary>
    public string Key => Kind switch
    {
        PassageKind.None => "0",
        PassageKind.Open => "1",
        PassageKind.Through => $"({First})",
        PassageKind.EitherOf => $"({First}/{Second})",
        _ => $"({First}+{Second})",
    };

    /// <summary>Share of what would run that does, on average over what a valve may let through: evenly from nothing to all.</summary>
    public double MeanShare => Kind switch { PassageKind.None => 0, PassageKind.Open => 1, PassageKind.Through => 1.0 / 2, PassageKind.EitherOf => 2.0 / 3, _ => 1.0 / 4 };

    /// <summary>Places of the grid by which less runs than with everything open.</summary>
    /// <param name="first">The same of the first valve, and of the second.</param>
    public int PlacesLess(int first, int second) => Kind switch
    {
        PassageKind.Open => 0,
        PassageKind.Through => first,
        PassageKind.EitherOf => Math.Min(first, second),
        PassageKind.BothOf => first + second,
        _ => AmountGrid.Count,
    };

    /// <summary>With the valves named in another order: the first of these, then the second.</summary>
    public int PlacesLess(int one, int first, int second) => Kind == PassageKind.Through && First != one ? second : PlacesLess(first, second);
}
