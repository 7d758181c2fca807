using Underturf.Reasoning;

namespace Underturf.Papers;

/// <summary>The papers of a property: findings to keep, a chart for the controller's door, a plan.</summary>
public static class PaperSet
{
    /// <summary>Makes them all. Same log and same practice book, same bytes; whatever the log holds, it does not throw.</summary>
    public static IReadOnlyList<Paper> Make(Notebook notebook)
    {
        var matter = new PaperMatter(notebook);
        return
        [
            new Paper("findings.pdf", $"Findings, {matter.PropertyName}", FindingsPaper.Make(matter)),
            new Paper("station-chart.pdf", $"Station chart, {matter.PropertyName}", StationChart.Make(matter)),
            new Paper("plan.svg", $"Plan, {matter.PropertyName}", PlanPaper.Make(matter)),
        ];
    }
}
