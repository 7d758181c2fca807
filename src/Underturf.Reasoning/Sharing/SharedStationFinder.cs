using Underturf.FieldLog;
using Underturf.Quantities;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Sharing;

/// <summary>Stations of which several valves were noted, and stations of which belief holds that they run more than were noted.</summary>
internal sealed class SharedStationFinder(Case matter)
{
    /// <summary>More likely than not.</summary>
    private const double Likely = 0.5;

    public IEnumerable<SharedStation> Find(IReadOnlyDictionary<string, Belief> beliefs)
    {
        var finder = new SubjectFinder(matter);
        foreach (var (controller, belief) in beliefs)
        {
            var subjects = finder.Find(controller, belief).ToLookup(s => s.Stations[0], StringComparer.Ordinal);
            foreach (var path in matter.Paths.Values.Where(p => p.Controller == controller).OrderBy(p => matter.View.Stations[p.Station].Terminal))
            {
                if (Of(path, subjects[path.Station].FirstOrDefault(s => s.Stations.Count == 1)?.Worlds ?? []) is { } shared)
                {
                    yield return shared;
                }
            }
        }
    }

    private SharedStation? Of(StationPath path, IReadOnlyList<World> worlds)
    {
        var more = worlds.Where(w => w.Suspects.Any(s => s.MoreCoils > 0)).ToList();
        var share = more.Sum(w => w.Probability);
        var noted = path.Valves.Count;
        if (noted < 2 && share <= Likely)
        {
            return null;
        }

        if (share <= Likely)
        {
            return new SharedStation(path.Station, Weakest(path), 1, 1 - share, path, [.. new Joints(matter, path).Valves()], Plain);
        }

        var likeliest = more.GroupBy(w => Branch(w).MoreCoils).MaxBy(g => g.Sum(w => w.Probability))!;
        var place = likeliest.GroupBy(w => Branch(w).Place).MaxBy(g => g.Sum(w => w.Probability))!;
        var repair = more.GroupBy(w => Branch(w).Fault.Repair).MaxBy(g => g.Sum(w => w.Probability))!.Key;
        var whole = WithBranches(path, likeliest.Key, place.Key ?? path.Valves[0].Place);
        return new SharedStation(
            path.Station,
            Grade.Inferred,
            noted < 2 ? share : 1,
            likeliest.Sum(w => w.Probability),
            whole,
            [.. new Joints(matter, whole) { FoundShare = place.Where(w => !Branch(w).Seat.IsUnfound).Sum(w => w.Probability) / likeliest.Sum(w => w.Probability) }.Valves()],
            repair);
    }

    private static Suspect Branch(World world) => world.Suspects.First(s => s.MoreCoils > 0);

    /// <summary>The repair by which plain branches are parted.</summary>
    private string Plain => matter.Book.Faults.FirstOrDefault(f => f.MoreCoils is not null && f.DcSeriesOhms is null)?.Repair ?? "valves parted";

    private Grade Weakest(StationPath path) => path.Valves
        .Select(v => v.Valve is { } id && matter.View.Valves.TryGetValue(id, out var valve) ? valve.Sure : Grade.Unknown)
        .Max();

    /// <summary>The path with further valves, each at the end of a wire of the usual unknown length.</summary>
    private StationPath WithBranches(StationPath path, int more, string place)
    {
        var wire = matter.Book.Wire;
        var size = WireSize.FromAwg(wire.StationAwg);
        var (legs, valves) = (path.Legs.ToList(), path.Valves.ToList());
        for (var i = 0; i < more; i++)
        {
            var name = NameOf(path, valves.Count);
            legs.Add(new Leg($"branch to {name}", place, name, wire.BranchMetres, wire.BranchSpread, size, size, path.LegTo(place), wire.GaugeSpread));
            valves.Add(new ValveEnd(null, name, legs.Count - 1, null, $"{path.Station} {valves.Count}"));
        }

        return path with { Legs = legs, Valves = valves };
    }

    private string NameOf(StationPath path, int before) => $"valve {before + 1} of station {matter.View.StationNumber(path.Station)}";
}
