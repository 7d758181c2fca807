using System.Numerics;
using System.Runtime.InteropServices;

namespace Underturf.Networks.Hydraulics;

/// <summary>Head lost in each element by its flow, and the slope of it.</summary>
internal sealed class FlowLaws
{
    /// <summary>What loses nothing is taken to lose a hundredth of a millimetre at ten litres a second, so that the equations stay solvable.</summary>
    internal const double LeastSlope = 1e-3;

    /// <summary>Slower than this the loss is taken as proportional to the flow: the laws' slopes go to zero there, and their heads are nothing.</summary>
    private const double LinearBelowMetresPerSecond = 1e-5;

    private readonly PipeNetwork network;
    private readonly double viscosity;
    private readonly double[] perFlow;
    private readonly double[] perSquare;
    private readonly double[] linearBelow;
    private readonly double[] linearSlope;
    private readonly double[] powers;
    private readonly bool[] special;
    private readonly Dictionary<(double Diameter, double Smoothness), (double PerMetre, double SlowPower)> sizes = [];

    internal FlowLaws(PipeNetwork network)
    {
        this.network = network;
        viscosity = network.Water.KinematicViscositySquareMetresPerSecond;
        var count = network.Flowing.Count;
        (perFlow, perSquare, linearBelow, linearSlope) = (new double[count], new double[count], new double[count], new double[count]);
        (powers, special) = (new double[count], new bool[count]);
        for (var e = 0; e < count; e++)
        {
            Take(e, network.Flowing[e]);
        }
    }

    /// <summary>Loss of head from A to B at a flow of either sign, and its slope.</summary>
    internal (double Loss, double Slope) At(int e, double flow)
    {
        var size = Math.Abs(flow);
        if (special[e])
        {
            var (loss, steep) = Special(network.Flowing[e], e, size);
            return (flow < 0 ? -loss : loss, Math.Max(steep, LeastSlope));
        }

        if (size < linearBelow[e])
        {
            return (linearSlope[e] * flow, linearSlope[e]);
        }

        var (friction, square) = (Friction(e, size), perSquare[e] * size);
        return ((friction + square) * flow, (HazenWilliams.FlowExponentNumber * friction) + (2 * square));
    }

    /// <summary>Takes |Q|^0.852 of all flows at once, which is most of the work of a round.</summary>
    internal void Prepare(double[] flows)
    {
        var exponent = new Vector<double>(HazenWilliams.FlowExponentNumber - 1);
        var wide = MemoryMarshal.Cast<double, Vector<double>>(flows.AsSpan());
        var into = MemoryMarshal.Cast<double, Vector<double>>(powers.AsSpan());
        for (var v = 0; v < wide.Length; v++)
        {
            into[v] = Vector.Exp(exponent * Vector.Log(Vector.Abs(wide[v])));
        }

        for (var e = wide.Length * Vector<double>.Count; e < flows.Length; e++)
        {
            powers[e] = Math.Pow(Math.Abs(flows[e]), HazenWilliams.FlowExponentNumber - 1);
        }
    }

    /// <summary>The same as <see cref="At"/> for the flow that was prepared.</summary>
    internal (double Loss, double Slope) AtPrepared(int e, double flow)
    {
        var size = Math.Abs(flow);
        if (special[e] || size < linearBelow[e])
        {
            return At(e, flow);
        }

        var (friction, square) = (perFlow[e] * powers[e], perSquare[e] * size);
        return ((friction + square) * flow, (HazenWilliams.FlowExponentNumber * friction) + (2 * square));
    }

    /// <summary>What has to be overcome before anything flows.</summary>
    internal double AtRest(int e) => network.Flowing[e].Curve?.LossesMetres[0] ?? 0;

    /// <summary>A flow to start from: a foot a second, or what loses half a metre.</summary>
    internal double Guess(int e)
    {
        var element = network.Flowing[e];
        return element.InsideDiameterMetres > 0 ? 0.3 * HoleDischarge.AreaSquareMetres(element.InsideDiameterMetres)
            : element.Curve is { } curve ? curve.FlowsCubicMetresPerSecond[^1] / 2
            : perSquare[e] > 0 ? Math.Sqrt(0.5 / perSquare[e])
            : perFlow[e] > 0 ? Math.Pow(0.5 / perFlow[e], 1 / HazenWilliams.FlowExponentNumber)
            : 1e-3;
    }

    private void Take(int e, PipeElement element)
    {
        perFlow[e] = element.ResistancePerFlowFactor;
        perSquare[e] = element.ResistancePerFlowSquaredFactor;
        special[e] = element.Curve is not null;
        var slow = LinearBelowMetresPerSecond * HoleDischarge.AreaSquareMetres(element.InsideDiameterMetres);
        var slowFriction = 0.0;
        if (element.Friction is { IsDarcyWeisbach: true })
        {
            special[e] = true;
        }
        else if (element.Friction is { } friction)
        {
            var (perMetre, slowPower) = Size(element.InsideDiameterMetres, friction.Number, slow);
            perFlow[e] += perMetre * element.LengthMetres;
            slowFriction = perFlow[e] * slowPower;
        }

        linearSlope[e] = slowFriction + (perSquare[e] * slow);
        linearBelow[e] = slow;
        if (linearSlope[e] < LeastSlope)
        {
            // The flow from which on the slope is above the least.
            linearBelow[e] = Math.Min(Math.Pow(LeastSlope / perFlow[e], 1 / (HazenWilliams.FlowExponentNumber - 1)), LeastSlope / perSquare[e]);
            linearSlope[e] = double.IsInfinity(linearBelow[e]) ? LeastSlope : Friction(e, linearBelow[e]) + (perSquare[e] * linearBelow[e]);
        }
    }

    /// <summary>Pipes come in few sizes, and powers are dear.</summary>
    private (double PerMetre, double SlowPower) Size(double diameter, double smoothness, double slow)
    {
        if (!sizes.TryGetValue((diameter, smoothness), out var size))
        {
            size = (HazenWilliams.ResistancePerFlowFactor(1, diameter, smoothness), Math.Pow(slow, HazenWilliams.FlowExponentNumber - 1));
            sizes.Add((diameter, smoothness), size);
        }

        return size;
    }

    private double Friction(int e, double size) => perFlow[e] > 0 ? perFlow[e] * Math.Pow(size, HazenWilliams.FlowExponentNumber - 1) : 0;

    private (double Loss, double Slope) Special(PipeElement element, int e, double size)
    {
        var (friction, square) = (Friction(e, size), perSquare[e] * size);
        var (loss, slope) = ((friction + square) * size, (HazenWilliams.FlowExponentNumber * friction) + (2 * square));
        if (element.Curve is { } curve)
        {
            var (more, steeper) = curve.At(size);
            (loss, slope) = (loss + more, slope + steeper);
        }

        if (element.Friction is { IsDarcyWeisbach: true } wall)
        {
            var (more, steeper) = Darcy(element, wall.Number, size);
            (loss, slope) = (loss + more, slope + steeper);
        }

        return (loss, slope);
    }

    /// <summary>h = c f Q^2 with f by Re; laminar flow is straight and needs no division by a flow of nothing.</summary>
    private (double Loss, double Slope) Darcy(PipeElement element, double roughness, double size)
    {
        var diameter = element.InsideDiameterMetres;
        var c = MinorLoss.ResistancePerFlowSquaredFactor(element.LengthMetres / diameter, diameter);
        var rePerFlow = DarcyWeisbach.ReynoldsNumber(diameter, 1, viscosity);
        if (size * rePerFlow <= FrictionFactor.LaminarBelow)
        {
            var straight = 64 * c / rePerFlow;
            return (straight * size, straight);
        }

        var (factor, slope) = FrictionFactor.WithSlope(size * rePerFlow, roughness / diameter);
        return (c * factor * size * size, (2 * c * factor * size) + (c * size * size * slope * rePerFlow));
    }
}
