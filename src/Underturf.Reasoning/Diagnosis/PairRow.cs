namespace Underturf.Reasoning.Diagnosis;

/// <summary>
/// The one or two clusters of a pair, weighed one after the other. Neither may be weighed by what the other says of its own wires and coil with no pair there:
/// swapped conductors read each other's, and a terminal that was taken for sound would swear to the wrong coil.
/// </summary>
internal sealed class PairRow(Case owner, IReadOnlyList<Cluster> clusters, OutlookFit fit)
{
    private readonly StateFinder finder = new(owner);
    private readonly SiteFinder learner = new(owner);
    private readonly Beside beside = new(owner, clusters, fit);
    private readonly HashSet<(string Station, string Owner)> seen = [.. owner.Evidence.OfType<RunEvidence>().SelectMany(e => e.Elsewhere.Owners.Select(o => (e.Stations[0], o)))];

    /// <summary>The last clusters weighed without a pair: pairs of the same stations come in a row.</summary>
    private (int[] Touched, double Log)? without;

    /// <summary>What all clusters but the last ones asked about say.</summary>
    private (int[] Touched, Outlook Outlook)? others;

    public Outlook Others(int[] touched)
    {
        if (others is not { } last || !touched.SequenceEqual(last.Touched))
        {
            last = (touched, fit.Without(touched));
            others = last;
        }

        return last.Outlook;
    }

    /// <summary>One of the two was seen to water the other's place.</summary>
    public bool IsSeen(Suspect pair) => seen.Contains((pair.Station!, pair.Other!)) || seen.Contains((pair.Other!, pair.Station!));

    /// <summary>log of how much likelier a pair is with nothing else wrong than no pair, notes but where it was seen; once it is below the floor, anything below it.</summary>
    public double Rough(Suspect pair, int[] touched, double logPrior, double floor)
    {
        var (ratio, outlook) = (logPrior, Others(touched).Without([]));
        foreach (var k in touched)
        {
            ratio += Sound(k).LogPrior - fit.States(k).LogTotal;
            ratio += Rough(clusters[k].Evidence, pair, outlook, floor - ratio);
            if (ratio < floor)
            {
                break;
            }

            // Where a note may be wrong, nothing is learned from it yet.
            if (k != touched[^1] && !IsSeen(pair))
            {
                learner.Absorb(clusters[k], States.Of([Sound(k)], double.NegativeInfinity), pair.Alone, outlook);
            }
        }

        return ratio;
    }

    /// <summary>Each note as the pair has it, or wrong where the pair was seen; once the sum is below the floor, anything below it.</summary>
    private double Rough(IReadOnlyList<Evidence> evidence, Suspect pair, Outlook outlook, double floor)
    {
        if (!IsSeen(pair))
        {
            return finder.Log(evidence, pair.Alone, outlook, floor);
        }

        // Each by itself: what a wrong note shows says nothing of the others.
        var sum = 0.0;
        for (var i = 0; i < evidence.Count && sum >= floor; i++)
        {
            sum += Math.Max(evidence[i].LogChance(pair.Alone, outlook, owner.Cures), owner.LogWrongNote + evidence[i].LogChanceIfWrong);
        }

        return sum;
    }

    /// <summary>The clusters beside the pair, and the logarithm of how much likelier all their notes are with the pair than without.</summary>
    public (PairStates States, double LogRatio) Full(Suspect pair, int[] touched)
    {
        if (without is not { } plain || !touched.SequenceEqual(plain.Touched))
        {
            plain = (touched, Weigh(touched, (k, by) => finder.Weigh(clusters[k], fit.States(k).All, [], by), []).Log);
            without = plain;
        }

        var found = Weigh(touched, (k, by) => beside.Weigh(k, pair.Alone, by), pair.Alone);
        return (found, found.Log - plain.Log);
    }

    /// <summary>The states of each cluster, the first once more by what the second says.</summary>
    public Dictionary<int, States> Refined(Suspect pair, PairStates found)
    {
        var (first, states) = (found.Touched[0], new Dictionary<int, States>(found.States));
        if (found.Touched.Length > 1)
        {
            found.Outlook.Absorb(found.First, -1);
            states[first] = beside.Weigh(first, pair.Alone, found.Outlook);
        }

        return states;
    }

    public State Sound(int k) => new([], clusters[k].LogNone, 0);

    private PairStates Weigh(int[] touched, Func<int, Outlook, States> weigh, Suspect[] pair)
    {
        var (states, log, outlook) = (new Dictionary<int, States>(), 0.0, Others(touched).Without([]));
        IReadOnlyList<Site> first = [];
        foreach (var k in touched)
        {
            states[k] = weigh(k, outlook);
            log += states[k].LogTotal;
            var sites = learner.Absorb(clusters[k], states[k], pair, outlook);
            first = k == touched[0] ? sites : first;
        }

        return new PairStates(touched, states, log, first, outlook);
    }
}
