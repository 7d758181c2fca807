using Underturf.Numerics;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>
/// Weighs everything that could be wrong in a cluster: each suspect alone, and where that does not make the notes ordinary, two and three
/// together. States are dropped as soon as the notes weighed so far put them out of the question: no later note can bring them back, because
/// no chance is above its ceiling.
/// </summary>
internal sealed class StateFinder(Case owner)
{
    /// <summary>States below the best by this much in the logarithm are left out; their sum is bounded in the result.</summary>
    private const double Negligible = 14;

    /// <summary>A station less likely to ask for nothing than this is searched for several faults at once.</summary>
    private const double Ordinary = 0.9;

    private const int MostFaults = 3;
    private const int MostSeeds = 10;
    private const int SeedsOfANote = 2;
    private const int AmountsOfASeed = 2;
    private const int MostJoints = 4000;

    private readonly JointReadings before = new();

    /// <summary>States of a cluster with the shared suspects wrong too.</summary>
    /// <param name="deep">Whether to look for several faults on one station.</param>
    public States Find(Cluster cluster, Suspect[] shared, Outlook outlook, bool deep)
    {
        var parts = cluster.Stations.Select(s => FindAlone(s, shared, outlook, deep)).ToList();
        return parts is [var only] ? only : Product(cluster, parts, shared, outlook);
    }

    /// <summary>States of one station by its own notes, one fault at most.</summary>
    public States Alone(StationNotes station, Outlook outlook) => FindAlone(station, [], outlook, deep: false);

    /// <summary>Only these states, weighed anew.</summary>
    public States Weigh(Cluster cluster, IEnumerable<State> some, Suspect[] shared, Outlook outlook)
    {
        return States.Of([.. some.Select(s => s with { LogWeight = s.LogPrior + Log(cluster.Evidence, s.With(shared), outlook) })], double.NegativeInfinity);
    }

    /// <summary>log of the chance of notes; once it is below the floor, anything below the floor.</summary>
    public double Log(IReadOnlyList<Evidence> evidence, Suspect[] active, Outlook outlook, double floor = double.NegativeInfinity)
    {
        var sum = 0.0;
        before.Begin(outlook);
        for (var i = 0; i < evidence.Count && sum >= floor; i++)
        {
            sum += evidence[i].LogChance(active, outlook, owner.Cures, before);
        }

        return sum;
    }

    private States FindAlone(StationNotes station, Suspect[] shared, Outlook outlook, bool deep)
    {
        var found = new Found();
        Try(station, [], station.LogNone, shared, outlook, found);
        SuspectFamily family = null!;
        Verdict Weigh(int i) => Try(station, family[i].Alone, station.LogNone + Math.Log(family[i].Weight), shared, outlook, found);
        var (weigh, leaveOut) = ((Func<int, Verdict>)Weigh, (Action<double>)found.LeaveOut);
        foreach (var next in station.Families)
        {
            family = next;
            AmountSieve.Run(family.Count, weigh, leaveOut);
        }

        var states = States.Of(found.Kept(), found.LogLeftOut);
        return deep && states.AsksNothing < Ordinary ? Deepen(station, states, shared, outlook, found) : states;
    }

    /// <summary>Adds a suspect to what explains the notes best so far, and to what explains a single note best.</summary>
    private States Deepen(StationNotes station, States states, Suspect[] shared, Outlook outlook, Found found)
    {
        var seeds = Varied(states.All.Where(s => s.Suspects.Length == 1)).Take(MostSeeds).Concat(SeedsByNote(station, shared, outlook)).DistinctBy(s => s.Suspects[0]).ToList();
        var tried = new Dictionary<SuspectSet, Verdict>();
        var (seed, family) = ((State)null!, (SuspectFamily)null!);
        Verdict Weigh(int i) => TryOnce(station, seed, family[i], shared, outlook, found, tried);
        var (weigh, leaveOut) = ((Func<int, Verdict>)Weigh, (Action<double>)found.LeaveOut);
        for (var count = 2; count <= MostFaults && seeds.Count > 0; count++)
        {
            tried.Clear();
            foreach (var next in seeds)
            {
                seed = next;
                foreach (var more in station.Families.Where(f => Together(next.Suspects, f[0]) && !IsHopeless(station, next, f, found)))
                {
                    family = more;
                    AmountSieve.Run(family.Count, weigh, leaveOut);
                }
            }

            seeds = [.. Varied(found.Kept().Where(s => s.Suspects.Length == count).OrderByDescending(s => s.LogWeight)).Take(MostSeeds / 2)];
        }

        return States.Of(found.Kept(), found.LogLeftOut);
    }

    /// <summary>Of the same things in other amounts only the first few: neighbouring amounts are one beginning.</summary>
    private static IEnumerable<State> Varied(IEnumerable<State> states)
    {
        var kept = new List<Suspect[]>();
        foreach (var state in states)
        {
            if (kept.Count(k => AreSameThings(k, state.Suspects)) < AmountsOfASeed)
            {
                kept.Add(state.Suspects);
                yield return state;
            }
        }
    }

    private static bool AreSameThings(Suspect[] one, Suspect[] other)
    {
        for (var i = 0; i < one.Length; i++)
        {
            if (!ReferenceEquals(one[i].Seat, other[i].Seat))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Out of the question whatever the notes say.</summary>
    private static bool IsHopeless(StationNotes station, State seed, SuspectFamily more, Found found)
    {
        var most = seed.LogPrior + more.LogWeight + station.LogCeilings[0];
        var hopeless = most < found.Best - Negligible;
        if (hopeless)
        {
            found.LeaveOut(most);
        }

        return hopeless;
    }

    /// <summary>A set of suspects may grow from each of its members.</summary>
    private Verdict TryOnce(StationNotes station, State seed, Suspect more, Suspect[] shared, Outlook outlook, Found found, Dictionary<SuspectSet, Verdict> tried)
    {
        Suspect[] suspects = [.. seed.Suspects, more];
        var set = new SuspectSet(suspects);
        if (!tried.TryGetValue(set, out var verdict))
        {
            verdict = Try(station, suspects, seed.LogPrior + Math.Log(more.Weight), shared, outlook, found);
            tried[set] = verdict;
        }

        return verdict;
    }

    private IEnumerable<State> SeedsByNote(StationNotes station, Suspect[] shared, Outlook outlook) => station.Evidence.SelectMany(note => station.Families
        .SelectMany(f => Nearest(f, note, shared, outlook))
        .Select(s => new State([s], station.LogNone + Math.Log(s.Weight), Math.Log(s.Weight) + note.LogChance([s, .. shared], outlook, owner.Cures)))
        .OrderByDescending(s => s.LogWeight)
        .Take(SeedsOfANote));

    /// <summary>The amounts whose predictions lie next to a note on either side; every fourth where sides say nothing.</summary>
    private IEnumerable<Suspect> Nearest(SuspectFamily family, Evidence note, Suspect[] shared, Outlook outlook)
    {
        int Side(int i) => note.Side([family[i], .. shared], outlook, owner.Cures);
        if (family.Count < 4 || Side(0) == 0)
        {
            return family.Where((_, i) => i % 4 == 0);
        }

        var (below, above) = AmountSieve.Crossing(family.Count, Side);
        return [family[below], family[above]];
    }

    /// <summary>A part has one amount of a fault; "something not modelled" leaves no room for more.</summary>
    private static bool Together(Suspect[] suspects, Suspect more)
    {
        foreach (var suspect in suspects)
        {
            if (suspect == more || (suspect.Fault == more.Fault && suspect.Leg == more.Leg && suspect.Place == more.Place && suspect.Seat.IsUnfound == more.Seat.IsUnfound && suspect.Other == more.Other && suspect.Note == more.Note) || IsAnything(suspect))
            {
                return false;
            }
        }

        return !IsAnything(more);
    }

    private static bool IsAnything(Suspect suspect) => suspect.Fault.Scope == Property.Practice.FaultScope.Unmodelled;

    private Verdict Try(StationNotes station, Suspect[] suspects, double logPrior, Suspect[] shared, Outlook outlook, Found found)
    {
        var active = State.Together(suspects, shared);
        var weight = logPrior;
        before.Begin(outlook);
        for (var i = 0; i < station.Evidence.Count; i++)
        {
            weight += station.Evidence[i].LogChance(active, outlook, owner.Cures, before);
            var most = weight + station.LogCeilings[i + 1];
            if (most < found.Best - Negligible)
            {
                found.LeaveOut(most);
                return new Verdict(i, station.Evidence[i].Side(active, outlook, owner.Cures, before), most);
            }
        }

        found.Keep(new State(suspects, logPrior, weight));
        return new Verdict(-1, 0, weight);
    }

    /// <summary>Joint states of several stations, the likeliest of each by its own notes, weighed by all notes together, the readings between them among these.</summary>
    private States Product(Cluster cluster, List<States> parts, Suspect[] shared, Outlook outlook)
    {
        var most = Math.Max(4, (int)Math.Pow(MostJoints, 1.0 / parts.Count));
        IEnumerable<State> joints = [new State([], 0, 0)];
        foreach (var part in parts)
        {
            var likely = part.All.OrderByDescending(s => s.IsSound).ThenByDescending(s => s.LogWeight).Take(most).ToList();
            joints = joints.SelectMany(j => likely.Select(own => new State([.. j.Suspects, .. own.Suspects], j.LogPrior + own.LogPrior, j.LogWeight + own.LogWeight)));
        }

        var found = new Found();
        found.LeaveOut(parts.Max(p => p.LogLeftOut));
        foreach (var joint in joints.OrderByDescending(j => j.LogWeight))
        {
            var weight = joint.LogPrior + Log(cluster.Evidence, joint.With(shared), outlook, found.Best - Negligible - joint.LogPrior);
            if (weight < found.Best - Negligible && !joint.IsSound)
            {
                found.LeaveOut(weight);
            }
            else
            {
                found.Keep(joint with { LogWeight = weight });
            }
        }

        return States.Of(found.Kept(), found.LogLeftOut);
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
