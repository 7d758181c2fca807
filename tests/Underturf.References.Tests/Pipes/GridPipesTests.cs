using Underturf.Networks.Hydraulics;

namespace Underturf.References.Tests.Pipes;

/// <summary>What <c>./prove water</c> takes the time of, small and without a clock: same answer, few rounds, a factor that hardly grows.</summary>
public sealed class GridPipesTests
{
    [Fact]
    public void A_grid_with_outlets_everywhere_has_the_heads_and_flows_of_the_reference_engine()
    {
        var network = new GridPipes(20, 25, 3).Network();
        var ours = network.Solve(new SolveSettings(1e-5, 100)).Value;
        var theirs = PipePeer.Solve([new PeerInput(network, ours, PeerHelp.None).Write(1e-5, GridPipes.Exponent)])[0];
        Assert.All(Enumerable.Range(0, network.Nodes.Count), n => Assert.Equal(theirs.HeadMetres[n], ours.HeadMetres(n)!.Value, 0.01 * PipePeer.MetresPerFoot));
        Assert.All(Enumerable.Range(0, network.Outlets.Count), o => Assert.Equal(theirs.OutflowCubicMetresPerSecond[o], ours.OutletCubicMetresPerSecond(o), 0.001 * theirs.OutflowCubicMetresPerSecond[o]));
    }

    [Fact]
    public void A_larger_grid_takes_no_more_rounds()
    {
        var small = new GridPipes(10, 10, 3).Network().Solve().Value;
        var large = new GridPipes(40, 50, 3).Network().Solve().Value;
        Assert.InRange(large.Rounds, 1, small.Rounds + 3);
        Assert.InRange(large.MassResidualCubicMetresPerSecond, 0, 1e-7);
        Assert.InRange(large.HeadResidualMetres, 0, 1e-6);
    }
}
