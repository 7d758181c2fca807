namespace Underturf.Numerics;

/// <summary>
/// The nodal equations of a network of conductances, factored once and solved for many right-hand sides.
/// </summary>
/// <remarks>
/// Nodes are eliminated by the star-mesh transform: with s the sum of the conductances g at node k, each pair of its neighbours gains
/// g_i g_j / s. The pivot is that sum and never a stored diagonal, so nothing is subtracted and a conductance of 1e-12 S beside 100 S keeps
/// all its digits (the idea of Grassmann, Taksar and Heyman, Operations Research 33(5), 1985, there for Markov chains). No pivoting is needed.
/// </remarks>
public sealed class NodalFactor
{
    private readonly NodalPattern pattern;
    private readonly double[] multipliers;
    private readonly double[] inverse;

    /// <param name="pattern">The pattern of the network.</param>
    /// <param name="conductances">Siemens by slot, positive or zero; used up by the factorisation.</param>
    public NodalFactor(NodalPattern pattern, double[] conductances)
    {
        this.pattern = pattern;
        multipliers = new double[pattern.NeighbourNode.Length];
        inverse = new double[pattern.Pivots.Length];
        var pair = 0;
        for (var p = 0; p < inverse.Length; p++)
        {
            pair = Eliminate(p, pair, conductances);
        }
    }

    /// <summary>Solves in place: amperes flowing into each node become volts against the reference of its part.</summary>
    public void Solve(double[] nodes)
    {
        var start = pattern.NeighbourStart;
        var node = pattern.NeighbourNode;
        var pivots = pattern.Pivots;
        for (var p = 0; p < pivots.Length; p++)
        {
            var into = nodes[pivots[p]];
            for (var n = start[p]; n < start[p + 1]; n++)
            {
                nodes[node[n]] += multipliers[n] * into;
            }
        }

        foreach (var reference in pattern.References)
        {
            nodes[reference] = 0;
        }

        for (var p = pivots.Length - 1; p >= 0; p--)
        {
            var volts = nodes[pivots[p]] * inverse[p];
            for (var n = start[p]; n < start[p + 1]; n++)
            {
                volts += multipliers[n] * nodes[node[n]];
            }

            nodes[pivots[p]] = volts;
        }
    }

    private int Eliminate(int p, int pair, double[] g)
    {
        var slot = pattern.NeighbourSlot;
        var first = pattern.NeighbourStart[p];
        var end = pattern.NeighbourStart[p + 1];
        var sum = 0.0;
        for (var n = first; n < end; n++)
        {
            sum += g[slot[n]];
        }

        inverse[p] = 1 / sum;
        for (var n = first; n < end; n++)
        {
            multipliers[n] = g[slot[n]] / sum;
        }

        for (var n = first; n < end; n++)
        {
            for (var m = n + 1; m < end; m++)
            {
                g[pattern.PairSlot[pair++]] += multipliers[n] * g[slot[m]];
            }
        }

        return pair;
    }
}
