using Underturf.Networks.Wiring;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Circuits;

/// <summary>
/// The network of one controller's stations that are on together: supply, terminals, wires leg by leg, coils, a common for each label, the
/// master valve and the pump's relay.
/// </summary>
internal sealed class RunningStations
{
    private readonly PracticeBook book;
    private readonly RunningPlan plan;
    private readonly List<Part> parts = [];
    private readonly Dictionary<(string Label, LegKey Leg), int> commonNodes = [];
    private readonly Dictionary<LegKey, int> lengths = [];
    private readonly Dictionary<string, int> batches = new(StringComparer.Ordinal);

    public RunningStations(RunningPlan plan, PracticeBook book)
    {
        this.book = book;
        this.plan = plan;
        Strip = Network.Node("common terminal");
        Hot = Network.Node("hot");
        Source = Network.AddSource("supply", Hot, Strip, plan.Supply.Volts, plan.Supply.Ohms);
        Stations = [.. plan.Stations.Select(Lay)];
        Master = plan.Master is { } master ? Lay(master) : null;
        Relay = plan.Relay is { Fitted: true } relay ? LayRelay(relay.PlateOhms()) : -1;
    }

    public WiringNetwork Network { get; } = new();

    public double Hertz => plan.Supply.Hertz;

    public int Hot { get; }

    /// <summary>The controller's common terminal, at which all commons are joined.</summary>
    public int Strip { get; }

    public int Source { get; }

    public IReadOnlyList<LaidPath> Stations { get; }

    public LaidPath? Master { get; }

    /// <summary>The relay's coil; -1 where there is none.</summary>
    public int Relay { get; }

    public IEnumerable<LaidPath> All => Master is null ? Stations : Stations.Append(Master);

    /// <summary>For each common, by label, the element and node with which it leaves the terminal.</summary>
    public Dictionary<string, (int Element, int Node)> Commons { get; } = new(StringComparer.Ordinal);

    public List<(LaidPath Path, ValveEnd End, ValveCoil Coil)> Coils { get; } = [];

    /// <summary>What is not known exactly of the elements.</summary>
    public IReadOnlyList<Part> Parts => parts;

    public static string LabelOf(StationPath path) => path.Common ?? UsualCommon;

    private const string UsualCommon = "usual";

    private LaidPath Lay(StationPath path)
    {
        var (label, number) = (LabelOf(path), Network.NodeCount);
        if (!Commons.TryGetValue(label, out var common))
        {
            var node = Network.Node($"common '{label}'");
            common = Commons[label] = (Network.AddResistor($"common '{label}' at the terminal", node, Strip, OutputOhms), node);
        }

        var terminal = Network.Node($"terminal {number}");
        var laid = new LaidPath(path, Network.AddResistor("station output", Hot, terminal, OutputOhms), (terminal, common.Node));
        for (var i = 0; i < path.Legs.Count; i++)
        {
            LayLeg(laid, i, label);
        }

        foreach (var end in path.Valves)
        {
            LayCoil(laid, end);
        }

        return laid;
    }

    private void LayLeg(LaidPath laid, int i, string label)
    {
        var leg = laid.Path.Legs[i];
        var key = leg.Key;
        var near = laid.At(leg.Parent);
        if (!commonNodes.TryGetValue((label, key), out var common))
        {
            common = commonNodes[(label, key)] = Wire(leg, near.Common, leg.CommonSize);
        }

        laid.End(i, Wire(leg, near.Conductor, leg.StationSize), common);
    }

    private int Wire(Leg leg, int from, WireSize size)
    {
        var node = Network.Node($"node {Network.NodeCount} at {leg.To}");
        var key = leg.Key;
        lengths.TryAdd(key, lengths.Count);
        var ohms = BenchLayout.WireOhms(book, size, leg.LengthMetres);
        var element = Network.AddResistor(leg.Id, from, node, ohms + book.Wire.SoundSpliceOhms);
        parts.Add(new Part(element, PartKind.Wire, lengths[key], ohms, leg.OhmsLogSpread));
        return node;
    }

    private void LayCoil(LaidPath laid, ValveEnd end)
    {
        var model = CoilModel.Of(end.NotedOhms, book);
        var ohms = model.OnLevel ? model.Ohms * plan.Level.Factor : model.Ohms;
        var (inrush, holding) = (CoilModel.Henries(book, inrush: true), CoilModel.Henries(book, inrush: false));
        var (conductor, common) = laid.At(end.Leg);
        var coil = Network.AddCoil("coil", conductor, common, ohms, inrush);
        parts.Add(model.OnLevel
            ? new Part(coil, PartKind.LevelCoil, -1, ohms, model.LogSpread, Batch(end.Place))
            : new Part(coil, PartKind.Other, -1, ohms, model.LogSpread));
        Coils.Add((laid, end, new ValveCoil(coil, inrush, Math.Max(inrush, holding), book.Coil.PullInVolts, book.Coil.ChatterVolts)));
    }

    private int LayRelay(double? noted)
    {
        var (ohms, spread) = noted is { } known ? (known, book.Coil.Noted) : (book.Relay.Ohms, book.Relay.LogSpread);
        var coil = Network.AddCoil("pump relay", Hot, Strip, ohms, book.Relay.ReactanceOhms / (2 * Math.PI * book.Supply.Hertz));
        parts.Add(new Part(coil, PartKind.Other, -1, ohms, spread));
        return coil;
    }

    /// <summary>A switch far below any meter's step; not zero, so that its current is one of an element.</summary>
    private const double OutputOhms = 1e-4;

    /// <summary>Coils that sit in one place were bought together.</summary>
    private int Batch(string place)
    {
        batches.TryAdd(place, batches.Count);
        return batches[place];
    }
}
