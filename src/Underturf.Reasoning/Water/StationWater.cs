using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Water;

/// <summary>One station's readings and what was seen of it, weighed under each of its states.</summary>
internal sealed class StationWater
{
    /// <summary>What stands in for no flow, as a share of the usual.</summary>
    private const double Trace = 0.005;

    private const int MostOnStack = 16;

    private readonly WaterCase owner;
    private readonly StationFlows usual;
    private readonly string[] things;
    private readonly List<(WaterReading Reading, int Index)> flows;
    private readonly List<WaterReading> others;
    private readonly List<WaterWatch> watches;
    private readonly LowHead lowHead;
    private readonly HeldDown heldDown;
    private readonly double apart;
    private readonly bool runsWithOthers;
    private readonly List<RunTogether> together = [];
    private readonly Dictionary<(SupplyState? Supply, string Fed, WaterFault? Leaking), double[]> tables = [];
    private readonly Dictionary<(SupplyState? Supply, WaterFault? Leaking), IReadOnlyList<Foreseen>> foreseen = [];
    private readonly Dictionary<StationState, double> notes = [];
    private readonly Dictionary<(RunTogether Run, SupplyState Supply), Amount[]> sums = [];

    public StationWater(WaterCase owner, string station, StationFlows usual, IReadOnlyList<WiringState> wiring, IReadOnlyList<WaterReading> meter, HeldDown heldDown)
    {
        (this.owner, this.usual, this.heldDown, Station) = (owner, usual, heldDown, station);
        things = owner.ThingsOf(station);
        lowHead = new LowHead(owner, station);
        apart = owner.Water.Of(WaterScope.Elsewhere).Sum(use => use.Rate);
        flows = [.. meter.Select((r, k) => (r, k)).Where(r => r.r.Station == station && owner.IsAsNow(station, r.r.Moment))];
        runsWithOthers = meter.Any(r => r.Together.Contains(station) && r.Together.All(s => owner.IsAsNow(s, r.Moment)));
        others = [.. owner.Readings.Where(r => r.Station == station && r.Probe.Measures is WaterMeasure.OutletPressure or WaterMeasure.OpeningTime or WaterMeasure.ClosingTime or WaterMeasure.Evenness && owner.IsAsNow(station, r.Moment))];
        watches = [.. owner.Watches.Where(w => (w.Station ?? w.About) == station && owner.IsAsNow(station, w.Moment))];
        States = [.. Combined(wiring)];
    }

    public string Station { get; }

    public IReadOnlyList<StationState> States { get; }

    public bool HasFlow => flows.Count > 0 || runsWithOthers;

    /// <summary>Readings of the meter with others running too.</summary>
    public IReadOnlyList<RunTogether> Together => together;

    /// <summary>Whether somebody looked at it while everything was off: what its own valve lets through shows there too.</summary>
    public bool IsSeenIdle => watches.Any(w => w.Station is null);

    public bool IsNoted => runsWithOthers || flows.Count + others.Count + watches.Count > 0;

    public IReadOnlyList<WaterReading> Readings => [.. flows.Select(f => f.Reading), .. others];

    public IReadOnlyList<WaterWatch> Watches => watches;

    /// <summary>ln of the chance of all its notes while water of an amount runs elsewhere.</summary>
    /// <param name="fed">For each reading of the meter, whether that shows in it.</param>
    /// <param name="leaking">Why its own valve lets water through; nothing where it does not.</param>
    public double LogChance(SupplyState? supply, Fed fed, int amount, WaterFault? leaking = null)
    {
        if (!HasFlow)
        {
            amount = 0;
        }

        var table = Table(supply, fed, leaking);

        if (double.IsNaN(table[amount]))
        {
            table[amount] = LogMath.LogSumExp(LogChances(supply, fed, amount, leaking, together.Where(t => t.First == Station)));
        }

        return table[amount];
    }

    /// <summary>One for all that show in the same of its own readings.</summary>
    private double[] Table(SupplyState? supply, Fed fed, WaterFault? leaking)
    {
        if (tables.TryGetValue((supply, fed.Key, leaking), out var known))
        {
            return known;
        }

        var own = fed.KeyOf([.. flows.Select(f => f.Index), .. together.Select(t => t.Index)]);
        if (!tables.TryGetValue((supply, "own " + own, leaking), out var table))
        {
            table = new double[AmountGrid.Count];
            Array.Fill(table, double.NaN);
            tables[(supply, "own " + own, leaking)] = table;
        }

        return tables[(supply, fed.Key, leaking)] = table;
    }

    /// <summary>The same for each state, its prior counted in.</summary>
    public double[] LogChances(SupplyState? supply, Fed fed, int amount, WaterFault? leaking = null) => LogChances(supply, fed, amount, leaking, together);

    private double[] LogChances(SupplyState? supply, Fed fed, int amount, WaterFault? leaking, IEnumerable<RunTogether> runs)
    {
        var elsewhere = AmountGrid.At(amount);
        var expected = runs.Select(r => (Run: r, Expected: ExpectedOf(r, supply!))).ToList();
        return [.. Foresee(supply, leaking).Select((f, k) => f.LogRest + LogFlows(f, fed, elsewhere)
            + expected.Sum(s => s.Expected[k].LogDensity(s.Run.Reading.Si - Elsewhere(s.Run.Reading, fed[s.Run.Index], elsewhere), s.Run.Reading.Sigma)))];
    }

    /// <summary>Notes of the meter with others running, which take in what is believed of those.</summary>
    public void Join(RunTogether run) => together.Add(run);

    /// <summary>What it gives alone, its own notes counted in: mean and variance.</summary>
    public (double Mean, double Variance) Gives(SupplyState supply, WaterReading reading)
    {
        var nowhere = Fed.Nowhere(1 + flows.Select(f => f.Index).DefaultIfEmpty().Max());
        var logs = LogChances(supply, nowhere, 0, null, []);
        var total = LogMath.LogSumExp(logs);
        var given = States.Select((s, k) => (Share: Math.Exp(logs[k] - total), Gives: Gives(s, supply, reading))).ToList();
        var mean = given.Sum(g => g.Share * g.Gives.Mean);
        return (mean, given.Sum(g => g.Share * (g.Gives.Variance + Math.Pow(g.Gives.Mean - mean, 2))));
    }

    /// <summary>The same in one of its states: what the meter showed of it alone, where no work came between.</summary>
    public (double Mean, double Variance) Gives(StationState state, SupplyState supply, WaterReading reading)
    {
        var alone = flows.Select(f => f.Reading).LastOrDefault(r => r.Shut.SetEquals(reading.Shut) && owner.Water.Of(WaterScope.Station).All(f => owner.IsCured(f, things, r.Moment) == owner.IsCured(f, things, reading.Moment)));
        var expected = alone is null ? Expected(state, supply, reading) : null;
        return expected is null ? (alone!.Si, alone.Sigma * alone.Sigma) : (expected.Mean, expected.Spread * expected.Spread);
    }

    private static double Elsewhere(WaterReading reading, Passage passage, double amount) => passage.MeanShare * reading.Drawn * amount;

    private Amount[] ExpectedOf(RunTogether run, SupplyState supply)
    {
        if (!sums.TryGetValue((run, supply), out var known))
        {
            sums[(run, supply)] = known = [.. States.Select(s => run.Expected(this, s, supply))];
        }

        return known;
    }

    /// <summary>What a reading is expected to show.</summary>
    public Amount Expected(StationState state, SupplyState? supply, WaterReading reading)
    {
        var active = Active(state, reading.Moment);
        return reading.Probe.Measures switch
        {
            WaterMeasure.MeterFlow => Flow(state, active, supply),
            WaterMeasure.OutletPressure => Times(new Amount(usual.PressureOf(Station, supply)), active, null, f => f.OutletPressureFactor),
            WaterMeasure.Evenness => Times(new Amount(new LogNormal(owner.Water.Usual.Evenness.Median, owner.Water.Usual.Evenness.LogSpread)), active, supply, f => f.EvennessFactor),
            WaterMeasure.OpeningTime => Times(Amount.Of(owner.Water.Usual.OpeningSeconds, "s"), active, supply, f => f.OpeningFactor),
            _ => Times(Amount.Of(owner.Water.Usual.ClosingSeconds, "s"), active, supply, f => f.ClosingFactor),
        };
    }

    /// <summary>ln of the chance of what was seen, and not seen.</summary>
    /// <param name="leaking">Why its own valve lets water through, which shows while everything is off.</param>
    public double LogSeen(StationState state, SupplyState? supply, WaterWatch watch, WaterFault? leaking = null)
    {
        var own = leaking is not null && watch.Station is null && !owner.IsCured(leaking, things, watch.Moment) ? leaking : null;
        var active = Active(state, watch.Moment).Append(own);
        var sum = 0.0;
        foreach (var sight in owner.Water.Sights)
        {
            var seen = watch.Seen.Contains(sight.Name);
            var not = active.OfType<WaterFault>().Concat(supply?.Reaching ?? []).Aggregate(1 - lowHead.Imagined(sight, watch, seen), (product, fault) => product * (1 - lowHead.Seen(fault, sight.Name, watch, seen)));
            sum += Math.Log(seen ? 1 - not : not);
        }

        return sum;
    }

    /// <summary>What of a state is wrong now: what work has cured is not, and what none of the notes would show explains nothing.</summary>
    public IReadOnlyList<WaterFault> Now(StationState state) => state.Faults.Count == 0 ? [] : [.. Active(state, Moment.Last).Where(f => Speaks(state, f))];

    /// <summary>The notes are likelier with it than without.</summary>
    private bool Speaks(StationState state, WaterFault fault)
    {
        var without = States.First(s => s.Wiring == state.Wiring && s.Faults.Count == state.Faults.Count - 1 && s.Faults.All(state.Faults.Contains) && !s.Faults.Contains(fault));
        return LogNotes(state) - LogNotes(without) > Math.Log(2);
    }

    private double LogNotes(StationState state) => notes.TryGetValue(state, out var known) ? known : notes[state] = WeighNotes(state);

    private double WeighNotes(StationState state)
    {
        var alone = Foresee(state, null, null);
        return alone.LogRest - state.LogPrior + LogFlows(alone, Fed.Nowhere(flows.Select(r => r.Index + 1).DefaultIfEmpty().Max()), 0)
            + together.Sum(t => t.Expected(this, state, t.Sound).LogDensity(t.Reading.Si, t.Reading.Sigma));
    }

    /// <summary>What it gives is one unknown for all readings between which nothing was mended.</summary>
    private double LogFlows(Foreseen state, Fed fed, double elsewhere)
    {
        var sum = 0.0;
        Span<Read> read = flows.Count <= MostOnStack ? stackalloc Read[flows.Count] : new Read[flows.Count];
        foreach (var (expected, alike) in state.Flows)
        {
            for (var k = 0; k < alike.Length; k++)
            {
                var (reading, index) = flows[alike[k]];
                read[k] = Read.Of(reading, Elsewhere(reading, fed[index], elsewhere));
            }

            sum += expected.LogDensity(read[..alike.Length], apart);
        }

        return sum;
    }

    /// <summary>What each state foresees, worked out once.</summary>
    private IReadOnlyList<Foreseen> Foresee(SupplyState? supply, WaterFault? leaking)
    {
        if (!foreseen.TryGetValue((supply, leaking), out var known))
        {
            foreseen[(supply, leaking)] = known = [.. States.Select(s => Foresee(s, supply, leaking))];
        }

        return known;
    }

    private Foreseen Foresee(StationState state, SupplyState? supply, WaterFault? leaking) => new(
        [.. Enumerable.Range(0, flows.Count).GroupBy(k => Standing(state, flows[k].Reading.Moment)).Select(g => (Expected(state, supply, flows[g.First()].Reading), g.ToArray()))],
        state.LogPrior + LogRead(state, supply, others) + watches.Sum(w => LogSeen(state, supply, w, leaking)));

    /// <summary>ln of the chance of readings by gauge and watch: those of one thing, nothing mended between them, are readings of one amount.</summary>
    private double LogRead(StationState state, SupplyState? supply, IEnumerable<WaterReading> readings) => readings
        .GroupBy(r => (r.Probe.Measures, Standing(state, r.Moment)))
        .Sum(g => Expected(state, supply, g.First()).LogDensity([.. g.Select(r => Read.Of(r))], apart));

    /// <summary>ln of the chance of a reading beside those before it, nothing else running.</summary>
    public double LogSpeaks(StationState state, SupplyState? supply, WaterReading reading)
    {
        var before = Readings.TakeWhile(r => r != reading).Where(r => r.Probe.Measures == reading.Probe.Measures).ToList();
        return LogRead(state, supply, [.. before, reading]) - LogRead(state, supply, before);
    }

    /// <summary>Which of a state's faults stood at a moment.</summary>
    private int Standing(StationState state, Moment moment) => state.Faults.Select((f, k) => owner.IsCured(f, things, moment) ? 0 : 1 << k).Sum();

    private Amount Flow(StationState state, IEnumerable<WaterFault> active, SupplyState? supply)
    {
        var share = state.Wiring.StaysShut ? Trace : state.Wiring.Valves;
        var sound = usual.Of(Station, supply);
        var flow = Times(new Amount(sound with { Median = sound.Median * share }), active, null, f => f.FlowFactor);
        return state.Wiring.StaysShut ? flow : active.Aggregate(flow, (f, fault) => fault.AddsLitresPerMinute is { } adds ? f.Plus(Amount.Of(adds, "L/min").Base) : f);
    }

    private static Amount Times(Amount amount, IEnumerable<WaterFault> active, SupplyState? supply, Func<WaterFault, Spread?> factor) =>
        active.Concat(supply?.Reaching ?? []).Aggregate(amount, (a, fault) => a.Times(factor(fault)));

    private IReadOnlyList<WaterFault> Active(StationState state, Moment moment) => state.Faults.Count == 0 ? [] : [.. state.Faults.Where(f => !owner.IsCured(f, things, moment))];

    /// <summary>None, one or two faults where the wiring is as usual, and one at most with each other thing that the wiring may make of it.</summary>
    private IEnumerable<StationState> Combined(IReadOnlyList<WiringState> wiring)
    {
        var faults = owner.Water.Of(WaterScope.Station).Where(Bears).ToList();
        var none = faults.Sum(f => Math.Log(1 - Rate(f)));
        double LogOdds(WaterFault fault) => Rate(fault) is var rate ? Math.Log(rate / (1 - rate)) : 0;
        var sets = new List<(IReadOnlyList<WaterFault> Faults, double LogPrior)> { ([], none) };
        for (var a = 0; a < faults.Count; a++)
        {
            sets.Add(([faults[a]], none + LogOdds(faults[a])));
            sets.AddRange(faults.Take(a).Select(b => ((IReadOnlyList<WaterFault>)[b, faults[a]], none + LogOdds(faults[a]) + LogOdds(b))));
        }

        // Where the wires have it otherwise than usual, one fault of the water beside that stands for all sets.
        var few = sets.Where(s => s.Faults.Count < 2).ToList();
        var rest = LogMath.LogSumExp([.. sets.Select(s => s.LogPrior)]) - LogMath.LogSumExp([.. few.Select(s => s.LogPrior)]);
        return from state in wiring
               where state.Probability > 0
               let usual = state is { Valves: 1, StaysShut: false }
               from set in usual ? sets : few
               select new StationState(set.Faults, state, set.LogPrior + (usual ? 0 : rest) + Math.Log(state.Probability));
    }

    private double Rate(WaterFault fault) => heldDown.Rate(fault, lowHead.Rate(fault));

    /// <summary>What changes nothing that is noted can be left out: it stays as likely as it was.</summary>
    private bool Bears(WaterFault fault) =>
        (HasFlow && (fault.FlowFactor ?? fault.AddsLitresPerMinute) is not null)
        || (watches.Count > 0 && fault.Seen.Count > 0)
        || others.Any(r => r.Probe.Measures switch
        {
            WaterMeasure.OutletPressure => fault.OutletPressureFactor,
            WaterMeasure.OpeningTime => fault.OpeningFactor,
            WaterMeasure.Evenness => fault.EvennessFactor,
            _ => fault.ClosingFactor,
        } is not null);

    /// <param name="Flows">What readings of the meter that are alike are to show, and their numbers.</param>
    /// <param name="LogRest">ln of the chance of all other notes, the prior counted in.</param>
    private sealed record Foreseen(IReadOnlyList<(Amount Expected, int[] Alike)> Flows, double LogRest);
}
