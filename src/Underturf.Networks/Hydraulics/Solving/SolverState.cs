namespace Underturf.Networks.Hydraulics;

/// <summary>Heads, flows and states as they stand between two rounds.</summary>
internal sealed class SolverState
{
    /// <summary>What a shut element still conducts in the equations, m2/s: at a hundred metres a ten millionth of a litre a second.</summary>
    private const double ShutConductance = 1e-12;

    /// <summary>Holds a head: a litre a second moves it by a billionth of a millimetre.</summary>
    private const double PinConductance = 1e9;

    /// <summary>Heads are a few hundred metres, of which a double keeps sixteen digits.</summary>
    private const double RoundingMetres = 3e-13;

    private readonly double[] conductance;
    private readonly double[] constant;
    private readonly double[] outletConductance;
    private readonly double[] outletConstant;
    private readonly double[] outletElevation;
    private readonly bool[] supplied;
    private readonly bool[] plain;

    internal SolverState(PipeNetwork network)
    {
        Network = network;
        Pattern = network.Patterns.Of(network);
        (Laws, OutletLaws) = (new FlowLaws(network), new OutletLaws(network));
        supplied = Supplied.Nodes(network);
        Head = [.. network.Nodes.Select(n => n.ElevationMetres)];
        var (elements, outlets) = (network.Flowing.Count, network.Outlets.Count);
        (Flow, conductance, constant, States) = (new double[elements], new double[elements], new double[elements], new ElementState[elements]);
        (OutletFlow, outletConductance, outletConstant, OutletStates) = (new double[outlets], new double[outlets], new double[outlets], new ElementState[outlets]);
        OutletNode = [.. network.Outlets.Select(o => o.Node)];
        outletElevation = [.. OutletNode.Select(Elevation)];
        plain = [.. network.Flowing.Select(e => !e.IsOneWay && e.MostCubicMetresPerSecond is null && e.RegulatedPascals is null)];
        RegulatedHead = [.. network.Flowing.Select(e => e.RegulatedPascals is { } p ? Elevation(e.B) + (p / network.Water.PascalsPerMetre) : double.NaN)];
        Start();
    }

    internal PipeNetwork Network { get; }

    internal PipePattern Pattern { get; }

    internal FlowLaws Laws { get; }

    internal OutletLaws OutletLaws { get; }

    internal double[] Head { get; }

    internal double[] Flow { get; }

    internal ElementState[] States { get; }

    internal int[] OutletNode { get; }

    internal double[] OutletFlow { get; }

    internal ElementState[] OutletStates { get; }

    /// <summary>Head that each regulator holds behind it.</summary>
    internal double[] RegulatedHead { get; }

    internal double Elevation(int node) => Network.Nodes[node].ElevationMetres;

    internal bool IsSupplied(int node) => supplied[node];

    internal double FixedHead(int e, bool first) => Head[first ? Pattern.NodeA[e] : Pattern.NodeB[e]];

    internal double Drop(int e) => Head[Pattern.NodeA[e]] - Head[Pattern.NodeB[e]];

    internal double OutletHead(int o) => Head[OutletNode[o]] - outletElevation[o];

    /// <summary>Whether nothing but the flow changes in the element: neither one-way nor limited nor regulated.</summary>
    internal bool IsPlain(int e) => plain[e];

    /// <summary>The element's flow near its last one, as conductance times drop plus a constant.</summary>
    internal (double Conductance, double Constant) Linear(int e)
    {
        switch (States[e])
        {
            case ElementState.Open:
                var (loss, slope) = Laws.AtPrepared(e, Flow[e]);
                (conductance[e], constant[e]) = (1 / slope, Flow[e] - (loss / slope));
                break;
            case ElementState.Limiting:
                (conductance[e], constant[e]) = (ShutConductance, Network.Flowing[e].MostCubicMetresPerSecond!.Value);
                break;
            case ElementState.HeldShut:
                (conductance[e], constant[e]) = (ShutConductance, 0);
                break;
            default:
                (conductance[e], constant[e]) = (0, 0);
                break;
        }

        return (conductance[e], constant[e]);
    }

    /// <summary>The same for an outlet, by the head over it.</summary>
    internal (double Conductance, double Constant) LinearOutlet(int o)
    {
        switch (OutletStates[o])
        {
            case ElementState.Open:
                var (head, slope) = OutletLaws.At(o, OutletFlow[o]);
                (outletConductance[o], outletConstant[o]) = (1 / slope, OutletFlow[o] - (head / slope));
                break;
            case ElementState.Limiting:
                (outletConductance[o], outletConstant[o]) = (0, OutletLaws.Most[o]);
                break;
            default:
                (outletConductance[o], outletConstant[o]) = (0, 0);
                break;
        }

        return (outletConductance[o], outletConstant[o]);
    }

    internal void ClearInto(double[] ground, double[] right)
    {
        Laws.Prepare(Flow);
        for (var node = 0; node < supplied.Length; node++)
        {
            var unknown = Pattern.Unknown[node];
            if (unknown >= 0)
            {
                ground[unknown] = supplied[node] ? 0 : 1;
                right[unknown] = supplied[node] ? -Network.Nodes[node].WithdrawnCubicMetresPerSecond : 0;
            }
        }
    }

    /// <summary>Holds the head behind each regulator at work, and takes its flow from the junction before it.</summary>
    internal void Pin(double[] ground, double[] right)
    {
        for (var e = 0; e < States.Length; e++)
        {
            if (States[e] == ElementState.Regulating)
            {
                ground[Pattern.B[e]] += PinConductance;
                right[Pattern.B[e]] += PinConductance * RegulatedHead[e];
                if (Pattern.A[e] >= 0)
                {
                    right[Pattern.A[e]] -= Flow[e];
                }
            }
        }
    }

    /// <summary>Takes the heads over, and moves the flows to them.</summary>
    /// <returns>Sum of the changes of flow, less what rounding may make, as a share of the sum of flows.</returns>
    internal double Move(ReadOnlySpan<double> heads)
    {
        for (var node = 0; node < Head.Length; node++)
        {
            Head[node] = Pattern.Unknown[node] >= 0 ? heads[Pattern.Unknown[node]] : Head[node];
        }

        var (changes, sum, conducted) = (0.0, 0.0, 0.0);
        for (var e = 0; e < Flow.Length; e++)
        {
            if (States[e] != ElementState.Regulating)
            {
                conducted += conductance[e];
                Set(Flow, e, (conductance[e] * Drop(e)) + constant[e], ref changes, ref sum);
            }
        }

        for (var o = 0; o < OutletFlow.Length; o++)
        {
            Set(OutletFlow, o, (outletConductance[o] * OutletHead(o)) + outletConstant[o], ref changes, ref sum);
        }

        MoveRegulated(ref changes, ref sum);
        return Math.Max(changes - (RoundingMetres * conducted), 0) / Math.Max(sum, 1e-9);
    }

    private static void Set(double[] flows, int at, double flow, ref double changes, ref double sum)
    {
        changes += Math.Abs(flow - flows[at]);
        sum += Math.Abs(flow);
        flows[at] = flow;
    }

    /// <summary>A regulator passes what its junction gives on.</summary>
    private void MoveRegulated(ref double changes, ref double sum)
    {
        if (!States.Contains(ElementState.Regulating))
        {
            return;
        }

        // Chains of regulators: the last of them first would need an order; a few passes over all of them do the same.
        for (var pass = 0; pass < 4; pass++)
        {
            var missing = Balance.Missing(this);
            for (var e = 0; e < Flow.Length; e++)
            {
                if (States[e] == ElementState.Regulating)
                {
                    Set(Flow, e, Flow[e] + missing[Network.Flowing[e].B], ref changes, ref sum);
                }
            }
        }
    }

    private void Start()
    {
        var highest = Network.Nodes.Where(n => n.IsReservoir).Select(n => n.ElevationMetres).DefaultIfEmpty().Max();
        for (var e = 0; e < Flow.Length; e++)
        {
            var element = Network.Flowing[e];
            var dry = element.IsClosed || !supplied[element.A] || !supplied[element.B];
            States[e] = dry ? ElementState.Closed : ElementState.Open;
            Flow[e] = dry ? 0 : Math.Min(Laws.Guess(e), element.MostCubicMetresPerSecond ?? double.PositiveInfinity);
        }

        for (var o = 0; o < OutletFlow.Length; o++)
        {
            var node = Network.Outlets[o].Node;
            OutletStates[o] = supplied[node] ? ElementState.Open : ElementState.Closed;
            OutletFlow[o] = supplied[node] ? OutletLaws.Flow(o, Math.Max((highest - Elevation(node)) / 2, 0.1)) : 0;
        }
    }
}
