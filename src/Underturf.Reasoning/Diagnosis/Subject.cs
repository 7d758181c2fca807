using Underturf.FieldLog;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>What an open question is about, before it is put into words.</summary>
/// <param name="Id">Stable as long as it has the same subject.</param>
/// <param name="Stations">The stations concerned; the first stands for them where one is measured.</param>
/// <param name="Worlds">What could be wrong, most probable first; probabilities sum to one.</param>
/// <param name="Outlook">What the notes of other stations say of what they share with it.</param>
/// <param name="Shortfall">True where a station did not do its work when it was run, whether or not something is broken.</param>
internal sealed record Subject(string Id, IReadOnlyList<string> Stations, IReadOnlyList<World> Worlds, Outlook Outlook, bool Shortfall)
{
    /// <summary>The stretch inside which a suspect sits; nothing where it lies farther on than the last place seen.</summary>
    public Leg? LegOf(Suspect suspect, Case owner) => suspect.Seat.Beyond is { } last && last == suspect.Place ? null
        : (suspect.Station is { } own ? [own] : Stations).SelectMany(s => owner.Paths[s].Legs).FirstOrDefault(l => l.Key == suspect.Leg);

    /// <summary>True where the shortfall is that a valve did not open: sound wires are then too weak for it.</summary>
    public bool IsWeak { get; init; }
}

/// <summary>
/// Finds what is open: stations that belief holds unsound, stations that did not do their work when run, and groups that one shared fault
/// explains.
/// </summary>
internal sealed class SubjectFinder(Case owner)
{
    /// <summary>More likely than not.</summary>
    private const double Likely = 0.5;

    private readonly HashSet<string> asked = [.. Property.Stock.Of(owner.History).Asked.Select(q => q.Fact.About).OfType<string>().Select(owner.View.Identity.Of)];

    public IReadOnlyList<Subject> Find(string controller, Belief belief)
    {
        var grouped = belief.Stations.Where(s => ShareOf(s.Value, OnCommon) > Likely).Select(s => s.Key).Order(ByTerminal).ToList();
        var single = belief.Stations.Keys
            .Except(grouped)
            .Where(s => ShareOf(belief.Stations[s], w => w.AsksNothing) < owner.Book.Questions.OpenBelow || Shortfall(s, belief.Stations[s]) || IsFound(s) || asked.Contains(s))
            .Order(ByTerminal)
            .Select(s => Of($"station-{s}", [s], belief))
            .Where(IsOpen);
        var told = Paired([.. single]);
        return grouped.Count == 0 ? told : [Of($"common-{controller}", grouped, belief), .. told];
    }

    private Subject Of(string id, IReadOnlyList<string> stations, Belief belief)
    {
        var outlook = belief.OutlookOf(stations[0]);
        var lacking = stations.Where(s => Shortfall(s, belief.Stations[s])).ToList();
        return new Subject(id, stations, Present(stations[0], belief.Stations[stations[0]], outlook), outlook, lacking.Count > 0)
        {
            IsWeak = lacking.Any(s => LastRun(s) is { Behaved: Behaviour.Chatters or Behaviour.StaysShut }),
        };
    }

    /// <summary>Two stations that one pair explains best are one question.</summary>
    private static List<Subject> Paired(IReadOnlyList<Subject> single)
    {
        var told = new List<Subject>();
        foreach (var subject in single)
        {
            var partner = told.FindIndex(t => t.Stations.Count == 1 && Pair(t) is { } pair && pair == Pair(subject));
            if (partner < 0)
            {
                told.Add(subject);
            }
            else
            {
                var first = told[partner];
                told[partner] = first with { Id = $"pair-{first.Stations[0]}-{subject.Stations[0]}", Stations = [.. first.Stations, .. subject.Stations], Shortfall = first.Shortfall || subject.Shortfall, IsWeak = first.IsWeak || subject.IsWeak };
            }
        }

        return told;
    }

    private static Suspect? Pair(Subject subject) => subject.Worlds[0].Suspects.FirstOrDefault(s => s.IsPair);

    private Comparer<string> ByTerminal => Comparer<string>.Create((a, b) => owner.View.Stations[a].Terminal != owner.View.Stations[b].Terminal
        ? owner.View.Stations[a].Terminal.CompareTo(owner.View.Stations[b].Terminal)
        : string.CompareOrdinal(a, b));

    /// <summary>
    /// The worlds as they bear on the station's notes now: a fault that work has cured is no longer wrong, a doubtful note that was taken again is
    /// settled, and a fault that none of the notes would show explains nothing here.
    /// </summary>
    private List<World> Present(string station, IReadOnlyList<World> worlds, Outlook outlook)
    {
        var notes = owner.Evidence.Where(e => e.Stations.Contains(station)).ToList();
        return [.. worlds
            .Select(w => w with { Suspects = [.. w.Suspects.Where(s => !owner.Cures.IsCured(s, Moment.Last) && !IsTakenAgain(s, notes))] })
            .Select(w => w with { Suspects = Speaking(w.Suspects, notes, outlook) })
            .GroupBy(w => new SuspectSet(w.Suspects))
            .Select(g => new World(g.First().Suspects, g.Sum(w => w.Probability)))
            .OrderByDescending(w => w.Probability)];
    }

    private static bool IsTakenAgain(Suspect suspect, List<Evidence> notes) =>
        suspect.Note is { } note && notes.FirstOrDefault(n => n.Entry == note) is { } doubted && notes.Any(n => n.Moment > doubted.Moment && n.IsOfTheSame(doubted));

    /// <summary>The suspects without those whose absence no note would show, and without a further one that makes the notes no likelier.</summary>
    private Suspect[] Speaking(Suspect[] suspects, List<Evidence> notes, Outlook outlook)
    {
        foreach (var suspect in suspects)
        {
            Suspect[] without = [.. suspects.Where(s => s != suspect)];
            var gains = notes.Select(e => e.LogChance(suspects, outlook, owner.Cures) - e.LogChance(without, outlook, owner.Cures)).ToList();
            if (gains.All(g => Math.Abs(g) < Indifferent) || (suspects.Length > 1 && gains.Sum() < Indifferent))
            {
                return Speaking(without, notes, outlook);
            }
        }

        return suspects;
    }

    /// <summary>Chances this close in the logarithm are equal but for rounding.</summary>
    private const double Indifferent = 1e-6;

    private bool IsOpen(Subject subject) => ShareOf(subject.Worlds, w => w.AsksNothing) < owner.Book.Questions.OpenBelow
        || subject.Shortfall
        || IsFound(subject.Stations[0])
        || asked.Contains(subject.Stations[0]);

    /// <summary>Somebody saw a fault of it, and no work on it since.</summary>
    private bool IsFound(string station)
    {
        var since = owner.Cures.LastOn(owner.Paths[station]);
        return owner.Evidence.OfType<LookEvidence>().Any(e => e.ShowsFault && e.Stations.Contains(station) && e.Moment >= since);
    }

    /// <summary>
    /// The last run of the station since work on it did not go as it should: not open, or other places than its own; unless what explains it best has
    /// been cured elsewhere since.
    /// </summary>
    private bool Shortfall(string station, IReadOnlyList<World> worlds)
    {
        return LastRun(station) is { } run && IsShort(station, run) && ShareOf(worlds, w => w.Suspects.Any(s => IsCuredSince(s, run.Moment))) <= Likely;
    }

    private RunEvidence? LastRun(string station)
    {
        var since = owner.Cures.LastOn(owner.Paths[station]);
        return owner.Evidence.OfType<RunEvidence>().Where(e => e.Stations[0] == station && e.Moment >= since).MaxBy(e => e.Moment);
    }

    private bool IsShort(string station, RunEvidence run) => (run.Behaved is { } behaved && behaved != Behaviour.Opens)
        || (run.Places is { } places && places != Math.Max(1, owner.Paths[station].Valves.Count))
        || run.AtOwnPlace == false;

    private bool IsCuredSince(Suspect suspect, Moment moment) => owner.Cures.IsCured(suspect, Moment.Last) && !owner.Cures.IsCured(suspect, moment);

    /// <summary>Only what stations share is wrong; a station with a fault of its own besides keeps its own question.</summary>
    private bool OnCommon(World world) => !world.AsksNothing && world.Suspects.All(s => s.IsShared && !owner.Cures.IsCured(s, Moment.Last));

    private static double ShareOf(IEnumerable<World> worlds, Func<World, bool> which) => worlds.Where(which).Sum(w => w.Probability);
}
