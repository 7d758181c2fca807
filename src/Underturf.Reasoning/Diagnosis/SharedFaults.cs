using Underturf.Numerics;
using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>Faults on what stations share, wrong together.</summary>
/// <param name="LogRatio">log of how much likelier it is, with all notes, than nothing shared being wrong.</param>
/// <param name="States">For each cluster that it changes, its states beside it.</param>
internal sealed record SharedFault(IReadOnlyList<Suspect> Suspects, double LogRatio, IReadOnlyDictionary<int, States> States);

/// <summary>
/// Weighs faults on the common, the sensor, the supply and the whole property. The clusters that one changes are weighed in a row, each by what those
/// before it say of the shared unknowns, with the fault and without, so that what they have in common counts once.
/// </summary>
internal sealed class SharedFaults(Case owner, IReadOnlyList<Cluster> clusters, OutlookFit fit)
{
    /// <summary>Suspects below the best by this much in the logarithm are left out.</summary>
    private const double Negligible = 14;

    /// <summary>A shared fault this likely is asked for a second beside it.</summary>
    private const double Company = 0.1;

    private const int MostFull = 160;

    /// <summary>Faults less likely than this, in the logarithm, are not weighed twice.</summary>
    private const double Minor = 6;

    private readonly StateFinder finder = new(owner);
    private readonly SiteFinder learner = new(owner);
    private readonly Beside beside = new(owner, clusters, fit);

    /// <summary>For the clusters that a fault changes what all others say of what is shared, and the logarithm of their chance without it.</summary>
    private readonly Dictionary<string, (Outlook Others, double Log)> sound = new(StringComparer.Ordinal);

    public static bool Affects(Suspect suspect, StationPath path) => suspect.Fault?.Scope switch
    {
        FaultScope.CommonConductor or FaultScope.CommonSplice => suspect.Common == path.Common && path.Legs.Any(l => new LegKey(l.Id, l.To) == suspect.Leg),
        FaultScope.Sensor or FaultScope.Supply or FaultScope.Everywhere => true,
        FaultScope.Pair => suspect.Station == path.Station || suspect.Other == path.Station,
        _ => false,
    };

    public IReadOnlyList<SharedFault> Find(string controller)
    {
        var suspects = owner.Suspects.Shared(controller);
        var promising = Promising(suspects, []);
        owner.Pace.Take(0.7, promising.Count);
        var single = promising.Select(s => Full([s])).ToList();
        var total = LogMath.LogSumExp([0, .. single.Select(s => s.Fault.LogRatio)]);
        var second = single
            .Where(s => s.Fault.LogRatio > total + Math.Log(Company))
            .OrderByDescending(s => s.Fault.LogRatio)
            .Take(2)
            .SelectMany(first => Promising(suspects, first.Fault.Suspects).Where(s => !SameSeat(s, first.Fault.Suspects[0])).Select(s => Full([first.Fault.Suspects[0], s])))
            .DistinctBy(f => new SuspectSet(f.Fault.Suspects));
        var kept = single.Concat(second).Where(f => f.Fault.LogRatio > total - Negligible).ToList();
        owner.Pace.Take(0.7, kept.Count);
        return [.. kept.Select(f => f.Fault.LogRatio > total - Minor ? Refined(f.Fault, f.Row) : f.Fault)];
    }

    private static bool SameSeat(Suspect a, Suspect b) => a.Fault == b.Fault && a.Leg == b.Leg && a.Common == b.Common;

    /// <summary>With every affected station sound, or with a fault of its own: cheap, and enough to drop what is out of the question.</summary>
    private List<Suspect> Promising(IReadOnlyList<SuspectFamily> families, IReadOnlyList<Suspect> first)
    {
        var scores = families.Select(f => f.Select(s => Math.Log(s.Weight)).ToArray()).ToList();
        owner.Pace.Take(0.5, clusters.Count);
        for (var k = 0; k < clusters.Count; k++)
        {
            owner.Pace.Step();
            fit.Ask(k, outlook =>
            {
                var preview = new Preview(owner, clusters[k], first, outlook, first.Count == 0 ? fit.States(k).LogTotal : null);
                foreach (var f in Enumerable.Range(0, families.Count).Where(f => clusters[k].Stations.Any(n => Affects(families[f][0], n.Path))))
                {
                    preview.AddTo(scores[f], families[f]);
                }
            });
        }

        var best = Math.Max(0, scores.SelectMany(s => s).DefaultIfEmpty(0).Max());
        return [.. families
            .SelectMany((f, i) => scores[i].Index().Where(s => s.Item > best - Negligible).Select(s => (Suspect: f[s.Index], Score: s.Item)))
            .OrderByDescending(s => s.Score)
            .Take(MostFull)
            .Select(s => s.Suspect)];
    }

    private (SharedFault Fault, Row Row) Full(IReadOnlyList<Suspect> faults)
    {
        owner.Pace.Step();
        var affected = Enumerable.Range(0, clusters.Count).Where(k => clusters[k].Stations.Any(n => faults.Any(f => Affects(f, n.Path))) && beside.Changes(k, faults)).ToList();
        var key = string.Join(' ', affected);
        if (!sound.TryGetValue(key, out var without))
        {
            var others = fit.Without(affected);
            without = (others, Weigh(affected, [], others.Clone()).Log);
            sound[key] = without;
        }

        var row = Weigh(affected, faults, without.Others.Clone());
        return (new SharedFault(faults, faults.Sum(f => Math.Log(f.Weight)) + row.Log - without.Log, affected.Zip(row.States).ToDictionary(p => p.First, p => p.Second)), row);
    }

    /// <summary>Each cluster weighed once more by what all the others say, not only those before it.</summary>
    private SharedFault Refined(SharedFault fault, Row row)
    {
        owner.Pace.Step();
        return fault with
        {
            States = fault.States.Keys.Zip(row.Sites).ToDictionary(p => p.First, p => beside.Weigh(p.First, fault.Suspects, row.Outlook.Without(p.Second))),
        };
    }

    /// <summary>The affected clusters one after the other.</summary>
    private Row Weigh(List<int> affected, IReadOnlyList<Suspect> faults, Outlook others)
    {
        var row = new Row(0, others, [], []);
        foreach (var k in affected)
        {
            var states = faults.Count == 0 ? finder.Weigh(clusters[k], fit.States(k).All, [], row.Outlook) : beside.Weigh(k, faults, row.Outlook);
            row.States.Add(states);
            row.Sites.Add(learner.Absorb(clusters[k], states, faults, row.Outlook));
            row = row with { Log = row.Log + states.LogTotal };
        }

        return row;
    }

    /// <summary>Affected clusters weighed one after the other.</summary>
    private sealed record Row(double Log, Outlook Outlook, List<States> States, List<IReadOnlyList<Site>> Sites);
}
