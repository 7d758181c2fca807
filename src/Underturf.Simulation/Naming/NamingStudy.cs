using System.Globalization;
using Underturf.Property.Practice;
using Underturf.Reasoning;

namespace Underturf.Simulation;

/// <summary>Many made-up boxes of one size, named by the notebook's plan and, on the same truth, one wire at a time.</summary>
public static class NamingStudy
{
    public static IReadOnlyList<int> Sizes { get; } = [6, 12, 24];

    public static string Heading => "| ends | boxes | minutes | one wire at a time | ratio | rounds | named | named one at a time | wrong names | calibration error |\n|---|---|---|---|---|---|---|---|---|---|";

    /// <summary>One box: the notebook's own choice, and the best plan with one wire at a time.</summary>
    public sealed record Pair(int Ends, NamingOutcome Own, NamingOutcome OneByOne);

    public static IReadOnlyList<Pair> Block(ulong first, int count, int ends, PracticeBook book) =>
        [.. Enumerable.Range(0, count).Select(i => One(first + (ulong)i, ends, book))];

    public static Pair One(ulong seed, int ends, PracticeBook book)
    {
        var scene = NamingScene.Make(seed, ends, 2 * ends);
        var own = NamingTrial.Run(scene, new NamingCrew(), book);
        return new Pair(ends, own, NamingTrial.Run(scene, new NamingCrew(Plan: "one wire at a time"), book));
    }

    /// <summary>Who names, and what is at hand: in words, and as the notebook is asked.</summary>
    public static IReadOnlyList<(string Who, NamingCrew Crew)> Crews { get; } =
    [
        ("one person", new NamingCrew(1)), ("one with a portable source", new NamingCrew(1, Source: true)), ("one who switches stations from the box", new NamingCrew(1, Remote: true)), ("two people", new NamingCrew(2)),
        ("two with a portable source", new NamingCrew(2, Source: true)),
    ];

    public static string CrewHeading => "| who | ends | boxes | minutes | rounds | named | wrong names |\n|---|---|---|---|---|---|---|";

    /// <summary>The same boxes named by one crew.</summary>
    public static string CrewRow(string who, NamingCrew crew, ulong first, int count, int ends, PracticeBook book)
    {
        var all = Enumerable.Range(0, count).Select(i => NamingTrial.Run(NamingScene.Make(first + (ulong)i, ends, 2 * ends), crew, book)).ToList();
        return string.Create(CultureInfo.InvariantCulture, $"| {who} | {ends} | {count} | {all.Average(o => o.Minutes):0.0} | {all.Average(o => o.Rounds):0.0} | {all.Sum(o => o.Named)} of {count * ends} | {all.Sum(o => o.Wrong)} |");
    }

    public static string Row(IReadOnlyList<Pair> pairs) => string.Create(
        CultureInfo.InvariantCulture,
        $"| {pairs[0].Ends} | {pairs.Count} | {pairs.Average(p => p.Own.Minutes):0.0} | {pairs.Average(p => p.OneByOne.Minutes):0.0} | {pairs.Sum(p => p.Own.Minutes) / pairs.Sum(p => p.OneByOne.Minutes):0.000} | {pairs.Average(p => p.Own.Rounds):0.0} | {pairs.Sum(p => p.Own.Named)} of {pairs.Sum(p => p.Ends)} | {pairs.Sum(p => p.OneByOne.Named)} | {pairs.Sum(p => p.Own.Wrong)} | {CalibrationError(pairs):0.000} |");

    /// <summary>Expected calibration error of the likeliest names in ten bins of probability.</summary>
    public static double CalibrationError(IReadOnlyList<Pair> pairs)
    {
        var stated = pairs.SelectMany(p => p.Own.Stated).ToList();
        return stated.GroupBy(s => Math.Min(9, (int)(10 * s.Probability))).Sum(g => Math.Abs(g.Average(s => s.Probability) - g.Average(s => s.Right ? 1.0 : 0.0)) * g.Count()) / stated.Count;
    }
}
