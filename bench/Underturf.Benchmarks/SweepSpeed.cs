using System.Diagnostics;
using System.Globalization;
using System.Numerics;
using System.Text;
using System.Text.RegularExpressions;
using Underturf.Networks.Wiring;
using Underturf.Numerics;
using Underturf.Simulation.SecondEngine;

namespace Underturf.Benchmarks;

/// <summary>How long a variant takes, all station ohms computed anew, beside ngspice in one process doing the same by <c>alter</c>.</summary>
internal static partial class SweepSpeed
{
    private const int OurVariants = 4000;
    private const double BrokenOhms = 1e6;

    /// <summary>Share of a reading that is let pass: both solve the same linear equations, and the engine prints twelve digits.</summary>
    private const double MostDifference = 1e-6;

    private static readonly (int Coils, int EngineVariants)[] Sizes = [(10, 40), (30, 12), (100, 3), (300, 1), (1000, 1)];

    public static int Run(TextWriter output, IReadOnlyList<string> arguments)
    {
        output.WriteLine("| coils | nodes | setup ms | a variant, microseconds | with setup over 4000 variants | ngspice, a variant, ms | times less | largest difference |");
        output.WriteLine("|---|---|---|---|---|---|---|---|");
        var agrees = true;
        foreach (var (coils, engineVariants) in Sizes)
        {
            output.WriteLine(Row(coils, engineVariants, out var difference));
            if (!(difference <= MostDifference))
            {
                output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Disagreement at {coils} coils: {difference:E1} of a reading, at most {MostDifference:E0} is let pass."));
                agrees = false;
            }
        }

        return agrees ? 0 : 1;
    }

    /// <param name="difference">The largest, as a share of our reading.</param>
    private static string Row(int coils, int engineVariants, out double difference)
    {
        var installation = new Installation(7, coils);
        var random = new SeededGenerator(11);
        var changes = Enumerable.Range(0, OurVariants).Select(_ => Change(installation.Network, random)).ToArray();
        var read = new Complex[coils];
        Ours(installation, changes[..50], read, out _);
        var all = Ours(installation, changes, read, out var setup);
        var clock = Stopwatch.StartNew();
        var theirs = Theirs(installation, changes[..engineVariants]);
        var engine = clock.Elapsed.TotalMilliseconds / engineVariants;
        var ours = all / OurVariants;
        difference = Difference(installation, changes[..engineVariants], theirs);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"| {coils} | {installation.Network.NodeCount} | {setup:F2} | {(all - setup) * 1000 / OurVariants:F1} | {ours * 1000:F1} | {engine:F1} | {engine / ours:F0} | {difference:E1} |");
    }

    /// <summary>
    /// Splices go bad and wires break. A broken one is given 1 Mohm, because the engine takes no open, and at 1 Gohm beside a hundredth of an
    /// ohm its rounding is 5e-5 of a reading, fifty times what is let pass.
    /// </summary>
    private static BranchChange Change(WiringNetwork network, SeededGenerator random) =>
        BranchChange.Of(random.NextInt(network.ElementCount), random.NextInt(3) == 0 ? BrokenOhms : Math.Pow(10, 3 * random.NextDouble()));

    /// <summary>Milliseconds in all, setup counted.</summary>
    private static double Ours(Installation installation, BranchChange[] changes, Complex[] read, out double setup)
    {
        var clock = Stopwatch.StartNew();
        var sweep = Sweep(installation.Network.Clone(), installation);
        setup = clock.Elapsed.TotalMilliseconds;
        foreach (var change in changes)
        {
            sweep.Read([change], read);
        }

        return clock.Elapsed.TotalMilliseconds;
    }

    private static TransferSweep Sweep(WiringNetwork network, Installation installation) =>
        TransferSweep.Of(network, 0, [.. installation.Terminals.Select(t => Transfer.Ohms(t, installation.Common))]).Value;

    private static double Difference(Installation installation, BranchChange[] changes, double[] theirs)
    {
        var (sweep, read, most) = (Sweep(installation.Network, installation), new Complex[installation.Terminals.Count], 0.0);
        for (var v = 0; v < changes.Length; v++)
        {
            sweep.Read([changes[v]], read);
            for (var r = 0; r < read.Length; r++)
            {
                most = Math.Max(most, Math.Abs(read[r].Real - theirs[(v * read.Length) + r]) / Math.Abs(read[r].Real));
            }
        }

        return most;
    }

    private static double[] Theirs(Installation installation, BranchChange[] changes)
    {
        var deck = new StringBuilder("* a sweep by alter\n");
        for (var e = 0; e < installation.Network.ElementCount; e++)
        {
            var element = installation.Network.ElementAt(e);
            deck.Append(CultureInfo.InvariantCulture, $"R{e} {Name(installation, element.A)} {Name(installation, element.B)} {element.Ohms:R}\n");
        }

        foreach (var terminal in installation.Terminals)
        {
            deck.Append(CultureInfo.InvariantCulture, $"I{terminal} 0 {Name(installation, terminal)} dc 0\n");
        }

        deck.Append(".control\nset numdgt=12\n");
        foreach (var change in changes)
        {
            deck.Append(CultureInfo.InvariantCulture, $"alter R{change.Element} = {change.Ohms:R}\n");
            foreach (var terminal in installation.Terminals)
            {
                deck.Append(CultureInfo.InvariantCulture, $"alter I{terminal} dc = 1\nop\nprint v({Name(installation, terminal)})\nalter I{terminal} dc = 0\ndestroy all\n");
            }

            deck.Append(CultureInfo.InvariantCulture, $"alter R{change.Element} = {installation.Network.ElementAt(change.Element).Ohms:R}\n");
        }

        var words = NgspiceProcess.Run<string>(deck.Append("quit\n.endc\n.end\n").ToString(), (_, printed) => printed);
        return words.Succeeded
            ? [.. Printed().Matches(words.Value).Select(m => double.Parse(m.Groups["value"].ValueSpan, CultureInfo.InvariantCulture))]
            : throw new InvalidOperationException(words.Problem!.ToString());
    }

    private static string Name(Installation installation, int node) => node == installation.Common ? "0" : $"n{node}";

    [GeneratedRegex(@"^v\(n\d+\) = (?<value>\S+)", RegexOptions.Multiline | RegexOptions.ExplicitCapture)]
    private static partial Regex Printed();
}
