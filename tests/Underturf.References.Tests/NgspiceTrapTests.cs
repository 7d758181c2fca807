namespace Underturf.References.Tests;

/// <summary>The engine ends with code 0 whatever happens; the runner must not take that for an answer.</summary>
public sealed class NgspiceTrapTests
{
    [Fact]
    public void A_singular_netlist_is_noticed()
    {
        // Two ideal sources that contradict each other (invented).
        var failure = Record.Exception(() => Ngspice.Run("V1 a 0 1\nV2 a 0 2\nR1 a 0 1\n", "op"));
        Assert.Contains("ngspice complains", failure!.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_netlist_with_an_unknown_element_is_noticed()
    {
        var failure = Record.Exception(() => Ngspice.Run("R1 a 0 1\nI1 0 a 1\nR2 a\n", "op"));
        Assert.Contains("ngspice complains", failure!.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_vector_that_is_not_there_is_noticed()
    {
        var failure = Record.Exception(() => Ngspice.Run("R1 a 0 1\nI1 0 a 1\n", "op\nprint v(nowhere)"));
        Assert.Contains("ngspice complains", failure!.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_resistor_of_no_ohms_is_taken_for_a_milliohm_so_a_joint_is_a_source_of_no_volts()
    {
        Assert.Equal(1e-3, Ngspice.Run("R1 a 0 0\nI1 0 a 1\n", "op")["v(a)"].Real, 1e-12);
        Assert.Equal(0, Ngspice.Run("V1 a 0 0\nI1 0 a 1\n", "op")["v(a)"].Real, 1e-12);
    }

    /// <summary>Not a least conductance but rounding: what is left of the pivot is 1e-16 of the largest conductance beside it.</summary>
    [Fact]
    public void A_teraohm_beside_ohms_costs_the_engine_its_digits()
    {
        var deck = "I1 0 a 1\nR1 a b 1e12\nR2 b 0 0.01\nR3 c a 5\nR4 d a 7\nR5 d c 9\n";
        var alone = Ngspice.Run("I1 0 a 1\nR1 a 0 1e12\n", "op")["v(a)"].Real;
        var beside = Ngspice.Run(deck, "op")["v(a)"].Real;

        Assert.Equal(1, alone / 1e12, 1e-12);
        Assert.InRange(Math.Abs((beside / 1e12) - 1), 1e-9, 1e-2);
    }

    [Fact]
    public void A_known_answer_comes_back()
    {
        // Exact: one ampere through 3 ohm.
        Assert.Equal(3, Ngspice.Run("R1 a 0 3\nI1 0 a 1\n", "op")["v(a)"].Real, 1e-12);
    }
}
