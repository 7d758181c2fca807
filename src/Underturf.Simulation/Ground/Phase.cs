using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Simulation;

/// <summary>A part of a property built at one time by one crew: its wire, its coils and its splices are alike, and they age together.</summary>
/// <param name="Years">Since it was built.</param>
/// <param name="CoilOhms">Of its usual coil.</param>
/// <param name="Splices">What its conductors are joined with.</param>
/// <param name="SpliceTrouble">How much more often than at fifteen years its splices fail.</param>
/// <param name="OwnCommon">It has a common of its own to the controller.</param>
internal sealed record Phase(
    double Years,
    int StationAwg,
    int CommonAwg,
    IReadOnlyList<string> Colours,
    double CoilOhms,
    string Splices,
    double SpliceTrouble,
    double CoilTrouble,
    double WireTrouble,
    bool OwnCommon)
{
    /// <summary>The age at which the practice book's rates hold, and the growth with it: invented, and no model's own.</summary>
    private const double UsualYears = 15, FastGrowth = 1.5, SlowGrowth = 0.8;

    private static readonly (int Awg, double Weight)[] StationSizes = [(18, 0.6), (16, 0.15), (14, 0.1), (20, 0.15)];
    private static readonly (int Awg, double Weight)[] CommonSizes = [(14, 0.65), (12, 0.15), (16, 0.2)];
    private static readonly (string Kind, double Trouble)[] Habits =
        [("gel-filled connectors", 0.6), ("connectors in grease tubes", 1), ("dry connectors", 2.5), ("twisted and taped", 2.5)];

    private static readonly string[][] Cables =
        [["red"], ["blue"], ["red", "black"], ["red", "blue", "yellow", "green", "orange", "brown", "black"]];

    /// <summary>One to four phases, the oldest first; small properties have fewer.</summary>
    public static IReadOnlyList<Phase> Draw(SeededGenerator chance, TrueNumbers numbers, int stations)
    {
        var count = 1 + chance.NextInt(Math.Min(4, 1 + (stations / 10)));
        var oldest = chance.Between(20, 45);
        var years = Enumerable.Range(1, count - 1).Select(_ => chance.Between(2, oldest)).Append(oldest).OrderDescending().ToArray();
        var split = count > 1 && chance.Happens(0.4) ? 1 + chance.NextInt(count - 1) : 0;
        return [.. years.Select((y, p) => One(chance, numbers, y, p > 0 && p == split))];
    }

    /// <summary>How much more often than its rate a fault of this phase happens.</summary>
    public double Trouble(FaultScope scope) => scope switch
    {
        FaultScope.Splice or FaultScope.CommonSplice => SpliceTrouble,
        FaultScope.Coil => CoilTrouble,
        _ => WireTrouble,
    };

    private static Phase One(SeededGenerator chance, TrueNumbers numbers, double years, bool ownCommon)
    {
        var (kind, trouble) = chance.Pick(Habits);
        double Grown(double power) => Math.Pow(years / UsualYears, power) * Math.Exp(0.4 * chance.NextNormal());
        return new Phase(
            Math.Round(years),
            chance.PickWeighted(StationSizes),
            chance.PickWeighted(CommonSizes),
            chance.Pick(Cables),
            numbers.UsualCoilOhms * Math.Exp(0.05 * chance.NextNormal()),
            kind,
            trouble * Grown(FastGrowth),
            Grown(FastGrowth),
            Grown(SlowGrowth),
            ownCommon);
    }
}
