using System.Globalization;
using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Reasoning.Location;
using Underturf.Simulation;

namespace Underturf.Benchmarks;

/// <summary>Whether the ground that is told holds what is hidden, what searching costs beside rules of thumb, and how long an answer takes. Parts: worlds, time.</summary>
internal static class Locate
{
    /// <summary>Reporting seeds begin here; seeds below were used for looking.</summary>
    public const ulong FirstSeed = 61_001;

    private const int Times = 25;

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
            var least = cases.Sum(c => SearchStudy.Least(c, unfound)) / cases.Sum(c => rule(c)[ring].Loss(unfound));
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what}, {cases.Count} valves, loss beside {name}: {Of(cases):0.000}, 95 % interval {low:0.000} to {high:0.000}; the least that the belief allows: {least:0.000}."));
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
        Update(output, log, scene);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{cells} cells: answer for one valve {Timed.MedianMilliseconds(() => Notebook.Open(log, PracticeBook.Default).Locate(scene.Station).Value, 7):0} ms, for all {Timed.MedianMilliseconds(() => Notebook.Open(log, PracticeBook.Default).Locate().Value, 7):0} ms."));
    }

    /// <summary>One more note about a thing of which an answer stands: the belief alone, and the next answer with search and what to do first, beside one that keeps nothing.</summary>
    private static void Update(TextWriter output, LogDocument log, SearchScene scene)
    {
        var near = scene.Last;
        foreach (var (what, note) in new (string, Fact)[]
        {
            ("search", new SearchFact { How = "probe rod", About = scene.Station, Where = [near], Within = new Length(2), Minutes = 10 }),
            ("trace", new TraceFact { How = "wire tracer", Of = [scene.Station], Route = [near, new Position(near.EastMetres + 6, near.NorthMetres + 4)], Ended = "lost" }),
        })
        {
            var keeper = LogKeeper.After(log);
            keeper.Note("maren", new DateTimeOffset(2031, 5, 7, 9, 0, 0, TimeSpan.Zero), note);
            var (newer, earlier, memory) = (keeper.Log(), Notebook.Open(log, PracticeBook.Default), new LocationMemory());
            earlier.Locate(scene.Station);
            Believe(Notebook.Open(log, PracticeBook.Default), scene, memory);
            var belief = Timed.MedianMilliseconds(() => Next(newer, null), n => Believe(n, scene, new LocationMemory(memory)), Times);
            var kept = Timed.MedianMilliseconds(() => Next(newer, earlier), n => n.Locate(scene.Station).Value, Times);
            var anew = Timed.MedianMilliseconds(() => Next(newer, null), n => n.Locate(scene.Station).Value, Times);
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"One more {what}, on the clock and by the processor: belief {belief.Clock:0} and {belief.Processor:0} ms, whole answer {kept.Clock:0} and {kept.Processor:0} ms; with nothing kept {anew.Clock:0} and {anew.Processor:0} ms."));
        }
    }

    /// <summary>Where the valve lies, and the ground that holds it, with no plan of a search.</summary>
    private static object Believe(Notebook notebook, SearchScene scene, LocationMemory memory)
    {
        var (history, view, book) = (notebook.History, notebook.Tied.View, PracticeBook.Default);
        var groups = new SoughtFinder(history, view, book, []).Find();
        var ground = new GroundFinder(history, view, book.Locating, memory);
        var cells = ground.Find()!;
        var belief = new BeliefFinder(history, view, book, cells, new CarefulGround(view, book, cells, history.Facts.UsesUsUnits), ground, groups.Count, memory).Of(groups.First(g => g.Things[0].Station == scene.Station), keeps: true);
        return CredibleRegion.Of(belief.Belief.Shares[0], cells);
    }

    /// <summary>The log as the page has it after a note, read and folded.</summary>
    private static Notebook Next(LogDocument log, Notebook? earlier) => Notebook.Open(log, PracticeBook.Default, earlier);
}
