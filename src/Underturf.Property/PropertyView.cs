using Underturf.FieldLog;

namespace Underturf.Property;

/// <summary>The property in one epoch: each thing once, under the id that stands for it.</summary>
public sealed record PropertyView
{
    private HashSet<string>? ambiguous;

    public required IReadOnlyDictionary<string, ControllerFact> Controllers { get; init; }

    public required IReadOnlyDictionary<string, StationFact> Stations { get; init; }

    public required IReadOnlyDictionary<string, BoxFact> Boxes { get; init; }

    public required IReadOnlyDictionary<string, ValveFact> Valves { get; init; }

    public required IReadOnlyDictionary<string, CoilFact> Coils { get; init; }

    public required IReadOnlyDictionary<string, EndFact> Ends { get; init; }

    public required IReadOnlyDictionary<string, SpliceFact> Splices { get; init; }

    public required IReadOnlyDictionary<string, CableFact> Cables { get; init; }

    public required IReadOnlyDictionary<string, GroundFact> Ground { get; init; }

    /// <summary>What is looked for, as noted.</summary>
    public required IReadOnlyDictionary<string, SoughtFact> Sought { get; init; }

    public required IReadOnlyDictionary<string, SpotFact> Spots { get; init; }

    public required IReadOnlyDictionary<string, WaterSupplyFact> WaterSupplies { get; init; }

    public required IReadOnlyDictionary<string, FittingFact> Fittings { get; init; }

    public required IReadOnlyDictionary<string, PipeFact> Pipes { get; init; }

    public required IReadOnlyDictionary<string, IsolationValveFact> IsolationValves { get; init; }

    public required IReadOnlyDictionary<string, OutletFact> Outlets { get; init; }

    public required IReadOnlyDictionary<string, LocateTicketFact> Tickets { get; init; }

    public required IReadOnlyDictionary<string, ApprovalFact> Approvals { get; init; }

    public required IReadOnlyDictionary<string, PartsFact> Parts { get; init; }

    public required Identity Identity { get; init; }

    /// <summary>What people call it: "box 7", "station 12", "controller A"; the id where it has no name.</summary>
    public string Name(string id)
    {
        var known = Identity.Of(id);
        return Controllers.TryGetValue(known, out var controller) ? Called("controller", controller.Label, known)
            : Stations.TryGetValue(known, out var station) ? Called("station", StationNumber(known), known)
            : Boxes.TryGetValue(known, out var box) ? Called("box", box.Label, known)
            : Valves.TryGetValue(known, out var valve) ? Called("valve", valve.Label, known)
            : Cables.ContainsKey(known) ? Called("cable", null, known)
            : Ends.TryGetValue(known, out var end) ? Called("end", end.Label, known)
            : Ground.TryGetValue(known, out var ground) ? ground.Label?.ReplaceLineEndings(" ") ?? $"{ground.What} {known}"
            : Sought.TryGetValue(known, out var sought) ? Called(sought.What, sought.Label, known)
            : IsolationValves.TryGetValue(known, out var isolation) ? Called("isolation valve", isolation.Label, known)
            : WaterSupplies.TryGetValue(known, out var supply) ? supply.Label?.ReplaceLineEndings(" ") ?? "point of connection"
            : Fittings.TryGetValue(known, out var fitting) ? fitting.Label?.ReplaceLineEndings(" ") ?? $"fitting {known}"
            : Pipes.ContainsKey(known) ? Called("pipe", null, known)
            : Spots.TryGetValue(known, out var spot) ? spot.Label?.ReplaceLineEndings(" ") ?? $"spot {known}"
            : id;
    }

    /// <summary>Its label or terminal; with the controller where two controllers have the same.</summary>
    public string StationNumber(string id)
    {
        if (!Stations.TryGetValue(Identity.Of(id), out var station))
        {
            return id;
        }

        ambiguous ??= Ambiguous();
        var number = Number(station);
        return ambiguous.Contains(number) ? $"{number} ({Name(station.Controller)})" : number;
    }

    private HashSet<string> Ambiguous() =>
    [
        .. Stations.Values
            .GroupBy(Number)
            .Where(g => g.Select(s => Identity.Of(s.Controller)).Distinct().Count() > 1)
            .Select(g => g.Key),
    ];

    private static string Number(StationFact station) => station.Label ?? station.Terminal.ToString();

    /// <summary>Where it is, directly or by the box that holds it; nothing where nobody noted it.</summary>
    public Position? PositionOf(string id) => PositionOf(id, Valves.Count + 1);

    /// <param name="steps">How many times a valve may yet be said to sit in something else: notes can run in a ring.</param>
    private Position? PositionOf(string id, int steps)
    {
        var known = Identity.Of(id);
        return Controllers.TryGetValue(known, out var controller) ? controller.Position
            : Boxes.TryGetValue(known, out var box) ? box.Position
            : Valves.TryGetValue(known, out var valve) ? valve.Position ?? (valve.Box is { } holder && steps > 0 ? PositionOf(holder, steps - 1) : null)
            : IsolationValves.TryGetValue(known, out var isolation) ? isolation.Position ?? (isolation.Box is { } around && steps > 0 ? PositionOf(around, steps - 1) : null)
            : WaterSupplies.TryGetValue(known, out var supply) ? supply.Position
            : Fittings.TryGetValue(known, out var fitting) ? fitting.Position
            : null;
    }

    /// <summary>Of everything that has one.</summary>
    public IEnumerable<string> Ids => new IEnumerable<string>[]
    {
        Controllers.Keys, Stations.Keys, Boxes.Keys, Valves.Keys, Coils.Keys, Ends.Keys, Splices.Keys, Cables.Keys, Ground.Keys, Sought.Keys, Spots.Keys, WaterSupplies.Keys, Fittings.Keys, Pipes.Keys, IsolationValves.Keys, Outlets.Keys,
    }.SelectMany(keys => keys);

    public bool Knows(string id)
    {
        var known = Identity.Of(id);
        return Controllers.ContainsKey(known) || Stations.ContainsKey(known) || Boxes.ContainsKey(known) || Valves.ContainsKey(known)
            || Coils.ContainsKey(known) || Ends.ContainsKey(known) || Splices.ContainsKey(known) || Cables.ContainsKey(known)
            || Ground.ContainsKey(known) || Sought.ContainsKey(known) || Spots.ContainsKey(known)
            || WaterSupplies.ContainsKey(known) || Fittings.ContainsKey(known) || Pipes.ContainsKey(known) || IsolationValves.ContainsKey(known) || Outlets.ContainsKey(known);
    }

    /// <summary>Something at which a wire can end: a controller, a box or a valve.</summary>
    public bool IsPlace(string id)
    {
        var known = Identity.Of(id);
        return Controllers.ContainsKey(known) || Boxes.ContainsKey(known) || Valves.ContainsKey(known);
    }

    public IEnumerable<(string Id, ValveFact Valve)> ValvesOf(string station) => Valves
        .Where(v => v.Value.Station is { } s && Identity.Of(s) == station)
        .Select(v => (v.Key, v.Value));

    internal static PropertyView Of(PropertyHistory history, int epoch)
    {
        var (facts, identity) = (history.Facts, history.Facts.Identity);
        var fold = new EpochFold(history, epoch);
        return new PropertyView
        {
            Identity = identity,
            Controllers = fold.Things(facts.Controllers, f => f.Id, Overlay.Of),
            Stations = fold.Things(facts.Stations, f => f.Id, Overlay.Of),
            Boxes = fold.Things(facts.Boxes, f => f.Id, Overlay.Of),
            Valves = fold.Things(facts.Valves, f => f.Id, Overlay.Of),
            Coils = fold.Things(facts.Coils, f => f.Id, Overlay.Of),
            Ends = fold.Things(facts.Ends, f => f.Id, Overlay.Of),
            Splices = fold.Things(facts.Splices, f => f.Id, Overlay.Of),
            Cables = fold.Things(facts.Cables, f => f.Id, Overlay.Of),
            Ground = fold.Things(facts.Ground, f => f.Id, Overlay.Of),
            Sought = fold.Things(facts.Sought, f => f.Id, Overlay.Of),
            Spots = fold.Things(facts.Spots, f => f.Id, Overlay.Of),
            WaterSupplies = fold.Things(facts.WaterSupplies, f => f.Id, Overlay.Of),
            Fittings = fold.Things(facts.Fittings, f => f.Id, Overlay.Of),
            Pipes = fold.Things(facts.Pipes, f => f.Id, Overlay.Of),
            IsolationValves = fold.Things(facts.IsolationValves, f => f.Id, Overlay.Of),
            Outlets = fold.Things(facts.Outlets, f => f.Id, Overlay.Of),
            Tickets = fold.Things(facts.Tickets, f => f.Id, Overlay.Of),
            Approvals = fold.Things(facts.Approvals, f => f.Id, Overlay.Of),
            Parts = fold.Things(facts.Parts, f => f.Id, Overlay.Of),
        };
    }

    private static string Called(string kind, string? label, string id) =>
        label is null ? $"{kind} {id}" : (label.Contains(kind, StringComparison.OrdinalIgnoreCase) ? label : $"{kind} {label}").ReplaceLineEndings(" ");
}
