using Underturf.Numerics;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>
/// The states of a cluster beside a fault that it shares with others: the likeliest by all its notes, and the likeliest by the notes that the
/// fault leaves alone; these stand for all others too, by their share of the latter notes. A station that the common cuts off still shows its
/// own leak to earth. Readings between two stations are left out of that choice; a note that the fault contradicts may itself be wrong.
/// </summary>
internal sealed class Beside(Case owner, IReadOnlyList<Cluster> clusters, OutlookFit fit)
{
    /// <summary>So many of the none-shared states, and so many by the notes left alone.</summary>
    private const int MostKept = 8;
    private const int MostAlone = 24;

    /// <summary>States by the notes left alone are kept down to this much below the best, in the logarithm.</summary>
    private const double Near = 4;

    /// <summary>In the logarithm: what a wrong note costs at the least.</summary>
    private const double Strongly = 4;

    private readonly StateFinder finder = new(owner);
    private readonly Dictionary<(int, ulong), IReadOnlyList<State>> companies = [];
    private readonly Dictionary<int, double[]> sound = [];

    /// <summary>What the notes say of the last faults asked about, by cluster.</summary>
    private (Suspect[] Faults, Dictionary<int, double[]> Logs) last = ([], []);

    /// <summary>Whether any note of the cluster would look otherwise.</summary>
    public bool Changes(int cluster, Suspect[] faults) => Mask(cluster, faults) != AllAlone(cluster);

    public States Weigh(int cluster, Suspect[] faults, Outlook outlook)
    {
        var states = Company(cluster, Mask(cluster, faults)).Concat(Contradicted(cluster, faults)).DistinctBy(s => new SuspectSet(s.Suspects));
        return finder.Weigh(clusters[cluster], clusters[cluster].MayReturnBy(faults) ? states.Select(Half).Concat(Before(cluster, faults)) : states, faults, outlook);
    }

    /// <summary>The station ends before the box that nobody found.</summary>
    private IEnumerable<State> Before(int cluster, Suspect[] faults)
    {
        Suspect[] left = [.. faults.Where(f => f.Seat.Beyond is null)];
        return Company(cluster, left.Length == 0 ? AllAlone(cluster) : Mask(cluster, left)).Select(s => Half(s) with { IsBefore = true });
    }

    /// <summary>As likely as not.</summary>
    private static State Half(State state) => state with { LogPrior = state.LogPrior - Math.Log(2) };

    private IReadOnlyList<State> Company(int cluster, ulong mask) => companies.TryGetValue((cluster, mask), out var company) ? company
        : companies[(cluster, mask)] = Company(clusters[cluster], mask, fit.States(cluster));

    /// <summary>A note that speaks strongly against the faults may be the one that is wrong; without them it would not be doubted.</summary>
    private IEnumerable<State> Contradicted(int cluster, Suspect[] faults)
    {
        var (logs, without) = (Logs(cluster, faults), Sound(cluster));
        return from doubt in clusters[cluster].Doubtful
               where logs[doubt.Note] < without[doubt.Note] - Strongly
               select new State(doubt.Wrong.Alone, clusters[cluster].LogNone + Math.Log(doubt.Wrong.Weight), 0);
    }

    private List<State> Company(Cluster cluster, ulong mask, States without)
    {
        var outlook = fit.Posterior;
        var notes = cluster.Evidence.Where((_, i) => (mask & Bit(i)) != 0).ToHashSet();
        var none = cluster.LogNone;
        var singles = cluster.Stations
            .Select(s => finder.Alone(s.By(notes.Contains), outlook).All)
            .SelectMany(own => own.Where(s => !s.IsSound).Select(s => (Suspect: s.Suspects[0], Log: s.LogWeight - own.First(o => o.IsSound).LogWeight)))
            .OrderByDescending(s => s.Log)
            .ToList();
        var alone = Varied(singles, s => [s.Suspect]).TakeWhile((s, i) => i < MostKept || (i < MostAlone && s.Log > singles[0].Log - Near)).ToList();
        var grown = singles.Count == 0 ? 0 : LogMath.LogSumExp([.. singles.Select(s => s.Log)]) - LogMath.LogSumExp([.. alone.Select(s => s.Log)]);
        return [.. alone
            .Select(s => new State([s.Suspect], none + Math.Log(s.Suspect.Weight) + grown, 0))
            .Concat(Varied(without.All, s => s.Suspects).Take(MostKept))
            .Where(s => !s.IsSound)
            .DistinctBy(s => new SuspectSet(s.Suspects))
            .Prepend(new State([], none, 0))];
    }

    /// <summary>What asks for nothing in its likeliest amount alone: its amounts would take the room of faults.</summary>
    private static IEnumerable<T> Varied<T>(IEnumerable<T> states, Func<T, Suspect[]> suspectsOf)
    {
        var told = new HashSet<SuspectSeat>(ReferenceEqualityComparer.Instance);
        return states.Where(s => Array.TrueForAll(suspectsOf(s), x => !x.Fault.AsksNothing || told.Add(x.Seat)));
    }

    private static ulong Bit(int note) => 1UL << Math.Min(note, 63);

    private ulong AllAlone(int cluster)
    {
        var mask = 0UL;
        for (var i = 0; i < clusters[cluster].Evidence.Count; i++)
        {
            mask |= Bit(i);
        }

        return mask;
    }

    /// <summary>The notes that the faults leave as they are when the stations are sound, as bits; notes beyond the 63rd share the last.</summary>
    private ulong Mask(int cluster, Suspect[] faults)
    {
        var (logs, without, mask) = (Logs(cluster, faults), Sound(cluster), 0UL);
        for (var i = 0; i < logs.Length; i++)
        {
            mask |= logs[i] == without[i] ? Bit(i) : 0;
        }

        return mask;
    }

    /// <summary>log of the chance of each note with the stations sound.</summary>
    private double[] Logs(int cluster, Suspect[] faults)
    {
        if (last.Faults != faults)
        {
            last = (faults, []);
        }

        return last.Logs.TryGetValue(cluster, out var logs) ? logs : last.Logs[cluster] = Work(cluster, faults);
    }

    /// <summary>The same without the faults.</summary>
    private double[] Sound(int cluster) => sound.TryGetValue(cluster, out var logs) ? logs : sound[cluster] = Work(cluster, []);

    private double[] Work(int cluster, Suspect[] faults) => [.. clusters[cluster].Evidence.Select(e => e.LogChance(faults, fit.Posterior, owner.Cures))];
}
