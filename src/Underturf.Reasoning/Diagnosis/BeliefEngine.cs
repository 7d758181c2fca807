using Underturf.Numerics;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>
/// Bayes over one controller's part: given what is shared, clusters of stations are independent, so the sum over all combinations of faults is a
/// product over clusters (docs/models/diagnosis.md).
/// </summary>
internal sealed class BeliefEngine
{
    private readonly Case owner;
    private readonly string controller;
    private readonly IReadOnlyList<Cluster> clusters;
    private readonly IReadOnlyList<(OutlookFit Fit, double LogWeight)> fits;

    private BeliefEngine(Case owner, string controller)
    {
        (this.owner, this.controller) = (owner, controller);
        clusters = new ClusterBuilder(owner).Build(controller);
        fits = new LevelStarts(owner, clusters, owner.Unknowns(controller)).Fits();
    }

    public static Belief Of(Case owner, string controller) => new BeliefEngine(owner, controller).Infer();

    private Belief Infer()
    {
        var cases = fits.SelectMany(f => Cases(f.Fit, f.LogWeight)).ToList();
        var total = LogMath.LogSumExp([.. cases.Select(c => c.Log)]);
        var sum = new WorldSum(clusters);
        foreach (var (fit, fault, pairs, log) in owner.Pace.Over(cases))
        {
            sum.Add(fit, fault, pairs, Math.Exp(log - total));
        }

        var left = fits.Max(f => Enumerable.Range(0, clusters.Count).Max(k => Math.Exp(f.Fit.States(k).LogLeftOut - f.Fit.States(k).LogTotal)));
        var shares = cases.GroupBy(c => c.Fit).ToDictionary(g => g.Key, g => g.Sum(c => Math.Exp(c.Log - total)));
        return new Belief(sum.Worlds(), Outlook.Mixed([.. shares.Select(s => (s.Key.Posterior, s.Value))]), left, station => OutlookOf(station, shares));
    }

    /// <summary>Every shared fault, or none, with every choice of pairs that it leaves alone.</summary>
    private IEnumerable<(OutlookFit Fit, SharedFault Shared, IReadOnlyList<PairFault> Pairs, double Log)> Cases(OutlookFit fit, double logWeight)
    {
        var pairs = new Pairs(owner, clusters, fit).Find(controller);
        IReadOnlyList<SharedFault> shared = [new SharedFault([], 0, new Dictionary<int, States>()), .. new SharedFaults(owner, clusters, fit).Find(controller)];
        return shared.SelectMany(s => Pairs.Choices([.. pairs.Where(p => !p.Touches(s))]).Select(c => (fit, s, c.Pairs, logWeight + s.LogRatio + c.LogRatio)));
    }

    /// <summary>What the notes of all other clusters say of the shared unknowns.</summary>
    private Outlook OutlookOf(string station, Dictionary<OutlookFit, double> shares)
    {
        var k = clusters.Index().First(c => c.Item.Has(station)).Index;
        var logs = fits.Select(f => Math.Log(Math.Max(shares[f.Fit], double.Epsilon)) - f.Fit.States(k).LogTotal).ToArray();
        var total = LogMath.LogSumExp(logs);
        return Outlook.Mixed([.. fits.Select((f, i) => (f.Fit.Without(k), Math.Exp(logs[i] - total)))]);
    }
}
