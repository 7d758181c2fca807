using Underturf.Planning.Rework;
using Underturf.Property.Practice;

namespace Underturf.Planning.Repair;

/// <summary>Lines of a sum, each with the spread of its minutes.</summary>
internal sealed class RepairLines(decimal hourPrice)
{
    private readonly List<CostLine> lines = [];
    private decimal squares;

    public CostSheet Sheet => new([.. lines]);

    public decimal SpreadMinutes => Root(squares);

    public decimal SpreadPrice => decimal.Round(SpreadMinutes * hourPrice / 60, 2, MidpointRounding.AwayFromZero);

    /// <summary>Mean of three points: (a + 4 m + b) / 6, spread (b - a) / 6 (Malcolm, Roseboom, Clark and Fazar 1959), to a tenth of a minute.</summary>
    public static decimal Mean(Span span) => Tenth((span.Least + (4 * span.Likely) + span.Most) / 6);

    /// <summary>A line of several alike takes the spread of them all: a hard place is hard throughout.</summary>
    public RepairLines Add(string what, Span span, decimal parts = 0, decimal factor = 1)
    {
        var spread = (span.Most - span.Least) / 6 * factor;
        return Add(what, Mean(span) * factor, spread, parts);
    }

    public RepairLines Add(string what, decimal minutes, decimal spread, decimal parts)
    {
        lines.Add(CostLine.Of(what, Tenth(minutes), hourPrice, parts));
        squares += spread * spread;
        return this;
    }

    private static decimal Tenth(decimal minutes) => decimal.Round(minutes, 1, MidpointRounding.AwayFromZero);

    private static decimal Root(decimal square) => Tenth((decimal)Math.Sqrt((double)square));
}
