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
    public void A_known_answer_comes_back()
    {
        // Exact: one ampere through 3 ohm.
        Assert.Equal(3, Ngspice.Run("R1 a 0 3\nI1 0 a 1\n", "op")["v(a)"].Real, 1e-12);
    }
}
