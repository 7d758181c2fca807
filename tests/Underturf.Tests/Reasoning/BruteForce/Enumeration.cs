using Underturf.Reasoning.Diagnosis;

namespace Underturf.Tests.Reasoning.BruteForce;

/// <summary>
/// The posterior over every set of up to three faults of a property, wherever they sit, by Bayes and nothing else: each set's readings are jointly normal over
/// all stations, and each set is weighed. For a set of faults that stations share and a choice of stations, what all the others read is taken in once; that is
/// the same joint normal, in an order that saves time.
/// </summary>
internal sealed class Enumeration
{
    private const int Most = 3;

    private readonly Case matter;
    private readonly IReadOnlyList<StationNotes> stations;
    private readonly int unknowns;
    private readonly StateList lists;
    private readonly Dictionary<string, double>[] sums;
    private readonly Dictionary<int, List<StationState>> unshared = [];
    private readonly double[] bySize = new double[Most + 1];
    private readonly double[] about;
    private readonly int[] odd;
    private readonly Ground usual;

    private Enumeration(Case matter, string controller)
    {
        this.matter = matter;
        var clusters = new ClusterBuilder(matter).Build(controller);
        Assert.All(clusters, c => Assert.Single(c.Stations));
        Assert.Empty(matter.History.Facts.Works);
        stations = [.. clusters.Select(c => c.Stations[0])];
        unknowns = matter.Unknowns(controller).Count;
        lists = new StateList(matter, Outlook.Prior(unknowns, 0, matter.Book.Coil.LevelSpread), unknowns);
        sums = [.. stations.Select(_ => new Dictionary<string, double>(StringComparer.Ordinal))];
        Suspect[] shared = [.. matter.Suspects.Shared(controller).SelectMany(f => f), .. matter.Suspects.Pairs(controller, _ => true)];
        Row[][] plain = [.. stations.Select(lists.Plain)];
        (about, odd) = Ground.Agree(plain, unknowns + (Most * Prediction.AmountsOfOne), matter.Book.Coil.LevelSpread);
        usual = new Ground(plain, matter.Book.Coil.LevelSpread, about);
        var reference = Sets(shared).Where(s => s.Length < Most).Max(s => Weighed(s, Most - 1 - s.Length, double.PositiveInfinity).Best);
        foreach (var set in Sets(shared))
        {
            Take(set, Weighed(set, Most - set.Length, reference));
        }
    }

    /// <summary>How many sets were weighed.</summary>
    public long Count { get; private set; }

    /// <summary>Probability of no, one, two and three faults.</summary>
    public IReadOnlyList<double> BySize => [.. bySize.Select(b => b / bySize.Sum())];

    /// <summary>For each station the probability of what may be wrong with it, by its faults in words.</summary>
    public IReadOnlyDictionary<string, Dictionary<string, double>> Marginals =>
        stations.Index().ToDictionary(s => s.Item.Path.Station, s => sums[s.Index].ToDictionary(p => p.Key, p => p.Value / bySize.Sum(), StringComparer.Ordinal), StringComparer.Ordinal);

    public static Enumeration Of(Case matter, string controller) => new(matter, controller);

    /// <summary>Sets of faults that stations share; of two pairs with a station in common the wiring model knows nothing.</summary>
    private static IEnumerable<Suspect[]> Sets(Suspect[] shared)
    {
        static bool Fit(Suspect a, Suspect b) => StateList.Together(a, b) && !(a.IsPair && b.IsPair && (b.Concerns(a.Station!) || b.Concerns(a.Other!)));
        yield return [];
        for (var i = 0; i < shared.Length; i++)
        {
            yield return [shared[i]];
            for (var j = i + 1; j < shared.Length; j++)
            {
                if (Fit(shared[i], shared[j]))
                {
                    yield return [shared[i], shared[j]];
                    foreach (var third in shared.Skip(j + 1).Where(k => Fit(shared[i], k) && Fit(shared[j], k)))
                    {
                        yield return [shared[i], shared[j], third];
                    }
                }
            }
        }
    }

    /// <param name="budget">So many faults of single stations beside the shared ones.</param>
    /// <param name="scale">log of a weight that is told as one.</param>
    private Choice Weighed(Suspect[] shared, int budget, double scale)
    {
        var theirs = stations.Select(s => shared.Index().Where(f => SharedFaults.Affects(f.Item, s.Path)).Select(f => (f.Item, f.Index)).ToList()).ToArray();
        var ground = new Ground([.. theirs.Index().Select(t => Sound(t.Index, t.Item))], matter.Book.Coil.LevelSpread, about);
        var states = theirs.Index().Select(t => States(t.Index, t.Item, budget, ground)).ToArray();
        return new Choice(states, ground, ground.LogChance() + shared.Sum(s => Math.Log(s.Weight)) + states.Sum(s => s[0].LogFactor), budget, scale);
    }

    private void Take(Suspect[] shared, Choice choice)
    {
        Count += choice.Count;
        for (var size = 0; size < choice.BySize.Length; size++)
        {
            bySize[shared.Length + size] += choice.BySize[size];
        }

        foreach (var (s, key, weight) in choice.Sums())
        {
            sums[s][key] = sums[s].GetValueOrDefault(key) + weight;
        }
    }

    private Row[] Sound(int s, List<(Suspect Suspect, int Number)> theirs) => theirs.Count == 0 && unshared.TryGetValue(s, out var list)
        ? list[0].Rows
        : lists.Of(stations[s], theirs, 0, usual.Without([s, .. odd]))[0].Rows;

    private List<StationState> States(int s, List<(Suspect Suspect, int Number)> theirs, int budget, Ground ground)
    {
        if (theirs.Count > 0)
        {
            return lists.Of(stations[s], theirs, budget, ground.Without([s, .. odd]));
        }

        if (!unshared.TryGetValue(s, out var list))
        {
            list = lists.Of(stations[s], theirs, Most, ground.Without([s, .. odd]));
            unshared[s] = list;
        }

        return list;
    }
}
