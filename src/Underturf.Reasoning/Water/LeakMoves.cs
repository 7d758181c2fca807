using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Reasoning.Moves;

namespace Underturf.Reasoning.Water;

/// <summary>What to do next about something that runs while nothing should.</summary>
internal sealed class LeakMoves
{
    /// <summary>Valves that are weighed one by one, the likeliest.</summary>
    private const int MostValves = 6;

    private readonly WaterBelief belief;
    private readonly Walks walks;
    private readonly string meterPlace;
    private readonly List<Suspected> suspected;
    private readonly CureOrder order;
    private readonly double[] shares;
    private readonly HashSet<string> shutNow;

    public LeakMoves(WaterBelief belief, Walks walks)
    {
        (this.belief, this.walks) = (belief, walks);
        meterPlace = Owner.MeterPlace;
        suspected = Suspects();
        shares = [.. suspected.Select(s => s.Share)];
        order = new CureOrder([.. suspected.Select(s => Owner.Book.Repair(s.Source.Fault.Repair)!.Minutes + walks.Minutes(meterPlace, PlaceOf(s.Source)))], Owner.Book.Loss.WrongRepairMinutes + LeftMinutes());
        shutNow = Owner.ShutAt(Moment.Last);
    }

    private WaterCase Owner => belief.Owner;

    private Property.PropertyView View => Owner.View;

    private WaterProbe Meter => Owner.Water.ProbeOf(WaterMeasure.MeterFlow)!;

    /// <summary>Chance that somebody draws water just then, though nothing is wrong.</summary>
    private double Others => Owner.Water.Of(WaterScope.Elsewhere).Sum(f => f.Rate);

    /// <summary>Best first; the repair itself first where no test pays.</summary>
    public (IReadOnlyList<Move> Moves, bool IsSettled) Find()
    {
        if (suspected.Count == 0)
        {
            return ([], false);
        }

        IEnumerable<Move> read = Owner.Water.IsOwned(Meter) ? Isolations().Concat(Valves()).Append(Again()) : [];
        var tests = read.Concat(Round()).Where(m => m.Worth > 0.5).OrderByDescending(m => m.Worth - m.Minutes).Take(Owner.Book.Questions.ListMoves).ToList();
        var settled = !tests.Any(t => t.Worth > t.Minutes) && Repair() is var repair && repair.Worth > repair.Minutes;
        return (settled ? [Repair(), .. tests] : tests, settled);
    }

    /// <summary>Shut an isolation valve, and see whether the meter stops.</summary>
    private IEnumerable<Move> Isolations()
    {
        foreach (var isolation in View.IsolationValves.Keys.Where(i => !shutNow.Contains(i)))
        {
            var minutes = walks.Minutes(meterPlace, isolation) + Owner.Water.Isolating.TurnMinutes + walks.Minutes(isolation, meterPlace) + Meter.Minutes;
            var fed = Supposed(new HashSet<string>(shutNow, StringComparer.Ordinal) { isolation });
            var passes = belief.NotHolding.GetValueOrDefault(isolation, Owner.Water.Isolating.NotHolding);

            // What is behind it stops, or runs less where it does not hold; what is not goes on.
            yield return Test($"shut {View.Name(isolation)}, then {Meter.Say}, everything off", isolation, minutes, "Tell those who drink from it; open slowly afterwards.", [.. fed.Select(f => new[] { f, (1 - f) * passes, (1 - f) * (1 - passes) }), [Others, 0, 1 - Others]], Shut(isolation));
        }
    }

    /// <summary>Turn a valve's flow control down, and see whether the meter stops.</summary>
    private IEnumerable<Move> Valves()
    {
        foreach (var id in suspected.Where(s => s.Source.Piece is null && View.Valves.ContainsKey(s.Source.Id)).GroupBy(s => s.Source.Id).OrderByDescending(g => g.Sum(s => s.Share)).Take(MostValves).Select(g => g.Key))
        {
            var minutes = walks.Minutes(meterPlace, id) + Owner.Water.Isolating.TurnMinutes + walks.Minutes(id, meterPlace) + Meter.Minutes;
            double[] fed = [.. suspected.Select(s => s.Source.Id == id ? 0.0 : 1.0), Others];
            yield return Meters($"turn down the flow control of {View.Name(id)}, then {Meter.Say}, everything off", id, minutes, Owner.Book.Look.Caution, fed, Shut(id));
        }
    }

    /// <summary>Read once more: what somebody drew just then will not run again.</summary>
    private Move Again()
    {
        double[] runs = [.. suspected.Select(_ => 1.0), Others];
        return Meters($"{Meter.Say}, everything off", meterPlace, Meter.Minutes, Meter.Caution, runs, new ReadingFact { How = Meter.Name, Value = Shown.OverRange });
    }

    /// <summary>Walk past the lowest outlets of all stations: what runs shows at its own, or not at all.</summary>
    private IEnumerable<Move> Round()
    {
        var stations = suspected.Select(s => s.Source.Station).OfType<string>().Distinct().ToList();
        if (stations.Count == 0)
        {
            yield break;
        }

        const string Caution = "Look for wasps and snakes; no digging before utility marks.";
        var imagined = Sees(null);
        double[] Row(LeakSource? source) => Outcomes.OfLook([.. stations.Select(s => source is not null && source.Station == s ? 1 - ((1 - imagined) * (1 - Sees(source.Fault))) : imagined)]);
        var minutes = stations.Count * Owner.Water.RoundMinutes;
        yield return Test("walk past the lowest outlets of all stations, everything off, and look for weeping and wet ground", meterPlace, minutes, Caution, [.. suspected.Select(s => Row(s.Source)), Row(null)], new WatchFact());
    }

    /// <summary>Chance to see any of a fault; of none, to imagine at one place what a valve that does not close looks like.</summary>
    private double Sees(WaterFault? fault) => 1 - Owner.Water.Sights
        .Where(s => Owner.Water.Of(WaterScope.Valve).Any(f => f.Seen.ContainsKey(s.Name)))
        .Aggregate(1.0, (product, sight) => product * (1 - (fault is null ? sight.Imagined : fault.Seen.GetValueOrDefault(sight.Name))));

    private Move Meters(string action, string place, double minutes, string caution, double[] goesOn, Fact asks) =>
        Test(action, place, minutes, caution, [.. goesOn.Select(p => new[] { p, 1 - p })], asks);

    private Move Test(string action, string place, double minutes, string caution, IReadOnlyList<double[]> chances, Fact asks) => walks.Reached(new Move(action, View.Name(place), minutes, order.Worth(shares, chances), caution, LeakQuestion.Id)
    {
        Place = place,
        Steps = [new MoveStep(action, minutes, caution, LeakQuestion.Id, asks)],
    }, walks.Minutes(meterPlace, place));

    private Move Repair()
    {
        var first = suspected[order.First(shares)];
        var (repair, place) = (Owner.Book.Repair(first.Source.Fault.Repair)!, PlaceOf(first.Source));
        var walk = walks.Minutes(meterPlace, place);
        var work = new WorkFact { Did = repair.Name, Target = first.Source.Piece is null && !View.Knows(first.Source.Id) ? null : first.Source.Id };
        var action = $"enough known: {repair.Say}, {first.Source.Place} ({Diagnosis.Say.Share(first.Share)} sure)";
        return walks.Reached(new Move(action, View.Name(place), repair.Minutes + walk, first.Share * order.Uncured, repair.Caution, LeakQuestion.Id)
        {
            Place = place,
            Steps = [new MoveStep(action, repair.Minutes, repair.Caution, LeakQuestion.Id, work)],
        }, walk);
    }

    /// <summary>For each thing the chance that it would still run, were these shut and did they hold.</summary>
    private double[] Supposed(IReadOnlySet<string> shut)
    {
        var supposed = new WaterReading(Moment.Last, Meter, null, 0, 1, string.Empty, shut);
        var then = new LeakSourceFinder(Owner, [.. belief.Meter, supposed], []).Find();
        var before = belief.Meter.SelectMany(r => r.Shut).ToHashSet(StringComparer.Ordinal);
        return [.. suspected.Select(s => FedThen(s.Source, then, before))];
    }

    /// <summary>By the ways that are left to it, in each of which the valve may lie that nobody has shut before.</summary>
    private static double FedThen(LeakSource source, IReadOnlyList<LeakSource> then, HashSet<string> before)
    {
        var left = source.Ways.Select(w => w.Key).ToHashSet(StringComparer.Ordinal);
        var ways = then.Where(t => t.Id == source.Id && t.Fault == source.Fault).SelectMany(t => t.Ways.Where(w => left.Contains(w.Within(before).Key)).Select(_ => t.Fed[t.Fed.Count - 1].Shows)).ToList();
        return ways.Count > 0 ? ways.Average(shows => shows ? 1.0 : 0) : 1;
    }

    /// <summary>What the water is worth that runs away where nothing is found.</summary>
    private double LeftMinutes() => WaterLossFinder.Of(belief) is { } lost
        ? (lost.LeastCubicMetresADay + lost.MostCubicMetresADay) / 2 * Owner.Water.LeftDays * Owner.Water.CubicMetreMinutes
        : 0;

    /// <summary>Each thing that may run now, with its probability.</summary>
    private List<Suspected> Suspects() => [.. belief.Sets
        .SelectMany(set => set.Groups.SelectMany((group, g) => group.Sources.Select((source, k) => (Source: source, Share: set.Probability * set.Shares[g][k]))))
        .Where(s => !s.Source.Cured)
        .GroupBy(s => s.Source.Key)
        .Select(g => new Suspected(g.First().Source, g.Sum(s => s.Share)))
        .Where(s => s.Share > 1e-4)
        .OrderByDescending(s => s.Share)];

    private string PlaceOf(LeakSource source) => View.Valves.TryGetValue(source.Id, out var valve) ? (valve.Box is { } box && View.Knows(box) ? View.Identity.Of(box) : source.Id)
        : source.Piece is { Ends: [var end, ..] } ? end
        : source.Station ?? meterPlace;

    private static SettingFact Shut(string id) => new() { Of = id, State = "shut" };

    private sealed record Suspected(LeakSource Source, double Share);
}
