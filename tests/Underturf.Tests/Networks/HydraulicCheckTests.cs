using Underturf.Networks.Hydraulics;

namespace Underturf.Tests.Networks;

/// <summary>What is wrong with a pipe network is said by name before it is solved. All values invented.</summary>
public sealed class HydraulicCheckTests
{
    private static readonly Friction plastic = Friction.HazenWilliams(150);

    [Fact]
    public void A_part_without_supply_is_named_and_the_rest_is_solved()
    {
        var (network, valve) = Small();
        var solution = network.WithClosed(valve, true).Solve().Value;
        Assert.Equal(["behind", "end"], solution.WithoutSupply);
        Assert.Null(solution.PressurePascals(2));
        Assert.Equal(0, solution.OutletCubicMetresPerSecond(0));
        Assert.Equal(40, solution.HeadMetres(1)!.Value, 1e-9);
        Assert.Empty(network.Solve().Value.WithoutSupply);
    }

    [Fact]
    public void A_part_that_only_a_check_valve_the_wrong_way_joins_to_the_supply_has_none()
    {
        var network = new PipeNetwork(new Water(288.15));
        var (a, b) = (network.AddReservoir("street", 40), network.AddJunction("upstream", 0));
        network.Add(PipeElement.Check("check", b, a, 0.03, 2));
        Assert.Equal(["upstream"], network.Solve().Value.WithoutSupply);
    }

    [Fact]
    public void Water_taken_from_a_part_without_supply_is_a_problem() =>
        Says(network => network.AddJunction("far", 0, 1e-3), "junction 'far'", "nothing open joins it to a supply");

    [Fact]
    public void A_missing_or_negative_length_is_named() =>
        Says(network => network.Add(PipeElement.Pipe("lateral 7", 1, 2, -3, 0.05, plastic)), "pipe 'lateral 7'", "-3 m is no length");

    [Fact]
    public void A_diameter_that_cannot_be_is_named() =>
        Says(network => network.Add(PipeElement.Pipe("lateral 7", 1, 2, 3, 0, plastic)), "pipe 'lateral 7'", "no inside diameter");

    [Fact]
    public void A_wall_that_no_pipe_has_is_named()
    {
        Says(network => network.Add(PipeElement.Pipe("old iron", 1, 2, 3, 0.05, Friction.HazenWilliams(5))), "pipe 'old iron'", "C of 5");
        Says(network => network.Add(PipeElement.Pipe("old iron", 1, 2, 3, 0.05, Friction.DarcyWeisbach(0.01))), "pipe 'old iron'", "no roughness");
    }

    [Fact]
    public void A_loss_curve_that_falls_is_named() =>
        Says(network => network.Add(PipeElement.Meter("meter", 1, 2, new LossCurve([0, 1e-3, 2e-3], [1, 0.5, 2]))), "meter 'meter'", "falls at its point 2");

    [Fact]
    public void An_element_that_ends_nowhere_is_named()
    {
        Says(network => network.Add(PipeElement.Pipe("stray", 1, 99, 3, 0.05, plastic)), "pipe 'stray'", "not in the network");
        Says(network => network.Add(PipeElement.Pipe("stray", 1, 1, 3, 0.05, plastic)), "pipe 'stray'", "begins where it ends");
    }

    [Fact]
    public void Two_regulators_onto_one_junction_are_named()
    {
        Says(
            network =>
            {
                network.Add(PipeElement.Regulator("first", 1, 3, 1e5, 0.03, 1));
                network.Add(PipeElement.Regulator("second", 2, 3, 1e5, 0.03, 1));
            },
            "regulator 'second'",
            "something else holds already");
    }

    [Fact]
    public void An_outlet_without_a_flow_is_named() =>
        Says(network => network.AddOutlet("head 4", 2, new Outlet(0, 0.5)), "outlet 'head 4'", "no outlet has");

    [Fact]
    public void A_network_without_a_supply_says_so()
    {
        var network = new PipeNetwork(new Water(288.15));
        network.AddJunction("alone", 0);
        Assert.Contains("no supply", network.Solve().Problem!.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_variant_leaves_the_network_that_it_is_made_of_as_it_was()
    {
        var (network, valve) = Small();
        var closed = network.WithClosed(valve, true);
        closed.AddJunction("more", 0);
        Assert.False(network.Elements[valve].IsClosed);
        Assert.Equal((4, 5), (network.Nodes.Count, closed.Nodes.Count));
        Assert.Throws<ArgumentException>(() => network.With(valve, network.Elements[0]));
    }

    private static (PipeNetwork Network, int Valve) Small()
    {
        var network = new PipeNetwork(new Water(288.15));
        var (street, before, behind, end) = (network.AddReservoir("street", 40), network.AddJunction("before", 0), network.AddJunction("behind", 0), network.AddJunction("end", 0));
        network.Add(PipeElement.Pipe("main", street, before, 30, 0.05, plastic));
        var valve = network.Add(PipeElement.Isolation("gate", before, behind, 0.05, 0.2));
        network.Add(PipeElement.Pipe("lateral", behind, end, 20, 0.03, plastic));
        network.AddOutlet("outlet", end, Outlet.At(5e-4, 2e5, 0.5));
        return (network, valve);
    }

    private static void Says(Action<PipeNetwork> spoil, string place, string reason)
    {
        var (network, _) = Small();
        spoil(network);
        var problem = network.Solve().Problem!;
        Assert.Equal(place, problem.Place);
        Assert.Contains(reason, problem.Reason, StringComparison.Ordinal);
        Assert.NotEqual("", problem.Remedy);
    }
}
