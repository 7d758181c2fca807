using Underturf.Numerics;
using Underturf.Quantities;

namespace Underturf.Networks.Hydraulics;

/// <summary>
/// Global gradient method: each round takes every loss as straight around its last flow, solves all heads at once, and moves the flows to
/// those heads (Todini and Pilati, in Computer Applications in Water Supply 1, 1988; from memory).
/// </summary>
internal sealed class GradientSolver
{
    /// <summary>From then on what is held shut opens only when the flows have come to rest: heads on their way there open and shut it without end.</summary>
    private const int EagerRounds = 15;
    private const double CalmChange = 1e-4;

    private readonly SolverState state;
    private readonly SparseFactor factor;
    private readonly double[] ground;
    private readonly double[] right;

    private GradientSolver(PipeNetwork network)
    {
        state = new SolverState(network);
        factor = new SparseFactor(state.Pattern.Sparse);
        (ground, right) = (new double[state.Pattern.UnknownCount], new double[state.Pattern.UnknownCount]);
    }

    internal static Outcome<PipeSolution> Solve(PipeNetwork network, SolveSettings settings)
    {
        if (PipeNetworkCheck.Of(network) is { } problem)
        {
            return problem;
        }

        var solver = new GradientSolver(network);
        for (var round = 1; round <= settings.MostRounds; round++)
        {
            solver.Assemble();
            if (!solver.factor.FactorGrounded(solver.ground))
            {
                throw new InvalidOperationException("A part of the network has no head to stand against.");
            }

            solver.factor.Solve(solver.right);
            var change = solver.state.Move(solver.right);
            var switched = StateSwitch.Apply(solver.state, mayOpen: round <= EagerRounds || change <= CalmChange);
            if (switched == 0 && change <= settings.FlowChangeTolerance)
            {
                return PipeSolution.Of(solver.state, round);
            }
        }

        return new Problem("network", $"does not settle in {settings.MostRounds} rounds", "Look for valves that work against each other, and for sizes or lengths with a slip of the point");
    }

    private void Assemble()
    {
        factor.Values.Clear();
        state.ClearInto(ground, right);
        AssembleElements();
        for (var o = 0; o < state.OutletFlow.Length; o++)
        {
            var node = state.Pattern.Unknown[state.OutletNode[o]];
            if (node >= 0)
            {
                var (conductance, constant) = state.LinearOutlet(o);
                ground[node] += conductance;
                right[node] += (conductance * state.Elevation(state.OutletNode[o])) - constant;
            }
        }

        state.Pin(ground, right);
    }

    private void AssembleElements()
    {
        var pattern = state.Pattern;
        var values = factor.Values;
        var pairAt = pattern.Sparse.PairAt;
        for (var e = 0; e < state.Flow.Length; e++)
        {
            var (conductance, constant) = state.Linear(e);
            var (a, b) = (pattern.A[e], pattern.B[e]);
            if (pattern.PairOf[e] >= 0 && a != b)
            {
                values[pairAt[pattern.PairOf[e]]] -= conductance;
            }
            else if (a >= 0)
            {
                ground[a] += conductance;
                right[a] += conductance * state.FixedHead(e, first: false);
            }
            else if (b >= 0)
            {
                ground[b] += conductance;
                right[b] += conductance * state.FixedHead(e, first: true);
            }

            right[Math.Max(a, 0)] -= a >= 0 ? constant : 0;
            right[Math.Max(b, 0)] += b >= 0 ? constant : 0;
        }
    }
}
