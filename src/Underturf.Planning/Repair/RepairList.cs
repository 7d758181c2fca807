using Underturf.FieldLog;
using Underturf.Planning.Rework;
using Underturf.Reasoning;

namespace Underturf.Planning.Repair;

/// <summary>All that belief says wants repair, and what is begun, what saves most loss for its minutes first.</summary>
internal sealed class RepairList(RepairSite site)
{
    public IReadOnlyList<RepairItem> Find()
    {
        var things = site.View.Valves.Keys.Select(v => (Id: v, Wrong: new WrongFinder(site.View, site.Book, site.Answers).OfValve(v), Begun: RepairRound.Of(site.Notebook.History, v).IsBegun))
            .Concat(site.View.Boxes.Keys.Select(b => (Id: b, Wrong: new WrongFinder(site.View, site.Book, site.Answers).OfBox(b), Begun: IsBegun(b))))
            .Where(t => t.Begun || t.Wrong.Sum(w => w.Chance) >= site.Numbers.SureAt)
            .Select(t => Planned(t.Id, t.Wrong))
            .ToList();
        var answered = things.Select(t => t.Question).ToHashSet(StringComparer.Ordinal);
        return [.. things.Concat(site.Answers.Questions.Where(q => !answered.Contains(q.Id)).Select(Settled).OfType<RepairItem>()).OrderByDescending(i => i.Worth / Math.Max(1, (double)i.Minutes)).ThenBy(i => i.Thing, StringComparer.Ordinal)];
    }

    private bool IsBegun(string box) => Property.BoxCard.Of(site.Notebook.History, box) is { } card && Property.BoxRebuild.Of(site.Notebook.History, card) is { IsBegun: true, IsFinished: false };

    private RepairItem Planned(string id, IReadOnlyList<Wrong> wrong)
    {
        var plan = RepairPlan.Of(site, id);
        var first = wrong.MaxBy(w => w.Chance);
        var chance = Math.Min(1, wrong.Sum(w => w.Chance));
        return new RepairItem(id, plan.Name, plan.Choice.Say, first?.Question.Id ?? string.Empty, plan.Stations, chance, plan.Choice.Cost.Minutes, plan.Choice.SpreadMinutes, plan.Choice.Cost.Price, first is null ? 0 : Cured(plan, chance) * Loss(first.Question), plan);
    }

    /// <summary>Of a box the chance of a cure is that the fault lies there.</summary>
    private static double Cured(RepairAnswer plan, double chance) => plan.Kind == RepairThing.Box ? chance : chance * plan.Choice.Cures;

    /// <summary>Repairs of other things for which enough is known: the book has minutes for them.</summary>
    private RepairItem? Settled(OpenQuestion question)
    {
        var move = question.Moves.FirstOrDefault(m => m.IsRepair);
        if (!question.Settled || move?.Steps.Select(s => s.Asks).OfType<WorkFact>().FirstOrDefault() is not { } work || site.Book.Repair(work.Did) is not { } repair)
        {
            return null;
        }

        var minutes = CostLine.Exact(repair.Minutes);
        return new RepairItem(move.Place, move.Where, repair.Say, question.Id, question.Stations, question.Explanations[0].Probability, minutes, 0, CostLine.Of(repair.Say, minutes, site.HourPrice).Price, move.Worth, null) { LeavesOut = move.LeavesOut };
    }

    /// <summary>Minutes that it costs to leave it: of each station that does badly, and of water that runs away.</summary>
    private double Loss(OpenQuestion question)
    {
        var water = site.Book.Water;
        var lost = question.WaterLost is { } w ? (w.LeastCubicMetresADay + w.MostCubicMetresADay) / 2 * water.LeftDays * water.CubicMetreMinutes : 0;
        return (Math.Max(1, question.Stations.Count) * water.UncuredMinutes) + lost;
    }
}
