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
    private readonly Lazy<TiedPlaces> tied;
    private readonly Lazy<IReadOnlyList<Evidence>> evidence;
    private readonly Dictionary<string, Unknowns> unknowns = new(StringComparer.Ordinal);

    /// <param name="heard">What other notes than those of the wires say of them.</param>
    public Case(PropertyHistory history, PracticeBook book, Func<Case, IReadOnlyList<Evidence>>? heard = null)
    {
        History = history;
        Book = book;
        View = history.Now;
        tied = new Lazy<TiedPlaces>(() => TiedPlaces.Of(history, book));
        Cures = new Cures(history, book);
        Paths = new PathFinder(View, book).All().ToDictionary(p => p.Station, StringComparer.Ordinal);
        Supplies = new Supplies(history, book);
        var rate = book.Faults.Where(f => f.Scope == FaultScope.Note).Sum(f => f.Rate);
        LogWrongNote = Math.Log(rate / (1 - rate));
        Suspects = new SuspectList(book, [.. Paths.Values]);
        var finder = new EvidenceFinder(this);
        BenchesNow = Benches(Moment.Last);
        var noted = finder.Find();
        evidence = new Lazy<IReadOnlyList<Evidence>>(() => heard is null ? noted : [.. noted, .. heard(this)]);
        Unexplained = [.. Supplies.Strange()];
        Problems = finder.Problems;
    }

    public PropertyHistory History { get; }

    public PracticeBook Book { get; }

    /// <summary>How far the answer that is asked for has come.</summary>
    public Pace Pace { get; } = new();

    public PropertyView View { get; }

    /// <summary>Where taped distances put things.</summary>
    public TiedPlaces Tied => tied.Value;

    public Cures Cures { get; }

    /// <summary>Paths of the present epoch, by station.</summary>
    public IReadOnlyDictionary<string, StationPath> Paths { get; }

    public Supplies Supplies { get; }

    public SuspectList Suspects { get; }

    public IReadOnlyList<Evidence> Evidence => evidence.Value;

    /// <summary>log of the prior odds that one note is wrong; minus infinity where the practice book knows of none.</summary>
    public double LogWrongNote { get; }

    /// <summary>Readings of a supply that none in order shows.</summary>
    public IReadOnlyList<Observed<ReadingFact>> Unexplained { get; }

    public IReadOnlyList<Problem> Problems { get; }

    /// <summary>Whether two stations may return by different commons, nobody having noted by which: several were seen at the controller, and the two lie in different cables.</summary>
    public bool MayReturnApart(StationPath one, StationPath other) =>
        one.Common is null && other.Common is null && one.Legs[0].Id != other.Legs[0].Id
        && View.Ends.Values.Count(e => e.Common == true && View.Identity.Of(e.Place) == one.Controller) > 1;

    public BenchStore Benches(Moment moment)
    {
        var epoch = History.EpochAt(moment);
        if (!benches.TryGetValue(epoch, out var store))
        {
            var view = History.At(moment);
            var paths = new PathFinder(view, Book).All().ToDictionary(p => p.Station, StringComparer.Ordinal);
            foreach (var path in paths.Values)
            {
                Unknowns(path.Controller).Take(path);
            }

            store = new BenchStore(paths, Book, controller => Supplies.Of(view, controller, epoch), Unknowns);
            benches[epoch] = store;
        }

        return store;
    }

    /// <summary>The benches of the property as it stands now, for readings not taken yet.</summary>
    public BenchStore BenchesNow { get; }

    /// <summary>What the readings of one controller share; complete once every epoch that a note asks for has its benches.</summary>
    public Unknowns Unknowns(string controller)
    {
        if (!unknowns.TryGetValue(controller, out var known))
        {
            known = new Unknowns(Book);
            unknowns[controller] = known;
        }

        return known;
    }
}
