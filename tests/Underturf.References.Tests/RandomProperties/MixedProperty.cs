using Underturf.Networks.Wiring;
using Underturf.Networks.Wiring.HalfWave;
using Underturf.Numerics;

namespace Underturf.References.Tests.RandomProperties;

/// <summary>
/// An invented property with one or two controllers' outputs, commons, sensors, stations, shared conductors and troubles in random mixture.
/// Node voltages are asked for against <see cref="Returns"/>; no node is earth.
/// </summary>
internal sealed class MixedProperty
{
    private readonly Draws draws;
    private readonly CableTree tree;
    private readonly List<Supply> supplies = [];
    private readonly List<int> outputs = [];
    private readonly List<int> terminals = [];
    private readonly CoilBank bank;
    private readonly StationWiring wiring;
    private readonly Troubles troubles;

    /// <param name="devices">How many conductors are shared by half-wave devices; their coils count too.</param>
    internal MixedProperty(SeededGenerator random, int coils, int devices = 0)
    {
        draws = new Draws(random);
        (bank, troubles) = (new CoilBank(Network, draws), new Troubles(draws));
        tree = new CableTree(draws, 1 + (coils / 3));
        wiring = new StationWiring(Network, tree, draws);
        Hertz = draws.OneIn(3) ? 50 : 60;
        for (var supply = draws.OneIn(4) ? 1 : 0; supply >= 0; supply--)
        {
            supplies.Add(new Supply(Network, tree, draws, supply));
        }

        AddPermanent();
        AddStations(coils, devices);
        wiring.Splice();
        Trunk[] trunks = [.. supplies.SelectMany(s => s.Trunks)];
        Earth = troubles.AddLeaks(Network, wiring.Joints, trunks);
        troubles.AddShunt(Network, wiring.Joints, trunks);
        Circuit = troubles.Cut(Circuit);
        Traits |= bank.Traits | wiring.Traits | troubles.Traits | supplies.Aggregate(Traits.None, (all, s) => all | s.Traits) | Of(supplies);
        Traits |= Hertz < 55 ? Traits.FiftyHertz : Traits.SixtyHertz;
    }

    internal DiodeNetwork Circuit { get; private set; } = new(new WiringNetwork());

    /// <summary>Without diodes this is all there is.</summary>
    internal WiringNetwork Network => Circuit.Wiring;

    internal double Hertz { get; }

    internal int? Earth { get; }

    internal Traits Traits { get; private set; }

    /// <summary>The cold side of each transformer.</summary>
    internal IEnumerable<int> Returns => supplies.Select(s => s.Return);

    internal IEnumerable<int> Commons => supplies.Select(s => s.Common);

    internal IReadOnlyList<int> Terminals => terminals;

    internal IReadOnlyList<ValveCoil> Coils => bank.All;

    /// <summary>As an ohmmeter finds it: sources off, every conductor off its terminal.</summary>
    internal WiringNetwork Lifted()
    {
        var network = Network.WithoutSources();
        double[] ohms = [.. Enumerable.Range(0, network.ElementCount).Select(e => network.ElementAt(e).Ohms)];
        outputs.ForEach(e => ohms[e] = double.PositiveInfinity);
        return network.With(ohms);
    }

    /// <summary>With every other plunger in.</summary>
    internal DiodeNetwork EveryOtherCoilHeld()
    {
        var network = Network;
        for (var coil = 0; coil < Coils.Count; coil += 2)
        {
            network = network.WithHenries(Coils[coil].Element, Coils[coil].HoldingHenries);
        }

        return Circuit.With(network);
    }

    private static Traits Of(List<Supply> supplies) =>
        (supplies.Count > 1 ? Traits.TwoTransformers : Traits.None) | (supplies.Exists(s => s.Trunks.Count > 1) ? Traits.SeveralCommons : Traits.None);

    /// <summary>A master valve and a pump relay are on whatever runs. The relay's coil sits beside the controller.</summary>
    private void AddPermanent()
    {
        var supply = supplies[0];
        if (draws.OneIn(3))
        {
            Traits |= Traits.MasterValve;
            var box = 1 + draws.Below(tree.Boxes);
            bank.AddCoil("master valve", wiring.Lay("master valve", Terminal("master valve", supply, on: true), box), supply.Trunks[0].At(box), 0.8);
        }

        if (draws.OneIn(3))
        {
            Traits |= Traits.PumpRelay;
            bank.AddCoil("pump relay", Terminal("pump relay", supply, on: true), supply.Common, draws.Between(2, 6));
        }
    }

    private void AddStations(int coils, int devices)
    {
        Traits |= devices > 0 ? Traits.HalfWave : Traits.None;
        var on = 1 + draws.Below(4);
        Traits |= on > 1 ? Traits.SeveralOn : Traits.None;
        var wrong = supplies.Count > 1 && draws.OneIn(2) ? 1 + draws.Below(2) : -1;
        for (var (station, left) = (0, coils); left > 0; station++)
        {
            var supply = draws.Of(supplies);
            var returns = station == wrong ? supplies.Find(s => s != supply)! : supply;
            Traits |= station == wrong ? Traits.WrongCommon : Traits.None;
            var box = 1 + draws.Below(tree.Boxes);
            var common = draws.Of(returns.Trunks).At(box);
            left -= station < devices
                ? AddShared($"shared {station}", supply, box, common, Math.Max(2, left))
                : AddPlain($"station {station}", supply, box, common, left, station < devices + on);
        }
    }

    private int AddPlain(string name, Supply supply, int box, int common, int left, bool on) =>
        bank.AddValves(name, wiring.Lay(name, Terminal(name, supply, on), box), common, left);

    /// <summary>0: one terminal straight to the conductor. 1: diodes there only, so every coil gets both halves. 2: at both ends.</summary>
    private int AddShared(string name, Supply supply, int box, int common, int left)
    {
        var shared = new SharedConductor(Circuit, draws, name);
        var ends = draws.Below(3);
        var firstOn = draws.Below(4) > 0;
        var head = ends == 0
            ? Terminal(name, supply, firstOn)
            : shared.AddControllerEnd([Terminal($"{name} a", supply, firstOn), Terminal($"{name} b", supply, draws.OneIn(2))]);
        var inBox = wiring.Lay(name, head, box);
        var placed = 0;
        for (var branch = 0; branch < 2; branch++)
        {
            var lead = ends == 1 ? inBox : shared.AddValveEnd(inBox, branch);
            placed += bank.AddValves($"{name} {branch}", lead, common, Math.Max(1, (left - placed) / 2));
        }

        return placed;
    }

    private int Terminal(string name, Supply supply, bool on)
    {
        var terminal = Network.Node($"{name} terminal");
        var ohms = draws.OneIn(3) ? 0 : draws.Between(0.02, 0.4);
        outputs.Add(Network.AddResistor($"{name} output", supply.Hot, terminal, on ? ohms : double.PositiveInfinity));
        terminals.Add(terminal);
        return terminal;
    }
}
