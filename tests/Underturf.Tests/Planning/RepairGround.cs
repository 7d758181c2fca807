using Underturf.FieldLog;
using Underturf.Planning.Repair;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Simulation;

namespace Underturf.Tests.Planning;

/// <summary>A small invented property: a bare valve at the meter, one in a box among roots under a path, a box of joints, and what else somebody wants noted.</summary>
internal sealed class RepairGround
{
    private static readonly DateTimeOffset Morning = new(2031, 5, 6, 8, 0, 0, TimeSpan.FromHours(-6));

    private readonly LogKeeper keeper = new("repair");
    private int minute;

    public RepairGround(params Fact[] more)
        : this(true, more)
    {
    }

    /// <param name="wired">Whether its valves have stations.</param>
    public RepairGround(bool wired, params Fact[] more)
    {
        Note(new ControllerFact { Id = "c", Label = "A", Terminals = 6, Position = new Position(0, 0) });
        Note(new WaterSupplyFact { Id = "poc", Position = new Position(10, 0) });
        Note(new StationFact { Id = "s1", Controller = "c", Terminal = 1, Waters = ["front lawn"] });
        Note(new StationFact { Id = "s2", Controller = "c", Terminal = 2, Waters = ["side bed"] });
        Note(new ValveFact { Id = "bare", Position = new Position(10, 0), Station = wired ? "s1" : null, Size = Inches(1), Waters = "front lawn" });
        Note(new BoxFact { Id = "b2", Label = "box 2", Position = new Position(40, 0) });
        Note(new ValveFact { Id = "boxed", Box = "b2", Station = wired ? "s2" : null, Size = Inches(1.5), Waters = "side bed" });
        foreach (var fact in more)
        {
            Note(fact);
        }
    }

    public LogDocument Log => keeper.Log();

    public static Length Inches(double inches) => Length.FromSi(Units.From(inches, "in"));

    public static GroundFact Tree(double east, double trunkInches, string label = "oak") =>
        new() { Id = label, What = "tree", Label = label, Shape = [new Position(east, 0)], Trunk = Inches(trunkInches) };

    public static GroundFact Path(double west, double east) =>
        new() { Id = "path", What = "hardscape", Label = "path", Shape = [new Position(west, -1), new Position(east, -1), new Position(east, 1), new Position(west, 1)] };

    public Notebook Notebook(PracticeBook? book = null) => global::Underturf.Reasoning.Notebook.Open(Log, book ?? PracticeBook.Default);

    public void Note(Fact fact) => keeper.Note("maren", Morning.AddMinutes(minute++), fact);

    public RepairAnswer Plan(string thing, Answers? answers = null, PracticeBook? book = null) => RepairPlan.Of(Notebook(book), thing, answers ?? Nothing).Value;

    /// <summary>Time goes by.</summary>
    public void Wait(int minutes) => minute += minutes;

    /// <summary>Notes what a step notes when it is done; returns the plan that follows.</summary>
    public RepairAnswer Do(string thing, Answers answers, Func<RepairStep, IReadOnlyList<Fact>>? notes = null)
    {
        foreach (var fact in (notes ?? (s => s.Passed))(Plan(thing, answers).Steps[0]))
        {
            Note(fact);
        }

        return Plan(thing, answers);
    }

    public static Answers Nothing { get; } = new("test", "test", [], []);

    /// <summary>One question about a station, and one explanation that is sure.</summary>
    public static Answers Sure(string fault, string station, params PlaceProbability[] places) => Sure(fault, [station], places);

    public static Answers Sure(string fault, IReadOnlyList<string> stations, params PlaceProbability[] places) =>
        new("test", "test", [new OpenQuestion("q", "symptom", stations, [new Explanation(fault, 1, fault, places, [], string.Empty)], [], [], true)], []);
}
