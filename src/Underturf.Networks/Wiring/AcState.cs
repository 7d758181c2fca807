namespace Underturf.Networks.Wiring;

/// <summary>Node potentials and element currents under given voltages in series with the elements, and one ampere between two nodes or none.</summary>
internal sealed class AcState
{
    /// <summary>Above this share of the largest current the imbalance is worth a round of refinement.</summary>
    private const double Balanced = 1e-13;
    private const int MostRounds = 4;

    private readonly AcFactor factor;
    private readonly int injectAt;
    private readonly int drawAt;
    private double[] imbalanceRe = [];
    private double[] imbalanceIm = [];
    private bool jointsKnown;

    /// <param name="seriesVolts">By element, of A over B, offsets of contracted groups already taken in.</param>
    /// <param name="injectAt">Node that one ampere flows into; -1 for none.</param>
    /// <param name="drawAt">Node that it is drawn from.</param>
    internal AcState(AcFactor factor, double[] seriesVolts, int injectAt = -1, int drawAt = -1)
    {
        this.factor = factor;
        this.injectAt = injectAt;
        this.drawAt = drawAt;
        var nodes = factor.Topology.Contraction.Count;
        (VoltsRe, VoltsIm) = (new double[nodes], new double[nodes]);
        (CurrentRe, CurrentIm) = (new double[seriesVolts.Length], new double[seriesVolts.Length]);
        Flow(seriesVolts);
        Balance();
        for (var round = 0; round <= MostRounds && (round == 0 || ResidualAmperes > Balanced * MostAmperes()); round++)
        {
            factor.Solve(imbalanceRe, imbalanceIm);
            Correct(round == 0 ? seriesVolts : null);
            Balance();
        }
    }

    internal double[] VoltsRe { get; }

    internal double[] VoltsIm { get; }

    internal double ResidualAmperes { get; private set; }

    private double[] CurrentRe { get; }

    private double[] CurrentIm { get; }

    private WiringNetwork Network => factor.Network;

    /// <summary>Current from A through the element to B; NaN for a joint in a loop of joints.</summary>
    internal Phasor Current(int element)
    {
        if (!jointsKnown)
        {
            FillJoints(CurrentRe, injectAt >= 0);
            FillJoints(CurrentIm, injected: false);
            jointsKnown = true;
        }

        return new Phasor(CurrentRe[element], CurrentIm[element]);
    }

    private int Merged(int node) => factor.Topology.Contraction.Merged(node);

    /// <summary>Takes the solved correction up. The first is large and takes the series volts off before it is multiplied.</summary>
    private void Correct(double[]? seriesVolts)
    {
        for (var k = 0; k < imbalanceRe.Length; k++)
        {
            VoltsRe[k] += imbalanceRe[k];
            VoltsIm[k] += imbalanceIm[k];
        }

        if (seriesVolts is not null)
        {
            Array.Clear(CurrentRe);
            Array.Clear(CurrentIm);
        }

        Flow(seriesVolts);
    }

    /// <summary>Adds admittance times (drop of the solved correction less series volts) to each element's current.</summary>
    private void Flow(double[]? seriesVolts)
    {
        var slots = factor.Topology.ElementSlot;
        var solved = imbalanceRe.Length > 0;
        for (var e = 0; e < slots.Length; e++)
        {
            var re = seriesVolts is null ? 0 : -seriesVolts[e];
            var im = 0.0;
            if (slots[e] >= 0 && solved)
            {
                var (a, b) = (Merged(Network.Layout.A[e]), Merged(Network.Layout.B[e]));
                re += imbalanceRe[a] - imbalanceRe[b];
                im = imbalanceIm[a] - imbalanceIm[b];
            }

            CurrentRe[e] += (factor.SiemensRe[e] * re) - (factor.SiemensIm[e] * im);
            CurrentIm[e] += (factor.SiemensRe[e] * im) + (factor.SiemensIm[e] * re);
        }
    }

    private double MostAmperes()
    {
        var most = 0.0;
        for (var e = 0; e < CurrentRe.Length; e++)
        {
            most = Math.Max(most, Math.Abs(CurrentRe[e]) + Math.Abs(CurrentIm[e]));
        }

        return most;
    }

    /// <summary>What is left over at each node.</summary>
    private void Balance()
    {
        var slots = factor.Topology.ElementSlot;
        (imbalanceRe, imbalanceIm) = (new double[VoltsRe.Length], new double[VoltsRe.Length]);
        if (injectAt >= 0)
        {
            imbalanceRe[Merged(injectAt)] += 1;
            imbalanceRe[Merged(drawAt)] -= 1;
        }

        for (var e = 0; e < slots.Length; e++)
        {
            if (slots[e] >= 0)
            {
                var a = Merged(Network.Layout.A[e]);
                var b = Merged(Network.Layout.B[e]);
                imbalanceRe[a] -= CurrentRe[e];
                imbalanceIm[a] -= CurrentIm[e];
                imbalanceRe[b] += CurrentRe[e];
                imbalanceIm[b] += CurrentIm[e];
            }
        }

        ResidualAmperes = 0;
        for (var k = 0; k < imbalanceRe.Length; k++)
        {
            ResidualAmperes = Math.Max(ResidualAmperes, double.Hypot(imbalanceRe[k], imbalanceIm[k]));
        }
    }

    private void FillJoints(double[] currents, bool injected)
    {
        var leaving = new double[Network.NodeCount];
        if (injected)
        {
            leaving[injectAt] -= 1;
            leaving[drawAt] += 1;
        }

        for (var e = 0; e < currents.Length; e++)
        {
            leaving[Network.Layout.A[e]] += currents[e];
            leaving[Network.Layout.B[e]] -= currents[e];
        }

        JointCurrents.Fill(Network, factor.Topology.Contraction.Joints, leaving, currents);
    }
}
