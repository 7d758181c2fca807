using System.Globalization;
using Underturf.Property.Practice;

namespace Underturf.Simulation.Trials;

/// <summary>Trials over many made-up properties, each property by every policy. Deterministic in the seeds.</summary>
public sealed class TrialStudy
{
    /// <summary>Reporting seeds begin here.</summary>
    public const ulong FirstSeed = 20_001;

    /// <summary>Seeds for tuning, and for counting the table of fixed limits, begin here.</summary>
    public const ulong FirstTuningSeed = 6_001;

    /// <summary>Properties that the table of fixed limits is counted over.</summary>
    public const int Counted = 400;

    /// <summary>Properties in one row of the report.</summary>
    public const int BlockSize = 5;

    private readonly PracticeBook book;
    private readonly WorldShape shape;
    private readonly LimitTable limits;

    public TrialStudy(PracticeBook book, WorldShape shape)
    {
        (this.book, this.shape) = (book, shape);
        limits = LimitTable.Count(Enumerable.Range(0, Counted).Select(i => WorldGenerator.Make(FirstTuningSeed + (ulong)i, book, WorldShape.Trial(null, null))), book);
    }

    public static string Heading => $"| seeds | {string.Join(" | ", Trial.PolicyNames)} | wrong repairs, notebook | right at the end | ideal observer |\n|{string.Concat(Enumerable.Repeat("---|", Trial.PolicyNames.Count + 4))}";

    /// <summary>Properties that the report tells one by one, and a test works again.</summary>
    public const int Told = 5;

    public static string ToldHeading => "| seed | faults | moves | walking, min | wrong repairs | right at the end | loss, min | ended |\n|---|---|---|---|---|---|---|---|";

    /// <summary>The report's row for one property by the notebook's own moves.</summary>
    public static string ToldRow(TrialResult trial, PracticeBook book) => string.Create(
        CultureInfo.InvariantCulture,
        $"| {trial.Seed} | {string.Join(", ", trial.Truth.Select(f => f.Fault))} | {trial.Moves} | {trial.WalkMinutes:F1} | {trial.WrongRepairs} | {trial.Statements.Count(s => s.AtStart && s.Right)} of {trial.Statements.Count(s => s.AtStart)} | {trial.LossMinutes(book):F1} | {Ended(trial.End)} |");

    private static string Ended(TrialEnd end) => end switch
    {
        TrialEnd.NothingOpen => "nothing open",
        TrialEnd.NothingWorthwhile => "nothing worth its minutes",
        _ => "at the limit",
    };

    /// <summary>One property by several policies: the same truth and the same first visit for all.</summary>
    public static IReadOnlyList<TrialResult> One(ulong seed, WorldShape shape, PracticeBook book, IReadOnlyList<string> policies, LimitTable? limits = null)
    {
        var world = WorldGenerator.Make(seed, book, shape);
        return [.. policies.Select(p => Trial.Run(world, seed, p, shape, limits))];
    }

    /// <summary>One property by all policies and the ideal observer.</summary>
    public PropertyTrial One(ulong seed) => new(seed, One(seed, shape, book, Trial.PolicyNames, limits), IdealObserver.Ask(WorldGenerator.Make(seed, book, shape), shape));

    /// <summary>One property by the notebook's own moves alone.</summary>
    public PropertyTrial Own(ulong seed) => new(seed, One(seed, shape, book, [Trial.PolicyNames[0]], limits), []);

    public static string SaidHeading => "| seed | faults | about | said | stated | given to what is right | right |\n|---|---|---|---|---|---|---|";

    /// <summary>A row for each thing that the notebook stated of one property.</summary>
    public static IEnumerable<string> SaidRows(TrialResult trial) => trial.Statements.Where(s => s.Stated is not null).Select(s => string.Create(
        CultureInfo.InvariantCulture,
        $"| {trial.Seed} | {string.Join(", ", trial.Truth.Select(f => f.Fault))} | {string.Join(", ", s.Stations)} | {s.Top} | {s.Stated!.Top:F3} | {s.Stated.Truth:F3} | {(s.Right ? "yes" : "no")} |"));

    /// <summary>The report's row for one block: mean loss in minutes by each policy.</summary>
    public string Row(IReadOnlyList<PropertyTrial> block) => string.Create(
        CultureInfo.InvariantCulture,
        $"| {block[0].Seed} to {block[^1].Seed} | {string.Join(" | ", Trial.PolicyNames.Select((_, i) => TrialScores.MeanLoss(block, i, book).ToString("F1", CultureInfo.InvariantCulture)))} | {block.Sum(p => p.Own.WrongRepairs)} | {TrialScores.AtStart(block).Count(s => s.Right)} of {TrialScores.AtStart(block).Count()} | {block.Sum(p => p.Ideal.Count(s => s.Right))} of {block.Sum(p => p.Ideal.Count)} |");
}
