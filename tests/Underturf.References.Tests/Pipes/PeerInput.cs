using System.Globalization;
using System.Text;
using Underturf.Networks.Hydraulics;

namespace Underturf.References.Tests.Pipes;

/// <summary>What of our solution the engine is told, because it does not settle on its own.</summary>
internal enum PeerHelp
{
    None,

    /// <summary>What each regulator loses.</summary>
    Regulators,

    /// <summary>That, and which one-way elements and outlets are held shut.</summary>
    AllStates,
}

/// <summary>
/// Writes a network in the engine's own form, cubic feet a second. Node k is named nk, element k ek. Its factors are rounded (0.02517 for
/// minor losses, 0.4333 psi a foot), so they are taken out of what it is given: both then solve the same equations.
/// </summary>
/// <remarks>
/// The engine does not settle where parts are dry, where a limit of flow feeds nothing but outlets, and sometimes where a regulator does. Dry
/// parts are left out. A limit is written as the throttled valve that loses as much as our solution says: flows are unique, so the engine
/// finds other ones if ours are wrong. For a second try regulators are written so too; for a third also one-way elements as they stand, and
/// outlets that give nothing are left out, so that it can do without its rule against backflow.
/// </remarks>
internal sealed class PeerInput(PipeNetwork network, PipeSolution ours, PeerHelp help)
{
    private const double MinorLossFactor = 0.02517;
    private const double PsiPerFoot = 0.4333;
    private const double ValveInches = 2;

    /// <param name="accuracy">The engine's, 1e-5 to 0.1.</param>
    /// <param name="exponent">Of all outlets: the engine knows one only.</param>
    internal string Write(double accuracy, double exponent)
    {
        var text = new StringBuilder();
        Nodes(text);
        Elements(text);
        Outlets(text, exponent);
        text.Append("[OPTIONS]\nUNITS CFS\nHEADLOSS H-W\nTRIALS 500\n");
        Line(text, $"BACKFLOW ALLOWED {(help == PeerHelp.AllStates ? "YES" : "NO")}");
        Line(text, $"EMITTER EXPONENT {Number(exponent)}");
        Line(text, $"ACCURACY {Number(accuracy)}");
        text.Append(accuracy < 1e-4 ? "HEADERROR 0.00001\n" : "");
        return text.Append("[TIMES]\nDURATION 0\n[REPORT]\nSTATUS NO\n[END]\n").ToString();
    }

    private bool IsDry(int node) => ours.HeadMetres(node) is null;

    private void Nodes(StringBuilder text)
    {
        text.Append("[JUNCTIONS]\n");
        foreach (var (node, k) in network.Nodes.Select((n, k) => (n, k)).Where(n => !n.n.IsReservoir && !IsDry(n.k)))
        {
            Line(text, $"n{k} {Number(node.ElevationMetres / PipePeer.MetresPerFoot)} {Number(node.WithdrawnCubicMetresPerSecond / PipePeer.CubicMetresPerCubicFoot)}");
        }

        text.Append("[RESERVOIRS]\n");
        foreach (var (node, k) in network.Nodes.Select((n, k) => (n, k)).Where(n => n.n.IsReservoir))
        {
            Line(text, $"n{k} {Number(node.ElevationMetres / PipePeer.MetresPerFoot)}");
        }
    }

    private void Elements(StringBuilder text)
    {
        var (pipes, valves, status) = (new StringBuilder("[PIPES]\n"), new StringBuilder("[VALVES]\n"), new StringBuilder("[STATUS]\n"));
        var curves = new StringBuilder("[CURVES]\n");
        for (var e = 0; e < network.Elements.Count; e++)
        {
            var element = network.Elements[e];
            if (IsDry(element.A) || IsDry(element.B))
            {
                continue;
            }

            var ends = $"e{e} n{element.A} n{element.B}";
            if (element.Friction is not null || element.ResistancePerFlowFactor > 0)
            {
                Line(pipes, $"{ends} {Pipe(e, element)}");
                continue;
            }

            Line(valves, $"{ends} {Valve(e, element, curves)}");
            if (element.IsClosed)
            {
                Line(status, $"e{e} CLOSED");
            }
        }

        text.Append(pipes).Append(valves).Append(status).Append(curves);
    }

    private string Pipe(int e, PipeElement element)
    {
        var (length, inches) = (element.LengthMetres / PipePeer.MetresPerFoot, element.InsideDiameterMetres / 0.0254);
        var smoothness = 100.0;
        if (element.Friction is { } friction)
        {
            smoothness = friction.SmoothnessFactor ?? throw new ArgumentException("The comparison is by Hazen and Williams.", nameof(element));
        }
        else
        {
            // The losses of a supply as those of a pipe of 4 in.
            inches = 4;
            length = element.ResistancePerFlowFactor / HazenWilliams.ResistancePerFlowFactor(1, 4 * 0.0254, smoothness) / PipePeer.MetresPerFoot;
        }

        var closed = element.IsClosed || (help == PeerHelp.AllStates && ours.State(e) == ElementState.HeldShut);
        var state = closed ? "CLOSED" : element.IsOneWay && help != PeerHelp.AllStates ? "CV" : "OPEN";
        return $"{Number(length)} {Number(inches)} {Number(smoothness)} {Number(MinorLoss(element.ResistancePerFlowSquaredFactor, inches))} {state}";
    }

    private string Valve(int e, PipeElement element, StringBuilder curves)
    {
        var loss = Number(MinorLoss(element.ResistancePerFlowSquaredFactor, ValveInches));
        if (element.Curve is { } curve)
        {
            for (var k = 0; k < curve.LossesMetres.Count; k++)
            {
                Line(curves, $"c{e} {Number(curve.FlowsCubicMetresPerSecond[k] / PipePeer.CubicMetresPerCubicFoot)} {Number(curve.LossesMetres[k] / PipePeer.MetresPerFoot)}");
            }

            return $"{Number(ValveInches)} GPV c{e} 0";
        }

        if (ours.State(e) == ElementState.Limiting || (ours.State(e) == ElementState.Regulating && help != PeerHelp.None))
        {
            var drop = ours.HeadMetres(element.A)!.Value - ours.HeadMetres(element.B)!.Value;
            var flow = ours.FlowCubicMetresPerSecond(e);
            return $"{Number(ValveInches)} TCV {Number(MinorLoss(drop / (flow * flow), ValveInches))} 0";
        }

        return element.RegulatedPascals is { } held && !element.IsClosed && help == PeerHelp.None
            ? $"{Number(ValveInches)} PRV {Number(held / network.Water.PascalsPerMetre / PipePeer.MetresPerFoot * PsiPerFoot)} {loss}"
            : $"{Number(ValveInches)} TCV {loss} 0";
    }

    /// <summary>K that makes the engine's m of h = m Q^2, in feet and cubic feet a second, the one given.</summary>
    private static double MinorLoss(double metresPerFlowSquared, double inches)
    {
        var perSquare = metresPerFlowSquared * PipePeer.CubicMetresPerCubicFoot * PipePeer.CubicMetresPerCubicFoot / PipePeer.MetresPerFoot;
        return perSquare / MinorLossFactor * Math.Pow(inches / 12, 4);
    }

    private void Outlets(StringBuilder text, double exponent)
    {
        text.Append("[EMITTERS]\n");
        for (var o = 0; o < network.Outlets.Count; o++)
        {
            var placed = network.Outlets[o];
            if (IsDry(placed.Node) || (help == PeerHelp.AllStates && ours.OutletState(o) == ElementState.HeldShut))
            {
                continue;
            }

            if (placed.Outlet.PressureExponentNumber != exponent || placed.Outlet.CompensatedFromPascals is not null)
            {
                throw new InvalidOperationException($"The engine has one exponent for all outlets and none that compensate; '{placed.Name}' is another.");
            }

            var perMetre = placed.Outlet.CubicMetresPerSecondAtOnePascal * Math.Pow(network.Water.PascalsPerMetre, exponent);
            Line(text, $"n{placed.Node} {Number(perMetre / PipePeer.CubicMetresPerCubicFoot * Math.Pow(PipePeer.MetresPerFoot / PsiPerFoot, exponent))}");
        }
    }

    private static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    private static void Line(StringBuilder text, string line) => text.Append(line).Append('\n');
}
