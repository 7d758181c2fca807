namespace Underturf.Papers;

/// <summary>The type of a chart: as large as lets it keep to its pages.</summary>
/// <param name="MostLines">Lines that a field may take.</param>
internal sealed record ChartSize(double SizePoints, int MostLines)
{
    /// <summary>Largest first; the smallest is still read at arm's length. Where many fields need two lines, one line each goes before smaller type.</summary>
    private static readonly (double SizePoints, int Lines)[] steps = [(13, 2), (12.5, 2), (12, 2), (11.5, 2), (11, 2), (10.5, 2), (10, 2), (11, 1), (10, 1)];

    /// <summary>Stations that a page should hold.</summary>
    private const int PageStations = 20;

    public TextStyle Cell => new(Weight.Regular, SizePoints, Ink.Ink);

    public TextStyle Strong => new(Weight.SemiBold, SizePoints, Ink.Ink);

    public TextStyle Quiet => new(Weight.Regular, SizePoints, Ink.Muted);

    public TextStyle Number => new(Weight.Bold, SizePoints, Ink.Ink);

    public TextStyle Head => new(Weight.SemiBold, SizePoints - 2, Ink.Muted);

    /// <summary>The first size at which the stations keep to their share of pages, else the last.</summary>
    public static IReadOnlyList<Sheet> Fit(int stations, Func<ChartSize, IReadOnlyList<Sheet>> lay)
    {
        var pages = Math.Max(1, (stations + PageStations - 1) / PageStations);
        IReadOnlyList<Sheet> sheets = [];
        foreach (var (size, lines) in steps)
        {
            sheets = lay(new ChartSize(size, lines));
            if (sheets.Count <= pages)
            {
                break;
            }
        }

        return sheets;
    }
}
