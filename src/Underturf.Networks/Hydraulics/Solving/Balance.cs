namespace Underturf.Networks.Hydraulics;

/// <summary>The check after solving: does as much come to each junction as goes, and does each flow lose the head that it is given?</summary>
internal static class Balance
{
    /// <summary>What goes from each node and does not come, m3/s; nothing asked of what holds its head.</summary>
    internal static double[] Missing(SolverState state)
    {
        var network = state.Network;
        var missing = new double[network.Nodes.Count];
        for (var node = 0; node < missing.Length; node++)
        {
            missing[node] = state.IsSupplied(node) ? network.Nodes[node].WithdrawnCubicMetresPerSecond : 0;
        }

        for (var e = 0; e < state.Flow.Length; e++)
        {
            missing[network.Flowing[e].A] += state.Flow[e];
            missing[network.Flowing[e].B] -= state.Flow[e];
        }

        for (var o = 0; o < state.OutletFlow.Length; o++)
        {
            missing[network.Outlets[o].Node] += state.OutletFlow[o];
        }

        return missing;
    }

    internal static double ResidualCubicMetresPerSecond(SolverState state)
    {
        var (missing, most) = (Missing(state), 0.0);
        for (var node = 0; node < missing.Length; node++)
        {
            most = state.Network.Nodes[node].IsReservoir ? most : Math.Max(most, Math.Abs(missing[node]));
        }

        return most;
    }

    internal static double ResidualMetres(SolverState state)
    {
        var most = 0.0;
        for (var e = 0; e < state.Flow.Length; e++)
        {
            if (state.States[e] == ElementState.Open)
            {
                most = Math.Max(most, Math.Abs(state.Drop(e) - state.Laws.At(e, state.Flow[e]).Loss));
            }
        }

        for (var o = 0; o < state.OutletFlow.Length; o++)
        {
            if (state.OutletStates[o] == ElementState.Open)
            {
                most = Math.Max(most, Math.Abs(state.OutletHead(o) - state.OutletLaws.At(o, state.OutletFlow[o]).Head));
            }
        }

        return most;
    }
}
