using Underturf.FieldLog;
using Underturf.Networks.Hydraulics;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Reasoning.Water;

/// <summary>Meter and backflow device of a point of connection, as far as somebody noted what they are or what they lose.</summary>
internal sealed class SupplyDevices
{
    /// <summary>A pair that takes more than this of the usual pressure at the usual flow was noted in a wrong unit.</summary>
    private const double MostShare = 0.5;

    /// <summary>What springs take of a loss that is known, at most.</summary>
    private const double MostSpring = 0.95;

    private readonly WaterPractice book;
    private readonly Networks.Hydraulics.Water fluid;
    private readonly WaterSay say;

    /// <param name="supply">Null where no point of connection is noted.</param>
    public SupplyDevices(WaterPractice book, Networks.Hydraulics.Water fluid, WaterSupplyFact? supply, bool usUnits)
    {
        (this.book, this.fluid, say) = (book, fluid, new WaterSay(usUnits));
        All = supply is null ? [] : [.. new[] { Meter(supply), Backflow(supply) }.OfType<SupplyDevice>().Where(d => Pascals(d) <= MostShare * StaticPascals)];
        Doubtful = supply is null ? [] : [.. new[] { Meter(supply), Backflow(supply) }.OfType<SupplyDevice>().Where(d => Pascals(d) > MostShare * StaticPascals)];
    }

    public IReadOnlyList<SupplyDevice> All { get; }

    /// <summary>Devices that nothing could run through.</summary>
    public IReadOnlyList<SupplyDevice> Doubtful { get; }

    /// <summary>What is usual on the way, that of these devices taken in the place of the usual one's.</summary>
    public double UsualLossPascals => (Units.From(book.Usual.LossKilopascals.Median, "kPa") * (1 - All.Sum(d => d.UsualShare))) + LossPascals(UsualFlow);

    private double UsualFlow => Units.From(book.Usual.StationLitresPerMinute.Median, "L/min");

    private double StaticPascals => Units.From(book.Usual.StaticKilopascals.Median, "kPa");

    /// <summary>What they lose together.</summary>
    public double LossPascals(double flow) => All.Sum(d => d.Curve.LossMetres(flow)) * fluid.PascalsPerMetre;

    private double Pascals(SupplyDevice device) => device.Curve.LossMetres(UsualFlow) * fluid.PascalsPerMetre;

    private SupplyDevice? Meter(WaterSupplyFact supply)
    {
        var usual = supply.Meter is { } size ? book.MeterOf(size) : null;
        return Pair(supply.MeterAt, supply.MeterLoss) is { } pair ? Made("meter", $"{say.Pressure(pair.Pascals)} at {say.Flow(pair.Flow)} noted", pair.Flow, pair.Pascals, 0)
            : usual is null ? null
            : Made("meter", $"{usual.Name} in, as is usual of its size", Units.From(usual.LitresPerMinute, "L/min"), Units.From(usual.Kilopascals, "kPa"), 0);

        SupplyDevice Made(string name, string from, double flow, double pascals, double spring) => new(name, from, PipeElementKind.Meter, book.Usual.MeterShare, Curve(flow, pascals, spring));
    }

    private SupplyDevice? Backflow(WaterSupplyFact supply)
    {
        var kind = book.Backflows.FirstOrDefault(b => b.Name == supply.BackflowKind);
        var spring = Units.From(kind?.OpensKilopascals ?? 0, "kPa");
        if (Pair(supply.BackflowAt, supply.BackflowLoss) is { } pair)
        {
            return Made($"{say.Pressure(pair.Pascals)} at {say.Flow(pair.Flow)} noted", pair.Flow, pair.Pascals);
        }

        return kind is not null && supply.BackflowSize is { Metres: > 0 } size
            ? Made($"{kind.Name} of {Inches(size)} in, as is usual of its kind", kind.MetresPerSecond * HoleDischarge.AreaSquareMetres(size.Metres), Units.From(kind.Kilopascals, "kPa"))
            : null;

        SupplyDevice Made(string from, double flow, double pascals) => new("backflow device", from, PipeElementKind.Backflow, book.Usual.BackflowShare, Curve(flow, pascals, spring));
    }

    private LossCurve Curve(double flow, double pascals, double spring) =>
        LossCurve.Through(flow, pascals / fluid.PascalsPerMetre, Math.Min(spring, MostSpring * pascals) / fluid.PascalsPerMetre);

    private static (double Flow, double Pascals)? Pair(Flow? at, Pressure? loss) => at is { CubicMetresPerSecond: > 0 } flow && loss is { Pascals: > 0 } lost ? (flow.CubicMetresPerSecond, lost.Pascals) : null;

    private static string Inches(Length size) => Units.In(size.Metres, "in").ToString("0.##", System.Globalization.CultureInfo.InvariantCulture);
}

/// <summary>Something at the point of connection that loses pressure.</summary>
/// <param name="Name">"meter" or "backflow device".</param>
/// <param name="From">What its loss is taken from.</param>
/// <param name="UsualShare">Of what is usually lost on the way.</param>
internal sealed record SupplyDevice(string Name, string From, PipeElementKind Kind, double UsualShare, LossCurve Curve);
