using Underturf.Numerics;

namespace Underturf.Networks.Wiring.HalfWave;

/// <summary>
/// The diodes of a network seen from their own ends. In the linear part each junction is <see cref="BaseOhms"/>, which keeps every number
/// there well scaled; beside it flows w = i(u) - u / BaseOhms. The rest of the network answers linearly, so Newton's iteration runs in as
/// many unknowns as there are diodes and the network is factored once. Exact: BaseOhms cancels.
/// </summary>
internal sealed class DiodePorts
{
    private const double BaseOhms = 1000;
    private const int MostRounds = 200;

    /// <summary>After a step this small Newton's next would be below rounding.</summary>
    private const double SmallStepVolts = 1e-6;

    private readonly InstantFactor linear;
    private readonly Diode[] diodes;
    private readonly JunctionCurve[] curves;
    private readonly double[][] nodeVoltsPerAmpere;
    private readonly double[] transfer;
    private readonly double[] driven;
    private readonly double[] beside;
    private readonly double[] siemens;
    private readonly DenseFactor<double> system;
    private readonly double[] change;

    internal DiodePorts(InstantFactor linear, Diode[] diodes)
    {
        this.linear = linear;
        this.diodes = diodes;
        curves = [.. diodes.Select(d => new JunctionCurve(d.Junction))];
        var count = diodes.Length;
        nodeVoltsPerAmpere = new double[count][];
        transfer = new double[count * count];
        (driven, beside, siemens) = (new double[count], new double[count], new double[count]);
        (JunctionVolts, Amperes) = (new double[count], new double[count]);
        system = new DenseFactor<double>(count);
        change = new double[count];
        for (var j = 0; j < count; j++)
        {
            Answer(j);
        }
    }

    /// <summary>Volts across each junction; the start of the next solution.</summary>
    internal double[] JunctionVolts { get; }

    /// <summary>Amperes through each diode by its own equation.</summary>
    internal double[] Amperes { get; }

    /// <summary>Conductance of a diode in the linear part.</summary>
    internal static double BaseSiemens(double seriesOhms) => 1 / (seriesOhms + BaseOhms);

    /// <summary>Corrects node volts, solved with nothing flowing beside the base ohms, for what the diodes do.</summary>
    /// <param name="offsetVolts">Volts in series with each element by contracted sources.</param>
    /// <returns>Whether Newton's iteration arrived.</returns>
    internal bool Bend(double[] nodes, double[] offsetVolts, double scale)
    {
        for (var k = 0; k < diodes.Length; k++)
        {
            var element = diodes[k].Element;
            driven[k] = linear.Current(element, nodes, offsetVolts[element] * scale);
        }

        if (!Iterate())
        {
            return false;
        }

        for (var j = 0; j < diodes.Length; j++)
        {
            var column = nodeVoltsPerAmpere[j];
            for (var k = 0; k < column.Length; k++)
            {
                nodes[k] += beside[j] * column[k];
            }
        }

        return true;
    }

    /// <summary>What one ampere beside junction j does to the nodes and to every diode's current.</summary>
    private void Answer(int j)
    {
        var nodes = new double[linear.NodeCount];
        linear.Push(diodes[j].Element, -BaseOhms, nodes);
        linear.Solve(nodes);
        nodeVoltsPerAmpere[j] = nodes;
        for (var k = 0; k < diodes.Length; k++)
        {
            transfer[(k * diodes.Length) + j] = linear.Current(diodes[k].Element, nodes, k == j ? -BaseOhms : 0);
        }
    }

    private bool Iterate()
    {
        Evaluate();
        for (var round = 0; round < MostRounds && diodes.Length > 0; round++)
        {
            var settled = Step();
            Evaluate();
            if (settled)
            {
                return true;
            }
        }

        return diodes.Length == 0;
    }

    private void Evaluate()
    {
        for (var k = 0; k < diodes.Length; k++)
        {
            Amperes[k] = curves[k].Amperes(JunctionVolts[k], out siemens[k]);
            beside[k] = Amperes[k] - (JunctionVolts[k] / BaseOhms);
        }
    }

    /// <summary>One round on i_k(u_k) - driven_k - sum over j of transfer_kj w_j = 0.</summary>
    private bool Step()
    {
        var count = diodes.Length;
        for (var k = 0; k < count; k++)
        {
            var excess = Amperes[k] - driven[k];
            for (var j = 0; j < count; j++)
            {
                var answer = transfer[(k * count) + j];
                excess -= answer * beside[j];
                system[k, j] = (k == j ? siemens[k] : 0) - (answer * (siemens[j] - (1 / BaseOhms)));
            }

            change[k] = -excess;
        }

        system.Factor();
        system.Solve(change);
        var settled = true;
        for (var k = 0; k < count; k++)
        {
            var wanted = JunctionVolts[k] + change[k];
            var limited = curves[k].Limit(wanted, JunctionVolts[k]);
            settled &= limited == wanted && Math.Abs(change[k]) <= SmallStepVolts * (1 + Math.Abs(wanted));
            JunctionVolts[k] = limited;
        }

        return settled;
    }
}
