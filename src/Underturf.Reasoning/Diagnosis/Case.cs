using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>Everything a diagnosis works on: the property's wires, the evidence on them, what work has cured, and the practice book.</summary>
internal sealed class Case
{
    private readonly Dictionary<int, BenchStore> benches = [];

    public Case(PropertyHistory history, PracticeBook book)
    {
        History = history;
        Book = book;
        View = history.Now;
        Levels = new CoilLevels(book);
        Cures = new Cures(history);
        Paths = new PathFinder(View, book).All().ToDictionary(p => p.Station, StringComparer.Ordinal);
        Suspects = new SuspectList(book, [.. Paths.Values]);
        var finder = new EvidenceFinder(this);
        Evidence = finder.Find();
        Unexplained = finder.Unexplained;
        Problems = finder.Problems;
    }

    public PropertyHistory History { get; }

    public PracticeBook Book { get; }

    public PropertyView View { get; }

    public CoilLevels Levels { get; }

    public Cures Cures { get; }

    /// <summary>Paths of the present epoch, by station.</summary>
    public IReadOnlyDictionary<string, StationPath> Paths { get; }

    public SuspectList Suspects { get; }

    public IReadOnlyList<Evidence> Evidence { get; }

    /// <summary>Readings of a kind that no model explains yet.</summary>
    public IReadOnlyList<Observed<ReadingFact>> Unexplained { get; }

    public IReadOnlyList<Problem> Problems { get; }

    public BenchStore Benches(Moment moment)
    {
        var epoch = History.EpochAt(moment);
        if (!benches.TryGetValue(epoch, out var store))
        {
            var view = History.At(moment);
            var paths = new PathFinder(view, Book).All().ToDictionary(p => p.Station, StringComparer.Ordinal);
            store = new BenchStore(paths, Book, controller => SupplyOf(view, controller));
            benches[epoch] = store;
        }

        return store;
    }

    /// <summary>The benches of the property as it stands now, for readings not taken yet.</summary>
    public BenchStore BenchesNow => Benches(Moment.Last);

    /// <summary>The transformer's volts as read idle, else as noted, else as usual.</summary>
    private Supply SupplyOf(PropertyView view, string controller)
    {
        var known = view.Controllers.GetValueOrDefault(controller);
        var hertz = known?.Frequency is { Hertz: > 0 } frequency ? frequency.Hertz : Book.Supply.Hertz;
        var idle = History.Facts.Readings.LastOrDefault(r => Book.Probe(r.Fact.How)?.Measures == Measure.SupplyVolts && Concerns(r.Fact, controller));
        return idle?.Fact.Value.Value?.Si is { } read
            ? new Supply(read, Book.Instrument(Book.Probe(idle.Fact.How)!).Sigma(read), hertz)
            : new Supply(known?.Supply is { Volts: > 0 } volts ? volts.Volts : Book.Supply.Volts, Book.Supply.VoltsSpread, hertz);
    }

    private bool Concerns(ReadingFact reading, string controller) =>
        reading.Value.Value is { Dimension: Dimension.Voltage, Si: > 0 } && (reading.Place is null || View.Identity.Of(reading.Place) == controller);
}
