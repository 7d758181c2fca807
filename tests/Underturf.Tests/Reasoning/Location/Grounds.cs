using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Reasoning;
using Underturf.Simulation;

namespace Underturf.Tests.Reasoning.Location;

/// <summary>A made-up corner of a garden: a shed, a path with a bed along it, a lawn, and a station whose valve nobody has found.</summary>
internal sealed class Grounds
{
    private static readonly DateTimeOffset Morning = new(2031, 5, 6, 8, 0, 0, TimeSpan.FromHours(-6));

    private readonly LogKeeper keeper = new("made-up");

    public static Grounds Corner(params IEnumerable<Fact> notes)
    {
        var grounds = new Grounds();
        grounds.Note(new PropertyFact { Name = "corner", Zone = "Etc/UTC", Units = "si" });
        grounds.Note(new ControllerFact { Id = "c", Terminals = 6, Position = new Position(0, 0) });
        grounds.Note(Ground("shed", "building", (-6, -4), (0, -4), (0, 0), (-6, 0)));
        grounds.Note(Ground("path", "hardscape", (2, 0), (40, 0), (40, 2), (2, 2)));
        grounds.Note(Ground("long bed", "bed", (10, 2), (30, 2), (30, 5), (10, 5)));
        grounds.Note(Ground("far lawn", "lawn", (20, 10), (45, 10), (45, 30), (20, 30)));
        grounds.Note(new StationFact { Id = "s1", Controller = "c", Terminal = 1, Waters = ["far lawn"] });
        foreach (var note in notes)
        {
            grounds.Note(note);
        }

        return grounds;
    }

    public static Grounds Bare(params IEnumerable<Fact> notes)
    {
        var grounds = new Grounds();
        foreach (var note in notes)
        {
            grounds.Note(note);
        }

        return grounds;
    }

    public static GroundFact Ground(string label, string what, params (double East, double North)[] shape) =>
        new() { Id = $"g-{label}", What = what, Label = label, Shape = [.. shape.Select(p => new Position(p.East, p.North))] };

    public void Note(Fact fact) => keeper.Note("maren", Morning, fact);

    public Notebook Notebook(PracticeBook? book = null, Notebook? earlier = null) => Underturf.Reasoning.Notebook.Open(keeper.Log(), book ?? PracticeBook.Default, earlier);

    public HiddenThing Only() => Assert.Single(Notebook().Locate().Value.Things);

    /// <summary>Chance that the thing lies within a distance of a point.</summary>
    public static double Within(HiddenThing thing, double east, double north, double metres)
    {
        var heat = thing.Heat!;
        return heat.Shares.Where((_, c) => new Position(heat.Corner.EastMetres + (((c % heat.Wide) + 0.5) * heat.SideMetres), heat.Corner.NorthMetres + (((c / heat.Wide) + 0.5) * heat.SideMetres))
            .DistanceMetresTo(new Position(east, north)) <= metres).Sum();
    }
}
