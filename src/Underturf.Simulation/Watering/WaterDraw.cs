using Underturf.Networks.Hydraulics;
using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Simulation;

/// <summary>
/// Draws true water: which faults there are, about as often as the practice book has them (half to one and a half times, drawn for each property),
/// and what they are in holes, bores and openings, which is not how the book says it.
/// </summary>
internal sealed class WaterDraw(SeededGenerator chance, PracticeBook book)
{
    private const double LitresPerMinute = 1.0 / 60000;

    private const double MuchMetres = 45;

    /// <summary>A little more than every second street gives that much: so often as the book has it over all stations.</summary>
    private const double RegulatedTimes = 1.75;

    /// <summary>A lateral that falls, and whose outlets hold no water back, empties: so many fall that this is as often as the book has it.</summary>
    private const double FallsMetresLeast = 0.2;

    private readonly double often = chance.Between(0.5, 1.5);
    private readonly SeededGenerator heights = chance.Fork("heights");

    public TrueWater Draw(int stations)
    {
        var supply = Of(WaterScope.Supply);
        var leak = Happens("main-leak", 1.6) ? Hole(1.5, 8) : 0;
        var street = chance.Between(32, 62);

        // Where the street gives much, builders put in valves that hold it down.
        var regulated = street > MuchMetres;
        return new TrueWater(
            [.. Enumerable.Range(1, stations).Select(n => Station(n, stations, regulated))],
            [.. supply, .. Happens("meter-creep") ? ["meter-creep"] : Array.Empty<string>(), .. leak > 0 ? ["main-leak"] : Array.Empty<string>()],
            street * (supply.Contains("supply-weak") ? chance.Between(0.45, 0.75) : 1) * (supply.Contains("supply-unheld") ? chance.Between(1.35, 1.9) : 1),
            Street(supply.Contains("way-narrow")),
            leak,
            chance.NextInt(3),
            0,
            [Passes(), Passes()]) is var water && water.Faults.Contains("meter-creep") ? water with { Creep = chance.Between(0.12, 0.7) * LitresPerMinute } : water;
    }

    /// <summary>Round the way of the usual flow: 2 to 6 m lost at 50 L/min; a choked one many times that.</summary>
    private double Street(bool narrow) => chance.Between(2, 6) / Math.Pow(50 * LitresPerMinute, 1.852) * (narrow ? chance.Between(3, 12) : 1);

    private double Passes() => chance.Happens(book.Water.Isolating.NotHolding * often) ? Hole(0.5, 3) : 0;

    private TrueStation Station(int number, int of, bool regulated)
    {
        var faults = Of(WaterScope.Station).Where(f => f != "regulator-gone").ToList();
        faults.AddRange(regulated && Happens("regulator-gone", RegulatedTimes) ? ["regulator-gone"] : Array.Empty<string>());
        bool Has(string fault) => faults.Contains(fault);
        var (opens, closes) = (chance.Between(3.5, 11), chance.Between(4.5, 15));
        var leaks = Happens("valve-not-closing");
        var sound = new TrueStation(
            $"s{number}", $"v{number}", number <= of / 2 ? 1 : 2, [], chance.Between(4, 9) * 1e-6, regulated ? chance.Between(230, 330) * 1000 : null, 0.0266, chance.Between(18, 95) * LitresPerMinute / Math.Sqrt(250_000), 0, leaks ? Hole(1, 5.5) : 0, opens, closes);
        sound = sound with { Slope = Slope(Has("low-head")), Outlets = 4 + (2 * heights.NextInt(6)) };
        return sound with
        {
            Faults = [.. faults, .. leaks ? ["valve-not-closing"] : Array.Empty<string>()],
            Coefficient = Has("no-water-here") ? 0 : sound.Coefficient * (Has("valve-half-open") ? chance.Between(0.08, 0.3) : 1),
            RegulatedPascals = Has("regulator-gone") ? null : sound.RegulatedPascals,
            LateralMetres = Has("pipe-small") ? chance.Between(0.011, 0.016) : sound.LateralMetres,
            OutletFactor = sound.OutletFactor * (Has("outlets-too-many") ? chance.Between(1.5, 2.4) : 1),
            Hole = (Has("outlet-broken") ? Hole(5.5, 9.5) : 0) + (Has("lateral-break") ? Hole(7, 14) : 0),
            OpeningSeconds = opens * (Has("valve-half-open") ? chance.Between(1.1, 2.8) : 1) * (Has("air-in-pipe") ? chance.Between(1.6, 4) : 1),
            ClosingSeconds = closes * (Has("port-blocked") ? chance.Between(3, 10) : 1) * (Has("closes-hard") ? chance.Between(0.25, 0.6) : 1),
            Sound = sound,
        };
    }

    /// <summary>One that does not empty lies level, or has outlets that hold the water back: as many as the book has it.</summary>
    private TrueSlope Slope(bool empties)
    {
        var (top, low) = (heights.Between(-5, 5), book.Water.Faults.First(f => f.Id == "low-head"));
        var held = low.Rate * (1 - book.Water.LowHead.WithoutChecks) / book.Water.LowHead.WithoutChecks / (1 - low.Rate);
        return new TrueSlope(top, top - (empties || heights.Happens(held) ? heights.Between(FallsMetresLeast, 3) : heights.Between(0, 0.08)));
    }

    private List<string> Of(WaterScope scope) => [.. book.Water.Of(scope).Where(f => Happens(f.Id)).Select(f => f.Id)];

    private bool Happens(string fault, double times = 1) => chance.Happens(Math.Min(0.5, book.Water.Faults.First(f => f.Id == fault).Rate * often * times));

    /// <summary>k of a hole, its bore in millimetres as likely in one doubling as in the next.</summary>
    private double Hole(double least, double most) => Outlet.Hole(new Water(288.15), Math.Exp(chance.Between(Math.Log(least), Math.Log(most))) / 1000, chance.Between(0.55, 0.7)).CubicMetresPerSecondAtOnePascal;
}
