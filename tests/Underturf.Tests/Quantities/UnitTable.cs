using System.Globalization;
using Underturf.Quantities;

namespace Underturf.Tests.Quantities;

/// <summary>The units as the program offers them and as docs/units.md lists them.</summary>
internal static class UnitTable
{
    /// <summary>What the program offers when a unit is wrong.</summary>
    internal static string[] Names(Dimension dimension) =>
        Units.Parse("1 nothing", dimension).Problem!.Remedy["Use one of: ".Length..].Split(", ");

    internal static IReadOnlyList<(string Dimension, string Unit, double Factor, double Offset)> Page() =>
    [
        .. Repository.Read("docs/units.md").Split('\n')
            .Where(line => line.StartsWith("| ", StringComparison.Ordinal) && !line.StartsWith("| dimension", StringComparison.Ordinal))
            .Select(line => line.Split('|', StringSplitOptions.TrimEntries))
            .Select(cells => (cells[1], cells[2], Number(cells[3]), cells[4].Length == 0 ? 0 : Number(cells[4]))),
    ];

    private static double Number(string text)
    {
        var parts = text.Split('/').Select(p => double.Parse(p, CultureInfo.InvariantCulture)).ToArray();
        return parts.Length == 1 ? parts[0] : parts[0] / parts[1];
    }
}
