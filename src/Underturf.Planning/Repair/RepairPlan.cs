using Underturf.Property;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.Planning.Repair;

/// <summary>The way in: a notebook and a thing, a repair out. Nothing is kept: after each step that is noted the plan is made anew.</summary>
public static class RepairPlan
{
    private const int MinutesAnHour = 60;

    /// <param name="thing">Label or id of a valve or box, or of a station with one valve.</param>
    /// <param name="answers">What belief says, where it was worked out before.</param>
    public static Outcome<RepairAnswer> Of(Notebook notebook, string thing, Answers? answers = null)
    {
        var found = Find(notebook.History.Now, thing);
        return found.Succeeded ? Of(new RepairSite(notebook, answers ?? notebook.Answer()), found.Value) : found.Problem!;
    }

    /// <summary>All that belief says wants repair, what saves most loss for its minutes first.</summary>
    public static RepairListAnswer All(Notebook notebook, Answers? answers = null)
    {
        var site = new RepairSite(notebook, answers ?? notebook.Answer());
        return new RepairListAnswer(Notebook.Engine, notebook.Book.Version, notebook.Book.Rework.Money, new RepairList(site).Find());
    }

    internal static RepairAnswer Of(RepairSite site, string id) => site.View.Valves.ContainsKey(id) ? Valve(new ValveCase(site, id)) : Box(new BoxCase(site, id));

    private static RepairAnswer Valve(ValveCase valve)
    {
        var (site, options) = (valve.Site, new ValveOptions(valve).Find());
        return new RepairAnswer(
            Notebook.Engine,
            site.Book.Version,
            site.Book.Rework.Money,
            valve.Id,
            valve.Name,
            RepairThing.Valve,
            site.View.Name(valve.Place),
            valve.Place,
            valve.Station is { } s ? [site.View.StationNumber(s)] : [],
            valve.Chance,
            Causes(valve),
            options,
            [.. valve.Roots.Select(r => new RootZone(r.Ground.Id, r.Ground.Name, r.Ground.TrunkMetres, r.Ground.RadiusMetres, r.Metres, options[0].Air))],
            valve.Shut is { } shut ? new ShutNeed(valve.ShutWords, [.. shut.Shut.Select(x => x.Id)], [.. shut.Shut.Select(x => x.Name)], shut.Minutes, shut.Holds, shut.Dry) { MayGoDry = shut.MayGoDry, EveryStationDry = shut.EveryStationDry } : null,
            valve.Shut?.Hole,
            valve.Donors,
            [],
            Fit(valve),
            Estimated(site, options[0]),
            new RepairSteps(valve, options[0]).Write(),
            [.. Permissions.Of(valve, options[0])],
            [.. valve.Unknown()]);
    }

    private static BoxFit Fit(ValveCase valve)
    {
        var sizes = valve.Box is { } box ? ValveSizes.In(valve.Site, box) : [valve.Size];
        return new BoxFitter(valve.Site.Numbers).Fit(valve.Box is { } b ? valve.Site.View.Boxes[b].Size : null, sizes, 0, sizes.Count == 1 ? "one valve with room for a hand round its bonnet" : $"{sizes.Count} valves with room for a hand round each bonnet");
    }

    private static IReadOnlyList<CauseShare> Causes(ValveCase valve) =>
    [
        .. valve.Causes.All.Select(c => new CauseShare(c.Cause.Name, c.Cause.Say, c.Share, valve.Round.Seen.Contains(c.Cause.Name)))
            .Append(new CauseShare("elsewhere", "not in this valve", valve.Causes.Elsewhere, false))
            .Where(c => c.Share >= valve.Site.Book.Questions.ShowAbove || c.Seen)
            .OrderByDescending(c => c.Share),
    ];

    private static RepairAnswer Box(BoxCase box)
    {
        var (site, plan) = (box.Site, new BoxOptions(box));
        var options = plan.Find();
        return new RepairAnswer(
            Notebook.Engine,
            site.Book.Version,
            site.Book.Rework.Money,
            box.Id,
            box.Card.Name,
            RepairThing.Box,
            box.Card.Name,
            box.Id,
            [.. box.Stations.Select(site.View.StationNumber)],
            box.Chance,
            [],
            options,
            [],
            null,
            null,
            [],
            plan.Joints,
            plan.Fit,
            Estimated(site, options[0]),
            new BoxSteps(box, options[0]).Write(),
            [.. Permissions.Of(box, options[0])],
            [.. Unknown(box, plan)]);
    }

    private static IEnumerable<string> Unknown(BoxCase box, BoxOptions plan)
    {
        if (!box.IsNoted)
        {
            yield return box.Wired.Count > 0 ? "its conductor ends: joints are those that the cables make likely" : "its conductor ends, and no cable comes in: note what you see";
        }

        if (plan.Fit.IsEnough is null)
        {
            yield return "its size";
        }
    }

    private static Estimate Estimated(RepairSite site, RepairOption option)
    {
        var sheet = option.Cost;
        var contingency = decimal.Round(sheet.Price * site.Numbers.Contingency, 2, MidpointRounding.AwayFromZero);
        return new Estimate(decimal.Round(sheet.Minutes / MinutesAnHour, 2, MidpointRounding.AwayFromZero), sheet.Work, sheet.Parts, contingency, sheet.Price + contingency);
    }

    internal static Outcome<string> Find(PropertyView view, string name) =>
        new NameFinder(view).Find(view.Valves.Keys.Concat(view.Boxes.Keys), name, "thing", "is no valve or box that is noted");
}
