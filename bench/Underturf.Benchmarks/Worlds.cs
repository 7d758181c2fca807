using System.Globalization;
using Underturf.Property.Practice;
using Underturf.Simulation;

namespace Underturf.Benchmarks;

/// <summary>Is the true fault among the explanations, and do the stated probabilities hold, over many made-up properties?</summary>
internal static class Worlds
{
    private const int Blocks = 5;

    public static int Run(TextWriter output, IReadOnlyList<string> arguments)
    {
        var blocks = arguments.Whole(0) ?? Blocks;
        var book = PracticeBook.Default;
        var all = new List<CoverageStudy.PropertyResult>();
        output.WriteLine(CoverageStudy.Heading);
        for (var block = 0; block < blocks; block++)
        {
            var results = CoverageStudy.Run(CoverageStudy.FirstSeed + (ulong)(block * CoverageStudy.BlockSize), CoverageStudy.BlockSize, book);
            if (block == 0)
            {
                output.WriteLine(CoverageStudy.Row(results.Take(CoverageStudy.Rerun).ToList()));
            }

            output.WriteLine(CoverageStudy.Row(results));
            all.AddRange(results);
        }

        var (low, high) = Wilson(all.Count(r => r.Missed.Count == 0), all.Count);
        output.WriteLine();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"All {all.Count}: {all.Count(r => r.Missed.Count == 0)} with every fault given, 95 % interval {low:P1} to {high:P1}; expected calibration error {CoverageStudy.ExpectedCalibrationError(all):F3}."));
        output.WriteLine();
        output.WriteLine("| fault | drawn | missed |");
        output.WriteLine("|---|---|---|");
        foreach (var fault in all.SelectMany(r => r.Faults).Distinct().Order(StringComparer.Ordinal))
        {
            output.WriteLine($"| {fault} | {all.Sum(r => r.Faults.Count(f => f == fault))} | {all.Sum(r => r.Missed.Count(f => f == fault))} |");
        }

        return 0;
    }

    /// <summary>Wilson's interval for a share, 95 %.</summary>
    private static (double Low, double High) Wilson(int hits, int count)
    {
        const double Z = 1.959964;
        var share = (double)hits / count;
        var middle = (share + (Z * Z / (2 * count))) / (1 + (Z * Z / count));
        var half = Z * Math.Sqrt((share * (1 - share) / count) + (Z * Z / (4.0 * count * count))) / (1 + (Z * Z / count));
        return (middle - half, middle + half);
    }
}
