namespace Underturf.Planning.Rework;

/// <summary>One line of a sum of minutes and money.</summary>
/// <param name="Work">Price of the minutes, in whole cents.</param>
/// <param name="Parts">Price of what is bought.</param>
public sealed record CostLine(string What, decimal Minutes, decimal Work, decimal Parts)
{
    /// <param name="hourPrice">Of an hour of work.</param>
    public static CostLine Of(string what, decimal minutes, decimal hourPrice, decimal parts = 0) =>
        new(what, minutes, decimal.Round(minutes * hourPrice / 60, 2, MidpointRounding.AwayFromZero), decimal.Round(parts, 2, MidpointRounding.AwayFromZero));

    public decimal Price => Work + Parts;

    /// <summary>A length or a time that was computed, to one decimal: from here on everything is exact.</summary>
    public static decimal Exact(double computed) => decimal.Round((decimal)(double.IsNaN(computed) ? 0 : Math.Clamp(computed, 0, Most)), 1, MidpointRounding.AwayFromZero);

    private const double Most = 1e6;
}

/// <summary>A sum that adds up: every line is in whole cents, and the totals are the sums of the lines.</summary>
public sealed record CostSheet(IReadOnlyList<CostLine> Lines)
{
    public decimal Minutes => Lines.Sum(l => l.Minutes);

    public decimal Work => Lines.Sum(l => l.Work);

    public decimal Parts => Lines.Sum(l => l.Parts);

    public decimal Price => Work + Parts;

    public CostSheet And(IEnumerable<CostLine> more) => new([.. Lines, .. more]);
}
