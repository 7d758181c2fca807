namespace Underturf.Papers;

/// <summary>A piece of a page that is never cut.</summary>
/// <param name="HeightPoints">Room that it takes.</param>
/// <param name="Draw">Draws it with its upper edge at a height.</param>
internal sealed record Block(double HeightPoints, Action<Sheet, double> Draw)
{
    /// <summary>Room above it; none at the top of a page.</summary>
    public double BeforePoints { get; init; }

    /// <summary>True where it must stand on one page with what follows: a heading, the first line of a paragraph.</summary>
    public bool WithNext { get; init; }

    /// <summary>Drawn above it where it comes first on a page: the head of the table that it continues.</summary>
    public Block? Head { get; init; }

    public static Block Space(double points) => new(0, (_, _) => { }) { BeforePoints = points };
}
