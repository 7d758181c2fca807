using Underturf.Networks.Wiring;
using Underturf.Quantities;

namespace Underturf.Tests.Networks;

/// <summary>What cannot be solved is named before it is tried.</summary>
public sealed class WiringCheckTests
{
    [Fact]
    public void A_network_without_a_source_is_refused()
    {
        var network = Loop(out _, out _);
        Assert.Contains("no connected source", network.WithoutSources().SolveAc(60).Problem!.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_floating_node_is_named()
    {
        var network = Loop(out _, out _);
        network.AddResistor("stray", network.Node("x"), network.Node("y"), 5);
        var problem = network.SolveAc(60).Problem!;

        Assert.Equal("node 'x'", problem.Place);
        Assert.Contains("floats", problem.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_part_behind_an_open_is_solved_around_and_says_that_it_floats()
    {
        var network = Loop(out var hot, out var common);
        var far = network.Node("far");
        network.AddResistor("broken", hot, far, double.PositiveInfinity);
        var solution = network.SolveAc(60).Value;

        Assert.True(solution.IsFloating(far));
        Assert.False(solution.IsFloating(hot));
        Assert.Contains("separate parts", solution.VoltageBetween(far, common).Problem!.Reason, StringComparison.Ordinal);
        Assert.Equal(0, solution.Current(2).Value.Magnitude);
    }

    [Fact]
    public void An_ideal_source_closed_on_itself_is_named()
    {
        var network = new WiringNetwork();
        var (hot, joint, common) = (network.Node("hot"), network.Node("joint"), network.Node("common"));
        network.AddSource("supply", hot, common, 24, 0);
        network.AddResistor("one", hot, joint, 0);
        network.AddResistor("two", joint, common, 0);

        var problem = network.SolveAc(60).Problem!;
        Assert.Equal("resistor 'two'", problem.Place);
        Assert.Contains("loop", problem.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_ideal_sources_that_disagree_are_named_and_two_that_agree_are_not()
    {
        var network = new WiringNetwork();
        var (hot, common) = (network.Node("hot"), network.Node("common"));
        network.AddSource("first", hot, common, 24, 0);
        network.AddResistor("load", hot, common, 12);
        var second = network.AddSource("second", common, hot, -24, 0);

        Assert.Equal(2, network.SolveAc(60).Value.Current(1).Value.Real, 1e-14);
        Assert.Contains("not determined", network.SolveAc(60).Value.Current(0).Problem!.Reason, StringComparison.Ordinal);
        Assert.Equal("source 'second'", network.WithVolts(second, 24).SolveAc(60).Problem!.Place);
    }

    [Fact]
    public void A_source_with_ohms_shorted_by_a_perfect_joint_delivers_its_short_circuit_current()
    {
        var network = Loop(out var hot, out var common);
        network.AddResistor("short", hot, common, 0);
        var solution = network.SolveAc(60).Value;

        Assert.Equal(26, solution.Current(2).Value.Real, 1e-12);
        Assert.Equal(0, solution.VoltageBetween(hot, common).Value.Magnitude, 1e-14);
        Assert.Contains("no ohms", solution.AmperesReading(2).Problem!.Reason, StringComparison.Ordinal);
        Assert.Contains("derivative", solution.VoltsReading(hot, common).Value.Sensitivity(0).Problem!.Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.NegativeInfinity)]
    [InlineData(1e-300)]
    [InlineData(1e300)]
    public void Ohms_that_are_none_are_named(double ohms)
    {
        var network = Loop(out var hot, out var common).With(1, ohms);

        Assert.Equal("coil 'coil'", network.SolveAc(60).Problem!.Place);
        Assert.Equal("coil 'coil'", network.WithoutSources().Ohms(hot, common).Problem!.Place);
    }

    [Fact]
    public void Other_bad_numbers_are_named_too()
    {
        var network = Loop(out var hot, out _);

        Assert.Contains("inductance", network.WithHenries(1, -0.1).SolveAc(60).Problem!.Reason, StringComparison.Ordinal);
        Assert.Contains("voltage", network.WithVolts(0, double.NaN).SolveAc(60).Problem!.Reason, StringComparison.Ordinal);
        Assert.Contains("alternating", network.SolveAc(0).Problem!.Reason, StringComparison.Ordinal);
        Assert.Contains("not in the network", network.WithoutSources().Ohms(hot, 99).Problem!.Reason, StringComparison.Ordinal);
        Assert.Contains("not in the network", network.SolveAc(60).Value.VoltageBetween(hot, -1).Problem!.Reason, StringComparison.Ordinal);
        network.AddResistor("stray", hot, 7, 1);
        Assert.Equal("resistor 'stray'", network.SolveAc(60).Problem!.Place);
        var cold = new WiringNetwork();
        cold.AddConductor("frozen", cold.Node("a"), cold.Node("b"), WireSize.FromAwg(18), 10, 4);
        Assert.Equal("conductor 'frozen'", cold.Ohms(0, 1).Problem!.Place);
    }

    [Fact]
    public void An_ohmmeter_is_kept_off_a_live_network()
    {
        var network = Loop(out var hot, out var common);

        Assert.Contains("live", network.Ohms(hot, common).Problem!.Reason, StringComparison.Ordinal);
        Assert.Contains("Power off", network.Ohms(hot, common).Problem!.Remedy, StringComparison.Ordinal);
        Assert.Equal(30, network.WithoutSources().Ohms(hot, common).Value.Ohms, 1e-13);

        // Power off but the winding still connected: it reads along.
        Assert.Equal(30.0 / 31, network.WithVolts(0, 0).Ohms(hot, common).Value.Ohms, 1e-14);
    }

    [Fact]
    public void No_path_reads_open_and_one_node_reads_nothing()
    {
        var network = new WiringNetwork();
        var (a, b) = (network.Node("a"), network.Node("b"));
        var open = network.AddResistor("cut", a, b, double.PositiveInfinity);

        Assert.True(network.Ohms(a, b).Value.IsOpen);
        Assert.Equal(0, network.Ohms(a, b).Value.Sensitivity(open).Value);
        Assert.Equal(0, network.Ohms(a, a).Value.Ohms);
        Assert.Equal(0, network.With(open, 0).Ohms(a, b).Value.Ohms);
    }

    [Fact]
    public void A_loop_of_perfect_joints_leaves_their_currents_open_and_nothing_else()
    {
        var network = new WiringNetwork();
        var (a, b, c) = (network.Node("a"), network.Node("b"), network.Node("c"));
        var first = network.AddResistor("first", a, b, 0);
        network.AddResistor("second", a, b, 0);
        var lead = network.AddResistor("lead", b, network.Node("d"), 0);
        var load = network.AddResistor("load", network.Node("d"), c, 8);
        var reading = network.Ohms(a, c).Value;

        Assert.Equal(8, reading.Ohms, 1e-14);
        Assert.Equal(1, reading.Sensitivity(load).Value, 1e-14);
        Assert.Equal(1, reading.Sensitivity(lead).Value, 1e-14);
        Assert.Contains("loop", reading.Sensitivity(first).Problem!.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Adding_to_a_clone_leaves_the_network_as_it_was()
    {
        var network = Loop(out var hot, out var common);
        var clone = network.Clone();
        clone.AddResistor("meter", hot, clone.Node("probe"), 1);
        network.AddResistor("shunt", hot, common, 30);

        Assert.Equal(3, network.ElementCount);
        Assert.Equal(2, network.NodeCount);
        Assert.Equal("meter", clone.ElementAt(2).Name);
        Assert.Equal(15, network.WithoutSources().Ohms(hot, common).Value.Ohms, 1e-13);
        Assert.Equal(30, clone.WithoutSources().Ohms(hot, common).Value.Ohms, 1e-13);
    }

    private static WiringNetwork Loop(out int hot, out int common)
    {
        var network = new WiringNetwork();
        (hot, common) = (network.Node("hot"), network.Node("common"));
        network.AddSource("supply", hot, common, 26, 1);
        network.AddCoil("coil", hot, common, 30, 0.1);
        return network;
    }
}
