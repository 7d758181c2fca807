using Underturf.Networks.Wiring;

namespace Underturf.References.Tests;

/// <summary>Coils on one conductor.</summary>
public sealed class PublishedCoilTests
{
    /// <summary>Hole Notes, Minnesota GCSA, April 2016, p. 34 (seen): 30 ohm coils, two in parallel 15, three 10, four 7.5 ohm.</summary>
    [Theory]
    [InlineData(1, 30)]
    [InlineData(2, 15)]
    [InlineData(3, 10)]
    [InlineData(4, 7.5)]
    public void Coils_in_parallel_read_as_Hole_Notes_prints(int coils, double ohms)
    {
        Assert.Equal(ohms, Read(coils, wireOhms: 0), 1e-12);
    }

    /// <summary>Exact: 10 + 30/4.</summary>
    [Fact]
    public void Four_coils_behind_ten_ohms_of_shared_wire_read_seventeen_and_a_half()
    {
        Assert.Equal(17.5, Read(4, wireOhms: 10), 1e-12);
    }

    /// <summary>Exact: 1,000 ft of 18 AWG looped back through 14 AWG, fault at half: equal gauges assumed, it computes as 717 ft.</summary>
    [Fact]
    public void A_bridge_misplaces_a_fault_where_the_return_has_another_gauge()
    {
        var eighteen = CopperWire.OhmsPerMetre(Quantities.WireSize.FromAwg(18), CopperWire.BaseKelvins);
        var fourteen = CopperWire.OhmsPerMetre(Quantities.WireSize.FromAwg(14), CopperWire.BaseKelvins);
        var share = 0.5 * eighteen / (eighteen + fourteen);

        Assert.Equal(717, 2 * 1000 * share, 0.5);
    }

    private static double Read(int coils, double wireOhms)
    {
        var network = new WiringNetwork();
        var (terminal, valve, common) = (network.Node("terminal"), network.Node("valve"), network.Node("common"));
        network.AddResistor("wire", terminal, valve, wireOhms);
        for (var n = 0; n < coils; n++)
        {
            network.AddCoil($"coil {n}", valve, common, 30, 0.2);
        }

        var reading = network.Ohms(terminal, common).Value;
        Assert.InRange(reading.KirchhoffResidualAmperes, 0, 1e-12);
        return reading.Ohms;
    }
}
