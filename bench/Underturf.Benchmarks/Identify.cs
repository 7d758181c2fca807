using System.Diagnostics;
using System.Globalization;
using Underturf.Property.Practice;
using Underturf.Reasoning;
using Underturf.Simulation;

namespace Underturf.Benchmarks;

/// <summary>How many names are wrong, how long it takes beside one wire at a time, and what an answer takes.</summary>
internal static class Identify
{
    /// <summary>Reporting seeds begin here; seeds below were used for looking.</summary>
    public const ulong FirstSeed = 50_001;

    public static int Run(TextWriter output, IReadOnlyList<string> arguments)
    {
        var (count, first) = (Whole(arguments, 0) ?? 40, (ulong)(Whole(arguments, 1) ?? (int)FirstSeed));
        output.WriteLine(NamingStudy.Heading);
        foreach (var ends in NamingStudy.Sizes)
        {
            output.WriteLine(NamingStudy.Row(NamingStudy.Block(first, count, ends, PracticeBook.Default)));
        }

        Time(output);
        return 0;
    }

    /// <summary>An answer for sixty ends, its plans rehearsed and without.</summary>
    private static void Time(TextWriter output)
    {
        var scene = NamingScene.Make(1, 60, 60);
        var notebook = Notebook.Open(scene.Log, PracticeBook.Default);
        var watch = new Stopwatch();
        for (var time = 0; time < 6; time++)
        {
            watch.Restart();
            notebook.Name(NamingScene.Box, new NamingCrew());
        }

        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Answer for 60 ends, plans rehearsed: {watch.Elapsed.TotalMilliseconds:0} ms."));
    }

    private static int? Whole(IReadOnlyList<string> arguments, int at) =>
        arguments.Count > at && int.TryParse(arguments[at], NumberStyles.None, CultureInfo.InvariantCulture, out var asked) ? asked : null;
}
