using Underturf.Networks.Wiring;
using Underturf.Networks.Wiring.HalfWave;
using Underturf.Numerics;

namespace Underturf.References.Tests;

/// <summary>
/// An invented shared conductor: one or two branches of opposite polarity on it, each with a diode at the valve, at the controller or at both
/// ends, one to four coils a branch, and now and then a leak, a diode failed, a perfect joint or an ideal source. Values in the range of
/// practice; diodes as silicon rectifiers of one ampere are (invented spread).
/// </summary>
internal sealed class HalfWaveCircuit
{
    private const double Kelvins = 300.15;

    private readonly SeededGenerator random;

    internal HalfWaveCircuit(SeededGenerator random)
    {
        this.random = random;
        Common = Wiring.Node("common");
        Supply = Wiring.Node("supply");
        AtController = Wiring.Node("conductor at the controller");
        InBox = Wiring.Node("conductor in the box");
        var boxCommon = Wiring.Node("common in the box");
        Wiring.AddSource("transformer", Supply, Common, Between(23, 29), Rarely(6) ? 0 : Between(0.2, 1.5));
        Wiring.AddResistor("conductor", AtController, InBox, Rarely(8) ? 0 : Between(0.1, 8));
        Wiring.AddResistor("common run", boxCommon, Common, Between(0.05, 3));
        var branches = 1 + random.NextInt(2);
        var atController = random.NextInt(3);
        for (var branch = 0; branch < branches; branch++)
        {
            AddControllerEnd(branch, atController);
            AddValveEnd(branch, boxCommon, withDiode: atController != 1);
        }

        AddTrouble();
    }

    internal DiodeNetwork Circuit { get; private set; } = new(new WiringNetwork());

    internal int Common { get; }

    internal int Supply { get; }

    internal int AtController { get; }

    internal int InBox { get; }

    internal List<int> Coils { get; } = [];

    private WiringNetwork Wiring => Circuit.Wiring;

    /// <summary>0: the terminal is joined straight to the conductor. 1: diodes here only, so every coil gets both. 2: at both ends.</summary>
    private void AddControllerEnd(int branch, int atController)
    {
        var running = branch == 0 || random.NextInt(2) == 0;
        if (atController == 0 || !running)
        {
            if (branch == 0)
            {
                Wiring.AddResistor("terminal", Supply, AtController, Between(0.01, 0.2));
            }

            return;
        }

        AddDiode($"controller {branch}", Supply, AtController, branch);
    }

    private void AddValveEnd(int branch, int boxCommon, bool withDiode)
    {
        var node = Wiring.Node($"branch {branch}");
        if (withDiode)
        {
            AddDiode($"valve {branch}", InBox, node, branch);
        }
        else
        {
            Wiring.AddResistor($"splice {branch}", InBox, node, Between(0.01, 0.2));
        }

        for (var coil = random.NextInt(4); coil >= 0; coil--)
        {
            Coils.Add(Wiring.AddCoil($"coil {branch} {coil}", node, boxCommon, Between(20, 60), Between(0.02, 0.2)));
        }
    }

    private void AddDiode(string name, int outer, int inner, int branch)
    {
        var junction = new Junction(Math.Pow(10, Between(-10, -7)), Between(1, 2), Kelvins);
        var (anode, cathode) = branch == 0 ? (outer, inner) : (inner, outer);
        Circuit.AddDiode($"diode {name}", anode, cathode, junction, Between(0.02, 0.2));
    }

    private void AddTrouble()
    {
        if (Rarely(4))
        {
            Wiring.AddResistor("leak", InBox, Common, Math.Pow(10, Between(1.5, 5)));
        }

        if (Rarely(5))
        {
            Wiring.AddResistor("meter", AtController, Common, 1e7);
        }

        if (Rarely(8))
        {
            var failed = Circuit.Diodes[random.NextInt(Circuit.Diodes.Count)].Element;
            Circuit = Circuit.With(Wiring.With(failed, random.NextInt(2) == 0 ? 0 : double.PositiveInfinity));
        }
    }

    private bool Rarely(int oneIn) => random.NextInt(oneIn) == 0;

    private double Between(double least, double most) => least + ((most - least) * random.NextDouble());
}
