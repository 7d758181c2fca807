using Underturf.Networks.Hydraulics;
using Underturf.Property;
using Underturf.Quantities;

namespace Underturf.Reasoning.Water;

/// <summary>Works out what water does here, by the pipes that are noted, with what is believed of the supply.</summary>
/// <param name="shared">Stations that run several valves by what the wires say, by their ids.</param>
internal sealed class FlowWriter(WaterBelief belief, OpenQuestion? idle, IReadOnlyDictionary<string, SharedStation> shared)
{
    /// <summary>How often a station's outlets are scaled to what the meter showed of it.</summary>
    private const int Fittings = 4;

    private readonly Dictionary<string, double> flows = new(StringComparer.Ordinal);
    private readonly Dictionary<string, ValvesRunning> run = shared.ToDictionary(s => s.Key, s => ValvesRunning.Of(s.Value.Valves.Count), StringComparer.Ordinal);
    private readonly (double Middle, double Spread)[] unknowns = Unknowns(belief);

    private WaterCase Owner => belief.Owner;

    private PropertyView View => Owner.View;

    /// <param name="stations">Ids of those that run together; each alone where there are none.</param>
    public Outcome<FlowAnswer> Write(IReadOnlyList<string> stations)
    {
        var rows = new List<StationFlow>();
        foreach (var running in stations.Count > 0 ? [stations] : View.Stations.Keys.OrderBy(View.StationNumber, NaturalOrder.Instance).ThenBy(s => s, NaturalOrder.Instance).Select(s => (IReadOnlyList<string>)[s]))
        {
            var made = Rows(running);
            if (!made.Succeeded)
            {
                return made.Problem!;
            }

            rows.AddRange(made.Value);
        }

        var likely = belief.LikeliestSupply;
        var (level, levelSpread, loss, lossSpread) = belief.Supply.Believed(belief.SupplyStates[likely]);
        return new FlowAnswer(
            Notebook.Engine,
            Owner.Book.Version,
            new SupplyFlow(level, levelSpread, loss, lossSpread, belief.Supply.UsualFlow, belief.SupplyStates[likely].Faults is { Count: > 0 } faults ? string.Join(" and ", faults.Select(f => f.Say)) : "in order", belief.ShareOfSupply(likely)),
            stations.Count > 0,
            rows,
            idle?.Explanations[0].Summary,
            idle?.WaterLost,
            [.. Unknown()])
        {
            Report = new WaterReporter(belief, idle).Write(),
        };
    }

    /// <summary>
    /// With some of its valves, each with the like share of the outlets: of fewer the flow is less and the pressure higher, so that each gives more than
    /// its share.
    /// </summary>
    /// <param name="valves">That it runs.</param>
    /// <param name="part">Of them that run.</param>
    public Outcome<PartFlow> Part(string station, int valves, int part)
    {
        run[station] = ValvesRunning.Of(valves);
        Fit(station);
        run[station] = new ValvesRunning(valves, part);
        var rows = Rows([station]);
        return rows.Succeeded
            ? new PartFlow(rows.Value[0].CubicMetresPerSecond, rows.Value[0].SpreadCubicMetresPerSecond, rows.Value[0].OutletPascals, rows.Value[0].OutletSpreadPascals, Metered(station) is not null)
            : rows.Problem!;
    }

    private Outcome<IReadOnlyList<StationFlow>> Rows(IReadOnlyList<string> running)
    {
        foreach (var station in running)
        {
            Fit(station);
        }

        var middle = Solve(running, -1, 0);
        if (!middle.Succeeded)
        {
            return middle.Problem!;
        }

        var moved = Enumerable.Range(0, unknowns.Length).Select(k => (Up: Solve(running, k, 1), Down: Solve(running, k, -1))).Where(m => m.Up.Succeeded && m.Down.Succeeded).ToList();
        return running.Select(s => Row(s, middle.Value, [.. moved.Select(m => (m.Up.Value, m.Down.Value))])).ToList();
    }

    private StationFlow Row(string station, Solved middle, IReadOnlyList<(Solved Up, Solved Down)> moved)
    {
        var piping = middle.Pipes.PipingOf(station);
        var (pipe, speed) = piping == StationPiping.Unknown ? (null, null) : Fastest(middle);
        var read = belief.Meter.LastOrDefault(r => r.Station == station)?.Si;
        var tooFast = speed > Owner.Water.Isolating.FlowVelocityMetresPerSecond;
        return new StationFlow(
            station,
            View.StationNumber(station),
            View.Stations[station].Waters,
            middle.FlowOf(station),
            Spread(moved, s => s.FlowOf(station)),
            read,
            middle.Solution.PressurePascals(middle.Pipes.PointOfConnection) ?? 0,
            middle.OutletPascals(station),
            Spread(moved, s => s.OutletPascals(station)),
            speed,
            pipe,
            tooFast,
            speed is { } v ? Rise(middle, v) : null)
        {
            Caught = Owner.CaughtOn(station),
            Piping = piping,
            Valves = shared.TryGetValue(station, out var several) ? new ValveCount(several.Valves.Count, several.Grade, several.CountProbability * several.Probability) : null,
        };
    }

    /// <summary>Each unknown moves the answer by itself; the moves add up as independent errors do.</summary>
    private static double Spread(IReadOnlyList<(Solved Up, Solved Down)> moved, Func<Solved, double> of) =>
        Math.Sqrt(moved.Sum(m => Math.Pow((of(m.Up) - of(m.Down)) / 2, 2)));

    private static (string? Pipe, double? Speed) Fastest(Solved solved)
    {
        var network = solved.Pipes.Network;
        var piped = Enumerable.Range(0, network.Elements.Count).Where(e => network.Elements[e].Kind == PipeElementKind.Pipe && solved.Carries(e) && solved.Solution.VelocityMetresPerSecond(e) is > 0).ToList();
        return piped.Count == 0 ? (null, null) : piped.MaxBy(e => solved.Solution.VelocityMetresPerSecond(e)) is var e ? (network.Elements[e].Name, solved.Solution.VelocityMetresPerSecond(e)) : default;
    }

    /// <summary>A bound: the wall gives nowhere, and all the pipe that carries the flow is stopped.</summary>
    private double? Rise(Solved solved, double speed)
    {
        var network = solved.Pipes.Network;
        var length = Enumerable.Range(0, network.Elements.Count).Where(solved.Carries).Sum(e => network.Elements[e].LengthMetres);
        var wave = Surge.WaveMetresPerSecond(network.Water, 0, 1, 1);
        return length > 0 ? Surge.RisePascals(network.Water, speed, wave, length, Owner.Water.Usual.ClosingSeconds.Median) : null;
    }

    /// <summary>Static pressure, loss on the way, and what outlets give: middles and standard deviations, the last as a logarithm.</summary>
    private static (double Middle, double Spread)[] Unknowns(WaterBelief belief)
    {
        var (level, levelSpread, loss, lossSpread) = belief.Supply.Believed(belief.SupplyStates[belief.LikeliestSupply]);
        return [(level, levelSpread), (loss, Math.Min(lossSpread, loss * 0.9)), (0, belief.Owner.Water.Usual.OutletsDiffer)];
    }

    private Outcome<Solved> Solve(IReadOnlyList<string> running, int moved, int way)
    {
        double Value(int k) => unknowns[k].Middle + (k == moved ? way * unknowns[k].Spread : 0);
        var (curve, devices) = belief.Supply.Way(Value(0), Value(1));
        var pipes = new PipeRecord(Owner, curve, new HashSet<string>(), running, FlowOf, Math.Exp(Value(2)), ValvesOf, devices);
        var solution = pipes.Network.Solve();
        return solution.Succeeded ? new Solved(pipes, solution.Value) : solution.Problem!;
    }

    private ValvesRunning ValvesOf(string station) => run.GetValueOrDefault(station, ValvesRunning.One);

    /// <summary>What the meter showed of it last.</summary>
    private double? Metered(string station) => belief.Meter.LastOrDefault(r => r.Station == station && r.Si > 0)?.Si;

    /// <summary>Outlets that nobody has noted are such that the station gives what the meter showed, or each of its valves what is usual.</summary>
    private void Fit(string station)
    {
        if (flows.ContainsKey(station))
        {
            return;
        }

        var wanted = Metered(station) ?? ValvesOf(station).All * belief.Flows.Of(station).Median;
        flows[station] = wanted;
        for (var round = 0; round < Fittings && Solve([station], -1, 0) is { Succeeded: true, Value: var solved } && solved.FlowOf(station) is > 0 and var given; round++)
        {
            flows[station] *= wanted / given;
        }
    }

    private double FlowOf(string station) => flows.GetValueOrDefault(station, belief.Flows.Of(station).Median);

    private IEnumerable<string> Unknown()
    {
        if (View.Pipes.Count == 0)
        {
            yield return "no pipe is noted: every station is reckoned straight behind the point of connection";
        }

        foreach (var line in Apart())
        {
            yield return line;
        }

        foreach (var (id, pipe) in View.Pipes)
        {
            var lacks = new[] { PipeLengths.Metres(View, pipe) is null ? "length" : null, PipeBores.Metres(Owner.Water, pipe) is null ? "size" : null }.OfType<string>().ToList();
            if (lacks.Count > 0)
            {
                yield return $"{View.Name(id)}, from {View.Name(pipe.From)} to {View.Name(pipe.To)}: no {string.Join(" and no ", lacks)}, so that it counts as losing nothing: {string.Join("; ", lacks.Select(l => l == "length" ? "pace it" : "read what is printed on it, or measure the inside"))}, and note it again";
            }
        }

        if (View.WaterSupplies.Keys.All(s => Owner.Heights.Noted(s) is null) && Owner.Heights.Any)
        {
            yield return "no height of the point of connection is noted: it counts as the middle of the heights that are";
        }

        foreach (var line in Owner.LeftOut.Concat(Taken()))
        {
            yield return line;
        }

        if (belief.Supply.Readings.Count == 0)
        {
            yield return $"no pressure {(Owner.LeftOut.Count > 0 ? "that counts " : string.Empty)}was read at the point of connection: what is usual stands in";
        }
    }

    /// <summary>What is noted of meter and backflow device beside what the gauge leaves for them.</summary>
    private IEnumerable<string> Taken()
    {
        var (_, _, loss, spread) = belief.Supply.Believed(belief.SupplyStates[belief.LikeliestSupply]);
        var (say, taken) = (new WaterSay(Owner.History.Facts.UsesUsUnits), belief.Supply.Devices.LossPascals(belief.Supply.UsualFlow));
        if (taken > loss + (Owner.Book.Questions.DisagreeSpreads * spread))
        {
            yield return $"{string.Join(" and ", belief.Supply.Devices.All.Select(d => d.Name))} would take {say.Pressure(taken)} of {say.Flow(belief.Supply.UsualFlow)} by what is noted, but no more than {say.Pressure(loss, spread)} are lost in all by the gauge ({string.Join(", ", belief.Supply.Readings.Select(r => r.Moment.Entry))}): read the pressures once more, or note the devices again; they count for no more than all";
        }
    }

    /// <summary>Stations that pipes do not lead to, though some are noted.</summary>
    private IEnumerable<string> Apart()
    {
        var of = View.Pipes.Count == 0 ? null : View.Stations.Keys.ToLookup(PipeRecord.Open(Owner).PipingOf, View.StationNumber);
        if (of?[StationPiping.Unknown].ToList() is { Count: > 0 } bare)
        {
            yield return $"no pipe to station {NumberRuns.Say(bare)} is noted: reckoned straight behind the point of connection";
        }

        if (of?[StationPiping.Apart].ToList() is { Count: > 0 } apart)
        {
            yield return $"the pipe to station {NumberRuns.Say(apart)} is joined to nothing that water comes from: reckoned straight behind the point of connection";
        }
    }

    private sealed record Solved(PipeRecord Pipes, PipeSolution Solution)
    {
        /// <summary>What is left over of the rounds of solving is no flow.</summary>
        private const double Trace = 1e-3;

        private readonly double most = Enumerable.Range(0, Pipes.Network.Elements.Count).Select(e => Math.Abs(Solution.FlowCubicMetresPerSecond(e))).DefaultIfEmpty().Max();

        public bool Carries(int element) => Math.Abs(Solution.FlowCubicMetresPerSecond(element)) > Trace * most;

        public double FlowOf(string station) => Pipes.OutletsOf(station).Sum(Solution.OutletCubicMetresPerSecond);

        public double OutletPascals(string station) => Pipes.OutletsOf(station).Select(o => Solution.PressurePascals(Pipes.Network.Outlets[o].Node) ?? 0).DefaultIfEmpty().Min();
    }
}
