namespace Underturf.Reasoning.Diagnosis;

/// <summary>
/// What a cluster's readings say of the shared unknowns, given how likely each of its states is: one normal factor for each reading, in the
/// direction in which it looks when all is sound, with the moments of the mixture over states (expectation propagation, Minka 2001; from memory).
/// </summary>
internal sealed class SiteFinder(Case owner)
{
    /// <summary>States less likely than this teach nothing.</summary>
    private const double Heard = 1e-4;

    /// <summary>Finds the sites one after the other and takes each into the outlook.</summary>
    public IReadOnlyList<Site> Absorb(Cluster cluster, States states, Suspect[] shared, Outlook outlook)
    {
        var heard = states.All.Select(s => (Suspects: s.With(shared), Share: Math.Exp(s.LogWeight - states.LogTotal))).Where(s => s.Share > Heard).ToList();
        var sites = new List<Site>();
        foreach (var reading in cluster.Evidence.OfType<ReadingEvidence>())
        {
            if (reading.Shown.Value is { } value && reading.Closed(shared, owner.Cures) is { } sound && Of(reading, value.Si, sound, heard, outlook) is { } site)
            {
                outlook.Absorb(site);
                sites.Add(site);
            }
        }

        return sites;
    }

    private Site? Of(ReadingEvidence reading, double shown, Prediction sound, List<(Suspect[] Suspects, double Share)> heard, Outlook outlook)
    {
        var toward = outlook.Toward(sound);
        var (mean, variance) = (outlook.Mean(toward), outlook.Covariance(toward, toward));
        if (variance < 1e-12)
        {
            return null;
        }

        var (total, first, second) = (0.0, 0.0, 0.0);
        foreach (var (suspects, share) in heard)
        {
            var (shift, kept) = (0.0, variance);
            if (reading.Closed(suspects, owner.Cures) is { } prediction)
            {
                var (expected, sigma) = Display.Expect(reading.Display.Instrument, prediction, outlook);
                var together = outlook.Covariance(outlook.Toward(prediction), toward);
                shift = together * (shown - expected) / (sigma * sigma);
                kept = variance - (together * together / (sigma * sigma));
            }

            total += share;
            first += share * shift;
            second += share * (kept + (shift * shift));
        }

        var (learnt, left) = (first / total, (second / total) - (first / total * (first / total)));
        var tau = (1 / left) - (1 / variance);
        return tau > 1e-9 / variance ? new Site(toward, tau, ((mean + learnt) / left) - (mean / variance)) : null;
    }
}
