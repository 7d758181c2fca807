using Underturf.Numerics;
using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>Faults on what stations share, wrong together.</summary>
/// <param name="LogRatio">log of how much likelier it is, with all notes, than nothing shared being wrong.</param>
/// <param name="States">For each cluster that it changes, its states beside it.</param>
internal sealed record SharedFault(Suspect[] Suspects, double LogRatio, IReadOnlyDictionary<int, States> States);

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

    /// <summary>What asks for nothing and makes the notes no likelier than this, in the logarithm, may as well not be there.</summary>
    private const double Telling = 3;

    /// <summary>Faults less likely than this, in the logarithm, are not weighed twice.</summary>
    private const double Minor = 6;

    private readonly StateFinder finder = new(owner);
    private readonly SiteFinder learner = new(owner);
    private readonly Beside beside = new(owner, clusters, fit);

    /// <summary>
    /// For the clusters that the last fault changed what all others say of what is shared, and the logarithm of their chance without it. Faults of one seat come in a
    /// row, and on a large property an outlook is megabytes.
    /// </summary>
    private (List<int> Affected, Outlook Others, double Log)? without;

    /// <summary>The outlook of a row that nobody asks for again.</summary>
    private Outlook? spare;

    public static bool Affects(Suspect suspect, StationPath path) => suspect.Fault?.Scope switch
    {
        FaultScope.CommonConductor or FaultScope.CommonSplice => path.LegOfCommon(suspect) >= 0,
        FaultScope.Run => path.IsOf(suspect),
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
            .SelectMany(first => Promising(suspects, first.Fault.Suspects).Where(s => s.Seat != first.Fault.Suspects[0].Seat).Select(s => Full([first.Fault.Suspects[0], s])))
            .DistinctBy(f => new SuspectSet(f.Fault.Suspects));
        var kept = single.Concat(second).Where(f => f.Fault.LogRatio > total - Negligible).ToList();
        owner.Pace.Take(0.7, kept.Count);
        return [.. kept.Select(f => f.Fault.LogRatio > total - Minor ? Refined(f.Fault, f.Row) : f.Fault)];
    }

    private static bool Affects(Suspect suspect, Cluster cluster)
    {
        foreach (var station in cluster.Stations)
        {
            if (Affects(suspect, station.Path))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>With every affected station sound, or with a fault of its own: cheap, and enough to drop what is out of the question.</summary>
    /// <returns>Those of one seat in a row.</returns>
    private List<Suspect> Promising(IReadOnlyList<SuspectFamily> families, Suspect[] first)
    {
        var previews = clusters.Select((c, k) => new Preview(owner, c, first, fit.Without(k), first.Length == 0 ? fit.States(k).LogTotal : null)).ToList();
        owner.Pace.Take(0.5, families.Count);
        var scores = families.Select(f => Score(f, [.. previews.Where((_, k) => Affects(f[0], clusters[k]))])).ToList();
        var best = Math.Max(0, scores.SelectMany(s => s).DefaultIfEmpty(0).Max());
        return [.. families
            .SelectMany((f, i) => scores[i].Index().Where(s => s.Item > best - Negligible).Select(s => (Suspect: f[s.Index], Score: s.Item)))
            .Where(s => !s.Suspect.Fault.AsksNothing || s.Score - Math.Log(s.Suspect.Weight) > Telling)
            .OrderByDescending(s => s.Score)
            .Take(MostFull)
            .GroupBy(s => s.Suspect.Seat, s => s.Suspect)
            .SelectMany(seat => seat)];
    }

    /// <summary>By the clusters that it changes, each amount; no further once none of those left could make good what the amount lacks.</summary>
    private double[] Score(SuspectFamily family, IReadOnlyList<Preview> previews)
    {
        owner.Pace.Step();
        var scores = family.Select(s => Math.Log(s.Weight)).ToArray();
        var left = previews.Sum(p => p.MostGain);
        foreach (var preview in previews)
        {
            var floor = -Negligible - left;
            var (lowest, highest) = (Array.FindIndex(scores, s => s >= floor), Array.FindLastIndex(scores, s => s >= floor));
            if (lowest < 0)
            {
                break;
            }

            preview.AddTo(scores, family, lowest, highest);
            left -= preview.MostGain;
        }

        return scores;
    }

    private (SharedFault Fault, Row Row) Full(Suspect[] faults)
    {
        owner.Pace.Step();
        var affected = Enumerable.Range(0, clusters.Count).Where(k => faults.Any(f => Affects(f, clusters[k])) && beside.Changes(k, faults)).ToList();
        if (without is not { } sound || !affected.SequenceEqual(sound.Affected))
        {
            sound = Without(affected);
            without = sound;
        }

        var row = Weigh(affected, faults, Fresh(sound.Others));
        var fault = new SharedFault(faults, faults.Sum(f => Math.Log(f.Weight)) + row.Log - sound.Log, affected.Zip(row.States).ToDictionary(p => p.First, p => p.Second));
        spare = fault.LogRatio < -Minor ? row.Outlook : null;
        return (fault, row);
    }

    private (List<int> Affected, Outlook Others, double Log) Without(List<int> affected)
    {
        var others = fit.WithoutMany(affected);
        var row = Weigh(affected, [], Fresh(others));
        spare = row.Outlook;
        return (affected, others, row.Log);
    }

    private Outlook Fresh(Outlook outlook)
    {
        var fresh = spare is null ? outlook.Clone() : outlook.CloneInto(spare);
        spare = null;
        return fresh;
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
    private Row Weigh(List<int> affected, Suspect[] faults, Outlook others)
    {
        var row = new Row(0, others, [], []);
        foreach (var k in affected)
        {
            var states = faults.Length == 0 ? finder.Weigh(clusters[k], fit.States(k).All, [], row.Outlook) : beside.Weigh(k, faults, row.Outlook);
            row.States.Add(states);
            row.Sites.Add(learner.Absorb(clusters[k], states, faults, row.Outlook));
            row = row with { Log = row.Log + states.LogTotal };
        }

        return row;
    }

    /// <summary>Affected clusters weighed one after the other.</summary>
    private sealed record Row(double Log, Outlook Outlook, List<States> States, List<IReadOnlyList<Site>> Sites);
}
