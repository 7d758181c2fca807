using System.Globalization;
using Underturf.Planning.Choosing;
using Underturf.Planning.Solver;
using Underturf.Property.Practice;
using Underturf.Simulation;

namespace Underturf.Benchmarks;

/// <summary>Whether every valve runs alone once its plan was carried out, or was said to stay. Arguments: properties, first seed, "told" for each step.</summary>
internal static class Rework
{
    /// <summary>Reporting seeds begin here; seeds below were used for looking.</summary>
    public const ulong FirstSeed = 71_001;

    public static int Run(TextWriter output, IReadOnlyList<string> arguments)
    {
        var (count, first) = (arguments.Whole(0) ?? 300, (ulong)(arguments.Whole(1) ?? (int)FirstSeed));
        var both = new Both();
        var all = Enumerable.Range(0, count).AsParallel().AsOrdered().Select(i => ReworkTrial.Run(first + (ulong)i, PracticeBook.Default, both)).ToList();
        output.WriteLine(ReworkStudy.Heading);
        output.WriteLine(ReworkStudy.Row(all));
        output.WriteLine();
        foreach (var (what, share) in new (string, Func<IReadOnlyList<ReworkOutcome>, double>)[]
        {
            ("Valves that run alone or were said to stay", o => 1 - (o.Sum(x => x.Unsaid) / (double)o.Sum(x => x.Valves))),
            ("Valves that run alone", o => o.Sum(x => x.Alone) / (double)o.Sum(x => x.Valves)),
            ("Readings of checks within two spreads of what was said", o => o.SelectMany(x => x.Offs).Select(z => Math.Abs(z) <= 2 ? 1.0 : 0.0).DefaultIfEmpty(1).Average()),
        })
        {
            var (low, high) = Bootstrap.Interval(all, share, first);
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what}: {100 * share(all):0.0} %, 95 % interval {100 * low:0.0} to {100 * high:0.0} %."));
        }

        foreach (var why in all.SelectMany(o => o.Reasons).Select(Why).CountBy(w => w).OrderByDescending(w => w.Value))
        {
            output.WriteLine($"{why.Value} stay because: {why.Key}.");
        }

        output.WriteLine($"Choices by both methods: {both.Programs}, of which {both.Different} differ in cost.");
        foreach (var outcome in all.Where(o => arguments.Contains("told") || o.Unsaid > 0 || o.Spoiled > 0 || o.Failed > 0))
        {
            output.WriteLine($"Seed {outcome.Seed}: {outcome.Valves} valves, {outcome.Alone} alone, {outcome.Kept} stay, {outcome.Unsaid} neither, {outcome.Failed} checks not as said, {outcome.Spoiled} spoiled");
            outcome.Told.ToList().ForEach(t => output.WriteLine($"  {t}"));
        }

        return 0;
    }

    private static string Why(string reason) => reason.Contains("no terminal", StringComparison.Ordinal) ? "no terminal is free"
        : reason.Contains("more than leaving it", StringComparison.Ordinal) ? "anything else is expected to cost more"
        : reason.Contains("elsewhere", StringComparison.Ordinal) ? "the conductor or terminal does more elsewhere"
        : "too few volts";

    /// <summary>Every program by the managed method and by the native solver.</summary>
    private sealed class Both : IChoiceSolver
    {
        private readonly BranchAndBound own = new();
        private readonly ConstraintSolver native = new();
        private int programs;
        private int different;

        public int Programs => programs;

        public int Different => different;

        public ChoiceResult Solve(ChoiceProgram program)
        {
            var result = own.Solve(program);
            Interlocked.Increment(ref programs);
            if (result.Cost != native.Solve(program).Cost)
            {
                Interlocked.Increment(ref different);
            }

            return result;
        }
    }
}
