using Underturf.Property.Practice;

namespace Underturf.Planning.Repair;

/// <summary>What may be wrong inside a valve, with a share for each cause and one for what lies elsewhere; together one.</summary>
internal sealed class CauseWeights
{
    private readonly IReadOnlyList<CausePractice> causes;

    /// <summary>In the order of the causes; the last is elsewhere.</summary>
    private readonly double[] shares;

    private CauseWeights(IReadOnlyList<CausePractice> causes, double[] shares)
    {
        var sum = shares.Sum();
        (this.causes, this.shares) = (causes, sum > 0 ? [.. shares.Select(s => s / sum)] : [.. shares.Select(_ => 1.0 / shares.Length)]);
    }

    /// <summary>From the chances of the faults that the causes explain.</summary>
    public static CauseWeights Of(IReadOnlyList<CausePractice> causes, IReadOnlyDictionary<string, double> faults)
    {
        var own = causes.Select(c => faults.Sum(f => f.Value * c.Of.GetValueOrDefault(f.Key))).ToList();
        return new CauseWeights(causes, [.. own, Math.Max(0, faults.Values.Sum() - own.Sum())]);
    }

    public double Elsewhere => shares[^1];

    public IEnumerable<(CausePractice Cause, double Share)> All => causes.Zip(shares);

    /// <summary>By Bayes' rule, given what an opened valve showed; with nothing noted before it is opened, nothing changes.</summary>
    public CauseWeights After(IReadOnlySet<string> seen, bool opened) => new(causes, [.. shares.Select((s, i) => s * Likelihood(i < causes.Count ? causes[i] : null, seen, opened))]);

    /// <summary>Given that a repair did not cure it.</summary>
    public CauseWeights AfterVain(RepairKind kind) => new(causes, [.. shares.Select((s, i) => s * (1 - (i < causes.Count ? Cures(causes[i], kind) : 0)))]);

    /// <summary>Chance that a repair cures it.</summary>
    public double Cures(RepairKind kind) => All.Sum(c => c.Share * Cures(c.Cause, kind));

    private static double Cures(CausePractice cause, RepairKind kind) => kind switch
    {
        RepairKind.Coil => cause.Coil,
        RepairKind.Clean => cause.Clean,
        RepairKind.Rebuild or RepairKind.Donor => cause.Rebuild,
        _ => cause.Replace,
    };

    private double Likelihood(CausePractice? right, IReadOnlySet<string> seen, bool opened) => causes.Aggregate(1.0, (product, c) =>
    {
        var shows = c == right ? c.Seen : c.Imagined;
        return product * (seen.Contains(c.Name) ? shows : opened ? 1 - shows : 1);
    });
}
