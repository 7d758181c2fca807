using Underturf.Numerics;

namespace Underturf.Reasoning.Identification;

/// <summary>Shares on the supposition that one of the ends that a lead was on is a common, or none of them, and how likely that is.</summary>
internal sealed record Supposed(int Lead, double Share, MatchingMarginals Shares)
{
    /// <summary>Each supposition of a table, weighed by the sum over its matchings.</summary>
    public static IReadOnlyList<Supposed> All(NamingTable table, Func<MatchingWeights, MatchingMarginals> sum)
    {
        if (table.Suppositions.ToList() is [var only])
        {
            return [new Supposed(only, 1, sum(table.Weights(only).Weights))];
        }

        var all = new List<(int Lead, double Log, MatchingMarginals Shares)>();
        foreach (var lead in table.Suppositions)
        {
            var (weights, log) = table.Weights(lead);
            var shares = sum(weights);
            all.Add((lead, log + shares.LogSum, shares));
        }

        var total = LogMath.LogSumExp([.. all.Select(a => a.Log)]);
        return [.. all.Select(a => new Supposed(a.Lead, Math.Exp(a.Log - total), a.Shares))];
    }

    /// <summary>All of them together: for each end its wires and, last, none.</summary>
    public static double[] Mixed(IReadOnlyList<Supposed> all)
    {
        if (all is [var only])
        {
            return only.Shares.ToArray();
        }

        var mixed = new double[all[0].Shares.Rows * (all[0].Shares.Columns + 1)];
        foreach (var (_, share, shares) in all)
        {
            var part = shares.ToArray();
            for (var k = 0; k < mixed.Length; k++)
            {
                mixed[k] += share * part[k];
            }
        }

        return mixed;
    }
}
