namespace Underturf.Reasoning.Diagnosis;

/// <summary>
/// Fits the shared unknowns and the states of every cluster to each other: a cluster is weighed by what all others say of the shared unknowns, and
/// then says its own. Nothing on what stations share is wrong here.
/// </summary>
internal sealed class OutlookFit
{
    private readonly IReadOnlyList<Cluster> clusters;
    private readonly Pace pace;
    private readonly StateFinder finder;
    private readonly SiteFinder learner;
    private readonly IReadOnlyList<Site>[] sites;
    private readonly States[] states;

    private OutlookFit(Case owner, IReadOnlyList<Cluster> clusters, Outlook prior)
    {
        this.clusters = clusters;
        pace = owner.Pace;
        (finder, learner) = (new StateFinder(owner), new SiteFinder(owner));
        (sites, states) = (new IReadOnlyList<Site>[clusters.Count], new States[clusters.Count]);
        Posterior = prior.Clone();
    }

    /// <summary>What all notes together say of the shared unknowns.</summary>
    public Outlook Posterior { get; }

    /// <summary>log of the chance of all notes with nothing shared wrong.</summary>
    public double LogEvidence { get; private set; }

    public States States(int cluster) => states[cluster];

    /// <summary>A first round to begin with, one that weighs the states found in it anew, and one that looks for all of them again, several faults at once included.</summary>
    /// <param name="start">Where to begin where the prior is too wide to begin with; else the prior.</param>
    public static OutlookFit Of(Case owner, IReadOnlyList<Cluster> clusters, Outlook prior, Outlook? start)
    {
        var fit = new OutlookFit(owner, clusters, prior);
        owner.Pace.Take(0.25, clusters.Count);
        fit.Begin(start);
        owner.Pace.Take(0.1, clusters.Count);
        fit.Sweep(k => fit.finder.Weigh(clusters[k], fit.states[k].All, [], fit.Posterior));
        owner.Pace.Take(0.5, clusters.Count);
        fit.Sweep(k => fit.finder.Find(clusters[k], [], fit.Posterior, deep: true));
        return fit;
    }

    /// <summary>What all clusters but these few say.</summary>
    public Outlook Without(params int[] few) => Posterior.Without(few.SelectMany(k => sites[k]));

    /// <summary>What all clusters but these say, however many they are.</summary>
    public Outlook WithoutMany(IEnumerable<int> some)
    {
        var outlook = Posterior.Clone();
        outlook.Absorb(some.SelectMany(k => sites[k]), -1);
        return outlook;
    }

    private void Begin(Outlook? start)
    {
        var outlook = start?.Clone() ?? Posterior;
        for (var k = 0; k < clusters.Count; k++)
        {
            pace.Step();
            states[k] = finder.Find(clusters[k], [], outlook, deep: false);
            LogEvidence += states[k].LogTotal;
            sites[k] = learner.Absorb(clusters[k], states[k], [], outlook);
            if (start is not null)
            {
                outlook.Absorb(sites[k], -1);
                Posterior.Absorb(sites[k]);
            }
        }
    }

    private void Sweep(Func<int, States> weigh)
    {
        for (var k = 0; k < clusters.Count; k++)
        {
            pace.Step();
            Posterior.Absorb(sites[k], -1);
            states[k] = weigh(k);
            sites[k] = learner.Absorb(clusters[k], states[k], [], Posterior);
        }
    }
}
