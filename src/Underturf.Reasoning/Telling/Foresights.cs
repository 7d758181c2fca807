using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Moves;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Telling;

/// <summary>
/// Every move that one could make now about a subject, with what it would show in each world: readings with the instruments owned at every place
/// where they can be taken, looks, a run. What was taken already would show the same again, unless its note is wrong in one of the worlds.
/// </summary>
internal sealed class Foresights(Case owner, Subject subject, Sample sample)
{
    private readonly Reach reach = new(owner, subject);
    private readonly StationPath path = owner.Paths[subject.Stations[0]];

    public IReadOnlyList<Foreseen> Find() =>
        [.. owner.Book.Probes.Where(p => owner.Book.Instrument(p).Owned).SelectMany(Readings), .. Looks(), .. Run(), .. Again()];

    private IEnumerable<Foreseen> Readings(ProbePractice probe)
    {
        if (reach.Stations(probe) is not { } stations)
        {
            yield break;
        }

        foreach (var place in reach.Places(probe).Where(p => !reach.Taken(probe.Measures, stations, p).Any()))
        {
            yield return probe.Measures == Measure.ReversedOhms && reach.Taken(Measure.StationOhms, stations, place).Any()
                ? Reversed(probe)
                : Reading(probe, stations, place);
        }
    }

    private Foreseen Reading(ProbePractice probe, IReadOnlyList<string> stations, string? place)
    {
        var instrument = owner.Book.Instrument(probe);
        var expected = sample.Worlds.Select(w => Expect(w, probe, stations, place)).ToList();
        var fine = new DisplayBins(instrument, owner.Book.Unmodelled, DisplayBins.FineEdges(expected, instrument.Most));
        var told = new DisplayBins(instrument, owner.Book.Unmodelled, DisplayBins.ToldEdges([.. expected.Zip(sample.Weights)], instrument.Most));
        return new Foreseen(
            $"{probe.Name}, {string.Join(" and ", stations.Select(owner.View.Name))}",
            owner.View.Name(place ?? path.Controller),
            told.Words(),
            [.. expected.Select(told.Row)],
            [.. expected.Select(fine.Row)]);
    }

    private Expected Expect(World world, ProbePractice probe, IReadOnlyList<string> stations, string? place)
    {
        if (IsAnything(world))
        {
            return new Expected(0, 0, false, true);
        }

        var prediction = owner.BenchesNow.Predict(probe.Measures, stations, place, inrush: false, Active(world));
        var (mean, sigma) = prediction.IsOpen ? default : Display.Expect(owner.Book.Instrument(probe), prediction, subject.Outlook);
        return new Expected(mean, sigma, prediction.IsOpen, false);
    }

    /// <summary>With the leads as usual it was read already; swapped it shows another figure only where a diode lets one half through.</summary>
    private Foreseen Reversed(ProbePractice probe) => new(
        $"{probe.Name}, {owner.View.Name(path.Station)}",
        owner.View.Name(path.Controller),
        ["the same as with the leads as usual", "another figure"],
        [.. sample.Worlds.Select(w => IsAnything(w) ? [0.5, 0.5] : w.Suspects.Any(s => s.Passes is Passes.Forward or Passes.Backward) ? new[] { 0.0, 1 } : [1, 0])]);

    private IEnumerable<Foreseen> Looks()
    {
        var findings = sample.Worlds.SelectMany(w => w.Suspects).Where(s => s.Fault.Seen > 0).Select(s => s.Fault.FindingName).Distinct().ToList();
        return path.Legs.Select(l => l.To).Distinct().Select(place => new Foreseen(
            "look",
            owner.View.Name(place),
            [.. findings, "nothing odd"],
            [.. sample.Worlds.Select(w => Reach.LookRow(w, place, findings))]));
    }

    private IEnumerable<Foreseen> Run()
    {
        if (owner.Evidence.OfType<RunEvidence>().Any(e => e.Stations[0] == path.Station))
        {
            return [];
        }

        var run = RunEvidence.Asked(path.Station, owner);
        return [new Foreseen(
            $"run, {owner.View.Name(path.Station)}",
            owner.View.Name(path.Controller),
            RunEvidence.OutcomeWords,
            [.. sample.Worlds.Select(w => run.OutcomeChances(Active(w), subject.Outlook))])];
    }

    /// <summary>A note that may be wrong, taken again.</summary>
    private IEnumerable<Foreseen> Again() =>
        from entry in sample.Worlds.SelectMany(w => w.Suspects).Select(s => s.Note).OfType<FieldLog.EntryId>().Distinct()
        from note in owner.Evidence.Where(e => e.Entry == entry)
        select new Foreseen(
            $"{note.What}, once more",
            owner.View.Name((note as ReadingEvidence)?.Place ?? path.Controller),
            ["the same as before", "something else"],
            [.. sample.Worlds.Select(w => SameAgain(w, note) is var same ? new[] { same, 1 - same } : [])])
        {
            IsAgain = true,
        };

    /// <summary>Where the note is right it shows the same again; where it is wrong, as often as what is really there shows it.</summary>
    private double SameAgain(World world, Evidence note) =>
        world.Suspects.All(s => s.Note != note.Entry) ? 1 : note.ChanceToRepeat(Active(world), subject.Outlook);

    private static bool IsAnything(World world) => world.Suspects.Any(s => s.Fault.Scope == FaultScope.Unmodelled);

    private static Suspect[] Active(World world) => [.. world.Suspects.Where(s => s.Note is null)];
}
