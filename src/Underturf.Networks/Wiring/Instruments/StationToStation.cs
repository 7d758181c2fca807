using Underturf.Quantities;

namespace Underturf.Networks.Wiring.Instruments;

/// <summary>Three ohms at the controller: two stations each to the common, and from one station to the other.</summary>
/// <remarks>
/// With a and b the ohms of each station's own conductor, coil and branch of the common, and c those of the common they share: first = a + c,
/// second = b + c, between = a + b; so c = (first + second - between) / 2 (exact; the common is lifted from the controller).
/// </remarks>
public sealed record StationToStation
{
    private const string Place = "station to station ohms";

    /// <summary>Null where the display is over its range.</summary>
    public MeasuredOhms? First { get; init; }

    /// <summary>Null where the display is over its range.</summary>
    public MeasuredOhms? Second { get; init; }

    /// <summary>Null where the display is over its range.</summary>
    public MeasuredOhms? Between { get; init; }

    /// <summary>Both stations are open to the common and yet joined to each other: the common they share is broken.</summary>
    public bool CommonIsBroken => First is null && Second is null && Between is not null;

    /// <summary>Ohms of the common that both stations use; may come out below zero by its spread.</summary>
    public Outcome<MeasuredOhms> SharedCommon()
    {
        if (CommonIsBroken)
        {
            return new Problem(
                Place,
                "both stations are open to the common and joined to each other: the common is broken",
                "Look for the break before the first of the two valves");
        }

        if (First is not { } first || Second is not { } second || Between is not { } between)
        {
            return new Problem(
                Place, "one of the three readings is over the range", "Settle the open station first, or take another station");
        }

        var spread = double.Hypot(double.Hypot(first.SpreadOhms, second.SpreadOhms), between.SpreadOhms) / 2;
        return new MeasuredOhms((first.Ohms + second.Ohms - between.Ohms) / 2, spread);
    }

    /// <summary>What an ohmmeter sees between two stations, the common whole up to where they meet.</summary>
    public static double BetweenOhms(double firstOhms, double secondOhms, double sharedCommonOhms) =>
        firstOhms + secondOhms - (2 * sharedCommonOhms);
}
