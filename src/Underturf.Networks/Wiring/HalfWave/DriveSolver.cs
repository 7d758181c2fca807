using Underturf.Quantities;

namespace Underturf.Networks.Wiring.HalfWave;

/// <summary>The direct-current state of a network with diodes under a meter's test volts.</summary>
internal sealed class DriveSolver
{
    /// <summary>Ohms behind the test volts when a current source is at its limit; small beside any reading, large beside rounding.</summary>
    private const double LimitOhms = 1e-3;

    private readonly DiodeNetwork network;
    private readonly Diode[] diodes;
    private readonly int red;
    private readonly int black;

    private DriveSolver(DiodeNetwork network, int red, int black)
    {
        this.network = network;
        this.red = red;
        this.black = black;
        diodes = network.Working();
    }

    internal static Outcome<DriveReading> Read(DiodeNetwork network, int red, int black, TestDrive drive)
    {
        var topology = network.Wiring.Topologies.Direct(network.Wiring);
        if (!topology.SamePart(red, black))
        {
            return new DriveReading(drive.OpenVolts, 0, true, 0);
        }

        if (topology.Contraction.Merged(red) == topology.Contraction.Merged(black))
        {
            return new DriveReading(0, drive.TestAmperes > 0 ? drive.TestAmperes : drive.OpenVolts / drive.SourceOhms, false, 0);
        }

        var solver = new DriveSolver(network, red, black);
        return drive.TestAmperes > 0 ? solver.ByCurrent(drive) : solver.ByVolts(drive.OpenVolts, drive.SourceOhms, drive.MostOhms);
    }

    /// <summary>Volts across the leads grow with the current, so it is enough to look whether the limit drives the test current.</summary>
    private Outcome<DriveReading> ByCurrent(TestDrive drive)
    {
        var limit = ByVolts(drive.OpenVolts, LimitOhms, double.PositiveInfinity);
        if (!limit.Succeeded)
        {
            return limit;
        }

        return limit.Value.Amperes < drive.TestAmperes
            ? limit.Value with { IsOverRange = true }
            : Solve(network.Wiring, drive.TestAmperes, state => new DriveReading(state.Volts, drive.TestAmperes, false, state.Residual));
    }

    private Outcome<DriveReading> ByVolts(double openVolts, double sourceOhms, double mostOhms)
    {
        var metered = network.Wiring.Clone();
        metered.AddResistor("meter", red, black, sourceOhms);
        return Solve(metered, openVolts / sourceOhms, state =>
        {
            var amperes = (openVolts - state.Volts) / sourceOhms;
            return new DriveReading(state.Volts, amperes, state.Volts > mostOhms * amperes, state.Residual);
        });
    }

    /// <summary>Sends a current in at the red lead and out at the black one.</summary>
    private Outcome<DriveReading> Solve(WiringNetwork wiring, double amperes, Func<(double Volts, double Residual), DriveReading> read)
    {
        var topology = wiring.Topologies.Direct(wiring);
        var linear = new InstantFactor(wiring, topology, Conductances(wiring, topology));
        var ports = new DiodePorts(linear, diodes);
        var (into, outOf) = (topology.Contraction.Merged(red), topology.Contraction.Merged(black));
        var nodes = new double[linear.NodeCount];
        nodes[into] += amperes;
        nodes[outOf] -= amperes;
        linear.Solve(nodes);
        if (!ports.Bend(nodes, new double[wiring.ElementCount], 0))
        {
            return new Problem("ohmmeter", "the currents of the diodes under its test volts are not found", "Read elsewhere, or with other test volts");
        }

        return read((nodes[into] - nodes[outOf], Imbalance(linear, ports, nodes, into, outOf, amperes)));
    }

    private double[] Conductances(WiringNetwork wiring, Topology topology)
    {
        var siemens = new double[wiring.ElementCount];
        for (var e = 0; e < siemens.Length; e++)
        {
            siemens[e] = topology.Finite[e] ? 1 / wiring.Ohmic[e] : 0;
        }

        foreach (var diode in diodes)
        {
            siemens[diode.Element] = DiodePorts.BaseSiemens(wiring.Ohmic[diode.Element]);
        }

        return siemens;
    }

    private double Imbalance(InstantFactor linear, DiodePorts ports, double[] nodes, int into, int outOf, double amperes)
    {
        var left = new double[nodes.Length];
        left[into] += amperes;
        left[outOf] -= amperes;
        for (var e = 0; e < linear.Siemens.Length; e++)
        {
            var diode = Array.FindIndex(diodes, d => d.Element == e);
            var current = diode < 0 ? linear.Current(e, nodes, 0) : ports.Amperes[diode];
            left[linear.From[e]] -= current;
            left[linear.To[e]] += current;
        }

        return left.Max(Math.Abs);
    }
}
