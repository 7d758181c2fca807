using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Water;

/// <summary>Takes what the log says of water; what cannot be used is named.</summary>
internal sealed class WaterNoteFinder(WaterCase owner)
{
    private readonly List<Problem> problems = [];
    private readonly List<string> leftOut = [];

    public IReadOnlyList<Problem> Problems => problems;

    /// <summary>Readings beyond what is weighed, in words.</summary>
    public IReadOnlyList<string> LeftOut => leftOut;

    private PropertyView View => owner.View;

    public IReadOnlyList<WaterReading> Readings()
    {
        WaterReading[] readings = [.. owner.History.Facts.Readings.Select(Reading).Concat(owner.History.Facts.Catches.Select(Catch)).OfType<WaterReading>()];
        problems.AddRange(Contradictions(readings));
        return readings;
    }

    public IReadOnlyList<WaterWatch> Watches() => [.. owner.History.Facts.Watches.Select(Watch).OfType<WaterWatch>()];

    /// <summary>The same thing read twice, nothing turned and no work done between, with more between them than the instrument allows.</summary>
    private IEnumerable<Problem> Contradictions(IReadOnlyList<WaterReading> readings)
    {
        var alike = readings.Where(r => r.Probe.Measures is WaterMeasure.MeterFlow or WaterMeasure.StaticPressure)
            .GroupBy(r => (r.Probe.Name, string.Join('|', r.Running), string.Join('|', r.Shut.Order(StringComparer.Ordinal)), owner.History.Facts.Works.Count(w => w.Moment <= r.Moment)));
        foreach (var group in alike)
        {
            foreach (var (first, second) in group.Zip(group.Skip(1)).Where(p => Math.Abs(p.First.Si - p.Second.Si) > owner.Book.Questions.DisagreeSpreads * double.Hypot(p.First.Sigma, p.Second.Sigma)))
            {
                yield return new Problem(second.Moment.Entry.ToString(), $"{second.Probe.Name} of {second.Text} and {first.Text} before ({first.Moment.Entry}) cannot both be right, or somebody drew water meanwhile", "Read once more; strike the one that was wrong", Severity.Notice);
            }
        }
    }

    private WaterReading? Reading(Observed<ReadingFact> note)
    {
        if (owner.Book.Water.Probe(note.Fact.How) is not { } probe)
        {
            return null;
        }

        var meter = owner.Book.Water.Instrument(probe);
        if (Fault(note, probe, meter) is { } problem)
        {
            problems.Add(problem);
            return null;
        }

        if (note.Fact.Value.Value is not { } value)
        {
            return null;
        }

        var slips = UnitSlips.Of(note, probe, value, owner.Book).ToList();
        var beyond = Beyond(note, probe, value);
        problems.AddRange(slips.Count == 0 ? Some(beyond) : beyond is null ? slips : slips.Select(s => s with { Remedy = $"It {beyond.Reason}. If the unit was wrong, strike it and note it again; if it was right, widen what is usual in a practice book of your own" }));
        if (beyond is not null)
        {
            leftOut.Add($"{probe.Name} of {value.Text} ({note.Entry}) {beyond.Reason}");
            return null;
        }

        return new WaterReading(
            note.Moment,
            probe,
            Running(note.Fact) is [var only] ? only : null,
            value.Si,
            meter.Sigma(value.Si, DisplayStep.Si(value)),
            value.Text,
            owner.ShutAt(note.Moment))
        {
            Own = meter.Own(value.Si, DisplayStep.Si(value)),
            Shared = meter.Shared,
            Place = note.Fact.Place is { } place ? View.Identity.Of(place) : null,
            Together = Running(note.Fact) is { Count: > 1 } together ? together : [],
        };
    }

    private static IEnumerable<Problem> Some(Problem? problem) => problem is null ? [] : [problem];

    /// <summary>What would end at the edge of what is weighed.</summary>
    private Problem? Beyond(Observed<ReadingFact> note, WaterProbe probe, Quantity value)
    {
        var (running, say) = (Running(note.Fact).Count, new WaterSay(owner.History.Facts.UsesUsUnits));
        if (WeighedRange.Of(owner.Water, probe.Measures, running == 0, running) is not { } range || (value.Si >= range.Least && value.Si <= range.Most))
        {
            return null;
        }

        Func<double, string> told = value.Dimension switch { Dimension.Flow => say.Flow, Dimension.Pressure => say.Pressure, _ => WaterSay.Time };
        return new Problem(note.Entry.ToString(), $"lies outside what is weighed ({told(range.Least)} to {told(range.Most)} by the practice book) and counts for nothing", "Look at the unit, read once more and strike what was wrong; if it was right, widen what is usual in a practice book of your own", Severity.Notice);
    }

    /// <summary>Cans read as one reading of how evenly the station waters.</summary>
    private WaterReading? Catch(Observed<CatchFact> note)
    {
        var station = View.Identity.Of(note.Fact.Station);
        if (!View.Stations.ContainsKey(station))
        {
            problems.Add(new Problem(note.Entry.ToString(), $"names station '{note.Fact.Station}', which nobody has noted", "Note the station, or strike this and name the right one"));
            return null;
        }

        if (CaughtWater.Of(note.Fact) is not { } caught)
        {
            problems.Add(new Problem(note.Entry.ToString(), "has no water in any can", "Strike it; if nothing watered there, note a walk past the station with 'nothing waters'"));
            return null;
        }

        // A can that caught nothing is one of the property's own: the least that is told apart stands in, so that a share has a logarithm.
        var evenness = Math.Max(caught.Evenness, owner.Book.Water.Usual.LeastEvenness);
        return new WaterReading(
            note.Moment,
            owner.Book.Water.ProbeOf(WaterMeasure.Evenness)!,
            station,
            evenness,
            evenness * owner.Book.Water.Usual.CansDiffer / Math.Sqrt(caught.Cans),
            $"{WaterSay.Share(caught.Evenness)} of {caught.Cans} cans",
            owner.ShutAt(note.Moment));
    }

    /// <summary>Each once, in order.</summary>
    private List<string> Running(ReadingFact fact) => [.. fact.Stations.Select(View.Identity.Of).Distinct().Order(StringComparer.Ordinal)];

    private Problem? Fault(Observed<ReadingFact> note, WaterProbe probe, WaterInstrument meter)
    {
        var (where, fact) = (note.Entry.ToString(), note.Fact);
        if (fact.Value.Value is not { } value)
        {
            return new Problem(where, $"{probe.Name} was over range", "Read it with an instrument that reaches further");
        }

        if (value.Dimension != meter.Dimension)
        {
            return new Problem(where, $"'{value.Text}' is {Units.Name(value.Dimension)}, but {probe.Name} reads {Units.Name(meter.Dimension)}", "Strike it and note it again with the right unit or the right way of reading");
        }

        if (fact.Stations.FirstOrDefault(s => !View.Stations.ContainsKey(View.Identity.Of(s))) is { } unknown)
        {
            return new Problem(where, $"names station '{unknown}', which nobody has noted", "Note the station, or strike this and name the right one");
        }

        if (Running(fact).Count > 1 && probe.Measures is not (WaterMeasure.MeterFlow or WaterMeasure.RunningPressure or WaterMeasure.StaticPressure))
        {
            return new Problem(where, $"{probe.Name} names {Running(fact).Count} stations, but it is read of one", "Read it with each station alone", Severity.Notice);
        }

        return (probe.Measures, fact.Stations.Count) switch
        {
            (WaterMeasure.Evenness, _) => new Problem(where, $"is a reading by '{probe.Name}', which are noted can by can", "Strike it and note a catch: {\"kind\":\"catch\",\"station\":\"s1\",\"minutes\":10,\"cans\":[\"4 mm\",\"6 mm\"]}"),
            (WaterMeasure.MeterFlow, _) => null,
            (WaterMeasure.StaticPressure, 0) => value.Si < 0 ? new Problem(where, $"'{value.Text}' is less than none", "Strike it and read again") : null,
            (WaterMeasure.HoleLevel, 0) => fact.Place is null ? new Problem(where, "names no place", "Strike it and note it again with the place of the hole") : null,
            (WaterMeasure.StaticPressure, _) => new Problem(where, "names a station that ran, but static pressure is read with nothing running", "Strike it and note it again as running pressure"),
            (_, 0) => new Problem(where, $"{probe.Name} names no station", "Strike it and note it again with the station that ran"),
            _ => value.Si < 0 ? new Problem(where, $"'{value.Text}' is less than none", "Strike it and read again") : null,
        };
    }

    private WaterWatch? Watch(Observed<WatchFact> note)
    {
        foreach (var seen in note.Fact.Seen.Where(s => owner.Book.Water.Sights.All(k => k.Name != s)))
        {
            problems.Add(new Problem(note.Entry.ToString(), $"'{seen}' is nothing that the practice book knows to be seen; it counts for nothing", $"Use one of: {string.Join(", ", owner.Book.Water.Sights.Select(s => s.Name))}", Severity.Notice));
        }

        return new WaterWatch(
            note.Moment,
            note.Fact.Station is { } station ? View.Identity.Of(station) : null,
            note.Fact.About is { } about ? View.Identity.Of(about) : null,
            note.Fact.Seen,
            note.Fact.Where);
    }
}
