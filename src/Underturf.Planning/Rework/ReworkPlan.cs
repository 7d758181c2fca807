using Underturf.Planning.Choosing;
using Underturf.Reasoning;
using Underturf.Reasoning.Translation;

namespace Underturf.Planning.Rework;

/// <summary>The way in: a notebook, a plan out. Nothing is kept: after each step that is noted the plan is made anew.</summary>
public static class ReworkPlan
{
    /// <param name="solver">How valves and conductors are matched; the managed method where nothing is said.</param>
    public static ReworkAnswer Of(Notebook notebook, IChoiceSolver? solver = null)
    {
        var site = new Site(notebook);
        var finder = new RemedyFinder(site);
        var needs = Need.All(site).ToList();
        var choice = Matching.Choose(site, [.. needs.Select(n => (n, finder.Find(n)))], solver ?? new BranchAndBound());
        var groups = Groups(site, choice).ToList();
        return new ReworkAnswer(
            Notebook.Engine,
            notebook.Book.Version,
            site.Numbers.Money,
            groups,
            [.. choice.Chosen.Select(c => Valve(site, c))],
            [.. site.Spares.Select(s => new SpareInHand(s.Wire, s.Name, s.Place is { } p ? site.View.Name(p) : null, s.IsProven, s.Missing, choice.Chosen.Where(c => c.Remedy.Wire == s.Wire || c.Remedy.Second == s.Wire).Select(c => NameOf(site, c.Need)).FirstOrDefault()))],
            [.. site.View.Controllers.Keys.Select(c => new FreeTerminals(site.View.Name(c), site.Free(c)))],
            new CostSheet([.. choice.Chosen.SelectMany(c => c.Remedy.Told.Cost.Lines)]),
            choice.Chosen.Sum(c => c.Remedy.Told.Expected),
            choice.Bound,
            [.. new StepWriter(site).Write(choice.Chosen)],
            [.. new NumberList(site, choice.Chosen).Rows()],
            [.. new NumberList(site, choice.Chosen).Changes()],
            [.. choice.Chosen.Where(c => c.Remedy.Told.Kind == RemedyKind.Keep).Select(c => Why(site, c))]);
    }

    internal static string NameOf(Site site, Need need) => need.Valve.Waters is { Length: > 0 } waters ? waters
        : need.Valve.End.Valve is { } id ? site.View.Name(id)
        : $"valve {need.Number} of station {site.View.StationNumber(need.Station)}";

    private static IEnumerable<SharedGroup> Groups(Site site, Matched choice)
    {
        var foresight = new Foresight(site.Notebook);
        foreach (var shared in site.Shared)
        {
            var moved = choice.Chosen.Where(c => c.Need.Station == shared.Station && c.Remedy.Told.Kind != RemedyKind.Keep).Select(c => c.Need.Valve.End).ToList();
            List<ValveEnd> staying = [.. shared.Valves.Select(v => v.End).Where(e => !moved.Contains(e))];
            var water = site.Notebook.FlowOfParts(shared.Station, shared.Valves.Count, shared.Valves.Count, 1);
            yield return new SharedGroup(
                shared.Station,
                site.View.StationNumber(shared.Station),
                shared.Grade,
                shared.Probability,
                shared.Valves.Count,
                shared.CountProbability,
                shared.Valves.Count - 1,
                foresight.Of(Wires.Only(shared.Path, [.. shared.Path.Valves])),
                foresight.Of(Wires.Only(shared.Path, staying)),
                site.View.Stations[shared.Station].Minutes)
            {
                WaterBefore = water[0].Succeeded ? water[0].Value : null,
                WaterAfter = water[1].Succeeded ? water[1].Value : null,
            };
        }
    }

    private static ValveRework Valve(Site site, Chosen chosen)
    {
        var (need, ranked) = (chosen.Need, chosen.All.OrderBy(r => !r.Told.IsPossible).ThenBy(r => r.Told.Expected).Select(r => r.Told).ToList());
        return new ValveRework(
            need.Station,
            site.View.StationNumber(need.Station),
            NameOf(site, need),
            need.Valve.End.Valve,
            need.Valve.Waters,
            need.Joint,
            site.View.Name(need.Joint),
            need.Valve.JointProbability,
            ranked,
            ranked.IndexOf(chosen.Remedy.Told),
            need.Controller,
            chosen.Terminal);
    }

    private static string Why(Site site, Chosen kept)
    {
        var name = $"{NameOf(site, kept.Need)} stays with station {site.View.StationNumber(kept.Need.Station)}";
        var could = kept.All.Where(r => r.Told.IsPossible && r.Told.Kind != RemedyKind.Keep).ToList();
        if (could.Count == 0)
        {
            return $"{name}: {kept.All.Where(r => r.Told.Why is not null && r.Told.Kind is not (RemedyKind.Keep or RemedyKind.TwoWire)).Select(r => r.Told.Why).FirstOrDefault() ?? "nothing else is there"}";
        }

        return could.All(r => r.TakesTerminal) && site.Free(kept.Need.Controller).Count < could.Count(r => r.TakesTerminal)
            ? $"{name}: no terminal is free for it"
            : could.Min(r => r.Told.Expected) is var least && least >= kept.Remedy.Told.Expected
            ? $"{name}: anything else is expected to cost {least} {site.Numbers.Money}, more than leaving it"
            : $"{name}: the conductor it could have does more elsewhere";
    }
}
