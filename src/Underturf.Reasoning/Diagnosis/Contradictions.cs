using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>Two readings of the same thing in the same way, in one epoch, that cannot both be right; two runs that went differently.</summary>
internal static class Contradictions
{
    public static IEnumerable<Problem> Find(Case matter) => Readings(matter).Concat(matter.Supplies.Contradictions()).Concat(Runs(matter));

    /// <summary>Both may be right: a valve can stick now and then.</summary>
    private static IEnumerable<Problem> Runs(Case matter) =>
        from same in matter.Evidence.OfType<RunEvidence>().Where(e => e.Behaved is not null).GroupBy(e => (e.Stations[0], matter.History.EpochAt(e.Moment)))
        let first = same.First()
        let other = same.FirstOrDefault(e => e.Behaved != first.Behaved)
        where other is not null
        select new Problem(
            $"{first.Entry} and {other.Entry}",
            $"{first.What}: {first.Observed}, then {other.Observed}, and no work lies between",
            "Run it again; strike what was noted wrongly, or leave both where it comes and goes",
            Severity.Notice);

    private static IEnumerable<Problem> Readings(Case matter)
    {
        var readings = matter.Evidence.OfType<ReadingEvidence>().Where(e => !e.Drifting);
        foreach (var same in readings.GroupBy(e => (e.Measures, Key(e), e.Place, matter.History.EpochAt(e.Moment))))
        {
            var ordered = same.OrderBy(e => e.Moment).ToList();
            for (var i = 1; i < ordered.Count; i++)
            {
                if (Disagree(ordered[i - 1], ordered[i], matter.Book.Questions.DisagreeSpreads))
                {
                    yield return new Problem(
                        $"{ordered[i - 1].Entry} and {ordered[i].Entry}",
                        $"{ordered[i].What}: {ordered[i - 1].Observed} and {ordered[i].Observed} cannot both be right, and no work lies between",
                        "Take the reading again, then strike the wrong note; if the display would not settle, note it as drifting");
                }
            }
        }
    }

    private static string Key(ReadingEvidence evidence) => string.Join(' ', evidence.Stations.Order(StringComparer.Ordinal));

    private static bool Disagree(ReadingEvidence a, ReadingEvidence b, double spreads) => (a.Shown.Value, b.Shown.Value) switch
    {
        ({ } x, { } y) => Math.Abs(x.Si - y.Si) > spreads * (a.Display.Instrument.Sigma(x.Si) + b.Display.Instrument.Sigma(y.Si)),
        (null, null) => false,
        ({ } x, null) => IsBelowRange(x.Si, a.Display.Instrument, spreads),
        (null, { } y) => IsBelowRange(y.Si, b.Display.Instrument, spreads),
    };

    /// <summary>A figure at the very end of the display may be over range the next time.</summary>
    private static bool IsBelowRange(double si, InstrumentPractice instrument, double spreads) =>
        instrument.Most - si > spreads * (instrument.Sigma(si) + instrument.Sigma(instrument.Most));
}
