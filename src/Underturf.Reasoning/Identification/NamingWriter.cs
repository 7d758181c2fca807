using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Moves;

namespace Underturf.Reasoning.Identification;

/// <summary>Says which wire is which at one place, and what to touch next.</summary>
internal sealed class NamingWriter(Case matter)
{
    /// <summary>Wires less likely than this are not listed for an end.</summary>
    private const double Listed = 0.02;

    private const int MostListed = 4;

    /// <summary>An end that is the far part of a station's conductor with less than this chance is not said to be.</summary>
    private const double FarListed = 0.1;

    /// <summary>The same draws for every plan.</summary>
    private const ulong Seed = 20260612;

    private readonly NamingPractice book = matter.Book.Naming;
    private readonly Walks walks = new(matter);

    /// <param name="place">Id or label.</param>
    /// <param name="crew">How many people there are and whether one can switch from the place; the practice book's where nothing is said.</param>
    public Outcome<NamingAnswer> Write(string place, NamingCrew crew)
    {
        var found = walks.Find(place);
        if (!found.Succeeded)
        {
            return found.Problem!;
        }

        var bundle = new BundleFinder(matter).Of(found.Value);
        var name = matter.View.Name(found.Value);
        if (bundle.Ends.Count == 0)
        {
            return new Problem(name, "has no conductor ends noted", "Note each end that is seen there: {\"kind\":\"end\",\"id\":\"e1\",\"place\":\"…\",\"colour\":\"red\"}");
        }

        if (bundle.Wires.Count == 0)
        {
            return new Problem(name, "has ends, but no controller is noted that their wires could come from", "Note the controller and its stations");
        }

        return Write(bundle, name, Crew(bundle, crew), crew.Plan);
    }

    private Outcome<NamingAnswer> Write(Bundle bundle, string name, Crew crew, string? wanted)
    {
        var (touches, beforehand, belief, far) = Named.Of(matter, bundle);
        var ends = bundle.Ends.Index().Select(e => End(bundle, belief, far, e.Index)).ToList();
        var desk = new PlanDesk(matter, bundle, belief, crew, touches);
        var isNamed = ends.All(e => e.Named);
        var plans = isNamed ? [] : desk.Rank(Seed, wanted);
        if (!isNamed && plans.Count == 0)
        {
            return new Problem($"plan {Problem.Quote(wanted ?? string.Empty)}", "is none that can be followed here", $"Name one of: {string.Join("; ", desk.Names)}");
        }

        var followed = plans.Count > 0 ? plans[0] : null;
        var next = followed is null ? null : desk.Next(followed.Plan);
        return new NamingAnswer(
            Notebook.Engine,
            matter.Book.Version,
            name,
            ends,
            next is null ? null : new RoundWriter(bundle, desk).Write(next),
            [.. plans.Select(p => new NamingPlan(PlanDesk.Name(p.Plan), p.Minutes, p.IsBrokenOff, p.Rounds, p.Unnamed, p.Loss))],
            next is null ? null : new SheetWriter(bundle, belief, desk).Write(next),
            [.. new DoubtFinder(bundle, belief, beforehand).Find(touches)],
            [.. Wires(bundle, belief, ends)],
            [.. new SpareFinder(matter, bundle, belief).Find(touches)],
            belief.Shares.IsExact)
        {
            IsNotWorthIt = desk.IsNotWorthIt(plans, wanted),
            Onward = crew.Source ? [.. Onward(bundle, belief, far)] : [],
            MinutesAtStake = ends.Sum(e => book.Left(e.Shares[0].Probability)),
        };
    }

    private EndNaming End(Bundle bundle, NamingBelief belief, FarParts far, int row)
    {
        var joint = bundle.Ends[row];
        var shares = Enumerable.Range(0, bundle.Wires.Count + 1)
            .Select(w => w < bundle.Wires.Count ? new NameShare(bundle.Wires[w].Id, bundle.Wires[w].Name, belief.Shares[row, w]) : new NameShare(null, "no wire of a controller", belief.Shares.Alone(row)))
            .OrderByDescending(s => s.Probability)
            .ToList();
        string?[] looks = [joint.Ends[0].Colour, joint.Ends[0].Gauge is { } gauge ? WireSize.Say(gauge, matter.History.Facts.UsesUsUnits) : null];
        return new EndNaming(
            [.. joint.Ends.Select(e => e.Id)],
            string.Join(" and ", joint.Ends.Select(e => e.Name)),
            string.Join(", ", looks.OfType<string>()),
            shares[0].Probability >= book.NameAt,
            [.. shares.Where((s, i) => i == 0 || s.Probability >= Listed).Take(MostListed)])
        {
            FarPartOf = [.. bundle.Wires.Select((w, at) => new NameShare(w.Id, w.Name, belief.Shares.Alone(row) * far.Share(row, at))).Where(s => s.Probability >= FarListed).OrderByDescending(s => s.Probability).Take(MostListed)],
        };
    }

    /// <summary>Ends that likelier than not come from no controller and were not listened for yet.</summary>
    private IEnumerable<OnwardTest> Onward(Bundle bundle, NamingBelief belief, FarParts far)
    {
        var open = bundle.Wires.Index().Where(w => w.Item.Role == WireRole.Station && Enumerable.Range(0, bundle.Ends.Count).All(e => belief.Shares[e, w.Index] < book.NameAt)).ToList();
        foreach (var way in book.Ways.Where(w => w.Shows == NamingSign.Onward && w.Owned))
        {
            foreach (var e in Enumerable.Range(0, bundle.Ends.Count).Where(e => belief.Shares.Alone(e) > 0.5 && open.Count > 0 && !far.WasHeard(e)))
            {
                var end = bundle.Ends[e].Ends[0];
                yield return new OnwardTest(way.Name, end.Id, end.Name, way.Say, way.Caution, [.. open.Select(w => new NameShare(w.Item.Id, w.Item.Name, belief.Shares.Alone(e) * far.Share(e, w.Index))).OrderByDescending(s => s.Probability)], RoundWriter.Said(bundle, open.Select(w => w.Index), turned: false));
            }
        }
    }

    /// <summary>What is at this place, and what is likelier here than not.</summary>
    private static IEnumerable<WireFound> Wires(Bundle bundle, NamingBelief belief, IReadOnlyList<EndNaming> ends)
    {
        for (var w = 0; w < bundle.Wires.Count; w++)
        {
            var wire = bundle.Wires[w];
            var here = Enumerable.Range(0, bundle.Ends.Count).Sum(e => belief.Shares[e, w]);
            var end = ends.FirstOrDefault(e => e.Named && e.Shares[0].Wire == wire.Id);
            if (here >= 0.5)
            {
                yield return new WireFound(wire.Id, wire.Name, end?.Name, Math.Min(1, here));
            }
        }
    }

    private Crew Crew(Bundle bundle, NamingCrew crew)
    {
        var apart = matter.View.Controllers.ContainsKey(bundle.Place);
        var walk = apart
            ? bundle.Wires.SelectMany(w => matter.View.ValvesOf(w.Id)).Select(v => walks.Minutes(bundle.Place, v.Id)).DefaultIfEmpty(walks.Minutes(bundle.Place, string.Empty)).Average()
            : bundle.Wires.Select(w => w.Controller).Distinct().Min(c => walks.Minutes(c, bundle.Place));
        return new Crew(walk, crew.People ?? book.People, crew.Remote ?? book.Remote, apart, crew.Source);
    }
}
