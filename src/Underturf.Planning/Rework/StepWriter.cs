using Underturf.FieldLog;
using Underturf.Quantities;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Translation;

namespace Underturf.Planning.Rework;

/// <summary>Instructions in order: checks that are still open first, then station by station, each ended by its checks.</summary>
internal sealed class StepWriter(Site site)
{
    private readonly Foresight foresight = new(site.Notebook);

    public IEnumerable<ReworkStep> Write(IReadOnlyList<Chosen> chosen) =>
        [.. OpenChecks(), .. chosen.GroupBy(c => (c.Need.Station, c.Need.Joint)).SelectMany(g => Group([.. g]))];

    /// <summary>Stations of which a number moved and that have not been checked since.</summary>
    private IEnumerable<ReworkStep> OpenChecks()
    {
        var facts = site.Notebook.History.Facts;
        var touched = facts.Renumbered.SelectMany(r => new[] { (Id: site.View.Identity.Of(r.Fact.Station), r.Moment), (Id: site.View.Identity.Of(r.Fact.From), r.Moment) });
        foreach (var station in touched.GroupBy(t => t.Id).Where(g => site.View.Stations.ContainsKey(g.Key)))
        {
            var since = station.Max(s => s.Moment);
            var said = facts.ReworkSteps.LastOrDefault(s => s.Moment >= since && site.View.Identity.Of(s.Fact.Station) == station.Key && s.Fact.Did is ReworkDeeds.Passed or ReworkDeeds.Failed);
            if (said?.Fact.Did != ReworkDeeds.Passed)
            {
                var path = site.Notebook.Paths[station.Key];
                yield return Check(station.Key, site.View.StationNumber(station.Key), path, [.. site.View.Stations[station.Key].Waters.Take(path.Valves.Count)], said is not null);
            }
        }
    }

    private IEnumerable<ReworkStep> Group(IReadOnlyList<Chosen> together)
    {
        var need = together[0].Need;
        var moved = together.Where(c => c.Terminal is not null).ToList();
        if (moved.Count == 0)
        {
            yield return new ReworkStep($"leave {Names(together)} with station {Number(need)}, on purpose", site.View.Name(need.Joint), need.Joint, 0, string.Empty, null, ReworkNotes.Kept(need), []);
            yield break;
        }

        foreach (var (chosen, wire) in moved.SelectMany(ToProve))
        {
            yield return Prove(chosen.Need, wire);
        }

        foreach (var chosen in moved.Where(IsLandedApart))
        {
            yield return new ReworkStep($"put {WireName(chosen)} on terminal {chosen.Terminal}, tag it {ReworkNotes.NumberOf(site, chosen)}", site.View.Name(need.Controller), need.Controller, site.Numbers.LandMinutes, Caution("terminals exchanged"), null, ReworkNotes.Landed(chosen), []);
        }

        yield return Join(together, moved);
        foreach (var chosen in moved)
        {
            yield return Check(ReworkNotes.StationOf(site, chosen), ReworkNotes.NumberOf(site, chosen), chosen.Remedy.Told.After, chosen.Need.Valve.Waters is { } w ? [w] : [], false, need.Controller);
        }

        List<ValveEnd> staying = [.. need.Shared.Valves.Select(v => v.End).Where(e => !moved.Exists(m => m.Need.Valve.End == e))];
        yield return Check(need.Station, Number(need), Wires.Only(need.Shared.Path, staying), [.. need.Shared.Valves.Where(v => staying.Contains(v.End)).Select(v => v.Waters).OfType<string>()], false);
    }

    private IEnumerable<(Chosen Chosen, string Wire)> ToProve(Chosen chosen)
    {
        if (chosen.Remedy.Proves)
        {
            yield return (chosen, chosen.Remedy.Wire!);
        }

        if (chosen.Remedy.Second is { } second && !site.Tried(second, ReworkDeeds.Proven, chosen.Need.Joint))
        {
            yield return (chosen, second);
        }
    }

    /// <summary>A conductor that lies already is put on its terminal before anything is cut.</summary>
    private static bool IsLandedApart(Chosen chosen) => chosen.Remedy.Told.Kind is RemedyKind.Spare or RemedyKind.SpareAndCommon && chosen.Remedy.Terminal is null;

    /// <summary>What is left of its minutes when the steps before and the check after have theirs.</summary>
    private decimal JoinMinutes(Chosen chosen) => chosen.Remedy.Told.Cost.Minutes
        - RemedyFinder.CheckMinutes(site.Book)
        - (ToProve(chosen).Count() * (site.Numbers.FindMinutes + site.Numbers.ProveMinutes))
        - (IsLandedApart(chosen) ? site.Numbers.LandMinutes : 0);

    private ReworkStep Prove(Need need, string wire)
    {
        var ohms = 2 * Wires.To(need.Shared.Path, need.Joint).Sum(l => l.LengthMetres * Networks.Wiring.CopperWire.OhmsPerMetre(l.StationSize, site.Book.Wire.SoilKelvins));
        return new ReworkStep(
            $"find {WireName(wire)} at {site.View.Name(need.Joint)}, and prove it there before anything is cut",
            site.View.Name(need.Joint),
            need.Joint,
            site.Numbers.FindMinutes + site.Numbers.ProveMinutes,
            site.Book.Naming.Ways.FirstOrDefault(w => w.CarriesLoad)?.Caution ?? string.Empty,
            $"about {Say.Figure(ohms, Dimension.Resistance)} out and back, open to earth and to its neighbours, and a coil on it clicks",
            ReworkNotes.Proven(need, wire),
            ReworkNotes.Useless(site, need, wire, WireName(wire)));
    }

    private ReworkStep Join(IReadOnlyList<Chosen> together, IReadOnlyList<Chosen> moved)
    {
        var need = together[0].Need;
        var what = moved.Select(c => c.Remedy.Told.Kind switch
        {
            RemedyKind.OwnConductor => $"move the conductor of {Name(c)} to terminal {c.Terminal}",
            RemedyKind.Pull => $"lay {c.Remedy.Gauge} from terminal {c.Terminal} and join {Name(c)} to it",
            RemedyKind.SpareAndCommon => $"part {Name(c)} and join it to {WireName(c)}; join {site.Spares.First(s => s.Wire == c.Remedy.Second).Name} to the common at both ends",
            _ => $"part {Name(c)} from the conductor of station {Number(need)} and join it to {WireName(c)}",
        });
        return new ReworkStep(string.Join("; ", what), site.View.Name(need.Joint), need.Joint, moved.Sum(JoinMinutes), Caution(need.Shared.Repair), null, ReworkNotes.Joined(site, together), []);
    }

    private ReworkStep Check(string station, string number, StationPath path, IReadOnlyList<string> waters, bool again) => Check(station, number, foresight.Of(path), waters, again, path.Controller);

    /// <summary>"station 44 alone: one place waters, 0.20 ± 0.01 A, 31.0 ± 1.5 ohm".</summary>
    private ReworkStep Check(string station, string number, Foreseen? after, IReadOnlyList<string> waters, bool again, string controller)
    {
        var expect = after is null ? "it waters" : $"{Places(after.Places, waters)}, {ReworkWords.Electrical(after)}";
        var say = again ? $"station {number} did not do what was said: find out why, mend it, then check it alone again" : $"check station {number} alone";
        return new ReworkStep(say, site.View.Name(controller), controller, RemedyFinder.CheckMinutes(site.Book), site.Book.Run.Caution, $"station {number} alone: {expect}", ReworkNotes.Passed(site, station, waters), ReworkNotes.Failed(site, station, expect)) { Station = station, Foreseen = after };
    }

    private static string Places(int places, IReadOnlyList<string> waters) =>
        $"{(places == 1 ? "one place waters" : $"{places} places water")}{(waters.Count > 0 ? $" ({string.Join(", ", waters)})" : string.Empty)}";

    private string Caution(string repair) => site.Book.Repair(repair)?.Caution ?? string.Empty;

    private string Number(Need need) => site.View.StationNumber(need.Station);

    private string Name(Chosen chosen) => ReworkPlan.NameOf(site, chosen.Need);

    private string Names(IEnumerable<Chosen> all) => string.Join(", ", all.Select(Name));

    private string WireName(Chosen chosen) => WireName(chosen.Remedy.Wire!);

    private string WireName(string wire) => site.Spares.FirstOrDefault(s => s.Wire == wire)?.Name ?? $"the conductor of station {site.View.StationNumber(wire)}";
}
