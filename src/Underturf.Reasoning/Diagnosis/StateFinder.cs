using Underturf.Numerics;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>
/// Weighs everything that could be wrong in a cluster: each suspect alone, and where that does not make the notes ordinary, two and three
/// together. States are dropped as soon as the notes weighed so far put them out of the question: no later note can bring them back, because
/// no chance is above one.
/// </summary>
internal sealed class StateFinder(Case owner)
{
    /// <summary>States below the best by this much in the logarithm are left out; their sum is bounded in the result.</summary>
    private const double Negligible = 16;

    /// <summary>A station less likely sound than this is searched for several faults at once.</summary>
    private const double Ordinary = 0.9;

    private const int MostFaults = 3;
    private const int MostSeeds = 10;
    private const int SeedsOfANote = 2;
    private const int MostJoints = 4000;

    /// <summary>States of a cluster with the shared suspects wrong too.</summary>
    /// <param name="deep">Whether to look for several faults on one station.</param>
    public States Find(Cluster cluster, IReadOnlyList<Suspect> shared, Outlook outlook, bool deep)
    {
        var parts = cluster.Stations.Select(s => FindAlone(s, shared, outlook, deep)).ToList();
        return parts is [var only] ? only : Product(cluster, parts, shared, outlook);
    }

    /// <summary>Only these states, weighed anew.</summary>
    public States Weigh(Cluster cluster, IEnumerable<State> some, IReadOnlyList<Suspect> shared, Outlook outlook)
    {
        var evidence = cluster.Evidence.ToList();
        return States.Of([.. some.Select(s => s with { LogWeight = s.LogPrior + Log(evidence, Both(s.Suspects, shared), outlook) })], double.NegativeInfinity);
    }

    private double Log(List<Evidence> evidence, IReadOnlyList<Suspect> active, Outlook outlook)
    {
        var sum = 0.0;
        foreach (var note in evidence)
        {
            sum += note.LogChance(active, outlook, owner.Cures);
        }

        return sum;
    }

    private static IReadOnlyList<Suspect> Both(IReadOnlyList<Suspect> own, IReadOnlyList<Suspect> shared) => shared.Count == 0 ? own : own.Count == 0 ? shared : [.. own, .. shared];

    private States FindAlone(StationNotes station, IReadOnlyList<Suspect> shared, Outlook outlook, bool deep)
    {
        var found = new Found();
        Try(station, [], station.LogNone, shared, outlook, found);
        foreach (var suspect in station.Suspects)
        {
            Try(station, [suspect], station.LogNone + Math.Log(suspect.Weight), shared, outlook, found);
        }

        var states = States.Of(found.Kept(), found.LogLeftOut);
        return deep && states.Sound < Ordinary ? Deepen(station, states, shared, outlook, found) : states;
    }

    /// <summary>Adds a suspect to what explains the notes best so far, and to what explains a single note best.</summary>
    private States Deepen(StationNotes station, States states, IReadOnlyList<Suspect> shared, Outlook outlook, Found found)
    {
        var seeds = states.All.Where(s => s.Suspects.Count == 1).Take(MostSeeds).Concat(SeedsByNote(station, shared, outlook)).DistinctBy(s => s.Suspects[0]).ToList();
        for (var count = 2; count <= MostFaults && seeds.Count > 0; count++)
        {
            var tried = new HashSet<SuspectSet>();
            foreach (var seed in seeds)
            {
                foreach (var suspect in station.Suspects.Where(s => Together(seed.Suspects, s)))
                {
                    if (tried.Add(new SuspectSet([.. seed.Suspects, suspect])))
                    {
                        Try(station, [.. seed.Suspects, suspect], seed.LogPrior + Math.Log(suspect.Weight), shared, outlook, found);
                    }
                }
            }

            seeds = [.. found.Kept().Where(s => s.Suspects.Count == count).OrderByDescending(s => s.LogWeight).Take(MostSeeds / 2)];
        }

        return States.Of(found.Kept(), found.LogLeftOut);
    }

    private IEnumerable<State> SeedsByNote(StationNotes station, IReadOnlyList<Suspect> shared, Outlook outlook) => station.Evidence.SelectMany(note => station.Suspects
        .Select(s => new State([s], station.LogNone + Math.Log(s.Weight), Math.Log(s.Weight) + note.LogChance([s, .. shared], outlook, owner.Cures)))
        .OrderByDescending(s => s.LogWeight)
        .Take(SeedsOfANote));

    /// <summary>A part has one amount of a fault; "something not modelled" leaves no room for more.</summary>
    private static bool Together(IReadOnlyList<Suspect> suspects, Suspect more)
    {
        foreach (var suspect in suspects)
        {
            if (suspect == more || (suspect.Fault == more.Fault && suspect.Leg == more.Leg && suspect.Place == more.Place && suspect.Other == more.Other && suspect.Note == more.Note) || IsAnything(suspect))
            {
                return false;
            }
        }

        return !IsAnything(more);
    }

    private static bool IsAnything(Suspect suspect) => suspect.Fault!.Scope == Property.Practice.FaultScope.Unmodelled;

    private void Try(StationNotes station, Suspect[] suspects, double logPrior, IReadOnlyList<Suspect> shared, Outlook outlook, Found found)
    {
        var active = Both(suspects, shared);
        var weight = logPrior;
        foreach (var note in station.Evidence)
        {
            weight += note.LogChance(active, outlook, owner.Cures);
            if (weight < found.Best - Negligible)
            {
                found.LeaveOut(weight);
                return;
            }
        }

        found.Keep(new State(suspects, logPrior, weight));
    }

    /// <summary>Joint states of several stations, the likeliest of each by its own notes, weighed by the readings between them.</summary>
    private States Product(Cluster cluster, List<States> parts, IReadOnlyList<Suspect> shared, Outlook outlook)
    {
        var most = Math.Max(4, (int)Math.Pow(MostJoints, 1.0 / parts.Count));
        IEnumerable<State> joints = [new State([], 0, 0)];
        foreach (var part in parts)
        {
            var likely = part.All.OrderByDescending(s => s.IsSound).ThenByDescending(s => s.LogWeight).Take(most).ToList();
            joints = joints.SelectMany(j => likely.Select(own => new State([.. j.Suspects, .. own.Suspects], j.LogPrior + own.LogPrior, j.LogWeight + own.LogWeight)));
        }

        return States.Of(
            [.. joints.Select(j => j with { LogWeight = j.LogWeight + cluster.Ties.Sum(e => e.LogChance([.. j.Suspects, .. shared], outlook, owner.Cures)) })],
            parts.Max(p => p.LogLeftOut));
    }

    /// <summary>The states kept so far.</summary>
    private sealed class Found
    {
        private readonly List<State> kept = [];

        public double Best { get; private set; } = double.NegativeInfinity;

        public double LogLeftOut { get; private set; } = double.NegativeInfinity;

        public void Keep(State state)
        {
            kept.Add(state);
            Best = Math.Max(Best, state.LogWeight);
        }

        public void LeaveOut(double bound) => LogLeftOut = LogMath.LogAdd(LogLeftOut, bound);

        /// <summary>Those not far below the best; one found early may be.</summary>
        public List<State> Kept() => [.. kept.Where(s => s.LogWeight >= Best - Negligible || s.IsSound)];
    }
}
