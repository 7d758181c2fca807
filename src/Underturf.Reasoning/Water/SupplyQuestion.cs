using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Water;

/// <summary>What comes in at the point of connection, as an open question.</summary>
internal sealed class SupplyQuestion(WaterBelief belief)
{
    public const string Id = "water-supply";

    private readonly WaterSay say = new(belief.Owner.History.Facts.UsesUsUnits);

    private WaterCase Owner => belief.Owner;

    /// <summary>Nothing where it is most likely in order, or cured.</summary>
    public OpenQuestion? Write()
    {
        if (Apart() is { Count: > 0 } apart)
        {
            return Doubted(apart);
        }

        var states = belief.SupplyStates.Select((s, h) => (State: s.Without(f => Owner.IsCured(f, [], Moment.Last)), Share: belief.SupplyShares[h]))
            .GroupBy(s => s.State.Id)
            .Select(g => (g.First().State, Share: g.Sum(s => s.Share)))
            .OrderByDescending(s => s.Share)
            .ToList();
        if (belief.Supply.Readings.Count == 0 || states.Where(s => s.State.Faults.Count == 0).Sum(s => s.Share) >= Owner.Book.Questions.OpenBelow)
        {
            return null;
        }

        var moves = Moves(states);
        var unmodelled = Unmodelled();
        var shown = states.Where(s => s.Share >= Owner.Book.Questions.ShowAbove).ToList();
        var rest = new Explanation("other", states.Except(shown).Sum(s => s.Share) * (1 - unmodelled.Probability), "anything else of the practice book", [], [], string.Empty);
        var explanations = shown.Select(s => Explain(s.State, s.Share * (1 - unmodelled.Probability), states[0].State == s.State ? states[1].State : states[0].State)).Append(unmodelled).Append(rest).Where(e => e.Probability > 0).OrderByDescending(e => e.Probability).ToList();
        return new OpenQuestion(Id, Symptom(), [], explanations, [], explanations[0].Doubt ? [] : moves, !explanations[0].Doubt && moves.Count > 0 && moves[0].IsRepair);
    }

    /// <summary>Pressures of which none shows which is wrong, as none agrees with others: nothing is said of the supply before they are read again.</summary>
    private List<WaterConflict> Apart() => [.. Owner.Conflicts.Where(c => c.LeavesOut.Count > 1 && c.LeavesOut.Any(r => r.Probe.Measures is WaterMeasure.StaticPressure or WaterMeasure.RunningPressure))];

    private OpenQuestion Doubted(List<WaterConflict> apart) => new(
        Id,
        $"point of connection: {string.Join("; ", apart.Select(c => c.Why))}",
        [],
        [WaterDoubt.Of(1) with { Summary = "one of the readings is wrong, and neither counts until they are taken again" }],
        [],
        [.. apart.Select(Again)],
        Settled: false)
    {
        Repeats = [.. apart.Select(c => new Repeat($"{c.Other!.Probe.Name} and {c.Reading.Probe.Name}", Owner.View.Name(Owner.MeterPlace), c.Why, [c.OtherEntry, c.Reading.Moment.Entry.ToString()]))],
    };

    /// <summary>Either of the two may be the wrong one, so acting now is wrong with even odds: that is what it saves.</summary>
    private Move Again(WaterConflict conflict)
    {
        WaterReading[] both = [conflict.Other!, conflict.Reading];
        var place = Owner.MeterPlace;
        return new Move($"take again: {string.Join(" and ", both.Select(r => r.Probe.Name))} ({conflict.Why})", Owner.View.Name(place), both.Sum(r => r.Probe.Minutes), Owner.Book.Loss.WrongRepairMinutes / 2, string.Join(" ", both.Select(r => r.Probe.Caution).Where(c => c.Length > 0).Distinct()), Id)
        {
            Place = place,
            Steps = [.. both.Select(r => new MoveStep($"take again: {r.Probe.Name}{(r.IsIdle ? string.Empty : $", {string.Join(" and ", r.Running.Select(Owner.View.Name))}")}", r.Probe.Minutes, r.Probe.Caution, Id, new ReadingFact { How = r.Probe.Name, Stations = [.. r.Running], Value = Shown.OverRange }))],
        };
    }

    private Explanation Unmodelled()
    {
        var known = LogMath.LogSumExp([.. belief.SupplyStates.Select(f => f.LogPrior + belief.Supply.LogChance(f))]);
        var other = Math.Log(Owner.Water.Unmodelled) + belief.Supply.LogChanceUnmodelled;
        return WaterDoubt.Of(1 / (1 + Math.Exp(known - other)));
    }

    private string Symptom() => "point of connection: " + string.Join("; ", belief.Supply.Readings.Select(r =>
        $"{r.Probe.Name} {r.Text}{(r.Station is { } s ? $" with {Owner.View.Name(s)} running" : string.Empty)}"));

    private Explanation Explain(SupplyState state, double share, SupplyState rival) => new(
        state.Id,
        share,
        state.Faults.Count > 0 ? string.Join("; ", state.Faults.Select(f => f.Say)) : "nothing wrong: the street and the way give what they may give",
        [],
        [.. belief.Supply.Readings.Select(r => Line(r, state, rival))],
        string.Join("; ", state.Faults.Select(f => Owner.Book.Repair(f.Repair)!.Say).Distinct()));

    private EvidenceLine Line(WaterReading reading, SupplyState state, SupplyState rival)
    {
        var expected = belief.Supply.Expected(state, reading);
        var weight = (Speaks(state, reading) - Speaks(rival, reading)) / Math.Log(10);
        return new EvidenceLine(reading.Moment.Entry.ToString(), reading.Probe.Name, say.Pressure(expected.Median, expected.Spread), reading.Text, weight);
    }

    /// <summary>ln of the chance of a reading, all others known.</summary>
    private double Speaks(SupplyState state, WaterReading reading) => belief.Supply.LogChance(state) - belief.Supply.LogChance(state, reading);

    private List<Move> Moves(List<(SupplyState State, double Share)> states)
    {
        var wrong = states.Where(s => s.State.Faults.Count > 0).ToList();
        double[] shares = [.. wrong.Select(s => s.Share)];
        var order = new CureOrder([.. wrong.Select(s => s.State.Faults.Sum(f => Owner.Book.Repair(f.Repair)!.Minutes))], Owner.Water.UncuredMinutes);
        SupplyState[] all = [.. wrong.Select(s => s.State), belief.SupplyStates[0]];
        var station = Owner.View.Stations.Keys.FirstOrDefault(s => belief.Meter.Any(r => r.Station == s)) ?? Owner.View.Stations.Keys.FirstOrDefault();
        var tests = new[] { (WaterMeasure.StaticPressure, (string?)null), (WaterMeasure.RunningPressure, station) }
            .Where(t => Owner.Water.IsOwned(Owner.Water.ProbeOf(t.Item1)!) && belief.Supply.Readings.All(r => r.Probe.Measures != t.Item1) && (t.Item1 == WaterMeasure.StaticPressure || t.Item2 is not null))
            .Select(t => Test(Owner.Water.ProbeOf(t.Item1)!, t.Item2, order, shares, all))
            .Where(m => m.Worth > 0.5)
            .OrderByDescending(m => m.Worth - m.Minutes)
            .ToList();
        return tests.Any(t => t.Worth > t.Minutes) ? tests : [Repair(wrong[order.First(shares)], order.Uncured), .. tests];
    }

    private Move Test(WaterProbe probe, string? station, CureOrder order, double[] shares, SupplyState[] states)
    {
        var reading = new WaterReading(Moment.Last, probe, station, 0, 1, string.Empty, new HashSet<string>());
        var chances = Outcomes.OfReading([.. states.Select(s => belief.Supply.Expected(s, reading))]);
        return Made($"{probe.Say}{(station is null ? string.Empty : $", {Owner.View.Name(station)}")}", probe.Minutes, order.Worth(shares, chances), probe.Caution, new ReadingFact { How = probe.Name, Stations = station is null ? [] : [station], Value = Shown.OverRange });
    }

    private Move Repair((SupplyState State, double Share) first, double uncured)
    {
        var repairs = first.State.Faults.Select(f => Owner.Book.Repair(f.Repair)!).Distinct().ToList();
        return Made($"enough known: {string.Join("; then ", repairs.Select(r => r.Say))} ({Diagnosis.Say.Share(first.Share)} sure)", repairs.Sum(r => r.Minutes), first.Share * uncured, string.Join(" ", repairs.Select(r => r.Caution).Where(c => c.Length > 0).Distinct()), new WorkFact { Did = repairs[0].Name });
    }

    private Move Made(string action, double minutes, double worth, string caution, Fact asks)
    {
        var place = Owner.MeterPlace;
        return new Move(action, Owner.View.Name(place), minutes, worth, caution, Id) { Place = place, Steps = [new MoveStep(action, minutes, caution, Id, asks)] };
    }
}
