using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Translation;

/// <summary>How long a run is and how well that is known: by tape, by its route, by its ends, or by assumption.</summary>
internal static class LegLength
{
    public static (double Metres, double LogSpread) Of(CableFact cable, PropertyView view, PracticeBook book)
    {
        var spread = book.Wire.LengthSpread;
        return cable.Length is { Metres: > 0 } length ? (length.Metres, Spread(cable.Sure, spread))
            : cable.Route.Count > 1 ? (RouteMetres(cable.Route), spread.Estimated)
            : Between(cable.From, cable.To, view, book);
    }

    public static (double Metres, double LogSpread) Between(string from, string to, PropertyView view, PracticeBook book) =>
        view.PositionOf(from) is { } a && view.PositionOf(to) is { } b && a.DistanceMetresTo(b) > 0
            ? (a.DistanceMetresTo(b) * book.Wire.Detour, book.Wire.LengthSpread.Inferred)
            : (book.Wire.UnknownRunMetres, book.Wire.LengthSpread.Unknown);

    private static double RouteMetres(IReadOnlyList<Position> route) =>
        Enumerable.Range(1, route.Count - 1).Sum(i => route[i - 1].DistanceMetresTo(route[i]));

    private static double Spread(Grade grade, LengthSpreads spread) => grade switch
    {
        Grade.Measured => spread.Measured,
        Grade.Told => spread.Told,
        Grade.Estimated => spread.Estimated,
        Grade.Inferred => spread.Inferred,
        _ => spread.Unknown,
    };
}
