using System.Diagnostics;
using System.Globalization;
using Underturf.Property.Practice;
using Underturf.Reasoning;
using Underturf.Simulation;

namespace Underturf.Benchmarks;

/// <summary>Time and memory of the whole belief over properties of growing size, on one thread, once the code is warm.</summary>
internal static class BeliefGrowth
{
    public const ulong FirstSeed = 30_001;

    private static readonly int[] sizes = [10, 20, 50, 100, 200, 500, 1000];

    public static int Run(TextWriter output, IReadOnlyList<string> arguments)
    {
        var asked = arguments.Count > 0 ? arguments.Select(a => int.Parse(a, NumberStyles.None, CultureInfo.InvariantCulture)).ToArray() : sizes;
        for (ulong warm = 1; warm < 4; warm++)
        {
            Seconds(FirstSeed - warm, 100);
        }

        output.WriteLine("| stations | properties | median s | worst s | peak MB |");
        output.WriteLine("|---|---|---|---|---|");
        foreach (var stations in asked)
        {
            var count = stations switch { <= 50 => 15, <= 200 => 9, _ => 3 };
            var seconds = Enumerable.Range(0, count).Select(i => Seconds(FirstSeed + (ulong)i, stations)).Order().ToList();
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {stations} | {count} | {seconds[count / 2]:F2} | {seconds[^1]:F2} | {Process.GetCurrentProcess().PeakWorkingSet64 / 1e6:F0} |"));
        }

        return 0;
    }

    /// <summary>Processor time from the log to the probabilities of every station.</summary>
    private static double Seconds(ulong seed, int stations)
    {
        var log = WorldGenerator.Make(seed, PracticeBook.Default, WorldShape.Whole(stations, null)).Log;
        GC.Collect();
        var begin = Environment.CpuUsage.TotalTime;
        Notebook.Open(log, PracticeBook.Default).Readings();
        return (Environment.CpuUsage.TotalTime - begin).TotalSeconds;
    }
}
