using System.Numerics;
using Underturf.Networks.Wiring;
using Underturf.Networks.Wiring.HalfWave;
using Underturf.Quantities;
using Underturf.Simulation.Engines;

namespace Underturf.Simulation.SecondEngine;

/// <summary>
/// The circuit simulator of the Debian package <c>ngspice</c> as an engine: operating points for ohms, a small-signal run where there is no
/// diode, a transient where there is one. A process for each reading.
/// </summary>
public sealed class NgspiceEngine : ICircuitEngine
{
    /// <summary>The coils' own time is under a period, so that by then what is left of the start is below one part in a million.</summary>
    private const int Periods = 12;

    /// <summary>Half the tests' own: a whole property at a thousand steps takes minutes.</summary>
    private const int StepsPerPeriod = 500;

    private NgspiceEngine()
    {
    }

    /// <summary>The engine, once it has answered a question whose answer is known; or the problem that keeps it from it.</summary>
    public static Outcome<NgspiceEngine> Start()
    {
        var known = RawFile.Run("R1 a 0 3\nI1 0 a 1\n", "op");
        return !known.Succeeded ? known.Problem!
            : Math.Abs(known.Value.First()["v(a)"].Real - 3) < 1e-9 ? new NgspiceEngine()
            : new Problem("ngspice", "does not find 3 V over 3 ohm at 1 A", "Install the Debian package 'ngspice' anew");
    }

    public Outcome<double> Ohms(DiodeNetwork circuit, int red, int black, TestDrive? drive)
    {
        if (!Reached(circuit.Wiring, red)[black])
        {
            return double.PositiveInfinity;
        }

        return drive is { } meter ? Driven(circuit, red, black, meter) : Straight(circuit.Wiring, red, black);
    }

    public Outcome<double> Volts(DiodeNetwork circuit, int a, int b, FedMeter meter)
    {
        if (!IsFed(circuit.Wiring, a, b))
        {
            return 0;
        }

        if (circuit.Diodes.Count > 0)
        {
            return Transient(circuit, b, [], HalfWaveNetlist.Volts(a), meter);
        }

        var volts = Alternating(circuit.Wiring, a, b, meter.Hertz);
        return volts.Succeeded ? Shown(volts.Value, meter) : volts.Problem!;
    }

    public Outcome<double> Amperes(DiodeNetwork circuit, int element, FedMeter meter)
    {
        var part = circuit.Wiring.ElementAt(element);
        if (circuit.Diodes.Count > 0)
        {
            return Transient(circuit, part.B, [element], HalfWaveNetlist.Amperes(element), meter);
        }

        var volts = Alternating(circuit.Wiring, part.A, part.B, meter.Hertz);
        return volts.Succeeded
            ? Shown((volts.Value - part.Volts) / new Complex(part.Ohms, 2 * Math.PI * meter.Hertz * part.Henries), meter)
            : volts.Problem!;
    }

    private static double Shown(Complex sine, FedMeter meter) => meter.Response == MeterResponse.Direct ? 0 : sine.Magnitude;

    private static Outcome<double> Straight(WiringNetwork wiring, int red, int black)
    {
        var netlist = new Netlist();
        var copy = netlist.Add(wiring, black, live: false);
        netlist.Inject(copy, red, black);
        return Point(netlist.Text, "op", Netlist.Volts(copy, red));
    }

    /// <summary>A meter's own current or cell; above its volts it shows nothing. A lid of 50 V gives a blocked current a way.</summary>
    private static Outcome<double> Driven(DiodeNetwork circuit, int red, int black, TestDrive meter)
    {
        var amperes = meter.TestAmperes;
        var source = amperes > 0
            ? $"Itest 0 n{red} {SpiceText.Number(amperes)}\nDtest n{red} lid xtest\nVlid lid 0 50\n.model xtest d\n"
            : $"Vtest test 0 {SpiceText.Number(meter.OpenVolts)}\nRtest test n{red} {SpiceText.Number(meter.SourceOhms)}\n";
        var volts = Point(HalfWaveNetlist.Write(circuit, black, metered: []) + source, "op", HalfWaveNetlist.Volts(red));
        if (!volts.Succeeded)
        {
            return volts;
        }

        var drawn = amperes > 0 ? amperes : (meter.OpenVolts - volts.Value) / meter.SourceOhms;
        return volts.Value > (amperes > 0 ? meter.OpenVolts : meter.MostOhms * drawn) ? double.PositiveInfinity : volts.Value / drawn;
    }

    private static Outcome<double> Point(string elements, string analysis, string vector)
    {
        var file = RawFile.Run(elements, analysis, vector);
        return file.Succeeded ? file.Value.Vector(vector)[0].Real : file.Problem!;
    }

    /// <summary>Volts of a over b, b the ground.</summary>
    private static Outcome<Complex> Alternating(WiringNetwork wiring, int a, int b, double hertz)
    {
        var netlist = new Netlist();
        var vector = Netlist.Volts(netlist.Add(wiring, b, live: true), a);
        var text = SpiceText.Number(hertz);
        var file = RawFile.Run(netlist.Text, $"ac lin 1 {text} {text}", vector);
        return file.Succeeded ? file.Value.Vector(vector)[0] : file.Problem!;
    }

    private static Outcome<double> Transient(DiodeNetwork circuit, int ground, int[] metered, string vector, FedMeter meter)
    {
        var deck = HalfWaveNetlist.WriteProperty(circuit, ground, meter.Hertz, metered);
        var run = NgspiceTransient.Run(deck, meter.Hertz, Periods, StepsPerPeriod, vector);
        return run.Succeeded ? run.Value.ShownBy(vector, meter.Response) : run.Problem!;
    }

    /// <summary>Whether two nodes and a source hang together.</summary>
    private static bool IsFed(WiringNetwork wiring, int a, int b)
    {
        var reached = Reached(wiring, a);
        return reached[b] && Enumerable.Range(0, wiring.ElementCount).Select(wiring.ElementAt).Any(e => e.Kind == ElementKind.Source && reached[e.A]);
    }

    /// <summary>Nodes that finite elements join to one.</summary>
    private static bool[] Reached(WiringNetwork wiring, int from)
    {
        var joined = Enumerable.Range(0, wiring.ElementCount).Select(wiring.ElementAt).Where(e => double.IsFinite(e.Ohms)).SelectMany(e => new[] { (e.A, e.B), (e.B, e.A) }).ToLookup(e => e.Item1, e => e.Item2);
        var reached = new bool[wiring.NodeCount];
        var open = new Stack<int>([from]);
        while (open.TryPop(out var node))
        {
            if (!reached[node])
            {
                reached[node] = true;
                foreach (var next in joined[node])
                {
                    open.Push(next);
                }
            }
        }

        return reached;
    }
}
