using Underturf.Property.Practice;
using Underturf.Simulation;

namespace Underturf.Tests.Simulation;

/// <summary>A small rerun of what docs/reports/rework.md reports.</summary>
public sealed class ReworkStudyTests
{
    [Fact]
    public void Every_valve_runs_alone_or_was_said_to_stay_as_the_report_has_it()
    {
        var outcomes = ReworkStudy.Block(71_001, 8, PracticeBook.Default);
        Assert.All(outcomes, o => Assert.Equal((0, 0), (o.Unsaid, o.Spoiled)));
        Assert.Contains(ReworkStudy.Row(outcomes), Repository.Read("docs/reports/rework.md"), StringComparison.Ordinal);
    }
}
