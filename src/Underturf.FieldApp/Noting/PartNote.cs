using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>What is typed of a part that holds water: outlets, a height, a meter, a backflow device. Figures are typed with their units, as a plate has them.</summary>
public sealed class PartNote
{
    /// <summary>Id of the point of connection, or of what the height is of.</summary>
    public string Thing { get; set; } = "";

    /// <summary>What that is, in the words of <see cref="GroundWords"/>; empty for a fitting.</summary>
    public string Of { get; set; } = "";

    /// <summary>Height over any one level of the property.</summary>
    public string Height { get; set; } = "";

    /// <summary>Nominal size of the meter, by its name in the practice book.</summary>
    public string Meter { get; set; } = "";

    public string MeterAt { get; set; } = "";

    public string MeterLoss { get; set; } = "";

    /// <summary>Kind of the backflow device, by its name in the practice book.</summary>
    public string Kind { get; set; } = "";

    public string Size { get; set; } = "";

    public string At { get; set; } = "";

    public string Loss { get; set; } = "";

    /// <summary>What the outlets are, by their name in the practice book.</summary>
    public string What { get; set; } = "";

    public string Count { get; set; } = "";

    /// <summary>Id of the fitting that they are on.</summary>
    public string Fitting { get; set; } = "";

    /// <summary>True where something was typed or chosen that would be missed.</summary>
    public bool IsTouched => (Height + Meter + MeterAt + MeterLoss + Kind + Size + At + Loss + What + Count).Length > 0;

    /// <summary>Stands for the id of outlets that nobody has noted before, until they are stored.</summary>
    public const string NewId = "new";

    /// <summary>Says what the height is of.</summary>
    public void Choose(string thing, PropertyView view) => (Thing, Of) = (thing,
        view.Valves.ContainsKey(thing) ? GroundWords.Valve
        : view.IsolationValves.ContainsKey(thing) ? GroundWords.IsolationValve
        : view.WaterSupplies.ContainsKey(thing) ? GroundWords.PointOfConnection
        : "");

    /// <summary>A fact as it is stored: new outlets get the id that nobody else can give.</summary>
    public static Fact Named(Fact fact, string newId) => fact is OutletFact { Id: NewId } outlets ? outlets with { Id = newId } : fact;

    /// <summary>Meter and backflow device, or what is still missing.</summary>
    public Outcome<Fact> ToSupply()
    {
        if (Thing.Length == 0)
        {
            return Missing("point of connection", "Choose the point of connection");
        }

        var trouble = First(Read<Flow>(MeterAt), Read<Pressure>(MeterLoss), Read<Length>(Size), Read<Flow>(At), Read<Pressure>(Loss)) ?? Half("meter", MeterAt, MeterLoss) ?? Half("backflow device", At, Loss);
        if (trouble is not null)
        {
            return trouble;
        }

        return (Meter + MeterAt + Kind + Size + At).Length == 0
            ? Missing("meter or backflow device", "Choose the meter's size or the kind of backflow device, or write a flow and what is lost then")
            : new WaterSupplyFact
            {
                Id = Thing,
                Meter = PracticeBook.Default.Water.Meters.FirstOrDefault(m => m.Name == Meter) is { } meter ? new Length(meter.Millimetres / 1000) : null,
                MeterAt = Read<Flow>(MeterAt).Value,
                MeterLoss = Read<Pressure>(MeterLoss).Value,
                BackflowKind = Kind.Length > 0 ? Kind : null,
                BackflowSize = Read<Length>(Size).Value,
                BackflowAt = Read<Flow>(At).Value,
                BackflowLoss = Read<Pressure>(Loss).Value,
            };
    }

    /// <summary>Outlets of a station, or what is still missing.</summary>
    public Outcome<Fact> ToOutlets(IReadOnlyList<string> stations)
    {
        if (stations is not [var station])
        {
            return Missing("station", "Choose the station that they are on");
        }

        if (What.Length == 0)
        {
            return Missing("outlets", "Choose what they are");
        }

        var height = Read<Length>(Height);
        return !int.TryParse(Count.Trim(), System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var count) || count < 1 ? Missing("count", "Write how many they are, 1 or more")
            : height.Problem is { } problem ? problem
            : new OutletFact { Id = NewId, Station = station, What = What, Count = count, Fitting = Fitting.Length > 0 ? Fitting : null, Elevation = height.Value };
    }

    /// <summary>How high a thing lies, or what is still missing.</summary>
    public Outcome<Fact> ToHeight()
    {
        if (Thing.Length == 0)
        {
            return Missing("thing", "Choose what the height is of");
        }

        var height = Read<Length>(Height);
        return height.Problem is { } problem ? problem
            : height.Value is not { } metres ? Missing("height", "Write the height with its unit, for example 6.5 ft")
            : Lies(metres);
    }

    private Fact Lies(Length height) => Of switch
    {
        GroundWords.Valve => new ValveFact { Id = Thing, Elevation = height },
        GroundWords.IsolationValve => new IsolationValveFact { Id = Thing, Elevation = height },
        GroundWords.PointOfConnection => new WaterSupplyFact { Id = Thing, Elevation = height },
        _ => new FittingFact { Id = Thing, Elevation = height },
    };

    /// <summary>Nothing where nothing was typed.</summary>
    private static (T? Value, Problem? Problem) Read<T>(string text)
        where T : struct, IQuantity<T>
    {
        if (text.Trim().Length == 0)
        {
            return (null, null);
        }

        var read = T.Parse(text.Trim());
        return !read.Succeeded ? (null, read.Problem)
            : read.Value.Si < 0 ? (null, new Problem(text, "is less than nothing", typeof(T) == typeof(Length) ? "Take the lowest place as the level that all heights count from" : "Write it without the minus sign"))
            : (read.Value, null);
    }

    private static Problem? First(params (object? Value, Problem? Problem)[] read) => read.Select(r => r.Problem).FirstOrDefault(p => p is not null);

    private static Problem? Half(string device, string at, string loss) =>
        (at.Trim().Length == 0) == (loss.Trim().Length == 0) ? null : Missing(device, $"Write both the flow and what the {device} loses then, or neither");

    private static Problem Missing(string what, string remedy) => new(what, "is not given yet", remedy);
}

/// <summary>What the forms about parts offer.</summary>
internal static class PartChoices
{
    public static IReadOnlyList<Choice> Meters { get; } = [.. PracticeBook.Default.Water.Meters.Select(m => new Choice(m.Name, $"{m.Name} in"))];

    public static IReadOnlyList<Choice> Kinds { get; } = [.. PracticeBook.Default.Water.Backflows.Select(b => new Choice(b.Name, b.Name))];

    public static IReadOnlyList<Choice> Sizes { get; } = [new("0.75 in", "3/4 in"), new("1 in", "1 in"), new("1.25 in", "1 1/4 in"), new("1.5 in", "1 1/2 in"), new("2 in", "2 in")];

    public static IReadOnlyList<Choice> Outlets { get; } = [.. PracticeBook.Default.Water.Outlets.Select(o => new Choice(o.Name, o.Name))];

    /// <summary>What has a height of its own: where water comes in, is shut off and turns.</summary>
    public static IReadOnlyList<Choice> High(PropertyView view) =>
        [.. Choice.ByName(view.Valves.Keys, view), .. Choice.ByName(view.Fittings.Keys, view), .. Choice.ByName(view.IsolationValves.Keys, view), .. Choice.ByName(view.WaterSupplies.Keys, view)];
}
