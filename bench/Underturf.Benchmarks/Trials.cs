using System.Globalization;
using Underturf.Property.Practice;
using Underturf.Simulation;
using Underturf.Simulation.Trials;

namespace Underturf.Benchmarks;

/// <summary>
/// Do the notebook's moves cost less than the rules of thumb, and does what it says when it is acted on hold? Over made-up properties, each worked
/// by every policy.
/// </summary>
internal static class Trials
{
    private const int Properties = 100;
    private const ulong IntervalSeed = 20_000;

    /// <param name="arguments">How many properties; how many stations, 0 for small ones; the first seed.</param>
    public static int Run(TextWriter output, IReadOnlyList<string> arguments)
    {
        var ((count, first, study), book) = (Asked(arguments), PracticeBook.Default);
        var all = new List<PropertyTrial>();
        output.WriteLine(TrialStudy.Heading);
        for (var done = 0; done < count; done += TrialStudy.BlockSize)
        {
            var block = new PropertyTrial[Math.Min(TrialStudy.BlockSize, count - done)];
            Parallel.For(0, block.Length, i => block[i] = study.One(first + (ulong)(done + i)));
            output.WriteLine(study.Row(block));
            output.Flush();
            all.AddRange(block);
        }

        output.WriteLine();
        output.WriteLine(TrialStudy.ToldHeading);
        foreach (var property in all.Take(TrialStudy.Told))
        {
            output.WriteLine(TrialStudy.ToldRow(property.Own, book));
        }

        output.WriteLine();
        Costs(output, all, book);
        Words(output, all);
        return 0;
    }

    /// <summary>What the notebook says when it is acted on, without the rules of thumb and the ideal observer: a seventh of the time.</summary>
    /// <param name="arguments">How many properties; how many stations, 0 for small ones; the first seed.</param>
    public static int Said(TextWriter output, IReadOnlyList<string> arguments)
    {
        var (count, first, study) = Asked(arguments);
        var all = new PropertyTrial[count];
        output.WriteLine(TrialStudy.SaidHeading);
        for (var i = 0; i < count; i++)
        {
            all[i] = study.Own(first + (ulong)i);
            foreach (var row in TrialStudy.SaidRows(all[i].Own))
            {
                output.WriteLine(row);
            }

            output.Flush();
        }

        Words(output, [.. all]);
        return 0;
    }

    private static (int Count, ulong First, TrialStudy Study) Asked(IReadOnlyList<string> arguments) => (
        arguments.Whole(0) ?? Properties,
        (ulong)(arguments.Whole(2) ?? (int)TrialStudy.FirstSeed),
        new TrialStudy(PracticeBook.Default, WorldShape.Trial(arguments.Whole(1) is { } stations and > 0 ? stations : null, null)));

    private static void Costs(TextWriter output, List<PropertyTrial> all, PracticeBook book)
    {
        output.WriteLine("| chosen by | loss, min | right repairs and proofs | moves | walking | wrong repairs and faults left | moves | wrong repairs | faults left | ended |");
        output.WriteLine("|---|---|---|---|---|---|---|---|---|---|");
        for (var p = 0; p < Trial.PolicyNames.Count; p++)
        {
            output.WriteLine(Row(Trial.PolicyNames[p], [.. all.Select(a => a.ByPolicy[p])], book));
        }

        var best = TrialScores.BestRule(all, book);
        output.WriteLine();
        output.WriteLine($"Best rule: {Trial.PolicyNames[best]}.");
        Say(output, "Loss, notebook / best rule", all, a => TrialScores.MeanLoss(a, 0, book) / TrialScores.MeanLoss(a, best, book));
        Say(output, "Searching, notebook / best rule", all, a => TrialScores.MeanSearch(a, 0, book) / TrialScores.MeanSearch(a, best, book));
        Say(output, "Loss, notebook less best rule, min", all, a => TrialScores.MeanLoss(a, 0, book) - TrialScores.MeanLoss(a, best, book));
        Say(output, "Wrong repairs a property, notebook less best rule", all, a => a.Average(p => p.Own.WrongRepairs) - a.Average(p => p.ByPolicy[best].WrongRepairs));
    }

    /// <summary>The loss in minutes, what it is made of, and how often.</summary>
    private static string Row(string name, List<TrialResult> trials, PracticeBook book)
    {
        double Minutes(params TrialDeed[] deeds) => trials.Average(t => t.Steps.Where(s => deeds.Contains(s.Deed)).Sum(s => s.Minutes));
        var missed = Minutes(TrialDeed.WrongRepair) + trials.Average(t => book.Loss.WrongRepairMinutes * (t.WrongRepairs + t.LeftOpen));
        return string.Create(
            CultureInfo.InvariantCulture,
            $"| {name} | {trials.Average(t => t.LossMinutes(book)):F1} | {Minutes(TrialDeed.Repair, TrialDeed.Proof):F1} | {Minutes(TrialDeed.Move):F1} | {trials.Average(t => t.WalkMinutes):F1} | {missed:F1} | {trials.Average(t => t.Moves):F2} | {trials.Average(t => t.WrongRepairs):F3} | {trials.Sum(t => t.LeftOpen)} of {trials.Sum(t => t.AskedAbout)} | {trials.Count(t => t.End == TrialEnd.Limit)} at the limit, {trials.Count(t => t.End == TrialEnd.NothingWorthwhile)} with questions open |");
    }

    private static void Words(TextWriter output, List<PropertyTrial> all)
    {
        var own = all.SelectMany(p => p.Own.Statements).ToList();
        output.WriteLine();
        output.WriteLine($"Statements: {own.Count}, of them {own.Count(s => s.Stated is null)} of questions that closed by themselves.");
        Say(output, "Likeliest class right at the end of the moves", all, a => TrialScores.TopRight(TrialScores.AtStart(a)));
        if (all.Exists(p => p.Ideal.Count > 0))
        {
            Say(output, "The ideal observer's", all, a => TrialScores.TopRight(a.SelectMany(p => p.Ideal)));
            Say(output, "Ratio of the two", all, a => TrialScores.TopRight(TrialScores.AtStart(a)) / TrialScores.TopRight(a.SelectMany(p => p.Ideal)));
        }

        Say(output, "Likeliest class right, of all that was stated", all, a => TrialScores.TopRight(Stated(a)));
        Say(output, "Its mean probability", all, a => Stated(a).Average(s => s.Stated!.Top));
        Say(output, "Expected calibration error of the stated likeliest class", all, a => TrialScores.CalibrationError(Stated(a)));
        Say(output, "Log score, notebook", all, a => TrialScores.LogScore(Stated(a), s => s.Truth));
        Say(output, "Log score, rates of the practice book", all, a => TrialScores.LogScore(Stated(a), s => s.TruthByRates));
        Say(output, "Log score, table of fixed limits", all, a => TrialScores.LogScore(Stated(a), s => s.TruthByLimits));
    }

    private static IEnumerable<ScoredStatement> Stated(IEnumerable<PropertyTrial> all) => all.SelectMany(p => p.Own.Statements).Where(s => s.Stated is not null);

    private static void Say(TextWriter output, string what, List<PropertyTrial> all, Func<IReadOnlyList<PropertyTrial>, double> figure)
    {
        var (low, high) = Bootstrap.Interval(all, figure, IntervalSeed);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what}: {figure(all):F3}, 95 % interval {low:F3} to {high:F3}."));
    }
}
