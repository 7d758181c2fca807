namespace Underturf.Reasoning.Diagnosis;

/// <summary>Sums the weights of all combinations into probabilities of the worlds of each station.</summary>
internal sealed class WorldSum(IReadOnlyList<Cluster> clusters)
{
    /// <summary>Worlds rarer than this are not listed one by one.</summary>
    private const double Rare = 1e-9;

    /// <summary>For each cluster the states that combinations have there, each with what is wrong beside them and its weight.</summary>
    private readonly Dictionary<States, (Suspect[] Shared, double Weight)>[] weights = [.. clusters.Select(_ => new Dictionary<States, (Suspect[] Shared, double Weight)>(ReferenceEqualityComparer.Instance))];

    /// <summary>Takes in one combination of a shared fault and pairs.</summary>
    public void Add(OutlookFit fit, SharedFault fault, IReadOnlyList<PairFault> pairs, double weight)
    {
        if (weight < Rare)
        {
            return;
        }

        for (var k = 0; k < clusters.Count; k++)
        {
            var (states, shared) = Of(k, fit, fault, pairs);
            weights[k][states] = (shared, weights[k].GetValueOrDefault(states).Weight + weight);
        }
    }

    public IReadOnlyDictionary<string, IReadOnlyList<World>> Worlds() => clusters.Index()
        .SelectMany(c => c.Item.Stations.Select(s => (s.Path.Station, Worlds: Worlds(c.Index, s.Path))))
        .ToDictionary(s => s.Station, s => s.Worlds, StringComparer.Ordinal);

    private static (States States, Suspect[] Shared) Of(int k, OutlookFit fit, SharedFault fault, IReadOnlyList<PairFault> pairs)
    {
        for (var i = 0; i < pairs.Count; i++)
        {
            if (pairs[i].States.TryGetValue(k, out var paired))
            {
                return (paired, [pairs[i].Suspect]);
            }
        }

        return fault.States.TryGetValue(k, out var beside) ? (beside, fault.Suspects) : (fit.States(k), []);
    }

    private IReadOnlyList<World> Worlds(int cluster, Translation.StationPath path)
    {
        var sums = new Dictionary<SuspectSet, (Suspect[] Suspects, double Weight)>();
        foreach (var (states, (shared, weight)) in weights[cluster])
        {
            foreach (var state in states.All)
            {
                var chance = weight * Math.Exp(state.LogWeight - states.LogTotal);
                if (chance > Rare)
                {
                    Suspect[] all = [.. state.Suspects.Where(s => s.Station == path.Station), .. shared.Where(s => SharedFaults.Affects(s, path) && !(state.IsBefore && s.Seat.Beyond is not null))];
                    var key = new SuspectSet(all);
                    sums[key] = (all, sums.GetValueOrDefault(key).Weight + chance);
                }
            }
        }

        var total = sums.Values.Sum(s => s.Weight);
        return [.. sums.Values.Select(s => new World(s.Suspects, s.Weight / total)).OrderByDescending(w => w.Probability)];
    }
}
