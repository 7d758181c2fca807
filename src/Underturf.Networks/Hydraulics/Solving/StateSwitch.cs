namespace Underturf.Networks.Hydraulics;

/// <summary>After each round: which one-way elements, limits, regulators and outlets now do something else.</summary>
internal static class StateSwitch
{
    private const double HeadMetres = 1e-7;
    private const double FlowCubicMetresPerSecond = 1e-10;

    /// <param name="mayOpen">Whether what is held shut may open.</param>
    /// <returns>How many switched.</returns>
    internal static int Apply(SolverState state, bool mayOpen)
    {
        var switched = 0;
        for (var e = 0; e < state.States.Length; e++)
        {
            if (state.IsPlain(e))
            {
                continue;
            }

            var next = Next(state, e, state.Network.Flowing[e]);
            if (next != state.States[e] && (mayOpen || state.States[e] != ElementState.HeldShut))
            {
                Switch(state, e, next);
                switched++;
            }
        }

        for (var o = 0; o < state.OutletStates.Length; o++)
        {
            switched += (mayOpen || state.OutletStates[o] != ElementState.HeldShut) && SwitchOutlet(state, o) ? 1 : 0;
        }

        return switched;
    }

    private static ElementState Next(SolverState state, int e, PipeElement element) => state.States[e] switch
    {
        ElementState.Open => FromOpen(state, e, element),
        ElementState.Limiting => state.Drop(e) < state.Laws.At(e, element.MostCubicMetresPerSecond!.Value).Loss - HeadMetres ? ElementState.Open : ElementState.Limiting,
        ElementState.HeldShut => FromShut(state, e, element),
        ElementState.Regulating => FromRegulating(state, e, element),
        _ => ElementState.Closed,
    };

    private static ElementState FromOpen(SolverState state, int e, PipeElement element)
    {
        if (element.IsOneWay && state.Flow[e] < -FlowCubicMetresPerSecond)
        {
            return ElementState.HeldShut;
        }

        if (state.Flow[e] > element.MostCubicMetresPerSecond + FlowCubicMetresPerSecond)
        {
            return ElementState.Limiting;
        }

        return state.Head[element.B] > state.RegulatedHead[e] + HeadMetres ? ElementState.Regulating : ElementState.Open;
    }

    private static ElementState FromShut(SolverState state, int e, PipeElement element)
    {
        if (state.Drop(e) <= state.Laws.AtRest(e) + HeadMetres || state.Head[element.B] > state.RegulatedHead[e] - HeadMetres)
        {
            return ElementState.HeldShut;
        }

        return state.Head[element.A] > state.RegulatedHead[e] ? ElementState.Regulating : ElementState.Open;
    }

    private static ElementState FromRegulating(SolverState state, int e, PipeElement element)
    {
        if (state.Flow[e] < -FlowCubicMetresPerSecond)
        {
            return ElementState.HeldShut;
        }

        return state.Head[element.A] - state.Laws.At(e, state.Flow[e]).Loss < state.RegulatedHead[e] - HeadMetres ? ElementState.Open : ElementState.Regulating;
    }

    private static void Switch(SolverState state, int e, ElementState next)
    {
        state.States[e] = next;
        state.Flow[e] = next switch
        {
            ElementState.HeldShut => 0,
            ElementState.Limiting => state.Network.Flowing[e].MostCubicMetresPerSecond!.Value,
            _ => Math.Max(state.Flow[e], 0) is var flow && flow < FlowCubicMetresPerSecond ? state.Laws.Guess(e) : flow,
        };
    }

    private static bool SwitchOutlet(SolverState state, int o)
    {
        var (head, laws) = (state.OutletHead(o), state.OutletLaws);
        var next = state.OutletStates[o] switch
        {
            ElementState.Open => state.OutletFlow[o] < -FlowCubicMetresPerSecond ? ElementState.HeldShut
                : state.OutletFlow[o] > laws.Most[o] && head > laws.MostMetres[o] ? ElementState.Limiting : ElementState.Open,
            ElementState.HeldShut => head > HeadMetres ? ElementState.Open : ElementState.HeldShut,
            ElementState.Limiting => head < laws.MostMetres[o] ? ElementState.Open : ElementState.Limiting,
            var same => same,
        };
        if (next == state.OutletStates[o])
        {
            return false;
        }

        state.OutletStates[o] = next;
        state.OutletFlow[o] = laws.Flow(o, head);
        return true;
    }
}
