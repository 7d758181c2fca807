namespace Underturf.Numerics;

/// <summary>
/// The nodal equations of a network of resistances and inductances at one frequency, factored once and solved for many right-hand sides.
/// </summary>
/// <remarks>
/// The same elimination as <see cref="NodalFactor"/>, with real and imaginary parts in separate arrays. The matrix is symmetric, its real
/// part positive and its imaginary part negative semidefinite, for which elimination without pivoting is stable (Higham, Mathematics of
/// Computation 67, 1998) and grows no entry by more than a factor of 3 (George, Ikramov and Kucherov, Numerical Linear Algebra with
/// Applications 9, 2002; both from memory). Capacitances are outside that class.
/// </remarks>
public sealed class ComplexNodalFactor
{
    private readonly NodalPattern pattern;
    private readonly double[] multiplierRe;
    private readonly double[] multiplierIm;
    private readonly double[] inverseRe;
    private readonly double[] inverseIm;

    /// <param name="pattern">The pattern of the network.</param>
    /// <param name="re">Conductance by slot, siemens; used up.</param>
    /// <param name="im">Susceptance by slot, siemens, not positive; used up.</param>
    public ComplexNodalFactor(NodalPattern pattern, double[] re, double[] im)
    {
        this.pattern = pattern;
        multiplierRe = new double[pattern.NeighbourNode.Length];
        multiplierIm = new double[pattern.NeighbourNode.Length];
        inverseRe = new double[pattern.Pivots.Length];
        inverseIm = new double[pattern.Pivots.Length];
        var pair = 0;
        for (var p = 0; p < inverseRe.Length; p++)
        {
            Scale(p, re, im);
            pair = Spread(p, pair, re, im);
        }
    }

    /// <summary>Solves in place: amperes flowing into each node become volts against the reference of its part.</summary>
    public void Solve(double[] re, double[] im)
    {
        Forward(re, im);
        foreach (var reference in pattern.References)
        {
            re[reference] = im[reference] = 0;
        }

        Back(re, im);
    }

    private void Forward(double[] re, double[] im)
    {
        var start = pattern.NeighbourStart;
        for (var p = 0; p < pattern.Pivots.Length; p++)
        {
            var intoRe = re[pattern.Pivots[p]];
            var intoIm = im[pattern.Pivots[p]];
            for (var n = start[p]; n < start[p + 1]; n++)
            {
                var node = pattern.NeighbourNode[n];
                re[node] += (multiplierRe[n] * intoRe) - (multiplierIm[n] * intoIm);
                im[node] += (multiplierRe[n] * intoIm) + (multiplierIm[n] * intoRe);
            }
        }
    }

    private void Back(double[] re, double[] im)
    {
        var start = pattern.NeighbourStart;
        for (var p = pattern.Pivots.Length - 1; p >= 0; p--)
        {
            var pivot = pattern.Pivots[p];
            var voltsRe = (re[pivot] * inverseRe[p]) - (im[pivot] * inverseIm[p]);
            var voltsIm = (re[pivot] * inverseIm[p]) + (im[pivot] * inverseRe[p]);
            for (var n = start[p]; n < start[p + 1]; n++)
            {
                var node = pattern.NeighbourNode[n];
                voltsRe += (multiplierRe[n] * re[node]) - (multiplierIm[n] * im[node]);
                voltsIm += (multiplierRe[n] * im[node]) + (multiplierIm[n] * re[node]);
            }

            re[pivot] = voltsRe;
            im[pivot] = voltsIm;
        }
    }

    private void Scale(int p, double[] re, double[] im)
    {
        var slot = pattern.NeighbourSlot;
        var first = pattern.NeighbourStart[p];
        var end = pattern.NeighbourStart[p + 1];
        double sumRe = 0, sumIm = 0;
        for (var n = first; n < end; n++)
        {
            sumRe += re[slot[n]];
            sumIm += im[slot[n]];
        }

        var square = (sumRe * sumRe) + (sumIm * sumIm);
        inverseRe[p] = sumRe / square;
        inverseIm[p] = -sumIm / square;
        for (var n = first; n < end; n++)
        {
            multiplierRe[n] = (re[slot[n]] * inverseRe[p]) - (im[slot[n]] * inverseIm[p]);
            multiplierIm[n] = (re[slot[n]] * inverseIm[p]) + (im[slot[n]] * inverseRe[p]);
        }
    }

    private int Spread(int p, int pair, double[] re, double[] im)
    {
        var slot = pattern.NeighbourSlot;
        var end = pattern.NeighbourStart[p + 1];
        for (var n = pattern.NeighbourStart[p]; n < end; n++)
        {
            for (var m = n + 1; m < end; m++)
            {
                var at = pattern.PairSlot[pair++];
                re[at] += (multiplierRe[n] * re[slot[m]]) - (multiplierIm[n] * im[slot[m]]);
                im[at] += (multiplierRe[n] * im[slot[m]]) + (multiplierIm[n] * re[slot[m]]);
            }
        }

        return pair;
    }
}
