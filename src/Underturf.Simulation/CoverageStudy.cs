using System.Globalization;
using Underturf.Property.Practice;
using Underturf.Reasoning;

namespace Underturf.Simulation;

/// <summary>
/// Asks over many made-up properties whether the true fault is among the explanations, and whether the stated probabilities hold.
/// Deterministic in the seeds.
/// </summary>
public static class CoverageStudy
{
    /// <summary>An explanation counts as given when it has more than this probability.</summary>
    public const double Given = 0.05;

    /// <summary>Reporting seeds begin here; faults of the program were looked for on seeds below 5000 only.</summary>
    public const ulong FirstSeed = 10_001;

    /// <summary>Properties in one row of the report.</summary>
    public const int BlockSize = 200;

    /// <summary>Properties of the report's first row, which the tests measure again.</summary>
    public const int Rerun = 40;

    public static string Heading => "| seeds | properties | every fault given | faults | questions | calibration error |\n|---|---|---|---|---|---|";

    /// <summary>The report's row for one block.</summary>
    public static string Row(IReadOnlyList<PropertyResult> results) => string.Create(
        CultureInfo.InvariantCulture,
        $"| {results[0].Seed} to {results[^1].Seed} | {results.Count} | {results.Count(r => r.Missed.Count == 0)} | {results.Sum(r => r.Faults.Count)} | {results.Sum(r => r.Stated.Count)} | {ExpectedCalibrationError(results):F3} |");

    /// <summary>The outcome of one property.</summary>
    /// <param name="Missed">Ids of true faults that no explanation of their station named with more than <see cref="Given"/>.</param>
    /// <param name="Stated">For each question the probability of its leading explanation, and whether that was the truth.</param>
    public sealed record PropertyResult(ulong Seed, IReadOnlyList<string> Faults, IReadOnlyList<string> Missed, IReadOnlyList<(double Probability, bool Right)> Stated);

    public static IReadOnlyList<PropertyResult> Run(ulong firstSeed, int count, PracticeBook book) =>
        [.. Enumerable.Range(0, count).Select(i => One(firstSeed + (ulong)i, book))];

    public static PropertyResult One(ulong seed, PracticeBook book)
    {
        var world = WorldGenerator.Make(seed, book);
        var questions = Notebook.Open(world.Log, book).Answer().Questions;
        var missed = world.Faults.Where(f => !questions.Any(q => Names(q, f, Given))).Select(f => f.Fault).ToList();
        var stated = questions
            .Where(q => q.Explanations[0].Fault is not ("as-built" or "other"))
            .Select(q => (q.Explanations[0].Probability, IsRight(q, world.Faults)))
            .ToList();
        return new PropertyResult(seed, [.. world.Faults.Select(f => f.Fault)], missed, stated);
    }

    /// <summary>Mean difference between stated probability and share right, over ten bins, weighted by their size.</summary>
    public static double ExpectedCalibrationError(IEnumerable<PropertyResult> results)
    {
        var all = results.SelectMany(r => r.Stated).ToList();
        return all.GroupBy(s => Math.Min(9, (int)(s.Probability * 10)))
            .Sum(g => Math.Abs(g.Average(s => s.Probability) - g.Average(s => s.Right ? 1.0 : 0)) * g.Count() / all.Count);
    }

    /// <summary>Where no move tells the leading explanation from others, any of them may be the truth, nothing broken too.</summary>
    private static bool IsRight(OpenQuestion question, IReadOnlyList<TrueFault> faults)
    {
        var told = faults.Where(f => IsTold(question, f)).Select(f => f.Fault).ToList();
        return question.Explanations[0].Alike.Select(a => a.Fault).Prepend(question.Explanations[0].Fault).Any(e => told.Contains(e) || (e == "as-built" && told.Count == 0));
    }

    private static bool Names(OpenQuestion question, TrueFault fault, double least) =>
        IsTold(question, fault) && question.Explanations.Any(e => e.Names(fault.Fault) && e.Probability > least);

    /// <summary>The question is about the fault's station; a shared fault may show in any.</summary>
    private static bool IsTold(OpenQuestion question, TrueFault fault) =>
        fault.Station is null || question.Stations.Contains(Label(fault.Station)) || (fault.Other is { } other && question.Stations.Contains(Label(other)));

    private static string Label(string station) => int.Parse(station.AsSpan(1), NumberStyles.None, CultureInfo.InvariantCulture).ToString(CultureInfo.InvariantCulture);
}
