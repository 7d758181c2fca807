using Underturf.Networks.Hydraulics;
using Underturf.Numerics;

namespace Underturf.Tests.Networks;

/// <summary>What must hold in any pipe network. All values invented.</summary>
public sealed class HydraulicLawTests
{
    private static readonly Water water = new(288.15);
    private static readonly Friction plastic = Friction.HazenWilliams(150);

    [Fact]
    public void A_single_pipe_loses_what_its_formula_says()
    {
        var network = new PipeNetwork(water);
        var (a, b) = (network.AddReservoir("street", 40), network.AddJunction("end", 0, 1e-3));
        var pipe = network.Add(PipeElement.Pipe("main", a, b, 100, 0.05, plastic, minorLossFactor: 3));
        var solution = network.Solve().Value;
        var loss = HazenWilliams.HeadLossMetres(100, 0.05, 150, 1e-3) + (3 * MinorLoss.VelocityHeadMetres(0.05, 1e-3));
        Assert.Equal(40 - loss, solution.HeadMetres(b)!.Value, 1e-9);
        Assert.Equal(1e-3, solution.FlowCubicMetresPerSecond(pipe), 1e-12);
        Assert.Equal(4e-3 / (Math.PI * 0.0025), solution.VelocityMetresPerSecond(pipe)!.Value, 1e-9);
    }

    [Fact]
    public void A_Darcy_Weisbach_pipe_loses_what_its_formula_says_at_any_flow()
    {
        foreach (var flow in new[] { 1e-6, 1e-5, 6e-5, 1e-4, 1.2e-4, 1e-3, 1e-2 })
        {
            var network = new PipeNetwork(water);
            var (a, b) = (network.AddReservoir("street", 40), network.AddJunction("end", 0, flow));
            network.Add(PipeElement.Pipe("main", a, b, 20, 0.05, Friction.DarcyWeisbach(1.5e-6)));
            var loss = DarcyWeisbach.HeadLossMetres(20, 0.05, 1.5e-6, flow, water.KinematicViscositySquareMetresPerSecond);
            Assert.Equal(40 - loss, network.Solve().Value.HeadMetres(b)!.Value, 1e-9);
        }
    }

    [Fact]
    public void The_friction_factor_has_no_step_and_the_loss_always_grows_with_the_flow()
    {
        var (before, lost) = (FrictionFactor.OfFactor(500, 1e-3), 0.0);
        for (var re = 500.0; re < 1e6; re *= 1.001)
        {
            var factor = FrictionFactor.OfFactor(re, 1e-3);
            Assert.InRange(factor / before, 0.997, 1.003);
            Assert.True(factor * re * re > lost);
            (before, lost) = (factor, factor * re * re);
        }
    }

    [Fact]
    public void Water_runs_backward_through_a_pipe_but_not_through_what_is_one_way()
    {
        var network = new PipeNetwork(water);
        var (low, high, between) = (network.AddReservoir("low", 10), network.AddReservoir("high", 30), network.AddJunction("between", 0));
        network.Add(PipeElement.Pipe("from high", high, between, 50, 0.05, plastic));
        var back = network.Add(PipeElement.Pipe("to low", low, between, 50, 0.05, plastic));
        Assert.True(network.Solve().Value.FlowCubicMetresPerSecond(back) < -1e-3);

        var check = network.With(back, network.Elements[back] with { IsOneWay = true }).Solve().Value;
        Assert.Equal(ElementState.HeldShut, check.State(back));
        Assert.Equal(0, check.FlowCubicMetresPerSecond(back));
        Assert.Equal(30, check.HeadMetres(between)!.Value, 1e-6);
    }

    [Fact]
    public void A_spring_in_a_backflow_device_has_to_be_overcome()
    {
        var curve = new LossCurve([0, 1e-3, 4e-3], [2, 2, 5]);
        PipeSolution With(double headMetres)
        {
            var network = new PipeNetwork(water);
            var (a, b) = (network.AddReservoir("street", headMetres), network.AddJunction("behind", 0));
            network.Add(PipeElement.Backflow("device", a, b, curve));
            network.AddOutlet("outlet", b, Outlet.At(5e-4, 1e5, 0.5));
            return network.Solve().Value;
        }

        var shut = With(1.9);
        Assert.Equal((ElementState.HeldShut, 0), (shut.State(0), shut.FlowCubicMetresPerSecond(0)));
        Assert.InRange(shut.OutletCubicMetresPerSecond(0), 0, 1e-11);
        Assert.Equal(8, With(10).HeadMetres(1)!.Value, 1e-6);
    }

    [Fact]
    public void A_compensating_outlet_gives_the_same_from_its_pressure_on_and_less_below()
    {
        var outlet = Outlet.Compensating(1e-4, 7e4);
        double Flow(double pascals)
        {
            var network = new PipeNetwork(water);
            var (a, b) = (network.AddReservoir("street", 0.5 + (pascals / water.PascalsPerMetre)), network.AddJunction("behind", 0.5));
            network.Add(PipeElement.Pipe("lateral", a, b, 0.1, 0.05, plastic));
            network.AddOutlet("emitter", b, outlet);
            return network.Solve().Value.OutletCubicMetresPerSecond(0);
        }

        Assert.Equal(1e-4, Flow(3e5), 1e-12);
        Assert.Equal(1e-4, Flow(1e5), 1e-12);
        Assert.Equal(1e-4 * Math.Sqrt(3.5 / 7), Flow(3.5e4), 1e-7);
        Assert.Equal(0, Flow(-1e4));
    }

    [Fact]
    public void A_limit_lets_its_most_through_and_a_regulator_holds_its_pressure_only_where_there_is_more()
    {
        var network = new PipeNetwork(water);
        var (street, a, b) = (network.AddReservoir("street", 50), network.AddJunction("a", 0), network.AddJunction("b", 2));
        network.Add(PipeElement.Pipe("main", street, a, 20, 0.05, plastic));
        var valve = PipeElement.Valve("valve", a, b, FlowCoefficient.FromGallonsPerMinuteAtOnePsi(20), water, isClosed: false);
        var e = network.Add(valve);
        network.AddOutlet("outlet", b, Outlet.At(1e-3, 2e5, 0.5));

        Assert.Equal(ElementState.Open, network.Solve().Value.State(e));
        var limited = network.With(e, valve with { MostCubicMetresPerSecond = 4e-4 }).Solve().Value;
        Assert.Equal((ElementState.Limiting, 4e-4), (limited.State(e), Math.Round(limited.OutletCubicMetresPerSecond(0), 9)));
        var held = network.With(e, valve with { RegulatedPascals = 2e5 }).Solve().Value;
        Assert.Equal(ElementState.Regulating, held.State(e));
        Assert.Equal(2e5, held.PressurePascals(b)!.Value, 1);
        Assert.Equal(1e-3, held.FlowCubicMetresPerSecond(e), 1e-8);
        Assert.Equal(ElementState.Open, network.With(e, valve with { RegulatedPascals = 6e5 }).Solve().Value.State(e));
    }

    [Fact]
    public void Regulators_one_behind_the_other_each_hold_their_own()
    {
        var network = new PipeNetwork(water);
        int[] nodes = [network.AddReservoir("street", 80), .. Enumerable.Range(1, 6).Select(k => network.AddJunction($"{k}", 0))];
        for (var k = 0; k < 6; k += 2)
        {
            network.Add(PipeElement.Pipe($"pipe {k}", nodes[k], nodes[k + 1], 10, 0.04, plastic));
            network.Add(PipeElement.Regulator($"regulator {k}", nodes[k + 1], nodes[k + 2], 5e5 - (1e5 * k), 0.04, 2));
        }

        network.AddOutlet("outlet", nodes[6], Outlet.At(1e-3, 1e5, 0.5));
        var solution = network.Solve().Value;
        Assert.Equal([5e5, 3e5, 1e5], new[] { 2, 4, 6 }.Select(k => Math.Round(solution.PressurePascals(nodes[k])!.Value)));
        Assert.InRange(solution.MassResidualCubicMetresPerSecond, 0, 1e-11);
        Assert.Equal(1e-3, solution.SuppliedCubicMetresPerSecond, 1e-8);
    }

    [Fact]
    public void A_supply_gives_what_its_two_readings_say()
    {
        var curve = SupplyCurve.FromTwoReadings(water, 5e5, 3.5e5, 2e-3).Value;
        var network = new PipeNetwork(water);
        var junction = network.AddSupply("street", 3, curve);
        network.AddOutlet("outlet", junction, Outlet.At(2e-3, 3.5e5, 0.5));
        var solution = network.Solve().Value;
        Assert.Equal(3.5e5, solution.PressurePascals(junction)!.Value, 1);
        Assert.Contains("more pressure running", SupplyCurve.FromTwoReadings(water, 3e5, 3.5e5, 2e-3).Problem!.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Flows_sum_up_and_heads_agree_with_conductances_ten_thousand_times_apart()
    {
        var random = new SeededGenerator(53);
        for (var trial = 0; trial < 40; trial++)
        {
            var network = new PipeNetwork(water);
            List<int> nodes = [network.AddReservoir("street", 60)];
            for (var k = 1; k < 60; k++)
            {
                nodes.Add(network.AddJunction($"j{k}", 10 * random.NextDouble()));
                for (var twice = random.NextInt(2); twice >= 0; twice--)
                {
                    network.Add(PipeElement.Pipe("pipe", nodes[random.NextInt(k)], nodes[k], Math.Pow(10, (4 * random.NextDouble()) - 2), 0.03, plastic));
                }

                if (random.NextInt(2) == 0)
                {
                    network.AddOutlet("outlet", nodes[k], Outlet.At(1e-5 * (1 + random.NextInt(10)), 2e5, 0.3 + (0.7 * random.NextDouble())));
                }
            }

            var solution = network.Solve().Value;
            Assert.InRange(solution.MassResidualCubicMetresPerSecond, 0, 1e-9);
            Assert.InRange(solution.HeadResidualMetres, 0, 1e-6);
            Assert.InRange(solution.Rounds, 1, 40);
        }
    }

    [Fact]
    public void Nothing_flows_where_nothing_leaves_and_every_head_is_that_of_the_supply()
    {
        var network = new PipeNetwork(water);
        int[] nodes = [network.AddReservoir("street", 40), .. Enumerable.Range(0, 8).Select(k => network.AddJunction($"{k}", k))];
        for (var k = 0; k < 8; k++)
        {
            network.Add(PipeElement.Pipe("pipe", nodes[k], nodes[k + 1], 10, 0.02, plastic));
            network.Add(PipeElement.Pipe("loop", nodes[0], nodes[k + 1], 300, 0.05, plastic));
        }

        var solution = network.Solve().Value;
        Assert.All(nodes, node => Assert.Equal(40, solution.HeadMetres(node)!.Value, 1e-9));
        Assert.All(Enumerable.Range(0, network.Elements.Count), e => Assert.InRange(Math.Abs(solution.FlowCubicMetresPerSecond(e)), 0, 1e-12));
    }
}
