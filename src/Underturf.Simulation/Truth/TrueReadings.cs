using Underturf.FieldLog;
using Underturf.Networks.Wiring;
using Underturf.Networks.Wiring.HalfWave;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Simulation.Engines;

namespace Underturf.Simulation;

/// <summary>What reaches an instrument in a made-up property, before the instrument's own error.</summary>
internal sealed class TrueReadings
{
    private readonly TrueWiring truth;
    private readonly TestMeter meter;
    private readonly Func<string, double> supplyVolts;
    private readonly Lazy<TrueNetwork> direct;
    private readonly Lazy<TrueNetwork> holding;
    private readonly Lazy<TrueNetwork> inrush;

    /// <param name="supplyVolts">Open volts of a controller's supply.</param>
    public TrueReadings(TrueWiring truth, Func<string, double> supplyVolts)
    {
        this.truth = truth;
        this.supplyVolts = supplyVolts;
        meter = new TestMeter(truth.Numbers);
        direct = new(() => new TrueNetwork(truth, null));
        holding = new(() => new TrueNetwork(truth, truth.Book.Coil.HoldingReactanceOhms));
        inrush = new(() => new TrueNetwork(truth, truth.Book.Coil.InrushReactanceOhms));
    }

    /// <returns>SI; infinite for over range. A problem only where the engine has one.</returns>
    public Outcome<double> Exact(Measure measure, ReadingFact asked, ICircuitEngine engine)
    {
        var station = asked.Stations.Count > 0 ? asked.Stations[0] : string.Empty;
        var at = asked.Place ?? (station.Length > 0 ? truth.Path(station).Valves[0].Place : string.Empty);
        return measure switch
        {
            Measure.StationOhms => Ohms(engine, n => n.CircuitOf(station), n => (n.Terminal(station), n.Common(station))),
            Measure.ReversedOhms => Ohms(engine, n => n.CircuitOf(station), n => (n.Common(station), n.Terminal(station))),
            Measure.OtherCommonOhms => truth.WrongCommon(station) is { } other
                ? Ohms(engine, n => n.CircuitOf(station), n => (n.Terminal(station), n.CommonTerminal(other)))
                : double.PositiveInfinity,
            Measure.BetweenStationsOhms => Ohms(engine, n => n.CircuitOf(asked.Stations), n => (n.Terminal(station), n.Terminal(asked.Stations[1]))),
            Measure.OutwardOhms => Ohms(engine, n => n.Opened(n.CircuitOf(station), station, at), n => (n.Node(station, at), n.CommonNode(station, at))),
            Measure.CoilOhms => direct.Value.ElementAt(direct.Value.Coil(station, at)).Ohms,
            Measure.JoinedOhms => Ohms(engine, n => n.Bridged(n.CircuitOf(station), station, at), n => (n.Terminal(station), n.Common(station))),
            Measure.EarthOhms => EarthOhms(station),
            Measure.TerminalVolts => Volts(engine, station, n => (n.Terminal(station), n.Common(station))),
            Measure.CoilVolts => Volts(engine, station, n => (n.Node(station, at), n.CommonNode(station, at))),
            Measure.StationAmps => Amperes(engine, Fed(holding.Value, station)),
            _ => supplyVolts(asked.Place ?? string.Empty),
        };
    }

    /// <summary>Whether another engine can be asked for it: it comes out of the solved network.</summary>
    public static bool IsSolved(Measure measure) => measure is not (Measure.CoilOhms or Measure.EarthOhms or Measure.SupplyVolts);

    /// <summary>Pull of a coil before it moves, as a share of what pulls it in, and as a share of what makes it chatter.</summary>
    /// <param name="terminal">The station switched on.</param>
    public (double PullsIn, double Chatters) Pull(string terminal, string fed) =>
        Pull(Fed(inrush.Value, terminal), inrush.Value.Coil(fed, truth.Path(fed).Valves[0].Place), truth.Numbers.PullInVolts(fed));

    /// <summary>Whether any of the further valves of a device is fed enough to open.</summary>
    public bool OtherOpens(TrueFault device, string terminal)
    {
        var (fed, pullIn) = (Fed(inrush.Value, terminal), truth.Numbers.PullInVolts($"{device.Station} other"));
        return inrush.Value.BranchCoils(device).Any(coil => Pull(fed, coil, pullIn).PullsIn >= 1);
    }

    /// <summary>Volts of a sine; behind a diode the rms amperes, because the mean pull goes with their square, against those of a sine.</summary>
    private (double PullsIn, double Chatters) Pull(FedNetwork fed, int coil, double pullInVolts)
    {
        var element = fed.Property.ElementAt(coil);
        double volts;
        if (fed.Circuit.Diodes.Count == 0)
        {
            volts = OwnEngine.Instance.Volts(fed.Circuit, element.A, element.B, new FedMeter(truth.Book.Supply.Hertz, MeterResponse.TrueRms)).Value;
        }
        else
        {
            var amperes = fed.Circuit.SolvePeriodic(truth.Book.Supply.Hertz).Value.Current(coil).Value.Rms();
            volts = double.IsInfinity(element.Ohms) ? 0 : amperes * double.Hypot(element.Ohms, 2 * Math.PI * truth.Book.Supply.Hertz * element.Henries);
        }

        return (volts / pullInVolts, volts / truth.Book.Coil.ChatterVolts);
    }

    /// <summary>Where diodes are, the first range that shows a figure counts.</summary>
    private Outcome<double> Ohms(ICircuitEngine engine, Func<TrueNetwork, DiodeNetwork> circuitOf, Func<TrueNetwork, (int A, int B)> across)
    {
        var (circuit, (red, black)) = (circuitOf(direct.Value), across(direct.Value));
        if (circuit.Diodes.Count == 0)
        {
            return engine.Ohms(circuit, red, black, null);
        }

        foreach (var (most, drive) in meter.Ranges)
        {
            var ohms = engine.Ohms(circuit, red, black, drive);
            if (!ohms.Succeeded || ohms.Value <= most)
            {
                return ohms;
            }
        }

        return double.PositiveInfinity;
    }

    /// <summary>Both ends free, so only this station's conductor and what leaks from it counts.</summary>
    private double EarthOhms(string station)
    {
        var leaks = truth.Faults.Where(f => truth.Practice(f).EarthOhms is not null && f.Station == station).Sum(f => 1 / f.Amount);
        return 1 / (leaks + (1 / truth.Numbers.LeakOhms(station)));
    }

    private Outcome<double> Volts(ICircuitEngine engine, string station, Func<TrueNetwork, (int A, int B)> across)
    {
        var (fed, (a, b)) = (Fed(holding.Value, station), across(holding.Value));
        return engine.Volts(fed.Circuit, a, b, new FedMeter(truth.Book.Supply.Hertz, meter.Response));
    }

    private Outcome<double> Amperes(ICircuitEngine engine, FedNetwork fed) =>
        engine.Amperes(fed.Circuit, fed.Output, new FedMeter(truth.Book.Supply.Hertz, meter.Response));

    private FedNetwork Fed(TrueNetwork network, string station)
    {
        var weak = truth.Faults.Where(f => truth.Practice(f).SourceOhms is not null && truth.Concerns(f, station)).Sum(f => f.Amount);
        var supply = truth.Book.Supply;
        var plate = new Transformer(supply.Volts, supply.RatedVolts, supply.RatedVoltAmperes);
        return new FedNetwork(network, station, supplyVolts(truth.Path(station).Controller), plate.InnerOhms + weak);
    }
}
