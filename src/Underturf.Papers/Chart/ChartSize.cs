namespace Underturf.Papers;

/// <summary>The type of a chart: as large as lets it keep to its pages.</summary>
internal sealed record ChartSize(double SizePoints)
{
    /// <summary>Largest first; the smallest is still read at arm's length.</summary>
    private static readonly double[] steps = [13, 12.5, 12, 11.5, 11, 10.5, 10];

    /// <summary>Stations that a page should hold.</summary>
    private const int PageStations = 20;

    public TextStyle Cell => new(Weight.Regular, SizePoints, Ink.Ink);

    public TextStyle Strong => new(Weight.SemiBold, SizePoints, Ink.Ink);

    public TextStyle Quiet => new(Weight.Regular, SizePoints, Ink.Muted);

    public TextStyle Number => new(Weight.Bold, SizePoints + 1.5, Ink.Ink);

    public TextStyle Head => new(Weight.SemiBold, SizePoints - 2, Ink.Muted);

    /// <summary>The first size at which the stations keep to their share of pages, else the last.</summary>
    public static IReadOnlyList<Sheet> Fit(int stations, Func<ChartSize, IReadOnlyList<Sheet>> lay)
    {
        var pages = Math.Max(1, (stations + PageStations - 1) / PageStations);
        IReadOnlyList<Sheet> sheets = [];
        foreach (var step in steps)
        {
            sheets = lay(new ChartSize(step));
            if (sheets.Count <= pages)
            {
                break;
            }
        }

        return sheets;
    }
}
