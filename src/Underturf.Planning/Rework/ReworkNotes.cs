using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Planning.Rework;

/// <summary>What is noted of each step: a step of the rework, and by their own kinds what it changed in the ground.</summary>
internal static class ReworkNotes
{
    public static IReadOnlyList<Fact> Proven(Need need, string wire) => [Step(need, ReworkDeeds.Proven, wire)];

    public static IReadOnlyList<Fact> Useless(Site site, Need need, string wire, string name) =>
    [
        Step(need, ReworkDeeds.Useless, wire),
        new QuestionOpenedFact { Id = $"rework-{wire}-{need.Joint}", Text = $"Why does {name} carry no coil at {site.View.Name(need.Joint)}?", About = wire },
    ];

    public static IReadOnlyList<Fact> Landed(Chosen chosen) =>
        [new ReworkStepFact { Station = chosen.Need.Station, Did = ReworkDeeds.Landed, Place = chosen.Need.Controller, Wire = chosen.Remedy.Wire, Terminal = chosen.Terminal }];

    public static IReadOnlyList<Fact> Kept(Need need) => [new ReworkStepFact { Station = need.Station, Did = ReworkDeeds.Kept, Place = need.Joint }];

    /// <summary>All valves of one station that part at one place, those that stay among them.</summary>
    public static IReadOnlyList<Fact> Joined(Site site, IReadOnlyList<Chosen> together)
    {
        var need = together[0].Need;
        var notes = new List<Fact> { new WorkFact { Did = need.Shared.Repair, Place = need.Joint, Target = need.Station } };
        notes.AddRange(together.Where(c => c.Terminal is not null).SelectMany(c => Moved(site, c)));
        foreach (var kept in together.Where(c => c.Terminal is null && c.Need.Valve.End.Valve is null))
        {
            notes.AddRange(Valve(site, kept.Need, kept.Need.Station));
        }

        if (together.Any(c => c.Terminal is null) && need.Shared.Valves[0] is { End.Valve: null } keeper)
        {
            notes.Add(new ValveFact { Id = $"valve-{need.Station}-1", Station = need.Station, Waters = keeper.Waters, Label = keeper.Waters, Box = site.View.Boxes.ContainsKey(keeper.End.Place) ? keeper.End.Place : null, Sure = Grade.Inferred });
        }

        notes.AddRange(Trunk(site, together));
        return together.Any(c => c.Terminal is null) ? [.. notes, .. Kept(need)] : notes;
    }

    public static IReadOnlyList<Fact> Passed(Site site, string station, IReadOnlyList<string> waters) =>
    [
        new TestFact { Station = station, Watered = waters, Behaved = "opens" },
        new ReworkStepFact { Station = station, Did = ReworkDeeds.Passed },
        .. site.Notebook.History.Facts.QuestionsOpened
            .Where(q => q.Fact.About is { } about && site.View.Identity.Of(about) == station && q.Fact.Id.StartsWith(QuestionOf(station), StringComparison.Ordinal))
            .Where(q => site.Notebook.History.Facts.QuestionsClosed.All(c => c.Fact.Id != q.Fact.Id))
            .Select(q => new QuestionClosedFact { Id = q.Fact.Id, Answer = "The station does alone what was said beforehand." }),
    ];

    public static IReadOnlyList<Fact> Failed(Site site, string station, string expected)
    {
        var before = site.Notebook.History.Facts.QuestionsOpened.Count(q => q.Fact.Id.StartsWith(QuestionOf(station), StringComparison.Ordinal));
        return
        [
            new ReworkStepFact { Station = station, Did = ReworkDeeds.Failed },
            new QuestionOpenedFact { Id = $"{QuestionOf(station)}{before + 1}", Text = $"Why does it not do what was said: {expected}?", About = station },
        ];
    }

    /// <summary>Id of the station that it will be.</summary>
    public static string StationOf(Site site, Chosen chosen)
    {
        if (chosen.Remedy.Told.Kind == RemedyKind.Reclaim)
        {
            return chosen.Remedy.Wire!;
        }

        var id = $"{chosen.Need.Controller}-{chosen.Terminal}";
        return site.View.Knows(id) ? $"{id}-{chosen.Need.Station}" : id;
    }

    /// <summary>Its number: the terminal's, or that of the station that is reclaimed.</summary>
    public static string NumberOf(Site site, Chosen chosen) =>
        chosen.Remedy.Told.Kind == RemedyKind.Reclaim ? site.View.StationNumber(chosen.Remedy.Wire!) : $"{chosen.Terminal}";

    private static string QuestionOf(string station) => $"rework-{station}-";

    private static ReworkStepFact Step(Need need, string did, string wire) => new() { Station = need.Station, Did = did, Place = need.Joint, Wire = wire };

    private static IEnumerable<Fact> Moved(Site site, Chosen chosen)
    {
        var (need, station) = (chosen.Need, StationOf(site, chosen));
        var old = site.View.Stations[need.Station];
        yield return new StationFact { Id = station, Controller = need.Controller, Terminal = chosen.Terminal!.Value, Label = NumberOf(site, chosen), Waters = Waters(need), Minutes = old.Minutes, Common = old.Common };
        foreach (var fact in Valve(site, need, station))
        {
            yield return fact;
        }

        if (chosen.Remedy.Wire is { } wire && site.View.Ends.TryGetValue(wire, out var end))
        {
            yield return new EndFact { Id = wire, Place = end.Place, Station = station, Sure = end.Sure };
        }

        yield return new RenumberedFact { Station = station, From = need.Station, Was = site.View.StationNumber(need.Station), Now = NumberOf(site, chosen), Valve = ValveOf(need, station), Waters = need.Valve.Waters };
    }

    private static IReadOnlyList<string> Waters(Need need) => need.Valve.Waters is { } place ? [place] : [];

    private static string ValveOf(Need need, string station) => need.Valve.End.Valve ?? $"valve-{need.Station}-{need.Number}-{station}";

    /// <summary>The valve on its station; where nobody has found it, with a run of unknown length from the joint.</summary>
    private static IEnumerable<Fact> Valve(Site site, Need need, string station)
    {
        var valve = ValveOf(need, station);
        yield return new ValveFact { Id = valve, Station = station, Waters = need.Valve.Waters, Label = need.Valve.End.Valve is null ? need.Valve.Waters : null, Sure = need.Valve.End.Valve is { } known ? site.View.Valves[known].Sure : Grade.Inferred };
        if (need.Valve.End.Valve is null)
        {
            var size = WireSize.FromAwg(site.Book.Wire.StationAwg);
            yield return new CableFact { Id = $"run-{valve}", From = need.Joint, To = valve, Carries = [station], Length = new Length(site.Book.Wire.BranchMetres), CommonGauge = size, Sure = Grade.Unknown };
        }
    }

    /// <summary>Noted cables on the way carry the new stations too; a new cable is noted by itself.</summary>
    private static IEnumerable<Fact> Trunk(Site site, IReadOnlyList<Chosen> together)
    {
        var (need, path) = (together[0].Need, together[0].Need.Shared.Path);
        var along = together.Where(c => c.Terminal is not null && c.Remedy.Told.Kind is not RemedyKind.Pull).ToList();
        var branches = along.SelectMany(c => c.Need.Valve.Branch.Select(b => (b.Id, Station: StationOf(site, c))));
        var trunk = along.SelectMany(c => Wires.To(path, c.Need.Joint).Select(l => (l.Id, Station: StationOf(site, c))));
        foreach (var leg in trunk.Concat(branches).GroupBy(l => l.Id))
        {
            if (site.View.Cables.TryGetValue(leg.Key, out var cable))
            {
                yield return new CableFact { Id = leg.Key, From = cable.From, To = cable.To, Carries = [.. cable.Carries.Union(leg.Select(l => l.Station))], Sure = cable.Sure };
            }
        }

        foreach (var pulled in together.Where(c => c.Remedy.Told.Kind == RemedyKind.Pull))
        {
            var station = StationOf(site, pulled);
            yield return new CableFact { Id = $"run-{station}", From = need.Controller, To = need.Joint, Gauge = WireSize.Parse(pulled.Remedy.Gauge!).Value, Length = new Length(Math.Round(Wires.MetresTo(path, need.Joint), 1)), Carries = [station], Sure = Grade.Estimated };
        }
    }
}
