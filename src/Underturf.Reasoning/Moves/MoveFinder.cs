using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Moves;

/// <summary>Lists what could be done next about a subject and weighs each by the expected loss that it saves.</summary>
internal sealed class MoveFinder
{
    private const int MostWorlds = 80;

    /// <summary>A repair that is more likely to fail than to cure is never the end of the search.</summary>
    private const double Likely = 0.5;

    private readonly Case owner;
    private readonly Subject subject;
    private readonly StationPath path;
    private readonly List<World> worlds;
    private readonly double[] belief;
    private readonly Loss loss;

    public MoveFinder(Case owner, Subject subject)
    {
        this.owner = owner;
        this.subject = subject;
        path = owner.Paths[subject.Stations[0]];
        worlds = [.. subject.Worlds.Take(MostWorlds)];
        var total = worlds.Sum(w => w.Probability);
        belief = [.. worlds.Select(w => w.Probability / total)];
        loss = new Loss(owner.Book, worlds, subject.Shortfall);
    }

    /// <summary>The moves worth their minutes, best first; the repair itself first where enough is known.</summary>
    public (IReadOnlyList<Move> Moves, bool Settled) Find()
    {
        var now = loss.Best(belief);
        var moves = Candidates().Where(m => m.Worth > 0.05).OrderByDescending(m => m.Worth - m.Minutes).ToList();
        var regret = now.Loss - loss.Minutes(now.Act);
        var settled = now.Act.Repair.Length > 0 && (regret < owner.Book.Loss.SettledRegretMinutes || (now.Cure > Likely && moves.All(m => m.Worth <= m.Minutes)));
        var listed = moves.Take(owner.Book.Questions.ListMoves);
        return ([.. settled ? listed.Prepend(Repair(now.Act, now.Cure)) : listed], settled);
    }

    /// <summary>The repair at its place; where any place will do, at that of the likeliest fault that it cures.</summary>
    private Move Repair(Act act, double cure)
    {
        var (repair, world) = (owner.Book.Repair(act.Repair)!, worlds.First(w => loss.Cures(act, w)));
        var cured = world.Suspects.FirstOrDefault(s => s.Fault!.Repair == act.Repair && (act.Place is null || s.Place == act.Place));
        var note = owner.Evidence.FirstOrDefault(e => e.Entry == cured?.Note);
        var place = act.Place ?? cured?.Place ?? (note as ReadingEvidence)?.Place ?? path.Controller;
        var caution = note switch
        {
            RunEvidence => owner.Book.Run.Caution,
            ReadingEvidence reading => reading.Caution,
            _ => repair.Caution,
        };
        var step = new MoveStep(repair.Say + Whose(), loss.Minutes(act), caution, subject.Id, note is null ? Asked.Work(repair.Name, place, cured, subject) : Asked.Again(note, owner.Book));
        return Walked(step, place, $"enough known: {step.Action} ({Say.Share(cure)} to cure it)", owner.Book.Loss.WrongRepairMinutes * cure);
    }

    private string Whose() => subject.Stations.Count switch
    {
        1 => $", {owner.View.Name(subject.Stations[0])}",
        2 => $", {string.Join(" and ", subject.Stations.Select(owner.View.Name))}",
        _ => string.Empty,
    };

    private IEnumerable<Move> Candidates() =>
        owner.Book.Probes.Where(p => owner.Book.Instrument(p).Owned).SelectMany(Readings).Concat(Looks()).Concat(Run());

    private IEnumerable<Move> Readings(ProbePractice probe)
    {
        var places = probe.At switch
        {
            Stand.Controller => [null],
            Stand.Box => path.Legs.Select(l => (string?)l.To),
            _ => path.Valves.Select(v => (string?)v.Place).Distinct(),
        };
        if (probe.Measures == Measure.SupplyVolts)
        {
            yield break;
        }

        foreach (var place in places)
        {
            if (Stations(probe) is { } stations && !IsTaken(probe.Measures, stations, place))
            {
                yield return Reading(probe, stations, place);
            }
        }
    }

    /// <summary>A reading between two stations takes another station of the group, or a neighbour that ends at the same place.</summary>
    private IReadOnlyList<string>? Stations(ProbePractice probe)
    {
        if (probe.Measures != Measure.BetweenStationsOhms)
        {
            return [path.Station];
        }

        var other = subject.Stations.Skip(1).FirstOrDefault()
            ?? owner.Paths.Values.FirstOrDefault(p => p.Station != path.Station && p.Controller == path.Controller && p.Legs[^1].To == path.Legs[^1].To)?.Station;
        return other is null ? null : [path.Station, other];
    }

    /// <summary>A reading that was taken is not proposed again, unless it may have been misread.</summary>
    private bool IsTaken(Measure measures, IReadOnlyList<string> stations, string? place) => owner.Evidence.OfType<ReadingEvidence>().Any(e =>
        e.Measures == measures
        && e.Stations.Order().SequenceEqual(stations.Order())
        && (place is null || e.Place == place)
        && worlds.Where(w => w.Suspects.Any(s => s.Note == e.Entry)).Sum(w => w.Probability) < owner.Book.Questions.ShowAbove);

    private Move Reading(ProbePractice probe, IReadOnlyList<string> stations, string? place)
    {
        var outcomes = probe.Measures == Measure.ReversedOhms && IsTaken(Measure.StationOhms, stations, place)
            ? Reversed()
            : Outcomes.OfReading([.. worlds.Select(w => Predict(w, probe, stations, place))], belief, owner.Book.Instrument(probe).Most);
        var what = stations.Count == 2 ? $"{owner.View.Name(stations[0])} to {owner.View.Name(stations[1])}" : owner.View.Name(stations[0]);
        return Weigh($"{probe.Say}, {what}", place, probe.Minutes, probe.Caution, outcomes, Asked.Reading(probe.Name, stations, place));
    }

    /// <summary>Leads swapped after a reading with the leads as usual: it shows the same again, but where a diode lets one half through or the first was misread.</summary>
    private Outcomes Reversed() => new([.. worlds.Select(w =>
        w.Suspects.Any(s => s.Passes is Passes.Forward or Passes.Backward) ? new[] { 0.0, 1 }
        : w.Suspects.Any(s => s.Fault!.Scope is FaultScope.Unmodelled or FaultScope.Note) ? [0.5, 0.5]
        : [1, 0])]);

    private (double Mean, double Sigma, bool IsOpen)? Predict(World world, ProbePractice probe, IReadOnlyList<string> stations, string? place)
    {
        if (world.Suspects.Any(s => s.Fault!.Scope == FaultScope.Unmodelled))
        {
            return null;
        }

        var active = world.Suspects.Where(s => s.Note is null).ToList();
        var prediction = owner.BenchesNow.Predict(probe.Measures, stations, place, inrush: false, active);
        var (mean, sigma) = prediction.IsOpen ? default : Display.Expect(owner.Book.Instrument(probe), prediction, subject.Outlook);
        return (mean, sigma, prediction.IsOpen);
    }

    /// <summary>A look finds what the book says one sees of a fault at its place; each finding is an outcome, and so is nothing odd.</summary>
    private IEnumerable<Move> Looks()
    {
        var findings = worlds.SelectMany(w => w.Suspects).Where(s => s.Fault!.Seen > 0).Select(s => s.Fault!.FindingName).Distinct().ToList();
        foreach (var place in path.Legs.Select(l => l.To).Distinct())
        {
            var rows = worlds.Select(w => LookRow(w, place, findings)).ToArray();
            yield return Weigh(owner.Book.Look.Say, place, owner.Book.Look.Minutes, owner.Book.Look.Caution, new Outcomes(rows), Asked.Look(place));
        }
    }

    private static double[] LookRow(World world, string place, List<string> findings)
    {
        var row = new double[findings.Count + 1];
        foreach (var suspect in world.Suspects.Where(s => s.Place == place && s.Fault!.Seen > 0))
        {
            row[findings.IndexOf(suspect.Fault!.FindingName)] = suspect.Fault.Seen;
        }

        row[^1] = 1 - row.Sum();
        return row;
    }

    private IEnumerable<Move> Run()
    {
        if (owner.Evidence.OfType<RunEvidence>().Any(e => e.Stations[0] == path.Station))
        {
            return [];
        }

        var run = RunEvidence.Asked(path.Station, owner);
        var rows = worlds.Select(w => run.OutcomeChances([.. w.Suspects.Where(s => s.Note is null)], subject.Outlook)).ToArray();
        return [Weigh($"{owner.Book.Run.Say}, {owner.View.Name(path.Station)}", null, owner.Book.Run.Minutes, owner.Book.Run.Caution, new Outcomes(rows), Asked.Run(path.Station))];
    }

    private Move Weigh(string action, string? place, double minutes, string caution, Outcomes outcomes, Fact asks) => Walked(
        new MoveStep(action, minutes, caution, subject.Id, asks),
        place ?? path.Controller,
        action,
        loss.Of(belief) - outcomes.ExpectedLoss(belief, loss));

    private Move Walked(MoveStep step, string place, string action, double worth)
    {
        var walk = Walk(place);
        return new Move(action, owner.View.Name(place), step.Minutes + walk, worth, step.Caution, subject.Id) { Place = place, WalkMinutes = walk, Steps = [step] };
    }

    /// <summary>Minutes from the controller; a place that nobody has found has to be found first.</summary>
    private double Walk(string place)
    {
        if (place == path.Controller)
        {
            return 0;
        }

        var walk = owner.Book.Walk;
        var found = owner.View.Boxes.ContainsKey(place) || owner.View.Valves.ContainsKey(place);
        var metres = owner.View.PositionOf(place) is { } there && owner.View.PositionOf(path.Controller) is { } here
            ? here.DistanceMetresTo(there)
            : walk.UnknownMetres;
        return (metres / walk.MetresPerMinute) + (found ? 0 : walk.FindMinutes);
    }
}
