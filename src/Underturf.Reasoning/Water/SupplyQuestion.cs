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
        var states = belief.SupplyStates.Select((f, h) => (Fault: f is not null && Owner.IsCured(f, [], Moment.Last) ? null : f, Share: belief.SupplyShares[h]))
            .GroupBy(s => s.Fault)
            .Select(g => (Fault: g.Key, Share: g.Sum(s => s.Share)))
            .OrderByDescending(s => s.Share)
            .ToList();
        if (belief.Supply.Readings.Count == 0 || states.Where(s => s.Fault is null).Sum(s => s.Share) >= Owner.Book.Questions.OpenBelow)
        {
            return null;
        }

        var moves = Moves(states);
        var unmodelled = Unmodelled();
        var explanations = states.Select(s => Explain(s.Fault, s.Share * (1 - unmodelled.Probability), states[0].Fault == s.Fault ? states[1].Fault : states[0].Fault)).Append(unmodelled).OrderByDescending(e => e.Probability).ToList();
        return new OpenQuestion(Id, Symptom(), [], explanations, [], explanations[0].Doubt ? [] : moves, !explanations[0].Doubt && moves.Count > 0 && moves[0].IsRepair);
    }

    private Explanation Unmodelled()
    {
        var known = LogMath.LogSumExp([.. belief.SupplyStates.Select(f => belief.Supply.LogPrior(f) + belief.Supply.LogChance(f))]);
        var other = Math.Log(Owner.Water.Unmodelled) + belief.Supply.LogChanceUnmodelled;
        return WaterDoubt.Of(1 / (1 + Math.Exp(known - other)));
    }

    private string Symptom() => "point of connection: " + string.Join("; ", belief.Supply.Readings.Select(r =>
        $"{r.Probe.Name} {r.Text}{(r.Station is { } s ? $" with {Owner.View.Name(s)} running" : string.Empty)}"));

    private Explanation Explain(WaterFault? fault, double share, WaterFault? rival) => new(
        fault?.Id ?? "as-built",
        share,
        fault?.Say ?? "nothing wrong: the street and the way give what they may give",
        [],
        [.. belief.Supply.Readings.Select(r => Line(r, fault, rival))],
        fault is null ? string.Empty : Owner.Book.Repair(fault.Repair)!.Say);

    private EvidenceLine Line(WaterReading reading, WaterFault? fault, WaterFault? rival)
    {
        var expected = belief.Supply.Expected(fault, reading);
        var weight = (Speaks(fault, reading) - Speaks(rival, reading)) / Math.Log(10);
        return new EvidenceLine(reading.Moment.Entry.ToString(), reading.Probe.Name, say.Pressure(expected.Median, expected.Spread), reading.Text, weight);
    }

    /// <summary>ln of the chance of a reading, all others known.</summary>
    private double Speaks(WaterFault? fault, WaterReading reading) => belief.Supply.LogChance(fault) - belief.Supply.LogChance(fault, reading);

    private List<Move> Moves(List<(WaterFault? Fault, double Share)> states)
    {
        var wrong = states.Where(s => s.Fault is not null).ToList();
        double[] shares = [.. wrong.Select(s => s.Share)];
        var order = new CureOrder([.. wrong.Select(s => Owner.Book.Repair(s.Fault!.Repair)!.Minutes)], Owner.Water.UncuredMinutes);
        WaterFault?[] all = [.. wrong.Select(s => s.Fault), null];
        var station = Owner.View.Stations.Keys.FirstOrDefault(s => belief.Meter.Any(r => r.Station == s)) ?? Owner.View.Stations.Keys.FirstOrDefault();
        var tests = new[] { (WaterMeasure.StaticPressure, (string?)null), (WaterMeasure.RunningPressure, station) }
            .Where(t => Owner.Water.IsOwned(Owner.Water.ProbeOf(t.Item1)!) && belief.Supply.Readings.All(r => r.Probe.Measures != t.Item1) && (t.Item1 == WaterMeasure.StaticPressure || t.Item2 is not null))
            .Select(t => Test(Owner.Water.ProbeOf(t.Item1)!, t.Item2, order, shares, all))
            .Where(m => m.Worth > 0.5)
            .OrderByDescending(m => m.Worth - m.Minutes)
            .ToList();
        return tests.Any(t => t.Worth > t.Minutes) ? tests : [Repair(wrong[order.First(shares)], order.Uncured), .. tests];
    }

    private Move Test(WaterProbe probe, string? station, CureOrder order, double[] shares, WaterFault?[] faults)
    {
        var reading = new WaterReading(Moment.Last, probe, station, 0, 1, string.Empty, new HashSet<string>());
        var chances = Outcomes.OfReading([.. faults.Select(f => belief.Supply.Expected(f, reading))]);
        return Made($"{probe.Say}{(station is null ? string.Empty : $", {Owner.View.Name(station)}")}", probe.Minutes, order.Worth(shares, chances), probe.Caution, new ReadingFact { How = probe.Name, Stations = station is null ? [] : [station], Value = Shown.OverRange });
    }

    private Move Repair((WaterFault? Fault, double Share) first, double uncured)
    {
        var repair = Owner.Book.Repair(first.Fault!.Repair)!;
        return Made($"enough known: {repair.Say} ({Diagnosis.Say.Share(first.Share)} sure)", repair.Minutes, first.Share * uncured, repair.Caution, new WorkFact { Did = repair.Name });
    }

    private Move Made(string action, double minutes, double worth, string caution, Fact asks)
    {
        var place = Owner.MeterPlace;
        return new Move(action, Owner.View.Name(place), minutes, worth, caution, Id) { Place = place, Steps = [new MoveStep(action, minutes, caution, Id, asks)] };
    }
}
