using System.Globalization;
using System.Text.RegularExpressions;
using Underturf.Property.Practice;
using Underturf.Simulation;

namespace Underturf.Tests.Simulation;

/// <summary>The reporting seeds are for reporting only; nothing is tuned on them.</summary>
public sealed partial class CoverageTests(ITestOutputHelper output)
{
    private static readonly string Report = Repository.Read("docs/reports/worlds.md");

    [Fact]
    public void The_true_class_is_given_in_at_least_95_of_100_properties_of_the_report()
    {
        var all = All().Match(Report);
        Assert.True(Number(all, "given") >= 0.95 * Number(all, "count"), all.Value);
    }

    [Fact]
    public void The_report_says_what_a_rerun_of_its_first_properties_measures()
    {
        var results = new CoverageStudy.PropertyResult[CoverageStudy.Rerun];
        Parallel.For(0, results.Length, i => results[i] = CoverageStudy.One(CoverageStudy.FirstSeed + (ulong)i, PracticeBook.Default));
        output.WriteLine(CoverageStudy.Row(results));
        output.WriteLine(string.Join('\n', results.Where(r => r.Missed.Count > 0).Select(r => $"seed {r.Seed} missed {string.Join(", ", r.Missed)}")));
        Assert.Contains(CoverageStudy.Row(results), Report, StringComparison.Ordinal);
    }

    private static int Number(Match match, string group) => int.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex("All (?<count>[0-9]+): (?<given>[0-9]+) with every fault given", RegexOptions.ExplicitCapture)]
    private static partial Regex All();
}
