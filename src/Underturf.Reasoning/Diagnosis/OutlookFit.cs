namespace Underturf.Reasoning.Diagnosis;

/// <summary>
/// Fits the shared unknowns and the states of every cluster to each other: a cluster is weighed by what all others say of the shared unknowns, and
/// then says its own. Nothing on what stations share is wrong here.
/// </summary>
internal sealed class OutlookFit
{
    private const int Sweeps = 2;

    private readonly IReadOnlyList<Cluster> clusters;
    private readonly StateFinder finder;
    private readonly SiteFinder learner;
    private readonly IReadOnlyList<Site>[] sites;
    private readonly States[] states;

    private OutlookFit(Case owner, IReadOnlyList<Cluster> clusters, Outlook prior)
    {
        this.clusters = clusters;
        (finder, learner) = (new StateFinder(owner), new SiteFinder(owner));
        (sites, states) = (new IReadOnlyList<Site>[clusters.Count], new States[clusters.Count]);
        Posterior = prior.Clone();
    }

    /// <summary>What all notes together say of the shared unknowns.</summary>
    public Outlook Posterior { get; private set; }

    /// <summary>log of the chance of all notes with nothing shared wrong.</summary>
    public double LogEvidence { get; private set; }

    public States States(int cluster) => states[cluster];

    /// <param name="start">Where to begin where the prior is too wide to begin with; else the prior.</param>
    public static OutlookFit Of(Case owner, IReadOnlyList<Cluster> clusters, Outlook prior, Outlook? start)
    {
        var fit = new OutlookFit(owner, clusters, prior);
        fit.Begin(start);
        for (var sweep = 1; sweep <= Sweeps; sweep++)
        {
            fit.Sweep(deep: sweep == Sweeps);
        }

        return fit;
    }

    /// <summary>What all other clusters say.</summary>
    public Outlook Without(int cluster) => Without([cluster]);

    /// <summary>What the clusters that are not named say.</summary>
    public Outlook Without(IEnumerable<int> some) => Posterior.Without(some.SelectMany(k => sites[k]));

    private void Begin(Outlook? start)
    {
        for (var k = 0; k < clusters.Count; k++)
        {
            var outlook = start?.Clone() ?? Posterior;
            states[k] = finder.Find(clusters[k], [], outlook, deep: false);
            LogEvidence += states[k].LogTotal;
            sites[k] = learner.Absorb(clusters[k], states[k], [], outlook);
        }

        if (start is not null)
        {
            foreach (var site in sites.SelectMany(s => s))
            {
                Posterior.Absorb(site);
            }
        }
    }

    private void Sweep(bool deep)
    {
        for (var k = 0; k < clusters.Count; k++)
        {
            var outlook = Without(k);
            states[k] = finder.Find(clusters[k], [], outlook, deep);
            sites[k] = learner.Absorb(clusters[k], states[k], [], outlook);
            Posterior = outlook;
        }
    }
}
