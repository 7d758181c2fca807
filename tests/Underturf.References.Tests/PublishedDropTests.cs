using Underturf.Networks.Wiring;
using Underturf.Quantities;

namespace Underturf.References.Tests;

/// <summary>New Mexico State University, Soils 456 notes, answers of chapter 11 (seen). Scalar by design.</summary>
public sealed class PublishedDropTests
{
    private static readonly double Eighteen = PerMetre(6.78);
    private static readonly double Fourteen = PerMetre(2.68);

    [Fact]
    public void NMSU_finds_612_feet_for_five_volts_at_six_tenths_of_an_ampere()
    {
        // Printed 612 ft; the exact quotient of the printed inputs is 614.6 ft.
        var feet = Units.In(ScalarDrop.LongestRunMetres(26, 21, 0.6, Eighteen, Eighteen), "ft");

        Assert.Equal(614.6, feet, 0.05);
        Assert.Equal(612, feet, 0.005 * 612);
    }

    [Fact]
    public void NMSU_finds_19_27_volts_after_a_thousand_feet_of_18_and_14_gauge()
    {
        Assert.Equal(19.27, ScalarDrop.VoltsAfter(24, 0.5, Eighteen, Fourteen, Units.From(1000, "ft")), 0.005);
    }

    [Fact]
    public void NMSU_finds_10_gauge_for_two_thousand_feet()
    {
        var most = ScalarDrop.MostOhmsPerMetre(2, 0.4, Units.From(2000, "ft"));
        WireSize[] sizes = [.. new[] { 18, 16, 14, 12, 10, 8 }.Select(n => WireSize.FromAwg(n))];

        Assert.Equal(1.25, most * Units.From(1000, "ft"), 1e-12);
        Assert.Equal("10 AWG", ScalarDrop.SizeFor(most, CopperWire.BaseKelvins, sizes).Value.ToString());
        Assert.Contains("every size", ScalarDrop.SizeFor(most, CopperWire.BaseKelvins, sizes[..3]).Problem!.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void The_phasor_solution_of_a_coil_loses_less_than_the_scalar_rule()
    {
        // Invented: a coil of 30 ohm and 0.1 H behind 300 m of 18 AWG out and back, 26 V, 20 C.
        var wire = CopperWire.OhmsPerMetre(WireSize.FromAwg(18), CopperWire.BaseKelvins);
        var network = new WiringNetwork();
        var (hot, valve, common) = (network.Node("hot"), network.Node("valve"), network.Node("common"));
        network.AddSource("supply", hot, common, 26, 0);
        network.AddConductor("run", hot, valve, WireSize.FromAwg(18), 600, CopperWire.BaseKelvins);
        var coil = network.AddCoil("coil", valve, common, 30, 0.1);
        var solution = network.SolveAc(60).Value;

        var scalar = ScalarDrop.VoltsAfter(26, solution.Current(coil).Value.Magnitude, wire, wire, 300);
        Assert.InRange(solution.VoltageBetween(valve, common).Value.Magnitude, scalar + 0.5, 26);
    }

    private static double PerMetre(double ohmsPerKilofoot) => ohmsPerKilofoot / Units.From(1000, "ft");
}
