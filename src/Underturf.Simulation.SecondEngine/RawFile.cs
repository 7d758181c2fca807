using System.Globalization;
using System.Numerics;
using Underturf.Quantities;

namespace Underturf.Simulation.SecondEngine;

/// <summary>
/// The ASCII raw file of one analysis: a table of names, then a value a line, "re" or "re,im", the point's number before its first. A
/// missing engine and whatever it complains of is a problem.
/// </summary>
internal sealed class RawFile
{
    private readonly string[] names;
    private readonly Complex[] values;

    private RawFile(string[] names, Complex[] values)
    {
        this.names = names;
        this.values = values;
    }

    internal int Points => values.Length / names.Length;

    /// <summary>Runs one analysis, "op" or "ac lin 1 60 60", and reads the vectors named, "all" for all.</summary>
    internal static Outcome<RawFile> Run(string elements, string analysis, string vectors = "all")
    {
        var deck = $"* a circuit of Underturf\n{elements}.control\nset filetype=ascii\n{analysis}\nwrite out.raw {vectors}\nquit\n.endc\n.end\n";
        return NgspiceProcess.Run(deck, (folder, words) => Read(Path.Combine(folder, "out.raw"), words));
    }

    /// <summary>Values of a vector by point; its name in lower case, as in "v(n1)".</summary>
    internal Complex[] Vector(string name)
    {
        var k = Array.IndexOf(names, name);
        return k < 0
            ? throw new ArgumentException($"The engine was not asked for {name}.", nameof(name))
            : [.. Enumerable.Range(0, Points).Select(p => values[(p * names.Length) + k])];
    }

    /// <summary>The first point of every vector.</summary>
    internal Dictionary<string, Complex> First() => names.Select((n, k) => (n, k)).ToDictionary(n => n.n, n => values[n.k], StringComparer.Ordinal);

    private static Outcome<RawFile> Read(string file, string words)
    {
        if (!File.Exists(file))
        {
            return new Problem("deck", $"ngspice wrote no answer:\n{words}", "Look at the deck it was given");
        }

        var lines = File.ReadAllLines(file);
        var count = Whole(lines, "No. Variables:");
        var table = Array.IndexOf(lines, "Variables:") + 1;
        var start = Array.FindIndex(lines, l => l.StartsWith("Values:", StringComparison.Ordinal)) + 1;
        var vectors = lines[table..(table + count)].Select(l => l.Split('\t', StringSplitOptions.RemoveEmptyEntries)[1].ToLowerInvariant()).ToArray();
        var numbers = lines.Skip(start).Where(l => l.Length > 0).Select(Value).ToArray();
        return numbers.Length == count * Whole(lines, "No. Points:")
            ? new RawFile(vectors, numbers)
            : new Problem("deck", $"ngspice wrote {numbers.Length} values of {count} vectors", "Look at the deck it was given");
    }

    private static Complex Value(string line)
    {
        var parts = line[(line.LastIndexOf('\t') + 1)..].Split(',');
        return new Complex(Parse(parts[0]), parts.Length > 1 ? Parse(parts[1]) : 0);
    }

    private static double Parse(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static int Whole(string[] lines, string label) =>
        int.Parse(lines.First(l => l.StartsWith(label, StringComparison.Ordinal))[label.Length..], CultureInfo.InvariantCulture);
}
