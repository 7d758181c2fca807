using Underturf.Networks.Hydraulics;
using Underturf.Quantities;

namespace Underturf.References.Tests.Pipes;

/// <summary>
/// A hundred random properties against the engine of the npm package epanet-js, Hazen-Williams, one exponent, no backflow, same tolerance:
/// heads within 0.01 ft, flows within 0.1 % above a floor.
/// </summary>
public sealed class RandomPipesTests(ITestOutputHelper output)
{
    private const double Tolerance = 1e-5;
    private const int MostRounds = 500;

    /// <summary>A hundredth of a gallon a minute: what the engine lets through what is shut comes near it.</summary>
    private static readonly double floorFlow = Units.From(0.01, "gpm");

    private readonly Comparison heads = new(0, 0.01 * PipePeer.MetresPerFoot, "the engine");
    private readonly Comparison flows = new(0.001, floorFlow, "the engine");
    private readonly Dictionary<ElementState, int> states = [];

    [Fact]
    public void Heads_and_flows_of_a_hundred_random_networks_are_those_of_the_reference_engine()
    {
        var left = Enumerable.Range(1, 100).Select(seed => Solved.Of(seed, new SolveSettings(Tolerance, MostRounds))).ToList();
        var settled = new List<int>();
        foreach (var help in Enum.GetValues<PeerHelp>())
        {
            var theirs = PipePeer.Solve(left.Select(s => new PeerInput(s.Network, s.Ours, help).Write(Tolerance, RandomPipes.Exponent)));
            var done = left.Zip(theirs).Where(pair => pair.Second.Rounds < MostRounds).ToList();
            done.ForEach(pair => Compare(pair.First, pair.Second));
            settled.Add(done.Count);
            left = [.. left.Except(done.Select(pair => pair.First))];
        }

        output.WriteLine($"The engine settled {settled[0]} networks as they are, {settled[1]} told what regulators lose, {settled[2]} told what is held shut. "
            + $"{heads.Count} heads; {flows.Count} flows, worst {flows.WorstShare:0.0e0} above the floor; {string.Join(", ", states.Select(s => $"{s.Value} {s.Key}"))}.");
        Assert.Equal("", $"{heads.Disagreement}{flows.Disagreement}");
        Assert.Empty(left.Select(s => s.Seed));
        Assert.True(settled[0] >= 80 && heads.Count > 5000 && flows.Count > 10_000);
        Assert.All(Enum.GetValues<ElementState>(), state => Assert.True(states.GetValueOrDefault(state) > 5, $"{state}"));
    }

    private void Compare(Solved solved, PeerAnswer theirs)
    {
        var (seed, network, ours) = (solved.Seed, solved.Network, solved.Ours);
        Assert.InRange(ours.MassResidualCubicMetresPerSecond, 0, 1e-9);
        for (var node = 0; node < network.Nodes.Count; node++)
        {
            if (ours.HeadMetres(node) is { } head)
            {
                heads.Add(theirs.HeadMetres[node], head, $"network {seed}, head of {network.Nodes[node].Name} (node {node})");
            }
        }

        for (var e = 0; e < network.Elements.Count; e++)
        {
            states[ours.State(e)] = states.GetValueOrDefault(ours.State(e)) + 1;
            flows.Add(theirs.FlowCubicMetresPerSecond.GetValueOrDefault(e), ours.FlowCubicMetresPerSecond(e), $"network {seed}, flow of {network.Elements[e].Name} (element {e})");
        }

        for (var o = 0; o < network.Outlets.Count; o++)
        {
            flows.Add(theirs.OutflowCubicMetresPerSecond.GetValueOrDefault(network.Outlets[o].Node), ours.OutletCubicMetresPerSecond(o), $"network {seed}, outlet {o}");
        }
    }

    private sealed record Solved(int Seed, PipeNetwork Network, PipeSolution Ours)
    {
        internal static Solved Of(int seed, SolveSettings settings)
        {
            var network = RandomPipes.Of(seed);
            var solved = network.Solve(settings);
            Assert.True(solved.Succeeded, $"network {seed}: {solved.Problem}");
            return new Solved(seed, network, solved.Value);
        }
    }
}
