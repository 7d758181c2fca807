using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Reasoning.Water;

/// <summary>What belief can take of a reading: what is usual with all that the practice book's faults make of it. What lies beyond would end at the edge of that, as if it were known.</summary>
internal static class WeighedRange
{
    /// <summary>Standard deviations to either side that are weighed.</summary>
    public const double Reach = 4;

    /// <returns>Least and most in SI; null where everything is weighed.</returns>
    public static (double Least, double Most)? Of(WaterPractice book, WaterMeasure measures, bool isIdle, int stations) => measures switch
    {
        WaterMeasure.StaticPressure => Static(book),
        WaterMeasure.RunningPressure or WaterMeasure.OutletPressure => (0, Static(book).Most),
        WaterMeasure.MeterFlow => (0, isIdle ? AmountGrid.Most : Math.Max(1, stations) * Units.From(book.MostLitresPerMinute, "L/min")),
        WaterMeasure.OpeningTime => (0, Times(book, book.Usual.OpeningSeconds, f => f.OpeningFactor)),
        WaterMeasure.ClosingTime => (0, Times(book, book.Usual.ClosingSeconds, f => f.ClosingFactor)),
        _ => null,
    };

    private static (double Least, double Most) Static(WaterPractice book)
    {
        var usual = book.Usual.StaticKilopascals;
        var sides = SupplyState.All(book).Select(s => s.Factor(f => f.StaticFactor)).Select(f => (Median: Units.From(usual.Median, "kPa") * (f?.Median ?? 1), Spread: double.Hypot(usual.LogSpread, f?.LogSpread ?? 0))).ToList();
        return (sides.Min(s => s.Median * Math.Exp(-Reach * s.Spread)), sides.Max(s => s.Median * Math.Exp(Reach * s.Spread)));
    }

    private static double Times(WaterPractice book, Spread usual, Func<WaterFault, Spread?> factor) =>
        usual.Median * book.Of(WaterScope.Station).Select(factor).OfType<Spread>().Select(f => f.Median * Math.Exp(Reach * double.Hypot(usual.LogSpread, f.LogSpread))).DefaultIfEmpty(Math.Exp(Reach * usual.LogSpread)).Max();
}
