namespace Underturf.Reasoning.Diagnosis;

/// <summary>Two stations crossed or swapped.</summary>
/// <param name="LogRatio">log of how much likelier it is, with all notes, than not.</param>
/// <param name="States">The states of its one or two clusters beside it.</param>
internal sealed record PairFault(Suspect Suspect, double LogRatio, IReadOnlyDictionary<int, States> States)
{
    public bool Touches(PairFault other) => States.Keys.Any(other.States.ContainsKey);

    public bool Touches(SharedFault other) => States.Keys.Any(other.States.ContainsKey);
}

/// <summary>Weighs pairs where one of the two stations looks odd; two that look sound by themselves gain nothing by a pair.</summary>
internal sealed class Pairs(Case owner, IReadOnlyList<Cluster> clusters, OutlookFit fit)
{
    private const double Negligible = 14;

    /// <summary>One in a hundred, in powers of ten: a pair can gain no more by a note less odd than that.</summary>
    private const double Surprising = 2;

    private const int MostKept = 14;

    /// <summary>So many, the likeliest with nothing else wrong, are weighed beside what else may be wrong with their stations.</summary>
    private const int MostFull = 3 * MostKept;

    /// <summary>Several pairs together less likely than this against none, in the logarithm, are left out: all of them are not one in a million millions.</summary>
    private const double Hopeless = 35;

    /// <summary>So many pairs at once, no station in two of them.</summary>
    private const int MostTogether = 3;

    private readonly PairRow row = new(owner, clusters, fit);
    private readonly Dictionary<int, Outlook> outlooks = [];
    private readonly Dictionary<int, double> joined = [];

    public IReadOnlyList<PairFault> Find(string controller)
    {
        var odd = Enumerable.Range(0, clusters.Count).Where(IsOdd).ToHashSet();
        var home = clusters.Index().SelectMany(c => c.Item.Stations.Select(s => (s.Path.Station, c.Index))).ToDictionary(s => s.Station, s => s.Index, StringComparer.Ordinal);
        owner.Pace.Take(0.3, odd.Count * clusters.Count);
        return [.. owner.Suspects.Pairs(controller, s => odd.Contains(home[s]))
            .Select(p => (Pair: p, Touched: new[] { home[p.Station!], home[p.Other!] }.Distinct().OrderByDescending(odd.Contains).ToArray()))
            .OrderBy(p => p.Touched[0])
            .ThenBy(p => p.Touched[^1])
            .Select(p => (p.Pair, p.Touched, Rough: Rough(p.Pair, p.Touched)))
            .Where(p => p.Rough > -Negligible)
            .OrderByDescending(p => p.Rough)
            .Take(MostFull)
            .GroupBy(p => (p.Touched[0], p.Touched[^1]))
            .SelectMany(same => same)
            .Select(p => (p.Pair, Full: row.Full(p.Pair, p.Touched)))
            .Select(p => (p.Pair, p.Full.States, LogRatio: Math.Log(p.Pair.Weight) + p.Full.LogRatio))
            .OrderByDescending(p => p.LogRatio)
            .Take(MostKept)
            .Select(p => new PairFault(p.Pair, p.LogRatio, row.Refined(p.Pair, p.States)))];
    }

    /// <summary>Every choice of pairs that leave each other alone, with the logarithm of its ratio against no pair; none among them.</summary>
    public static IReadOnlyList<(IReadOnlyList<PairFault> Pairs, double LogRatio)> Choices(IReadOnlyList<PairFault> pairs)
    {
        var choices = new List<(IReadOnlyList<PairFault> Pairs, double LogRatio)> { ([], 0) };
        for (var i = 0; i < pairs.Count; i++)
        {
            choices.AddRange([.. choices
                .Where(c => c.Pairs.Count < MostTogether && c.LogRatio + pairs[i].LogRatio > -Hopeless && !c.Pairs.Any(pairs[i].Touches))
                .Select(c => ((IReadOnlyList<PairFault>)[.. c.Pairs, pairs[i]], c.LogRatio + pairs[i].LogRatio))]);
        }

        return choices;
    }

    /// <summary>log of how much likelier it is with nothing else wrong; anything below the negligible where it is. The odd cluster first: most pairs end there.</summary>
    private double Rough(Suspect pair, int[] touched)
    {
        owner.Pace.Step();
        var prior = Math.Log(pair.Weight);
        if (row.IsSeen(pair))
        {
            return row.Rough(pair, touched, prior, -Negligible);
        }

        if (pair.Fault.Joins && (prior + MostGain(touched[0]) < -Negligible || prior + MostGain(pair, touched) < -Negligible))
        {
            return double.NegativeInfinity;
        }

        return row.Rough(pair, touched, prior, -Negligible);
    }

    /// <summary>
    /// A bound of the logarithm of what a cluster's notes can gain by being joined to others: more coils side by side never show more ohms, so that a
    /// reading above what is expected speaks against it at least as strongly as against all being sound. Notes hang together, and all of them are no
    /// likelier than the unlikeliest alone.
    /// </summary>
    private double MostGain(int k)
    {
        if (!joined.TryGetValue(k, out var bound))
        {
            bound = Gain(k, clusters[k].Evidence
                .Where(e => e is ReadingEvidence { IsFed: false } && e.Side([], Outlook(k), owner.Cures) < 0)
                .Select(e => e.LogChance([], Outlook(k), owner.Cures)));
            joined[k] = bound;
        }

        return bound;
    }

    /// <summary>The same by how many ohms two clusters show, by what all others say.</summary>
    private double MostGain(Suspect pair, int[] touched)
    {
        var others = row.Others(touched);
        return touched.Sum(k => Gain(k, clusters[k].Evidence.Select(e => JoinedBound.Log(e, pair, others, owner.Cures))));
    }

    /// <param name="bounds">Of the logarithms of the chances of single notes.</param>
    private double Gain(int k, IEnumerable<double> bounds) => row.Sound(k).LogPrior + bounds.DefaultIfEmpty(0).Min() - fit.States(k).LogTotal;

    private Outlook Outlook(int k)
    {
        if (!outlooks.TryGetValue(k, out var outlook))
        {
            outlook = fit.Without(k);
            outlooks[k] = outlook;
        }

        return outlook;
    }

    /// <summary>Its own suspects say so, or one of its notes is surprising with nothing broken, whoever may be to blame.</summary>
    private bool IsOdd(int k) => fit.States(k).AsksNothing < owner.Book.Questions.OpenBelow
        || clusters[k].Evidence.Any(e => e is not LookEvidence && e.Surprise(Outlook(k)) > Surprising);
}
