using System.Globalization;
using Underturf.Numerics;
using Underturf.Property.Practice;
using Underturf.Reasoning;
using Underturf.Simulation;

namespace Underturf.Benchmarks;

/// <summary>How many names are wrong, how long naming takes beside one wire at a time, how near single touches come to the fewest, what other crews take, and what an answer takes. Parts: boxes, crews, touches, time.</summary>
internal static class Identify
{
    /// <summary>Reporting seeds begin here; seeds below were used for looking.</summary>
    public const ulong FirstSeed = 50_001;

    public static int Run(TextWriter output, IReadOnlyList<string> arguments)
    {
        var part = arguments.Count > 0 ? arguments[0] : string.Empty;
        if (part is "" or "boxes")
        {
            Boxes(output, arguments.Whole(1) ?? 20, (ulong)(arguments.Whole(2) ?? (int)FirstSeed));
        }

        if (part is "" or "crews")
        {
            Crews(output, arguments.Whole(1) ?? 20, (ulong)(arguments.Whole(2) ?? (int)FirstSeed));
        }

        if (part is "" or "touches")
        {
            Touches(output);
        }

        if (part is "" or "time")
        {
            Time(output);
        }

        return 0;
    }

    private static void Boxes(TextWriter output, int count, ulong first)
    {
        output.WriteLine(NamingStudy.Heading);
        var all = new List<NamingStudy.Pair>();
        foreach (var ends in NamingStudy.Sizes)
        {
            var pairs = Enumerable.Range(0, count).AsParallel().AsOrdered().Select(i => NamingStudy.One(first + (ulong)i, ends, PracticeBook.Default)).ToList();
            output.WriteLine(NamingStudy.Row(pairs));
            all.AddRange(pairs);
        }

        var (low, high) = Bootstrap.Interval(all, p => p.Sum(x => x.Own.Minutes) / p.Sum(x => x.OneByOne.Minutes), 50_000);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"All: minutes, own / one wire at a time {all.Sum(x => x.Own.Minutes) / all.Sum(x => x.OneByOne.Minutes):0.000}, 95 % interval {low:0.000} to {high:0.000}; {all.Sum(x => x.Own.Wrong)} of {all.Sum(x => x.Own.Named)} names wrong; calibration error {NamingStudy.CalibrationError(all):0.000}."));
    }

    private static void Crews(TextWriter output, int count, ulong first)
    {
        output.WriteLine(NamingStudy.CrewHeading);
        foreach (var ends in NamingStudy.Sizes.Take(2))
        {
            foreach (var (who, crew) in NamingStudy.Crews)
            {
                output.WriteLine(NamingStudy.CrewRow(who, crew, first, count, ends, PracticeBook.Default));
            }
        }
    }

    private static void Touches(TextWriter output)
    {
        output.WriteLine("| ends | information, bits | touches | ratio | fewest that can do |");
        output.WriteLine("|---|---|---|---|---|");
        foreach (var (ends, times) in new[] { (2, 0), (3, 0), (4, 0), (5, 0), (6, 0), (8, 200), (12, 100), (20, 50), (30, 30), (45, 20), (60, 20) })
        {
            var bits = Enumerable.Range(2, ends - 1).Sum(k => Math.Log2(k));
            var touches = times == 0 ? SingleTouches.Expected(ends) : SingleTouches.Mean(ends, times, seed: 50_100);
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {ends} | {bits:0.000} | {touches:0.000} | {touches / bits:0.000} | {(times == 0 ? $"{new TouchOptimum(ends).Expected():0.000}" : string.Empty)} |"));
        }
    }

    /// <summary>An update for sixty ends, and an answer with its plans rehearsed.</summary>
    private static void Time(TextWriter output)
    {
        var weights = new MatchingWeights(60, 80);
        var chance = new SeededGenerator(5);
        for (var i = 0; i < 60; i++)
        {
            for (var j = 0; j < 80; j++)
            {
                weights[i, j] = Math.Exp(-4 * chance.NextDouble());
            }
        }

        var notebook = Notebook.Open(NamingScene.Make(1, 60, 60).Log, PracticeBook.Default);
        Say(output, "Shares of 60 ends among 80 wires, sampled", Timed.MedianMilliseconds(() => weights, made => MatchingMarginals.Of(made, 1), 21));
        Say(output, "Answer for 60 ends, all plans rehearsed", Timed.MedianMilliseconds(() => notebook, made => made.Name(NamingScene.Box, new NamingCrew()), 9));
        Say(output, "Answer for 60 ends, one plan given", Timed.MedianMilliseconds(() => notebook, made => made.Name(NamingScene.Box, new NamingCrew(Plan: "live wire, half of the wires at a time")), 9));
    }

    private static void Say(TextWriter output, string what, (double Clock, double Processor) median) =>
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what}: {median.Processor:0} ms of processor time, {median.Clock:0} ms on the clock."));
}
