using Underturf.FieldLog;
using Underturf.Networks.Hydraulics;
using Underturf.Property;
using Underturf.Quantities;

namespace Underturf.Reasoning.Water;

/// <summary>
/// A property's water as a network: every pipe that is noted, and where none are, each station straight behind the point of connection.
/// What nobody has measured loses nothing.
/// </summary>
internal sealed class PipeRecord
{
    private readonly WaterCase owner;
    private readonly IReadOnlySet<string> shut;
    private readonly IReadOnlyList<string> running;
    private readonly Func<string, ValvesRunning> valvesOf;
    private readonly Dictionary<string, (int Up, int Down)> nodes = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> elements = new(StringComparer.Ordinal);
    private readonly List<(string Station, int Outlet)> outlets = [];
    private readonly double level;
    private readonly bool everythingOpen;
    private readonly bool[] joined;

    /// <summary>All that can be opened stands open and nothing runs out: for what can be parted from what.</summary>
    public static PipeRecord Open(WaterCase owner) => new(owner, new SupplyCurve(1, 0), new HashSet<string>(), [], _ => 0, everythingOpen: true);

    /// <param name="flowOf">m3/s of a station whose outlets nobody has noted.</param>
    /// <param name="outletFactor">By which every outlet gives more or less than it should.</param>
    /// <param name="deviceFactor">By which meters and backflow devices lose more or less than they should; 0 where nobody asks for pressures.</param>
    /// <param name="valvesOf">How many valves alike stand side by side in the place of a station's one, and how many of them run.</param>
    public PipeRecord(WaterCase owner, SupplyCurve curve, IReadOnlySet<string> shut, IReadOnlyList<string> running, Func<string, double> flowOf, double outletFactor = 1, Func<string, ValvesRunning>? valvesOf = null, double deviceFactor = 0, bool everythingOpen = false)
    {
        this.everythingOpen = everythingOpen;
        (this.owner, this.shut, this.running, this.valvesOf) = (owner, shut, running, valvesOf ?? (_ => ValvesRunning.One));
        Network = new PipeNetwork(owner.Fluid);
        level = owner.Heights.Level;
        foreach (var id in View.WaterSupplies.Keys)
        {
            var at = Network.AddSupply(View.Name(id), owner.Heights.Noted(id) ?? level, curve);
            elements[id] = Network.Elements.Count - 1;
            nodes[id] = (at, deviceFactor > 0 ? Behind(id, at, deviceFactor) : at);
        }

        PointOfConnection = nodes.Count > 0 ? nodes.Values.First().Down : Network.AddSupply("point of connection", level, curve);
        foreach (var (id, pipe) in View.Pipes.Where(p => View.Identity.Of(p.Value.From) != View.Identity.Of(p.Value.To)))
        {
            AddPipe(id, pipe);
        }

        joined = Supplied.Nodes(Network, everythingOpen: true);
        foreach (var station in View.Stations.Keys)
        {
            AddOutlets(station, flowOf, outletFactor * this.valvesOf(station).Share);
        }
    }

    public PipeNetwork Network { get; }

    public int PointOfConnection { get; }

    private PropertyView View => owner.View;

    private FlowCoefficient Valve => ValvesOf(1);

    /// <summary>Those of a station that run.</summary>
    private FlowCoefficient Valves(string station) => ValvesOf(valvesOf(station).Part);

    private FlowCoefficient ValvesOf(int count) => new(count * Units.From(owner.Water.Usual.StationLitresPerMinute.Median, "L/min") / Math.Sqrt(Units.From(owner.Water.Usual.ValveKilopascals, "kPa")));

    /// <summary>Number of the node from which water comes to a thing; null where no pipe leads to it.</summary>
    public int? NodeOf(string id) => nodes.TryGetValue(id, out var node) ? node.Up : null;

    public int? DownNodeOf(string id) => nodes.TryGetValue(id, out var node) ? node.Down : null;

    public int? ElementOf(string id) => elements.TryGetValue(id, out var element) ? element : null;

    /// <summary>Numbers of a running station's outlets.</summary>
    public IEnumerable<int> OutletsOf(string station) => outlets.Where(o => o.Station == station).Select(o => o.Outlet);

    /// <summary>Whether the pipes that are noted lead to a station's valve from a point of connection.</summary>
    public StationPiping PipingOf(string station) => View.ValvesOf(station).Select(v => v.Id).FirstOrDefault(v => nodes.ContainsKey(v) && owner.Graph.Knows(v)) is not { } valve ? StationPiping.Unknown
        : joined[nodes[valve].Up] ? StationPiping.Noted : StationPiping.Apart;

    private void AddPipe(string id, PipeFact pipe)
    {
        var (from, to) = (Node(View.Identity.Of(pipe.From)).Down, Node(View.Identity.Of(pipe.To)).Up);
        if (from == to)
        {
            return;
        }

        var (metres, bore) = (PipeLengths.Metres(View, pipe) is { } noted && WaterProblems.CanBe(owner.Water, noted) ? noted : 0, PipeBores.Metres(owner.Water, pipe));
        var element = metres > 0 && bore is { } diameter
            ? PipeElement.Pipe(View.Name(id), from, to, metres, diameter, Friction.HazenWilliams(PipeBores.Of(owner.Water, pipe.Series).SmoothnessFactor))
            : new PipeElement(View.Name(id), PipeElementKind.Pipe, from, to) { LengthMetres = metres, InsideDiameterMetres = bore ?? 0 };
        elements[id] = Network.Add(element);
    }

    /// <summary>Where pressures at the point of connection are read: behind its meter and its backflow device.</summary>
    private int Behind(string supply, int at, double factor)
    {
        foreach (var device in owner.DevicesOf(supply).All)
        {
            var (from, curve) = (at, device.Curve.Times(factor));
            at = Network.AddJunction(View.Name(supply), Network.Nodes[at].ElevationMetres);
            Network.Add(device.Kind == PipeElementKind.Meter ? PipeElement.Meter(device.Name, from, at, curve) : PipeElement.Backflow(device.Name, from, at, curve));
        }

        return at;
    }

    private (int Up, int Down) Node(string id)
    {
        if (nodes.TryGetValue(id, out var known))
        {
            return known;
        }

        var (name, height) = (View.Name(id), owner.Heights.Noted(id) ?? level);
        var up = Network.AddJunction(name, height);
        if (!View.IsolationValves.ContainsKey(id) && !View.Valves.ContainsKey(id))
        {
            return nodes[id] = (up, up);
        }

        var down = Network.AddJunction(name, height);
        nodes[id] = (up, down);
        elements[id] = Network.Add(Element(id, name, up, down));
        return (up, down);
    }

    private PipeElement Element(string id, string name, int up, int down)
    {
        if (View.IsolationValves.TryGetValue(id, out var isolation))
        {
            var bore = isolation.Size?.Metres ?? Bores(id).DefaultIfEmpty(0.05).Min();
            return PipeElement.Isolation(name, up, down, bore, owner.Water.Isolating.LossFactor, shut.Contains(id));
        }

        return owner.Graph.Masters.Contains(id)
            ? PipeElement.MasterValve(name, up, down, Valve, Network.Water, (running.Count == 0 && !everythingOpen) || shut.Contains(id))
            : PipeElement.Valve(name, up, down, View.Valves[id].Station is { } of ? Valves(View.Identity.Of(of)) : Valve, Network.Water, !Runs(View.Valves[id].Station) || shut.Contains(id));
    }

    private bool Runs(string? station) => everythingOpen || (station is not null && running.Contains(View.Identity.Of(station)));

    private IEnumerable<double> Bores(string id) => View.Pipes.Values.Where(p => View.Identity.Of(p.From) == id || View.Identity.Of(p.To) == id).Select(p => PipeBores.Metres(owner.Water, p)).OfType<double>();

    private void AddOutlets(string station, Func<string, double> flowOf, double factor)
    {
        if (!running.Contains(station))
        {
            return;
        }

        var behind = Behind(station);
        var laws = View.Outlets.Where(o => View.Identity.Of(o.Value.Station) == station).Select(o => (o.Key, Fact: o.Value, Law: OutletLaw.Of(owner.Water)(o.Value))).Where(o => o.Law is not null).ToList();
        foreach (var (id, fact, law) in laws)
        {
            var node = fact.Fitting is { } fitting && !WaterProblems.IsElsewhere(View, fact) && nodes.TryGetValue(View.Identity.Of(fitting), out var at) ? at.Down : behind;
            var flow = law!.Count * law.CubicMetresPerSecond * factor;
            node = owner.Heights.OfOutlet(id) is { } raised ? Riser(station, node, raised) : node;
            outlets.Add((station, Network.AddOutlet(View.Name(station), node, Outlet.At(flow, law.Pascals, law.Exponent) with { CompensatedFromPascals = law.Compensates ? law.Pascals : null })));
        }

        if (laws.Count == 0)
        {
            outlets.Add((station, Network.AddOutlet(View.Name(station), behind, Outlet.At(flowOf(station) * factor, Units.From(owner.Water.Usual.OutletKilopascals.Median, "kPa"), 0.5))));
        }
    }

    /// <summary>Up or down to an outlet whose height is noted, without loss.</summary>
    private int Riser(string station, int from, double metres)
    {
        if (Network.Nodes[from].ElevationMetres == metres)
        {
            return from;
        }

        var node = Network.AddJunction(View.Name(station), metres);
        Network.Add(new PipeElement(View.Name(station), PipeElementKind.Pipe, from, node));
        return node;
    }

    /// <summary>
    /// The node behind the station's valve; where no pipe leads to it, a valve straight behind the point of connection. Where its pipe is joined to nothing,
    /// water comes to it all the same: straight from there.
    /// </summary>
    private int Behind(string station)
    {
        var known = View.ValvesOf(station).Select(v => v.Id).FirstOrDefault(nodes.ContainsKey);
        if (known is not null)
        {
            if (!joined[nodes[known].Up])
            {
                Network.Add(new PipeElement(View.Name(station), PipeElementKind.Pipe, PointOfConnection, nodes[known].Up));
            }

            return nodes[known].Down;
        }

        var behind = Network.AddJunction(View.Name(station), Network.Nodes[PointOfConnection].ElevationMetres);
        nodes[station] = (PointOfConnection, behind);
        elements[station] = Network.Add(PipeElement.Valve(View.Name(station), PointOfConnection, behind, Valves(station), Network.Water, isClosed: false));
        return behind;
    }
}
