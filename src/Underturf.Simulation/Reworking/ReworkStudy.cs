using System.Globalization;
using Underturf.Planning.Choosing;
using Underturf.Property.Practice;

namespace Underturf.Simulation;

/// <summary>Many made-up properties, reworked to the end.</summary>
public static class ReworkStudy
{
    public static string Heading => "| properties | valves to part | run alone | said to stay | neither | conductors no good, planned anew | checks not as said | readings within 2 spreads | spoiled stations | choices proven cheapest |\n|---|---|---|---|---|---|---|---|---|---|";

    public static IReadOnlyList<ReworkOutcome> Block(ulong first, int count, PracticeBook book, IChoiceSolver? solver = null) =>
        [.. Enumerable.Range(0, count).Select(i => ReworkTrial.Run(first + (ulong)i, book, solver))];

    public static string Row(IReadOnlyList<ReworkOutcome> outcomes)
    {
        var offs = outcomes.SelectMany(o => o.Offs).ToList();
        return string.Create(
            CultureInfo.InvariantCulture,
            $"| {outcomes.Count} | {outcomes.Sum(o => o.Valves)} | {outcomes.Sum(o => o.Alone)} | {outcomes.Sum(o => o.Kept)} | {outcomes.Sum(o => o.Unsaid)} | {outcomes.Sum(o => o.Replans)} | {outcomes.Sum(o => o.Failed)} | {offs.Count(z => Math.Abs(z) <= 2)} of {offs.Count} | {outcomes.Sum(o => o.Spoiled)} | {outcomes.Count(o => o.IsBest)} of {outcomes.Count} |");
    }
}
