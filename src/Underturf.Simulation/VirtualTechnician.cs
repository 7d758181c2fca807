using System.Globalization;
using Underturf.FieldLog;
using Underturf.Networks.Wiring;
using Underturf.Numerics;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Translation;

namespace Underturf.Simulation;

/// <summary>Takes readings and runs stations in a made-up property, with the instruments of the practice book and their errors.</summary>
public sealed class VirtualTechnician
{
    private readonly PracticeBook book;
    private readonly TrueNumbers numbers;
    private readonly IReadOnlyDictionary<string, StationPath> paths;
    private readonly IReadOnlyList<TrueFault> faults;
    private readonly double supplyVolts;
    private readonly double tailShare;
    private readonly Lazy<TrueNetwork> direct;
    private readonly Lazy<TrueNetwork> holding;
    private readonly Lazy<TrueNetwork> inrush;

    public VirtualTechnician(IReadOnlyList<StationPath> paths, IReadOnlyList<TrueFault> faults, PracticeBook book, TrueNumbers numbers, double? supplyVolts, double tailShare = 0)
    {
        this.tailShare = tailShare;
        this.book = book;
        this.numbers = numbers;
        this.paths = paths.ToDictionary(p => p.Station, StringComparer.Ordinal);
        this.faults = faults;
        this.supplyVolts = supplyVolts ?? (book.Supply.Volts + (book.Supply.VoltsSpread * numbers.Draw("supply")));
        direct = new(() => new TrueNetwork(paths, book, numbers, faults, null));
        holding = new(() => new TrueNetwork(paths, book, numbers, faults, book.Coil.HoldingReactanceOhms));
        inrush = new(() => new TrueNetwork(paths, book, numbers, faults, book.Coil.InrushReactanceOhms));
    }

    /// <summary>The reading with what the instrument shows filled in. <paramref name="name"/> makes its chance error its own.</summary>
    public ReadingFact Read(ReadingFact asked, string name)
    {
        var probe = book.Probe(asked.How) ?? throw new ArgumentException($"'{asked.How}' is no probe of the practice book.", nameof(asked));
        var instrument = book.Instrument(probe);
        var exact = Exact(probe.Measures, asked) + (instrument.Dimension == Dimension.Resistance ? Drift(asked, name) : 0);
        var error = (exact * numbers.MeterBias(instrument.Name)) + (0.85 * Tail(name) * instrument.Sigma(exact) * numbers.Draw($"error {name}"));
        return asked with
        {
            Value = Show(double.IsInfinity(exact) ? exact : exact + error, instrument),
            Drifting = asked.Drifting || (!double.IsInfinity(exact) && Unsettled(probe, asked, name)),
        };
    }

    /// <summary>Some readings are worse than the instrument: a dirty clip, a hurried glance.</summary>
    private double Tail(string name) => tailShare > 0 && Normal.Cdf(numbers.Draw($"tail {name}")) < tailShare ? Tails : 1;

    private const double Tails = 4;

    /// <summary>Runs a station: how its valve behaves and which places water.</summary>
    /// <param name="placeOf">The place that a station's own valve waters.</param>
    public TestFact Run(string station, Func<string, string> placeOf)
    {
        var wired = faults.FirstOrDefault(f => Practice(f).Swaps && (f.Station == station || f.Other == station));
        var fed = wired is null ? station : wired.Station == station ? wired.Other! : wired.Station!;
        var volts = CoilVolts(station, fed);
        var pullIn = numbers.PullInVolts(fed);
        var stuck = faults.Any(f => Practice(f).StaysShut > 0 && f.Station == station);
        var behaved = stuck || volts < book.Coil.ChatterVolts ? "stays shut" : volts < pullIn ? "chatters" : "opens";
        var extra = faults
            .Where(f => Practice(f).Scope == FaultScope.Everywhere || f.Station == station || (f.Other == station && Practice(f).Joins))
            .SelectMany(f => Practice(f).Joins ? [placeOf(f.Station == station ? f.Other! : f.Station!)] : f.Waters);
        return new TestFact { Station = station, Behaved = behaved, Watered = behaved == "opens" ? [placeOf(fed), .. extra] : [] };
    }

    private double Exact(Measure measure, ReadingFact asked)
    {
        var station = asked.Stations.Count > 0 ? asked.Stations[0] : string.Empty;
        var at = asked.Place ?? (station.Length > 0 ? paths[station].Valves[0].Place : string.Empty);
        return measure switch
        {
            Measure.StationOhms => Ohms(n => (n.Terminal(station), n.Common)),
            Measure.BetweenStationsOhms => Ohms(n => (n.Terminal(station), n.Terminal(asked.Stations[1]))),
            Measure.OutwardOhms => Ohms(n => (n.Node(station, at), n.CommonNode(at))),
            Measure.CoilOhms => direct.Value.CoilOhms(station, at),
            Measure.JoinedOhms => direct.Value.Bridged(station, at).Ohms(direct.Value.Terminal(station), direct.Value.Common).Value.Ohms,
            Measure.EarthOhms => EarthOhms(station),
            Measure.TerminalVolts => Fed(holding.Value, station).Volts(n => (n.Terminal(station), n.Common)),
            Measure.CoilVolts => Fed(holding.Value, station).Volts(n => (n.Node(station, at), n.CommonNode(at))),
            Measure.StationAmps => Fed(holding.Value, station).Amperes(),
            _ => supplyVolts,
        };
    }

    private double Ohms(Func<TrueNetwork, (int A, int B)> across)
    {
        var (a, b) = across(direct.Value);
        return direct.Value.Network.Ohms(a, b).Value.Ohms;
    }

    /// <summary>Both ends free, so only this station's conductor and what leaks from it counts.</summary>
    private double EarthOhms(string station)
    {
        var leaks = faults.Where(f => Practice(f).EarthOhms is not null && f.Station == station).Sum(f => 1 / f.Amount);
        return 1 / (leaks + (1 / numbers.LeakOhms(station)));
    }

    /// <summary>Volts before pull-in at the coil of the station whose conductor sits on the terminal that is switched on.</summary>
    private double CoilVolts(string terminal, string fed)
    {
        var place = paths[fed].Valves[0].Place;
        return Fed(inrush.Value, terminal).Volts(n => (n.Node(fed, place), n.CommonNode(place)));
    }

    private FedNetwork Fed(TrueNetwork network, string station)
    {
        var weak = faults.Where(f => Practice(f).SourceOhms is not null).Sum(f => f.Amount);
        var transformer = new Transformer(book.Supply.Volts, book.Supply.RatedVolts, book.Supply.RatedVoltAmperes);
        return new FedNetwork(network, station, supplyVolts, transformer.InnerOhms + weak, book.Supply.Hertz);
    }

    /// <summary>Ohms by which a drifting fault differs this time.</summary>
    private double Drift(ReadingFact asked, string name) => Drifting(asked)
        .Sum(f => f.Amount * (Math.Exp(Practice(f).Drift * numbers.Draw($"drift {name}")) - 1));

    /// <summary>Whether the display would not settle: where a drifting fault lies in the measured path, with the chance that the book gives it.</summary>
    private bool Unsettled(ProbePractice probe, ReadingFact asked, string name) =>
        probe.Measures is Measure.StationOhms or Measure.BetweenStationsOhms or Measure.JoinedOhms
        && Drifting(asked).Any(f => Normal.Cdf(numbers.Draw($"unsettled {name}")) < Practice(f).Drifting);

    /// <summary>Drifting faults on the wires of the stations asked about, their common included.</summary>
    private IEnumerable<TrueFault> Drifting(ReadingFact asked) => faults.Where(f => Practice(f).Drift > 0 && (f.Station is null
        ? asked.Stations.Count > 0 && paths[asked.Stations[0]].LegTo(f.Place!) >= 0
        : asked.Stations.Contains(f.Station)));

    private FaultPractice Practice(TrueFault fault) => book.Faults.First(f => f.Id == fault.Fault);

    private static Shown Show(double si, InstrumentPractice instrument)
    {
        if (si > instrument.Most)
        {
            return Shown.OverRange;
        }

        var (unit, decimals) = instrument.Dimension switch
        {
            Dimension.Resistance => si switch { >= 2e6 => ("Mohm", 2), >= 2e3 => ("kohm", 2), _ => ("ohm", 1) },
            Dimension.Voltage => ("V", 1),
            _ => ("A", 2),
        };
        var shown = Math.Round(Math.Max(0, Units.In(si, unit)), decimals);
        var text = $"{shown.ToString("F" + decimals, CultureInfo.InvariantCulture)} {unit}";
        return new Shown(new Quantity(Units.From(shown, unit), instrument.Dimension, text));
    }
}
