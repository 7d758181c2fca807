using System.Globalization;
using System.Numerics;
using System.Text;

namespace Underturf.References.Tests;

/// <summary>
/// Runs the circuit simulator <c>ngspice</c> on a netlist and reads all its vectors back; a complaint, or the missing engine, throws.
/// </summary>
internal static class Ngspice
{
    /// <summary>Runs one analysis, "op" or "ac lin 1 60 60".</summary>
    /// <returns>Complex values by vector name in lower case, as in "v(n1)".</returns>
    internal static Dictionary<string, Complex> Run(string elements, string analysis) => Read(Raw(elements, analysis));

    /// <summary>Runs one analysis and returns the raw file it writes, line by line.</summary>
    internal static string[] Raw(string elements, string analysis)
    {
        var deck = $"* written by the tests\n{elements}.control\nset filetype=ascii\n{analysis}\nwrite out.raw all\nquit\n.endc\n.end\n";
        var raw = NgspiceProcess.Run(deck, (folder, _) => File.ReadAllLines(Path.Combine(folder, "out.raw")));
        return raw.Succeeded ? raw.Value : throw new InvalidOperationException(raw.Problem!.ToString());
    }

    /// <summary>An ASCII raw file with one point: a table of names, then a value a line, "re" or "re,im".</summary>
    private static Dictionary<string, Complex> Read(string[] lines)
    {
        var count = int.Parse(lines.Single(l => l.StartsWith("No. Variables:", StringComparison.Ordinal))[14..], CultureInfo.InvariantCulture);
        var names = Array.IndexOf(lines, "Variables:") + 1;
        var values = Array.FindIndex(lines, l => l.StartsWith("Values:", StringComparison.Ordinal)) + 1;
        var read = new Dictionary<string, Complex>(StringComparer.Ordinal);
        for (var k = 0; k < count; k++)
        {
            var name = lines[names + k].Split('\t', StringSplitOptions.RemoveEmptyEntries)[1];
            var parts = lines[values + k].Split('\t', StringSplitOptions.RemoveEmptyEntries)[^1].Split(',');
            var numbers = parts.Select(p => double.Parse(p, CultureInfo.InvariantCulture)).ToArray();
            read.Add(name.ToLowerInvariant(), new Complex(numbers[0], numbers.Length > 1 ? numbers[1] : 0));
        }

        return read;
    }

    /// <summary>A number as the simulator reads it, with all its digits.</summary>
    internal static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    internal static StringBuilder Line(this StringBuilder text, string line) => text.Append(line).Append('\n');
}
