using Underturf.Reasoning;

namespace Underturf.Papers;

/// <summary>The papers of a property: findings to keep, a chart for the controller's door, a plan.</summary>
public static class PaperSet
{
    /// <summary>How many there are.</summary>
    public const int Count = 3;

    /// <summary>Makes them all. Same log and same practice book, same bytes; whatever the log holds, it does not throw.</summary>
    public static IReadOnlyList<Paper> Make(Notebook notebook) => [.. Each(notebook, notebook.Answer())];

    /// <summary>One after the other, each made when it is asked for, from what was worked out before.</summary>
    public static IEnumerable<Paper> Each(Notebook notebook, Answers answers)
    {
        var matter = new PaperMatter(notebook, answers);
        yield return new Paper("findings.pdf", $"Findings, {matter.PropertyName}", FindingsPaper.Make(matter));
        yield return new Paper("station-chart.pdf", $"Station chart, {matter.PropertyName}", StationChart.Make(matter));
        yield return new Paper("plan.svg", $"Plan, {matter.PropertyName}", PlanPaper.Make(matter));
    }
}
