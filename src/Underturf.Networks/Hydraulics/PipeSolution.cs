namespace Underturf.Networks.Hydraulics;

/// <summary>Heads and flows of a network while nothing changes, and how well they fulfil the equations.</summary>
public sealed class PipeSolution
{
    private readonly SolverState state;

    private PipeSolution(SolverState state, int rounds)
    {
        this.state = state;
        Rounds = rounds;
        MassResidualCubicMetresPerSecond = Balance.ResidualCubicMetresPerSecond(state);
        HeadResidualMetres = Balance.ResidualMetres(state);
    }

    /// <summary>How often all heads were solved.</summary>
    public int Rounds { get; }

    /// <summary>The most that comes to a junction and does not go, or the other way round.</summary>
    public double MassResidualCubicMetresPerSecond { get; }

    /// <summary>The most that an element's or outlet's loss differs from the heads at its ends.</summary>
    public double HeadResidualMetres { get; }

    /// <summary>Junctions that nothing open joins to a supply, in the order of the network.</summary>
    public IEnumerable<string> WithoutSupply =>
        Enumerable.Range(0, state.Network.Nodes.Count).Where(n => !state.IsSupplied(n)).Select(n => state.Network.Nodes[n].Name);

    /// <summary>Water leaving bodies of water and supplies.</summary>
    public double SuppliedCubicMetresPerSecond
    {
        get
        {
            var (missing, sum) = (Balance.Missing(state), 0.0);
            for (var node = 0; node < missing.Length; node++)
            {
                sum += state.Network.Nodes[node].IsReservoir ? missing[node] : 0;
            }

            return sum;
        }
    }

    /// <summary>Height to which water would stand at the node; null where nothing open joins it to a supply.</summary>
    public double? HeadMetres(int node) => state.IsSupplied(node) ? state.Head[node] : null;

    /// <summary>Pressure over the open air; null where nothing open joins it to a supply.</summary>
    public double? PressurePascals(int node) =>
        state.IsSupplied(node) ? (state.Head[node] - state.Elevation(node)) * state.Network.Water.PascalsPerMetre : null;

    /// <summary>Flow from A to B.</summary>
    public double FlowCubicMetresPerSecond(int element) => state.Flow[element];

    /// <summary>Speed in the element's bore; null where it has none.</summary>
    public double? VelocityMetresPerSecond(int element) => state.Network.Flowing[element].InsideDiameterMetres is > 0 and var diameter
        ? MinorLoss.VelocityMetresPerSecond(diameter, Math.Abs(state.Flow[element]))
        : null;

    public ElementState State(int element) => state.States[element];

    public double OutletCubicMetresPerSecond(int outlet) => state.OutletFlow[outlet];

    public ElementState OutletState(int outlet) => state.OutletStates[outlet];

    internal static PipeSolution Of(SolverState state, int rounds)
    {
        // What is shut conducted a trace in the equations.
        for (var e = 0; e < state.Flow.Length; e++)
        {
            state.Flow[e] = state.States[e] is ElementState.HeldShut or ElementState.Closed ? 0 : state.Flow[e];
        }

        for (var o = 0; o < state.OutletFlow.Length; o++)
        {
            state.OutletFlow[o] = state.OutletStates[o] is ElementState.HeldShut or ElementState.Closed ? 0 : state.OutletFlow[o];
        }

        return new PipeSolution(state, rounds);
    }
}
