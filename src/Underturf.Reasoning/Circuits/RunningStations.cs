using Underturf.Networks.Wiring;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Circuits;

/// <summary>The network of one controller's stations that are on together: supply, terminals, wires leg by leg, coils, one common.</summary>
internal sealed class RunningStations
{
    private readonly PracticeBook book;
    private readonly double logLevel;
    private readonly Dictionary<string, int> commons = new(StringComparer.Ordinal);
    private readonly Dictionary<(string Station, string Place), int> conductors = [];

    public RunningStations(IReadOnlyList<StationPath> paths, Supply supply, PracticeBook book, double logLevel)
    {
        this.book = book;
        this.logLevel = logLevel;
        Common = Network.Node("common");
        Hot = Network.Node("hot");
        Hertz = supply.Hertz;
        Source = Network.AddSource("supply", Hot, Common, supply.Volts, supply.Ohms);
        commons[paths[0].Controller] = Common;
        foreach (var path in paths)
        {
            Lay(path);
        }
    }

    public WiringNetwork Network { get; } = new();

    public double Hertz { get; }

    public int Hot { get; }

    public int Common { get; }

    public int Source { get; }

    /// <summary>The switch of each station's output.</summary>
    public Dictionary<string, int> Outputs { get; } = new(StringComparer.Ordinal);

    public List<(string Station, ValveEnd End, ValveCoil Coil)> Coils { get; } = [];

    public int Conductor(string station, string place) => conductors[(station, place)];

    public int CommonAt(string place) => commons[place];

    private void Lay(StationPath path)
    {
        var terminal = Network.Node($"terminal {path.Station}");
        conductors[(path.Station, path.Controller)] = terminal;
        Outputs[path.Station] = Network.AddResistor("station output", Hot, terminal, OutputOhms);
        foreach (var leg in path.Legs)
        {
            conductors[(path.Station, leg.To)] = Wire(leg, conductors[(path.Station, leg.From)], $"{path.Station} at {leg.To}", leg.StationSize);
            if (!commons.ContainsKey(leg.To))
            {
                commons[leg.To] = Wire(leg, commons[leg.From], $"common at {leg.To}", leg.CommonSize);
            }
        }

        foreach (var end in path.Valves)
        {
            var (model, perRadian) = (CoilModel.Of(end.NotedOhms, book), 1 / (2 * Math.PI * Hertz));
            var ohms = model.OnLevel ? model.Ohms * Math.Exp(logLevel) : model.Ohms;
            var (inrush, holding) = (book.Coil.InrushReactanceOhms * perRadian, book.Coil.HoldingReactanceOhms * perRadian);
            var coil = Network.AddCoil("coil", conductors[(path.Station, end.Place)], commons[end.Place], ohms, inrush);
            Coils.Add((path.Station, end, new ValveCoil(coil, inrush, Math.Max(inrush, holding), book.Coil.PullInVolts, book.Coil.ChatterVolts)));
        }
    }

    private int Wire(Leg leg, int from, string name, WireSize size)
    {
        var node = Network.Node(name);
        Network.AddResistor(leg.Id, from, node, BenchLayout.WireOhms(book, size, leg.LengthMetres) + book.Wire.SoundSpliceOhms);
        return node;
    }

    /// <summary>A switch far below any meter's step; not zero, so that its current is one of an element.</summary>
    private const double OutputOhms = 1e-4;
}
