using Underturf.Planning.Repair;
using Underturf.Planning.Rework;
using Underturf.Reasoning;

namespace Underturf.Papers;

/// <summary>The papers of a property: findings to keep, a chart for the controller's door, a plan, a test sheet for each place whose conductor ends want names, where stations are or were shared the proposal and the numbers, and where something wants repair its estimate and step cards.</summary>
public static class PaperSet
{
    /// <summary>Papers that every property has.</summary>
    private const int Always = 3;

    /// <summary>Makes them all. Same log and same practice book, same bytes; whatever the log holds, it does not throw.</summary>
    public static IReadOnlyList<Paper> Make(Notebook notebook) => [.. Each(notebook, notebook.Answer())];

    /// <summary>The proposal, and terminals with numbers.</summary>
    private const int OfRework = 2;

    /// <summary>Estimate and step cards.</summary>
    private const int OfRepair = 1;

    /// <summary>How many there can be.</summary>
    public static int Count(Notebook notebook, Answers answers) =>
        Always + NamingPlaces.Of(notebook).Count + (HasRework(notebook) ? OfRework : 0) + (RepairPlan.All(notebook, answers).Items.Count > 0 ? OfRepair : 0);

    /// <summary>One after the other, each made when it is asked for, from what was worked out before.</summary>
    public static IEnumerable<Paper> Each(Notebook notebook, Answers answers)
    {
        var matter = new PaperMatter(notebook, answers);
        yield return new Paper("findings.pdf", $"Findings, {matter.PropertyName}", FindingsPaper.Make(matter));
        yield return new Paper("station-chart.pdf", $"Station chart, {matter.PropertyName}", StationChart.Make(matter));
        yield return new Paper("plan.svg", $"Plan, {matter.PropertyName}", PlanPaper.Make(matter));
        foreach (var (place, file) in NamingPlaces.Of(notebook))
        {
            // A place whose ends cannot be named yet has no sheet; "identify" says what it wants.
            if (notebook.Name(place, new NamingCrew()) is { Succeeded: true, Value: var naming })
            {
                yield return new Paper(file, $"Test sheet, {Shorten.Name(naming.Place, Styles.Body, NamingPaper.PlaceRoomPoints, 1)}, {matter.PropertyName}", NamingPaper.Make(matter, naming));
            }
        }

        if (HasRework(notebook))
        {
            var rework = ReworkPlan.Of(notebook);
            yield return new Paper("rework.pdf", $"Proposal: a station for every valve, {matter.PropertyName}", ReworkPaper.Make(matter, rework));
            yield return new Paper("numbers.pdf", $"Terminals and numbers, {matter.PropertyName}", NumbersPaper.Make(matter, rework));
        }

        if (RepairPlan.All(notebook, answers) is { Items.Count: > 0 } repairs)
        {
            yield return new Paper("repairs.pdf", $"Repairs: estimate and step cards, {matter.PropertyName}", RepairPaper.Make(matter, repairs));
        }
    }

    /// <summary>The step card of one valve or box.</summary>
    public static Paper Card(Notebook notebook, RepairAnswer plan) =>
        new("step-card.pdf", $"Step card, {plan.Name}", RepairPaper.Card(new PaperMatter(notebook, new Answers(plan.Engine, plan.Book, [], [])), plan));

    /// <summary>Where stations are shared, or a number has changed.</summary>
    private static bool HasRework(Notebook notebook) => notebook.History.Facts.Renumbered.Count > 0 || notebook.Shared().Count > 0;
}
