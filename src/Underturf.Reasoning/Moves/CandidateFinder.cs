using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Moves;

/// <summary>Lists what could be found out about a subject: every reading whose instrument is owned, at every place where it can be taken, a look into each box, a run.</summary>
internal sealed class CandidateFinder(Case owner, Subject subject, IReadOnlyList<World> worlds, double[] belief)
{
    private const int MostLooks = 2;

    /// <summary>A watcher miscounts now and then: a run is asked for once more.</summary>
    private const int MostRuns = 2;

    private readonly Reach reach = new(owner, subject);
    private readonly StationPath path = owner.Paths[subject.Stations[0]];

    public IReadOnlyList<Candidate> Find() =>
        [.. owner.Book.Probes.Where(p => owner.Book.Instrument(p).Owned).SelectMany(Readings).Concat(Looks()).Concat(Run())];

    private IEnumerable<Candidate> Readings(ProbePractice probe)
    {
        if (reach.Stations(probe) is not { } stations)
        {
            yield break;
        }

        foreach (var place in reach.Places(probe).Where(p => !IsTaken(probe.Measures, stations, p)))
        {
            yield return Reading(probe, stations, place);
        }
    }

    /// <summary>A reading that was taken is not proposed again, unless it may have been misread.</summary>
    private bool IsTaken(Measure measures, IReadOnlyList<string> stations, string? place) => reach.Taken(measures, stations, place)
        .Any(e => worlds.Where(w => w.Suspects.Any(s => s.Note == e.Entry)).Sum(w => w.Probability) < owner.Book.Questions.ShowAbove);

    private Candidate Reading(ProbePractice probe, IReadOnlyList<string> stations, string? place)
    {
        var notes = reach.Taken(probe.Measures == Measure.ReversedOhms ? Measure.StationOhms : probe.Measures, stations, place).Select(e => e.Entry).ToList();
        var outcomes = notes.Count > 0
            ? Again(notes, probe.Measures == Measure.ReversedOhms)
            : Outcomes.OfReading([.. worlds.Select(w => Predict(w, probe, stations, place))], belief, owner.Book.Instrument(probe).Most);
        var what = stations.Count == 2 ? $"{owner.View.Name(stations[0])} to {owner.View.Name(stations[1])}" : owner.View.Name(stations[0]);
        var step = new MoveStep($"{probe.Say}, {what}", probe.Minutes, probe.Caution, subject.Id, Asked.Reading(probe.Name, stations, place));
        return new Candidate(step, place ?? path.Controller, $"{probe.Name} {place} {string.Join(' ', stations.Order(StringComparer.Ordinal))}", outcomes.Chances);
    }

    /// <summary>
    /// Taken once more, or with the leads swapped after one with the leads as usual: it shows the same again, for the same coil and the same wire are in it; but
    /// where the note was wrong, and with swapped leads where a diode lets one half through.
    /// </summary>
    private Outcomes Again(List<EntryId> notes, bool swapped) => new([.. worlds.Select(w =>
        w.Suspects.Any(s => s.Note is { } note && notes.Contains(note)) || (swapped && w.Suspects.Any(s => s.Passes is Passes.Forward or Passes.Backward)) ? new[] { 0.0, 1 }
        : w.Suspects.Any(s => s.Fault.Scope == FaultScope.Unmodelled) ? [0.5, 0.5]
        : [1, 0])]);

    private (double Mean, double Sigma, bool IsOpen)? Predict(World world, ProbePractice probe, IReadOnlyList<string> stations, string? place)
    {
        if (world.Suspects.Any(s => s.Fault.Scope == FaultScope.Unmodelled))
        {
            return null;
        }

        Suspect[] active = [.. world.Suspects.Where(s => s.Note is null)];
        var prediction = owner.BenchesNow.Predict(probe.Measures, stations, place, inrush: false, active);
        var (mean, sigma) = prediction.IsOpen ? default : Display.Expect(owner.Book.Instrument(probe), prediction, subject.Outlook);
        return (mean, sigma, prediction.IsOpen);
    }

    /// <summary>A look finds what the book says one sees of a fault at its place; each finding is an outcome, and so is nothing odd.</summary>
    private IEnumerable<Candidate> Looks()
    {
        var findings = worlds.SelectMany(w => w.Suspects).Where(s => s.Fault.Seen > 0).Select(s => s.Fault.FindingName).Distinct().ToList();
        var look = owner.Book.Look;
        foreach (var place in path.Legs.Select(l => l.To).Distinct().Where(p => !IsLookedInto(p)))
        {
            var rows = worlds.Select(w => Reach.LookRow(w, place, findings)).ToArray();
            yield return new Candidate(new MoveStep(look.Say, look.Minutes, look.Caution, subject.Id, Asked.Look(place)), place, $"look {place}", rows);
        }
    }

    /// <summary>
    /// Belief takes each look for itself, so a second one may still find what the first overlooked, and is cheap beside digging for what is not there. Nobody
    /// looks a third time before there has been work.
    /// </summary>
    private bool IsLookedInto(string place)
    {
        var since = owner.Cures.LastOn(path);
        return owner.Evidence.OfType<LookEvidence>().Count(e => e.Place == place && e.Stations.Contains(path.Station) && e.Moment >= since) >= MostLooks;
    }

    private IEnumerable<Candidate> Run()
    {
        var since = owner.Cures.LastOn(path);
        if (owner.Evidence.OfType<RunEvidence>().Count(e => e.Stations[0] == path.Station && e.Moment >= since) >= MostRuns)
        {
            return [];
        }

        var run = RunEvidence.Asked(path.Station, owner);
        var rows = worlds.Select(w => run.OutcomeChances([.. w.Suspects.Where(s => s.Note is null)], subject.Outlook)).ToArray();
        var step = new MoveStep($"{owner.Book.Run.Say}, {owner.View.Name(path.Station)}", owner.Book.Run.Minutes, owner.Book.Run.Caution, subject.Id, Asked.Run(path.Station));
        return [new Candidate(step, path.Controller, $"run {path.Station}", rows)];
    }
}
