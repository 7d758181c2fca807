namespace Underturf.Reasoning.Diagnosis;

/// <summary>
/// The one or two clusters of a pair, weighed one after the other. Neither may be weighed by what the other says of its own wires and coil with no pair there:
/// swapped conductors read each other's, and a terminal that was taken for sound would swear to the wrong coil.
/// </summary>
internal sealed class PairRow
{
    private readonly Case owner;
    private readonly IReadOnlyList<Cluster> clusters;
    private readonly OutlookFit fit;
    private readonly StateFinder finder;
    private readonly SiteFinder learner;
    private readonly Beside beside;
    private readonly Outlook room;
    private readonly int[][] unknowns;

    /// <summary>The last clusters weighed without a pair: pairs of the same stations come in a row.</summary>
    private (int[] Touched, double Log)? without;

    public PairRow(Case owner, IReadOnlyList<Cluster> clusters, OutlookFit fit)
    {
        (this.owner, this.clusters, this.fit) = (owner, clusters, fit);
        (finder, learner, beside, room) = (new StateFinder(owner), new SiteFinder(owner), new Beside(owner, clusters, fit), fit.Posterior.Room());
        unknowns = new int[clusters.Count][];
    }

    /// <summary>What all clusters but these say; good until it is asked for again.</summary>
    public Outlook Others(int[] touched) => fit.Without(touched, [.. touched.SelectMany(UnknownsOf).Distinct()], room);

    /// <summary>log of how much likelier a pair is with nothing else wrong than no pair; once it is below the floor, anything below it.</summary>
    public double Rough(Suspect pair, int[] touched, double logPrior, double floor)
    {
        var (ratio, others) = (logPrior, Others(touched));
        foreach (var k in touched)
        {
            ratio += Sound(k).LogPrior - fit.States(k).LogTotal;
            ratio += finder.Log(clusters[k].Evidence, [pair], others, floor - ratio);
            if (ratio < floor)
            {
                break;
            }

            if (k != touched[^1])
            {
                learner.Absorb(clusters[k], States.Of([Sound(k)], double.NegativeInfinity), [pair], others);
            }
        }

        return ratio;
    }

    /// <summary>Each cluster's states beside the pair, and the logarithm of how much likelier all its notes are with the pair than without.</summary>
    public (Dictionary<int, States> States, double LogRatio) Full(Suspect pair, int[] touched)
    {
        if (without is not { } plain || !touched.SequenceEqual(plain.Touched))
        {
            plain = (touched, Weigh(touched, (k, outlook) => finder.Weigh(clusters[k], fit.States(k).All, [], outlook), []).Log);
            without = plain;
        }

        var (states, log) = Weigh(touched, (k, outlook) => beside.Weigh(k, [pair], outlook), [pair]);
        return (states, log - plain.Log);
    }

    public State Sound(int k) => new([], clusters[k].Stations.Sum(s => s.LogNone), 0);

    /// <summary>The first once more at the end, by what the second says.</summary>
    private (Dictionary<int, States> States, double Log) Weigh(int[] touched, Func<int, Outlook, States> weigh, Suspect[] pair)
    {
        var (states, log, others) = (new Dictionary<int, States>(), 0.0, Others(touched));
        IReadOnlyList<Site> first = [];
        foreach (var k in touched)
        {
            states[k] = weigh(k, others);
            log += states[k].LogTotal;
            var sites = learner.Absorb(clusters[k], states[k], pair, others);
            first = k == touched[0] ? sites : first;
        }

        if (touched.Length > 1 && pair.Length > 0)
        {
            others.Absorb(first, -1);
            states[touched[0]] = weigh(touched[0], others);
        }

        return (states, log);
    }

    /// <summary>All that notes of a cluster can hang on, whenever they were taken.</summary>
    private int[] UnknownsOf(int k)
    {
        var known = owner.Unknowns(clusters[k].Stations[0].Path.Controller);
        return unknowns[k] ??= [.. known.Everywhere.Concat(clusters[k].Stations.SelectMany(s => owner.PathsOf(s.Path.Station)).SelectMany(known.On))];
    }
}
