using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Tests.FieldLog;

/// <summary>Short facts and short questions for tests.</summary>
internal static class Say
{
    public static ToldFact Told(string text) => new() { Who = "the owner", Text = text };

    public static StrikeFact Strike(Entry entry) => new() { Entry = entry.Id.ToString() };

    public static RestoreFact Restore(Entry entry) => new() { Entry = entry.Id.ToString() };

    public static string[] Texts(this IEnumerable<Entry> entries) => [.. entries.Select(e => e.Fact).OfType<ToldFact>().Select(t => t.Text)];

    public static Problem[] Errors(this LogDocument log) => [.. log.Problems.Where(p => p.Severity == Severity.Error)];

    public static Problem OnlyProblem(this LogDocument log) => Assert.Single(log.Problems);

    /// <summary>The problem has this place and severity, and its reason and remedy contain these words.</summary>
    public static void Is(this Problem problem, Severity severity, string place, string reason, string remedy)
    {
        Assert.Equal((severity, place), (problem.Severity, problem.Place));
        Assert.Contains(reason, problem.Reason, StringComparison.Ordinal);
        Assert.Contains(remedy, problem.Remedy, StringComparison.Ordinal);
    }
}
