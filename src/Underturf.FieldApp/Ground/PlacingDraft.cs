using System.Globalization;
using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>A thing that is being placed, or moved. It stays as it is until it is stored.</summary>
public sealed class PlacingDraft
{
    /// <summary>The thing that gets a place, or another one; nothing for a new thing.</summary>
    public string? Thing { get; init; }

    /// <summary>What it is, in the words of <see cref="GroundWords"/>; empty until it is chosen.</summary>
    public string Kind { get; set; } = "";

    public string Name { get; set; } = "";

    /// <summary>Name of what was looked for and is now found.</summary>
    public string? Sought { get; init; }

    /// <summary>The station of a valve that was looked for.</summary>
    public string? Station { get; init; }

    public string Terminals { get; set; } = "";

    /// <summary>Of an isolation valve, the stations behind it; of a pipe its two ends.</summary>
    public IReadOnlyList<string> Joins { get; set; } = [];

    /// <summary>What the water costs at a point of connection, in the owner's money, and the volume that costs it.</summary>
    public string Price { get; set; } = "";

    public string PriceOf { get; set; } = "";

    /// <summary>How the place is known: a tap on a map is no more than an estimate.</summary>
    public Grade Grade { get; set; } = Grade.Estimated;

    public List<Position> Points { get; init; } = [];

    /// <summary>What can be placed new.</summary>
    public static IReadOnlyList<string> Kinds { get; } = [GroundWords.Box, GroundWords.Valve, GroundWords.IsolationValve, .. GroundWords.Surfaces, GroundWords.Controller, GroundWords.PointOfConnection, GroundWords.Pipe];

    /// <summary>True where each tap adds a corner; else the last tap counts.</summary>
    public bool TakesMany => Kind is GroundWords.Cable or GroundWords.Pipe || (Thing is null && Kind is "building" or "hardscape" or "wall" or "bed" or "lawn" or "water" or GroundShape.UtilityMark);

    public bool IsClosed => TakesMany && Kind is not ("wall" or GroundShape.UtilityMark or GroundWords.Cable or GroundWords.Pipe);

    /// <summary>A pipe can be noted by its ends alone.</summary>
    private int Least => !TakesMany ? 1 : IsClosed ? 3 : Kind == GroundWords.Pipe && Thing is null && Points.Count == 0 ? 0 : 2;

    /// <summary>Says what a new thing is. It is named by the next free number until somebody writes a name.</summary>
    public void Choose(string kind, PropertyView view)
    {
        Joins = [];
        (Kind, Name) = (kind, kind switch
        {
            GroundWords.Box => NextNumber(view.Boxes.Values.Select(box => box.Label)),
            GroundWords.Valve => NextNumber(view.Valves.Values.Select(valve => valve.Label)),
            GroundWords.Controller => NextNumber(view.Controllers.Values.Select(controller => controller.Label)),
            GroundWords.IsolationValve => NextNumber(view.IsolationValves.Values.Select(valve => valve.Label)),
            _ => "",
        });
        if (!TakesMany && Points.Count > 1)
        {
            Points.RemoveRange(0, Points.Count - 1);
        }
    }

    public void Take(Position at)
    {
        if (!TakesMany)
        {
            Points.Clear();
        }

        Points.Add(at);
    }

    /// <summary>What the note says, or what is still missing.</summary>
    /// <param name="newId">Id for a thing that nobody has noted before.</param>
    public Outcome<Fact> ToFact(string newId, PropertyView view)
    {
        if (Kind.Length == 0)
        {
            return Missing("kind", "Choose what it is");
        }

        if (Points.Count < Least)
        {
            return Missing("place", Least == 1 ? "Tap the map where it is" : $"Tap at least {Least} points on the map");
        }

        return Thing is { } id && view.Ground.TryGetValue(view.Identity.Of(id), out var ground) ? Moved(ground)
            : PlacedWater.Kinds.Contains(Kind) ? PlacedWater.Of(this, newId, view)
            : Thing is { } cable && view.Cables.TryGetValue(view.Identity.Of(cable), out var run) ? new CableFact { Id = run.Id, From = run.From, To = run.To, Route = [.. Points], Sure = Grade }
            : Kind switch
            {
                GroundWords.Box or GroundWords.BoxWithValves => new BoxFact { Id = Thing ?? newId, Label = Label, Position = Points[0], Sure = Grade },
                GroundWords.Valve or GroundWords.MasterValve => new ValveFact { Id = Thing ?? newId, Label = Label, Station = Station, Position = Points[0], Sure = Grade },
                GroundWords.Controller => ToController(newId, view),
                _ => new GroundFact { Id = newId, What = Kind, Label = Label, Shape = [.. Points], Sure = Grade },
            };
    }

    /// <summary>What people call it; nothing where nobody wrote a name.</summary>
    internal string? Label => Name.Trim() is { Length: > 0 } name ? name : null;

    private Outcome<Fact> ToController(string newId, PropertyView view)
    {
        var known = Thing is { } id ? view.Controllers.GetValueOrDefault(view.Identity.Of(id)) : null;
        var terminals = known?.Terminals ?? (int.TryParse(Terminals.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var typed) ? typed : 0);
        return terminals < 1
            ? Missing("terminals", "Write how many station terminals the controller has")
            : new ControllerFact { Id = Thing ?? newId, Label = Label, Terminals = terminals, Position = Points[0], Sure = Grade };
    }

    /// <summary>The whole shape goes along: its middle comes to lie where the map was tapped.</summary>
    private GroundFact Moved(GroundFact ground)
    {
        var middle = new GroundFeature(ground.Id, Kind, ground.Sure, "", GroundForm.Line, ground.Shape).Middle;
        var (east, north) = (Points[^1].EastMetres - middle.EastMetres, Points[^1].NorthMetres - middle.NorthMetres);
        return new GroundFact
        {
            Id = ground.Id,
            What = ground.What,
            Shape = [.. ground.Shape.Select(p => new Position(Rounded(p.EastMetres + east), Rounded(p.NorthMetres + north)))],
            Sure = Grade,
        };
    }

    /// <summary>To the centimetre: more digits than a hand can mean only fill the log.</summary>
    public static Position Rounded(Position at) => new(Rounded(at.EastMetres), Rounded(at.NorthMetres));

    private static double Rounded(double metres) => Math.Round(metres, 2);

    private static string NextNumber(IEnumerable<string?> labels) =>
        (1 + labels.Select(label => int.TryParse(label?.Split(' ')[^1], NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : 0).DefaultIfEmpty().Max()).ToString(CultureInfo.InvariantCulture);

    internal static Problem Missing(string what, string remedy) => new(what, "is not given yet", remedy);
}
