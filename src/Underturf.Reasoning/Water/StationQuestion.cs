using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Moves;

namespace Underturf.Reasoning.Water;

/// <summary>How a station waters, as an open question.</summary>
internal sealed class StationQuestion
{
    private readonly WaterBelief belief;
    private readonly Walks walks;
    private readonly StationWater station;
    private readonly SupplyState supply;
    private readonly List<ToldState> told;

    public StationQuestion(WaterBelief belief, Walks walks, int index)
    {
        (this.belief, this.walks, station) = (belief, walks, belief.Stations[index]);
        supply = belief.SupplyStates[belief.LikeliestSupply];
        told = ToldState.Of(belief, index);
    }

    private WaterCase Owner => belief.Owner;

    private string Name => Owner.View.Name(station.Station);

    private string Id => $"water-{station.Station}";

    /// <summary>Nothing where most likely nothing is wrong with the water.</summary>
    public OpenQuestion? Write()
    {
        if (told.Where(t => station.Now(t.State).Count == 0).Sum(t => t.Share) >= Owner.Book.Questions.OpenBelow)
        {
            return null;
        }

        var shown = told.Where(t => t.Share >= Owner.Book.Questions.ShowAbove).ToList();
        var moves = Moves();
        return new OpenQuestion(
            Id,
            Symptom(),
            [Owner.View.StationNumber(station.Station)],
            [.. shown.Select(Explain), new Explanation("other", Math.Max(0, 1 - shown.Sum(t => t.Share)), "anything else of the practice book", [], [], string.Empty)],
            [],
            moves,
            moves.Count > 0 && moves[0].IsRepair);
    }

    private string Symptom()
    {
        var sound = station.States[0];
        var read = station.Readings.Select(r => $"{r.Probe.Name} {r.Text}, {Amount(r.Probe.Measures, station.Expected(sound, supply, r))} expected");
        var together = station.Together.Select(t => $"{t.Reading.Probe.Name} {t.Reading.Text} with {string.Join(" and ", t.Reading.Together.Where(s => s != station.Station).Select(Owner.View.Name))} too, {Amount(WaterMeasure.MeterFlow, t.Expected(station, sound, supply))} expected");
        var seen = station.Watches.SelectMany(w => w.Seen).Distinct().ToList();
        return $"{Name}: {string.Join("; ", seen.Count > 0 ? read.Concat(together).Append($"seen: {string.Join(", ", seen)}") : read.Concat(together))}";
    }

    private Explanation Explain(ToldState told)
    {
        var faults = station.Now(told.State);
        return new Explanation(
            faults.Count > 0 ? string.Join(" + ", faults.Select(f => f.Id)) : told.State.Wiring is { Valves: 1, StaysShut: false } ? "as-built" : "wiring",
            told.Share,
            told.Words(station),
            [],
            Evidence(told.State),
            string.Join("; ", faults.Select(f => Owner.Book.Repair(f.Repair)!.Say).Distinct()));
    }

    private List<EvidenceLine> Evidence(StationState state)
    {
        var rival = told.First(t => t.State != state || told.Count == 1).State;
        return
        [
            .. station.Readings.Select(r => new EvidenceLine(
                r.Moment.Entry.ToString(),
                $"{r.Probe.Name}, {Name}",
                Amount(r.Probe.Measures, station.Expected(state, supply, r)),
                r.Text,
                (station.LogSpeaks(state, supply, r) - station.LogSpeaks(rival, supply, r)) / Math.Log(10))),
            .. station.Together.Select(t => new EvidenceLine(
                t.Reading.Moment.Entry.ToString(),
                $"{t.Reading.Probe.Name}, {string.Join(" and ", t.Reading.Together.Select(Owner.View.Name))} together",
                Amount(WaterMeasure.MeterFlow, t.Expected(station, state, supply)),
                t.Reading.Text,
                (t.Expected(station, state, supply).LogDensity(t.Reading.Si, t.Reading.Sigma) - t.Expected(station, rival, supply).LogDensity(t.Reading.Si, t.Reading.Sigma)) / Math.Log(10))),
            .. station.Watches.Select(w => new EvidenceLine(
                w.Moment.Entry.ToString(),
                $"watch, {Name}",
                Foreseen(state),
                w.Seen.Count > 0 ? string.Join(", ", w.Seen) : "all well",
                (station.LogSeen(state, supply, w) - station.LogSeen(rival, supply, w)) / Math.Log(10))),
        ];
    }

    private static string Foreseen(StationState state)
    {
        var seen = state.Faults.SelectMany(f => f.Seen).Where(s => s.Value >= 0.5).Select(s => s.Key).Distinct().ToList();
        return seen.Count > 0 ? string.Join(", ", seen) : "all well";
    }

    private string Amount(WaterMeasure measures, Amount amount)
    {
        var say = new WaterSay(Owner.History.Facts.UsesUsUnits);
        return measures switch
        {
            WaterMeasure.MeterFlow => say.Flow(amount.Median, amount.Spread),
            WaterMeasure.OutletPressure => say.Pressure(amount.Median, amount.Spread),
            WaterMeasure.Evenness => $"{WaterSay.Share(amount.Median)} ± {WaterSay.Share(amount.Spread)}",
            _ => $"{amount.Median:0} ± {amount.Spread:0} s",
        };
    }

    private List<Move> Moves()
    {
        var wrong = told.Where(t => station.Now(t.State).Count > 0).Take(8).ToList();
        var sound = told.FirstOrDefault(t => station.Now(t.State).Count == 0)?.State ?? station.States[0];
        StationState[] states = [.. wrong.Select(t => t.State), sound];
        double[] shares = [.. wrong.Select(t => t.Share)];
        var order = new CureOrder([.. wrong.Select(t => station.Now(t.State).Sum(f => Owner.Book.Repair(f.Repair)!.Minutes))], Owner.Water.UncuredMinutes);
        var tests = Tests(states).Select(t => Made(t.Action, t.Minutes, order.Worth(shares, t.Chances), t.Caution, t.Asks)).Where(m => m.Worth > 0.5).OrderByDescending(m => m.Worth - m.Minutes).ToList();
        var repair = Repair(wrong[order.First(shares)], order.Uncured);
        return tests.Any(t => t.Worth > t.Minutes) || repair.Worth <= repair.Minutes ? tests : [repair, .. tests];
    }

    private IEnumerable<(string Action, double Minutes, string Caution, IReadOnlyList<double[]> Chances, Fact Asks)> Tests(StationState[] states)
    {
        var watch = station.Watches.Count == 0
            ? states.Select(s => Outcomes.OfLook([.. Owner.Water.Sights.Select(k => 1 - ((1 - k.Imagined) * station.Now(s).Aggregate(1.0, (p, f) => p * (1 - f.Seen.GetValueOrDefault(k.Name)))))])).ToList()
            : null;
        if (watch is not null)
        {
            yield return ($"run {Name} and walk along it", Owner.Water.WatchMinutes, Owner.Book.Run.Caution, watch, new WatchFact { Station = station.Station });
        }

        WaterMeasure[] measures = [WaterMeasure.MeterFlow, WaterMeasure.OutletPressure, WaterMeasure.OpeningTime, WaterMeasure.ClosingTime, WaterMeasure.Evenness];
        foreach (var probe in measures.Where(m => station.Readings.All(r => r.Probe.Measures != m)).Select(m => Owner.Water.ProbeOf(m)!).Where(Owner.Water.IsOwned))
        {
            var reading = new WaterReading(Moment.Last, probe, station.Station, 0, 1, string.Empty, new HashSet<string>());
            var chances = Outcomes.OfReading([.. states.Select(s => station.Expected(s, supply, reading))]);
            yield return ($"{probe.Say}, {Name}", probe.Minutes, probe.Caution, chances, probe.Measures == WaterMeasure.Evenness ? new CatchFact { Station = station.Station, Cans = [] } : new ReadingFact { How = probe.Name, Stations = [station.Station], Value = Shown.OverRange });
        }
    }

    private Move Repair(ToldState first, double uncured)
    {
        var repairs = station.Now(first.State).Select(f => Owner.Book.Repair(f.Repair)!).Distinct().ToList();
        var words = string.Join("; then ", repairs.Select(r => r.Say));
        var work = new WorkFact { Did = repairs[0].Name, Target = station.Station };
        return Made($"enough known: {words}, {Name} ({Say.Share(first.Share)} sure)", repairs.Sum(r => r.Minutes), first.Share * uncured, string.Join(" ", repairs.Select(r => r.Caution).Where(c => c.Length > 0).Distinct()), work);
    }

    private Move Made(string action, double minutes, double worth, string caution, Fact asks)
    {
        var controller = Owner.View.Identity.Of(Owner.View.Stations[station.Station].Controller);
        var place = Owner.View.ValvesOf(station.Station).Select(v => v.Id).FirstOrDefault() ?? controller;
        var walk = walks.Minutes(controller, place);
        return walks.Reached(new Move(action, Owner.View.Name(place), minutes + walk, worth, caution, Id)
        {
            Place = place,
            Steps = [new MoveStep(action, minutes, caution, Id, asks)],
        }, walk);
    }
}
