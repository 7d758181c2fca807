using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Moves;

namespace Underturf.Reasoning.Telling;

/// <summary>Two readings of the same thing in the same way, no work on it between, that cannot both be right; two runs that went differently.</summary>
internal sealed class Contradictions(Case matter)
{
    /// <summary>A world that gives each of two behaviours at least this chance has room for both.</summary>
    private const double Likely = 0.1;

    public IReadOnlyList<Conflict> Find() => [.. Readings(), .. Supplies(), .. Runs()];

    /// <summary>For <c>check</c>.</summary>
    public static IEnumerable<Problem> Notices(Case matter) => new Contradictions(matter).Find().Select(c => c.Notice);

    private IEnumerable<Conflict> Readings() => matter.Evidence.OfType<ReadingEvidence>()
        .Where(e => !e.Drifting)
        .GroupBy(e => (e.Measures, Key(e), e.Place, WorkOn(e)))
        .SelectMany(same => Pairs([.. same.OrderBy(e => e.Moment)], Disagree).Select(p => Reading(p.Before, p.After, p.IsAnswered)));

    private Conflict Reading(ReadingEvidence before, ReadingEvidence after, bool answered)
    {
        var path = matter.Paths[after.Stations[0]];
        return new Conflict(after.What, Note(before), Note(after), after.Stations, path.Controller, after.Place ?? path.Controller)
        {
            Minutes = matter.Book.Probes.First(p => p.Measures == after.Measures).Minutes,
            Caution = after.Caution,
            Asks = Asked.Again(after, matter.Book),
            IsOpen = !answered && IsLast(after),
            Reconciles = (world, _) => Drifts(world, before, after),
        };
    }

    private IEnumerable<Conflict> Runs() => matter.Evidence.OfType<RunEvidence>()
        .Where(e => e.Behaved is not null)
        .GroupBy(e => (e.Stations[0], WorkOn(e)))
        .SelectMany(same => Pairs([.. same.OrderBy(e => e.Moment)], (a, b) => a.Behaved != b.Behaved).Select(p => Run(p.Before, p.After, p.IsAnswered)));

    private Conflict Run(RunEvidence before, RunEvidence after, bool answered)
    {
        var controller = matter.Paths[after.Stations[0]].Controller;
        return new Conflict(after.What, Note(before), Note(after), after.Stations, controller, controller)
        {
            Minutes = matter.Book.Run.Minutes,
            Caution = matter.Book.Run.Caution,
            Asks = Asked.Again(after, matter.Book),
            IsOpen = !answered && IsLast(after),
            IsRun = true,
            Reconciles = (world, outlook) => IsReal(world, before, after)
                && before.ChanceToRepeat(world.Suspects, outlook) > Likely && after.ChanceToRepeat(world.Suspects, outlook) > Likely,
        };
    }

    private IEnumerable<Conflict> Supplies() => matter.Supplies.Disagreeing()
        .SelectMany(s => Pairs(s.Readings, matter.Supplies.AreApart).Select(p => Supply(s.Controller, p.Before, p.After, !p.IsAnswered && s.IsLast)));

    private Conflict Supply(string controller, Observed<ReadingFact> before, Observed<ReadingFact> after, bool open)
    {
        var probe = matter.Book.Probe(after.Fact.How)!;
        return new Conflict(probe.Name, (before.Entry.ToString(), before.Fact.Value.Value!.Value.Text), (after.Entry.ToString(), after.Fact.Value.Value!.Value.Text), [], controller, controller)
        {
            Minutes = probe.Minutes,
            Caution = probe.Caution,
            Asks = Asked.Reading(probe.Name, [], after.Fact.Place),
            IsOpen = open,
        };
    }

    /// <summary>Neighbours that disagree; answered where most of all notes of the thing agree with one of them.</summary>
    private static IEnumerable<(T Before, T After, bool IsAnswered)> Pairs<T>(IReadOnlyList<T> ordered, Func<T, T, bool> disagree)
    {
        var most = ordered.Count == 0 ? 0 : ordered.Max(a => ordered.Count(b => !disagree(a, b)));
        return ordered.Zip(ordered.Skip(1)).Where(p => disagree(p.First, p.Second)).Select(p => (p.First, p.Second, 2 * most > ordered.Count));
    }

    private int WorkOn(Evidence evidence) => matter.Cures.CountOn(matter.Paths[evidence.Stations[0]], evidence.Moment);

    private bool IsLast(Evidence evidence) => evidence.Moment >= matter.Cures.LastOn(matter.Paths[evidence.Stations[0]]);

    private static (string Entry, string Seen) Note(Evidence evidence) => (evidence.Entry.ToString(), evidence.Observed);

    private static string Key(Evidence evidence) => string.Join(' ', evidence.Stations.Order(StringComparer.Ordinal));

    /// <summary>A world that blames one of the notes, or anything, does not make both right.</summary>
    private static bool IsReal(World world, Evidence before, Evidence after) =>
        world.Suspects.All(s => s.Note != before.Entry && s.Note != after.Entry && s.Fault.Scope != FaultScope.Unmodelled);

    /// <summary>A fault whose ohms drift may show two figures that a sound circuit never would.</summary>
    private bool Drifts(World world, ReadingEvidence before, ReadingEvidence after)
    {
        var instrument = after.Display.Instrument;
        var drift = world.Suspects.Select(s => s.Fault.Drift * s.Amount).DefaultIfEmpty().Max();
        return drift > 0 && instrument.Dimension == Dimension.Resistance && IsReal(world, before, after)
            && before.Shown.Value is { } x && after.Shown.Value is { } y
            && Math.Abs(x.Si - y.Si) <= matter.Book.Questions.DisagreeSpreads * (double.Hypot(instrument.Sigma(x.Si), drift) + double.Hypot(instrument.Sigma(y.Si), drift));
    }

    private bool Disagree(ReadingEvidence a, ReadingEvidence b) => (a.Shown.Value, b.Shown.Value) switch
    {
        ({ } x, { } y) => Math.Abs(x.Si - y.Si) > Spreads * (a.Display.Instrument.Sigma(x.Si) + b.Display.Instrument.Sigma(y.Si)),
        (null, null) => false,
        ({ } x, null) => IsBelowRange(x.Si, a.Display.Instrument),
        (null, { } y) => IsBelowRange(y.Si, b.Display.Instrument),
    };

    /// <summary>A figure at the very end of the display may be over range the next time.</summary>
    private bool IsBelowRange(double si, InstrumentPractice instrument) =>
        instrument.Most - si > Spreads * (instrument.Sigma(si) + instrument.Sigma(instrument.Most));

    private double Spreads => matter.Book.Questions.DisagreeSpreads;
}
