using System.Globalization;
using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Translation;
using Underturf.Simulation.Engines;

namespace Underturf.Simulation;

/// <summary>Takes readings and runs stations in a made-up property, with the instruments of the practice book and their errors.</summary>
public sealed class VirtualTechnician
{
    private readonly PracticeBook book;
    private readonly TrueNumbers numbers;
    private readonly TrueWiring truth;
    private readonly TrueReadings exactly;
    private readonly double tailShare;

    public VirtualTechnician(IReadOnlyList<StationPath> paths, IReadOnlyList<TrueFault> faults, PracticeBook book, TrueNumbers numbers, double? supplyVolts, double tailShare = 0)
        : this(new TrueWiring(paths, faults, book, numbers), supplyVolts, tailShare)
    {
    }

    internal VirtualTechnician(TrueWiring truth, double? supplyVolts, double tailShare)
    {
        this.tailShare = tailShare;
        this.truth = truth;
        (book, numbers) = (truth.Book, truth.Numbers);
        exactly = new TrueReadings(truth, controller => supplyVolts ?? SupplyVolts(controller));
    }

    /// <summary>The reading with what the instrument shows filled in. <paramref name="name"/> makes its chance error its own.</summary>
    public ReadingFact Read(ReadingFact asked, string name) => Read(asked, name, OwnEngine.Instance).Value;

    /// <summary>The reading as one engine solves it; a problem only where that engine has one.</summary>
    public Outcome<ReadingFact> Read(ReadingFact asked, string name, ICircuitEngine engine)
    {
        var probe = Probe(asked);
        var instrument = book.Instrument(probe);
        var solved = exactly.Exact(probe.Measures, asked, engine);
        if (!solved.Succeeded)
        {
            return solved.Problem!;
        }

        var exact = solved.Value + (instrument.Dimension == Dimension.Resistance ? Drift(asked, name) : 0);
        var error = (exact * numbers.MeterBias(instrument.Name)) + (0.85 * Tail(name) * instrument.Sigma(exact) * numbers.Draw($"error {name}"));
        return asked with
        {
            Value = Show(double.IsInfinity(exact) ? exact : exact + error, instrument),
            Drifting = asked.Drifting || (!double.IsInfinity(exact) && Unsettled(probe, asked, name)),
        };
    }

    /// <summary>Whether a reading comes out of the solved network, so that another engine can be asked for it.</summary>
    internal bool IsSolved(ReadingFact asked) => TrueReadings.IsSolved(Probe(asked).Measures);

    /// <summary>Whether a figure moves from one reading to the next.</summary>
    internal bool Drifts(ReadingFact asked) => Drifting(asked).Any();

    private ProbePractice Probe(ReadingFact asked) =>
        book.Probe(asked.How) ?? throw new ArgumentException($"'{asked.How}' is no probe of the practice book.", nameof(asked));

    /// <summary>Some readings are worse than the instrument: a dirty clip, a hurried glance.</summary>
    private double Tail(string name) => tailShare > 0 && Normal.Cdf(numbers.Draw($"tail {name}")) < tailShare ? Tails : 1;

    private const double Tails = 4;

    /// <summary>Runs a station: how its valve behaves and which places water.</summary>
    /// <param name="placeOf">The place that a station's own valve waters.</param>
    public TestFact Run(string station, Func<string, string> placeOf)
    {
        var fed = truth.FedBy(station);
        var (pullsIn, chatters) = exactly.Pull(station, fed);
        bool Reaches(TrueFault f) => Practice(f).Scope == FaultScope.Everywhere ? truth.Concerns(f, station) : f.Station == fed;
        var stuck = truth.Faults.Any(f => Practice(f).StaysShut > 0 && Reaches(f));
        var behaved = stuck || chatters < 1 ? "stays shut" : pullsIn < 1 ? "chatters" : "opens";
        var extra = truth.Faults
            .Where(f => Reaches(f) || (f.Other == fed && Practice(f).Joins))
            .Where(f => f.Device is null || exactly.OtherOpens(f, station))
            .SelectMany(f => Practice(f).Joins ? [placeOf(TrueWiring.Partner(f, fed))] : f.Waters);
        return new TestFact { Station = station, Behaved = behaved, Watered = behaved == "opens" ? [placeOf(fed), .. extra] : [] };
    }

    /// <summary>
    /// Opens a place and looks: what is there is seen with the chance that the book gives it. What stations share is a note of its own, for all
    /// that pass; what is a station's own is another, and so is that nothing is to be seen.
    /// </summary>
    /// <param name="chance">A number between 0 and 1 for each fault at the place, in the order of the faults.</param>
    public IReadOnlyList<LookFact> Look(string place, Func<double> chance)
    {
        var seen = truth.Faults.Where(f => f.Place == place && chance() < Practice(f).Seen).ToList();
        var shared = seen.Where(f => f.Station is null).ToList();
        var notes = shared.Select(f => Found(place, [f], truth.Paths.Where(p => truth.Passes(f, p.Station)).Select(p => p.Station))).ToList();
        var own = seen.Except(shared).ToList();
        return shared.Count == 0 || own.Count > 0
            ? [.. notes, Found(place, own, own.SelectMany(f => new[] { f.Station, f.Other }).OfType<string>())]
            : notes;
    }

    private LookFact Found(string place, IEnumerable<TrueFault> faults, IEnumerable<string> stations) => new()
    {
        Place = place,
        Stations = [.. stations.Distinct()],
        Found = [.. faults.Select(f => Practice(f).FindingName).Distinct()],
    };

    /// <summary>Open volts of a controller's supply; the only one's has no name.</summary>
    private double SupplyVolts(string controller) =>
        book.Supply.Volts + (book.Supply.VoltsSpread * numbers.Draw(truth.Paths.All(p => p.Controller == truth.Paths[0].Controller) ? "supply" : $"supply {controller}"));

    /// <summary>Ohms by which a drifting fault differs this time.</summary>
    private double Drift(ReadingFact asked, string name) => Drifting(asked)
        .Sum(f => f.Amount * (Math.Exp(Practice(f).Drift * numbers.Draw($"drift {name}")) - 1));

    /// <summary>Whether the display would not settle: where a drifting fault lies in the measured path, with the chance that the book gives it.</summary>
    private bool Unsettled(ProbePractice probe, ReadingFact asked, string name) =>
        probe.Measures is Measure.StationOhms or Measure.ReversedOhms or Measure.BetweenStationsOhms or Measure.JoinedOhms
        && Drifting(asked).Any(f => Normal.Cdf(numbers.Draw($"unsettled {name}")) < Practice(f).Drifting);

    /// <summary>Drifting faults on the wires that a reading passes, their common included.</summary>
    private IEnumerable<TrueFault> Drifting(ReadingFact asked) => Probe(asked).Measures is Measure.CoilOhms or Measure.EarthOhms
        ? []
        : truth.Faults.Where(f => Practice(f).Drift > 0 && IsPassed(f, asked) && (f.Station is null
            ? asked.Stations.Count > 0 && truth.Passes(f, asked.Stations[0])
            : asked.Stations.Contains(f.Station)));

    /// <summary>A reading outward of an opened splice passes only what lies beyond it.</summary>
    private bool IsPassed(TrueFault fault, ReadingFact asked)
    {
        if (Probe(asked).Measures != Measure.OutwardOhms || asked.Place is null)
        {
            return true;
        }

        var path = truth.Path(asked.Stations[0]);
        var at = path.LegTo(fault.Place!);
        while (at >= 0 && path.Legs[at].Parent != path.LegTo(asked.Place))
        {
            at = path.Legs[at].Parent;
        }

        return at >= 0;
    }

    private FaultPractice Practice(TrueFault fault) => truth.Practice(fault);

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
