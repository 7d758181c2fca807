using System.Diagnostics;
using System.Globalization;
using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Reasoning;
using Underturf.Simulation;

namespace Underturf.Benchmarks;

/// <summary>
/// Time and memory of the whole belief over properties of growing size, on one thread: seconds once the code is warm, and the most memory that a process takes
/// which reads one log, says what is wrong and ends.
/// </summary>
internal static class BeliefGrowth
{
    public const ulong FirstSeed = 30_001;

    /// <summary>What such a process is called with, and its log.</summary>
    private const string One = "one";

    /// <summary>Properties worked before the first that counts: the runtime goes on compiling for that long.</summary>
    private const ulong Warm = 12;

    private static readonly int[] sizes = [10, 20, 50, 100, 200, 500, 1000];

    public static int Run(TextWriter output, IReadOnlyList<string> arguments)
    {
        if (arguments is [One, var log])
        {
            Notebook.Open(LogDocument.Read(File.ReadAllBytes(log)), PracticeBook.Default).Readings();
            output.WriteLine(Process.GetCurrentProcess().PeakWorkingSet64.ToString(CultureInfo.InvariantCulture));
            return 0;
        }

        var asked = arguments.Count > 0 ? arguments.Select(a => int.Parse(a, NumberStyles.None, CultureInfo.InvariantCulture)).ToArray() : sizes;
        for (ulong warm = 1; warm <= Warm; warm++)
        {
            Seconds(FirstSeed - warm, 100);
        }

        output.WriteLine("| stations | properties | median s | worst s | median peak MB | most MB |");
        output.WriteLine("|---|---|---|---|---|---|");
        foreach (var stations in asked)
        {
            var count = stations switch { <= 50 => 15, <= 200 => 9, _ => 3 };
            var seconds = Enumerable.Range(0, count).Select(i => Seconds(FirstSeed + (ulong)i, stations)).Order().ToList();
            var peaks = Enumerable.Range(0, count).Select(i => PeakMegabytes(FirstSeed + (ulong)i, stations)).Order().ToList();
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {stations} | {count} | {seconds[count / 2]:F2} | {seconds[^1]:F2} | {peaks[count / 2]:F0} | {peaks[^1]:F0} |"));
        }

        return 0;
    }

    /// <summary>Processor time from the log to the probabilities of every station.</summary>
    private static double Seconds(ulong seed, int stations)
    {
        var log = Log(seed, stations);
        GC.Collect();
        var begin = Environment.CpuUsage.TotalTime;
        Notebook.Open(log, PracticeBook.Default).Readings();
        return (Environment.CpuUsage.TotalTime - begin).TotalSeconds;
    }

    private static double PeakMegabytes(ulong seed, int stations)
    {
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllBytes(file, Log(seed, stations).ToBytes().Span);
            using var process = Process.Start(new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "Underturf.Benchmarks.dll"), "growth", One, file]) { RedirectStandardOutput = true, UseShellExecute = false })!;
            var said = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return double.Parse(said, CultureInfo.InvariantCulture) / 1e6;
        }
        finally
        {
            File.Delete(file);
        }
    }

    private static LogDocument Log(ulong seed, int stations) => WorldGenerator.Make(seed, PracticeBook.Default, WorldShape.Whole(stations, null)).Log;
}
