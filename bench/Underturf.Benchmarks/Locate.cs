using System.Globalization;
using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Reasoning;
using Underturf.Simulation;

namespace Underturf.Benchmarks;

/// <summary>Whether the ground that is told holds what is hidden, what searching costs beside rules of thumb, and how long an answer takes. Parts: worlds, time.</summary>
internal static class Locate
{
    /// <summary>Reporting seeds begin here; seeds below were used for looking.</summary>
    public const ulong FirstSeed = 61_001;

    public static int Run(TextWriter output, IReadOnlyList<string> arguments)
    {
        var part = arguments.Count > 0 ? arguments[0] : string.Empty;
        if (part is "" or "worlds")
        {
            Worlds(output, arguments.Whole(1) ?? 334, (ulong)(arguments.Whole(2) ?? (int)FirstSeed));
        }

        if (part is "" or "time")
        {
            Time(output);
        }

        return 0;
    }

    private static void Worlds(TextWriter output, int count, ulong first)
    {
        var book = PracticeBook.Default;
        var all = SearchStudy.Sizes.Select(size => SearchStudy.Block(first, count, size, book)).ToList();
        output.WriteLine(SearchStudy.Heading);
        all.ForEach(cases => output.WriteLine(SearchStudy.Row(cases)));
        output.WriteLine();
        var every = all.SelectMany(c => c).ToList();
        foreach (var level in new[] { 0.5, 0.8, 0.95 })
        {
            var (low, high) = Bootstrap.Interval(every, c => SearchStudy.Share(c, level), first);
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Ground of {100 * level:0} % holds it in {100 * SearchStudy.Share(every, level):0.0} %, 95 % interval {100 * low:0.0} to {100 * high:0.0} %."));
        }

        var (worse, better) = Bootstrap.Interval(every, c => c.Average(x => x.LogScore - x.LogScoreFixed), first);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Learned beside fixed weights: log score {every.Average(x => x.LogScore - x.LogScoreFixed):+0.000;-0.000} a valve, 95 % interval {worse:+0.000;-0.000} to {better:+0.000;-0.000}."));
        output.WriteLine($"Loss of the walk beside that of a search without any way: {string.Join(", ", all.Select(c => string.Create(CultureInfo.InvariantCulture, $"{SearchStudy.TravelRatio(c):0.000} ({c[0].Stations} stations)")))}.");
        foreach (var unfound in new[] { book.Locating.UnfoundMinutes, SearchStudy.MustBeFoundMinutes })
        {
            output.WriteLine();
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Left hidden costs {unfound:0} minutes:"));
            output.WriteLine();
            output.WriteLine(SearchStudy.SearchHeading);
            all.ForEach(cases => output.WriteLine(SearchStudy.SearchRow(cases, unfound)));
            output.WriteLine();
            Ratio(output, "All", every, unfound, first);
            Ratio(output, "Several humps", [.. every.Where(c => c.Humps)], unfound, first);
        }
    }

    private static void Ratio(TextWriter output, string what, IReadOnlyList<SearchStudy.Case> cases, double unfound, ulong seed)
    {
        var own = SearchStudy.Own(unfound);
        foreach (var (name, rule) in new (string, Func<SearchStudy.Case, IReadOnlyList<SearchCost>>)[] { ("outwards from the best guess", c => c.Outwards), ("along the path", c => c.AlongPath) })
        {
            var ring = SearchStudy.BestRing(cases, rule, unfound);
            double Of(IReadOnlyList<SearchStudy.Case> c) => c.Sum(x => own(x).Loss(unfound)) / c.Sum(x => rule(x)[ring].Loss(unfound));
            var (low, high) = Bootstrap.Interval(cases, Of, seed);
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what}, {cases.Count} valves, loss beside {name}: {Of(cases):0.000}, 95 % interval {low:0.000} to {high:0.000}."));
        }
    }

    /// <summary>A property of 400 by 400 metres in cells of one metre: the belief of one valve with all its notes, its search and what to do first.</summary>
    private static void Time(TextWriter output)
    {
        var scene = SearchScene.Make(1, 100, PracticeBook.Default);
        var keeper = LogKeeper.After(scene.Log);
        keeper.Note("maren", new DateTimeOffset(2031, 5, 7, 8, 0, 0, TimeSpan.Zero), new GroundFact { Id = "whole", What = "other", Shape = [new Position(-10, -10), new Position(370, 370)] });
        var log = keeper.Log();
        var cells = Notebook.Open(log, PracticeBook.Default).Locate(scene.Station).Value.Heat!.Shares.Length;
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{cells} cells: answer for one valve {Timed.MedianMilliseconds(() => Notebook.Open(log, PracticeBook.Default).Locate(scene.Station).Value, 7):0} ms, for all {Timed.MedianMilliseconds(() => Notebook.Open(log, PracticeBook.Default).Locate().Value, 7):0} ms."));
    }
}
