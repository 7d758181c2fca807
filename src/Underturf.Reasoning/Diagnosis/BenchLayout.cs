using Underturf.Networks.Wiring;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>Lays out a bench: hot side, station conductors leg by leg, coils, the shared common back to the controller.</summary>
internal sealed class BenchLayout
{
    private readonly BenchSetup setup;
    private readonly PracticeBook book;
    private readonly Unknowns unknowns;
    private readonly WiringNetwork network = new();
    private readonly List<Part> parts = [];
    private readonly Dictionary<(string, LegKey), Bench.LegSlots> legs = [];
    private readonly Dictionary<LegKey, int> commons = [];
    private readonly Dictionary<LegKey, int> commonNodes = [];
    private readonly Dictionary<(string, string), Bench.CoilSlots> coils = [];
    private readonly int[][] nodes;
    private readonly int fieldCommon;
    private readonly int commonTerminal;

    private BenchLayout(BenchSetup setup, PracticeBook book, Unknowns unknowns)
    {
        this.setup = setup;
        this.book = book;
        this.unknowns = unknowns;
        nodes = [.. setup.Paths.Select(p => new int[p.Legs.Count])];
        commonTerminal = network.Node("common terminal");
        fieldCommon = network.Node("field common");
    }

    public static Bench Of(BenchSetup setup, PracticeBook book, Unknowns unknowns) => new BenchLayout(setup, book, unknowns).Build();

    /// <summary>Ohms of the two conductors to a further valve that nobody noted.</summary>
    public static double BranchWireOhms(PracticeBook book) => FurtherWireOhms(book, book.Wire.BranchMetres);

    /// <summary>Ohms of two conductors that nobody noted.</summary>
    public static double FurtherWireOhms(PracticeBook book, double metres) => 2 * WireOhms(book, WireSize.FromAwg(book.Wire.StationAwg), metres);

    /// <summary>Ohms of one conductor in soil of the usual temperature.</summary>
    public static double WireOhms(PracticeBook book, WireSize size, double metres) =>
        metres * CopperWire.OhmsPerMetre(size, book.Wire.SoilKelvins);

    private Bench Build()
    {
        var sensor = network.AddResistor("sensor loop", commonTerminal, fieldCommon, setup.Measures == Measure.OtherCommonOhms ? double.PositiveInfinity : 0);
        var terminals = setup.Paths.Select(p => network.Node(p.Station)).ToArray();
        for (var p = 0; p < setup.Paths.Count; p++)
        {
            LayStation(p, terminals[setup.Swapped ? setup.Paths.Count - 1 - p : p]);
        }

        var join = setup.JoinAt is { } place
            ? network.AddResistor("join", NodeAt(0, place), NodeAt(1, place), double.PositiveInfinity)
            : -1;
        var (plus, minus, through, source) = Connect(terminals);
        return new Bench
        {
            Setup = setup,
            Network = network,
            Plus = plus,
            Minus = minus,
            Through = through,
            Parts = parts,
            Legs = legs,
            Commons = commons,
            Coils = coils,
            Sensor = sensor,
            Source = source,
            Join = join,
            Ohms = [.. Enumerable.Range(0, network.ElementCount).Select(e => network.ElementAt(e).Ohms)],
        };
    }

    private (int Plus, int Minus, int Through, int Source) Connect(int[] terminals)
    {
        if (setup.IsFed)
        {
            return Feed(terminals[0]);
        }

        var (plus, minus) = setup.Measures switch
        {
            Measure.BetweenStationsOhms => (terminals[0], terminals[1]),
            Measure.OutwardOhms => (NodeAt(0, setup.Place!), CommonAt(0, setup.Place!)),
            Measure.CoilOhms => CoilNodes(),
            Measure.EarthOhms => (terminals[0], network.Node("earth")),
            _ => (terminals[0], commonTerminal),
        };
        return (plus, minus, -1, -1);
    }

    private (int Plus, int Minus, int Through, int Source) Feed(int terminal)
    {
        var hot = network.Node("hot");
        var source = network.AddSource("supply", hot, commonTerminal, setup.Supply.Volts, setup.Supply.Ohms);
        var idle = setup.Measures == Measure.SupplyVolts;
        var through = network.AddResistor("station output", hot, terminal, idle ? double.PositiveInfinity : OutputOhms);
        var (coil, back) = CoilNodes();
        return setup.Measures == Measure.CoilVolts ? (coil, back, through, source) : (hot, commonTerminal, through, source);
    }

    /// <summary>A switch far below any meter's step; not zero, so that a clamp has an element to close round.</summary>
    private const double OutputOhms = 1e-4;

    private void LayStation(int p, int terminal)
    {
        var path = setup.Paths[p];
        for (var i = 0; i < path.Legs.Count; i++)
        {
            LayLeg(p, i, terminal);
        }

        for (var v = 0; v < path.Valves.Count; v++)
        {
            LayCoil(p, v);
        }
    }

    private void LayLeg(int p, int i, int terminal)
    {
        var (path, leg) = (setup.Paths[p], setup.Paths[p].Legs[i]);
        var key = leg.Key;
        var here = network.Node($"{path.Station} at {leg.To}");
        nodes[p][i] = here;
        var length = unknowns.Length(key);
        if (!commonNodes.TryGetValue(key, out var back))
        {
            back = network.Node($"common at {leg.To} by {leg.Id}");
            var from = leg.Parent < 0 ? fieldCommon : commonNodes[path.Legs[leg.Parent].Key];
            commonNodes[key] = back;
            commons[key] = Wire(leg, from, back, leg.CommonSize, length);
        }

        // The splice is opened: what lies toward the controller is not read.
        var opened = p == 0 && setup.Measures == Measure.OutwardOhms && i == path.LegTo(setup.Place!);
        var near = opened ? network.Node("opened splice") : leg.Parent < 0 ? terminal : nodes[p][leg.Parent];
        var conductor = Wire(leg, near, here, leg.StationSize, length);
        var leak = setup.Measures == Measure.EarthOhms ? Leak(here, i == path.Legs.Count - 1) : -1;
        var far = network.Node($"{path.Station} branch at {leg.To}");
        var branchWire = network.AddResistor("branch wire", here, far, double.PositiveInfinity);
        var branchCoil = network.AddCoil("branch coil", far, back, double.PositiveInfinity, setup.IsFed ? Henries : 0);
        legs[(path.Station, key)] = new Bench.LegSlots(conductor, leak, branchWire, setup.Measures == Measure.EarthOhms ? -1 : branchCoil);
    }

    private int Wire(Leg leg, int from, int to, WireSize size, int length)
    {
        var ohms = WireOhms(book, size, leg.LengthMetres);
        var element = network.AddResistor(leg.Id, from, to, ohms + book.Wire.SoundSpliceOhms);
        parts.Add(new Part(element, PartKind.Wire, length, ohms, leg.OhmsLogSpread));
        return element;
    }

    private int Leak(int node, bool last)
    {
        var sound = last ? book.Wire.SoundLeakOhms : double.PositiveInfinity;
        var element = network.AddResistor("insulation", node, network.Node("earth"), sound);
        if (last)
        {
            parts.Add(new Part(element, PartKind.Other, -1, sound, book.Wire.SoundLeakSpread));
        }

        return element;
    }

    private void LayCoil(int p, int v)
    {
        var (path, end) = (setup.Paths[p], setup.Paths[p].Valves[v]);
        var model = CoilModel.Of(end.NotedOhms, book);
        var joined = setup.Measures == Measure.JoinedOhms && p == 0 && v == setup.Valve;
        var lifted = setup.Measures == Measure.EarthOhms;
        var ohms = joined ? 0 : lifted ? double.PositiveInfinity : model.Ohms;
        var (a, b) = (nodes[p][end.Leg], commonNodes[path.Legs[end.Leg].Key]);
        if (setup.Measures == Measure.CoilOhms && p == 0 && v == setup.Valve)
        {
            (a, b) = (network.Node("freed lead"), network.Node("other freed lead"));
        }

        var coil = network.AddCoil("coil", a, b, ohms, setup.IsFed ? Henries : 0);
        var shunt = network.AddResistor("shorted turns", a, b, double.PositiveInfinity);
        coils[(path.Station, end.Place)] = new Bench.CoilSlots(coil, shunt, end.Leg, joined);

        if (ohms > 0 && double.IsFinite(ohms))
        {
            parts.Add(model.OnLevel
                ? new Part(coil, PartKind.LevelCoil, unknowns.Coil(end.Coil), ohms, model.LogSpread, unknowns.Batch(end.Place))
                : new Part(coil, PartKind.Other, unknowns.Coil(end.Coil), ohms, model.LogSpread));
        }
    }

    private double Henries => CoilModel.Henries(book, setup.Inrush);

    /// <summary>The coil that the first station's terminal feeds: the other's where the two are swapped.</summary>
    private (int A, int B) CoilNodes()
    {
        if (setup.Measures == Measure.CoilOhms)
        {
            return (network.Node("freed lead"), network.Node("other freed lead"));
        }

        var p = setup.Swapped ? 1 : 0;
        var end = setup.Paths[p].Valves[setup.Swapped ? 0 : setup.Valve];
        return (nodes[p][end.Leg], commonNodes[setup.Paths[p].Legs[end.Leg].Key]);
    }

    private int NodeAt(int p, string place) => nodes[p][setup.Paths[p].LegTo(place)];

    private int CommonAt(int p, string place) => commonNodes[setup.Paths[p].Legs[setup.Paths[p].LegTo(place)].Key];
}
