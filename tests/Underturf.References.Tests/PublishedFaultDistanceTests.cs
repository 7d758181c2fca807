using Underturf.Networks.Wiring;
using Underturf.Networks.Wiring.FaultDistance;
using Underturf.Quantities;
using Underturf.Simulation.SecondEngine;

namespace Underturf.References.Tests;

/// <summary>Distances to faults against published and exact answers.</summary>
public sealed class PublishedFaultDistanceTests
{
    private static readonly double ThousandFeet = Units.From(1000, "ft");

    /// <summary>A state utility's examination paper of 30 July 2021 (seen): 600 m looped with a like sound conductor, arms 3 to 1, 300 m.</summary>
    [Fact]
    public void A_utility_paper_finds_300_metres_by_a_Murray_loop()
    {
        var found = Murray(3, 1).Locate(Alike(600)).Value;

        Assert.Equal(300, found.Metres, 1e-9);
        Assert.Equal(0, found.SpreadMetres);
    }

    /// <summary>Exact: 500 ft of 18 AWG is 3.1925 ohm of a loop of 8.910 ohm; the arms show that ratio.</summary>
    [Fact]
    public void A_return_of_another_gauge_misplaces_the_fault_only_where_it_is_taken_as_alike()
    {
        var (thin, thick) = (WireSize.FromAwg(18), WireSize.FromAwg(14));
        var (out18, back14) = (CopperWire.OhmsPerMetre(thin, CopperWire.BaseKelvins), CopperWire.OhmsPerMetre(thick, CopperWire.BaseKelvins));
        var seen = 0.5 * out18 / (out18 + back14);
        var reading = Murray(1 - seen, seen);

        Assert.Equal(717, Units.In(reading.Locate(Alike(ThousandFeet)).Value.Metres, "ft"), 0.5);
        Assert.Equal(500, Units.In(reading.Locate(One(ThousandFeet, thin, thick)).Value.Metres, "ft"), 1e-9);
    }

    /// <summary>Exact: d1 = L C1 / (C1 + C2), 10 m, 100 and 400 pF.</summary>
    [Fact]
    public void A_capacitance_ratio_of_one_to_four_is_a_fifth_of_the_run()
    {
        var reading = new CapacitanceRatio { Near = new(100e-12, 0), Far = new(400e-12, 0) };

        Assert.Equal(2, reading.Locate(Alike(10)).Value.Metres, 1e-12);
    }

    /// <summary>
    /// The bridges as circuits (invented values): at the arms that we place the fault by, ngspice finds no volts across the detector. The
    /// battery's earth is the fault, so the fault is the circuit's earth here.
    /// </summary>
    [Theory]
    [InlineData(15, 0)]
    [InlineData(60, 0.35)]
    [InlineData(110, 0.1)]
    public void The_balances_of_both_bridges_are_those_of_ngspice(double faultMetres, double contactOhms)
    {
        var run = TwoGauges();
        var (near, far) = AroundFault(run, faultMetres, contactOhms);
        var contacts = new BridgeContacts(new(contactOhms, 0), new(0.04, 0), new(0.12, 0));
        var murray = Murray(100, 100 * near / far) with { Contacts = contacts };
        var series = (2 * far) - near;
        var varley = new VarleyLoop { ReturnArm = new(100, 0), FaultyArm = new(200, 0), AtEarth = new(series, 0), Contacts = contacts };
        var both = varley with { AtConductor = new(2 * (near + far), 0) };

        Assert.Equal(0, DetectorVolts(100, murray.FaultyArm.Ohms, near, far), 1e-9);
        Assert.Equal(0, DetectorVolts(100, 200, near + series, far), 1e-9);
        Assert.Equal(faultMetres, murray.Locate(run).Value.Metres, 1e-9);
        Assert.Equal(faultMetres, varley.Locate(run).Value.Metres, 1e-9);
        Assert.Equal(faultMetres, both.Locate(run).Value.Metres, 1e-9);
    }

    /// <summary>Volts across the detector of a bridge with 6 V between the arms' meeting point and the fault.</summary>
    private static double DetectorVolts(double returnArm, double faultyArm, double nearOhms, double farOhms)
    {
        var values = new[] { returnArm, faultyArm, nearOhms, farOhms }.Select(SpiceText.Number).ToArray();
        var found = Ngspice.Run($"V1 top 0 6\nRp top back {values[0]}\nRq top out {values[1]}\nRn out 0 {values[2]}\nRf back 0 {values[3]}\nRd out back 1meg\n", "op");
        return (found["v(out)"] - found["v(back)"]).Real;
    }

    /// <summary>Ohms to the fault from the bridge's two terminals, by hand.</summary>
    private static (double Near, double Far) AroundFault(Run run, double faultMetres, double contactOhms)
    {
        var (near, far) = (contactOhms, 0.04 + 0.12);
        var start = 0.0;
        foreach (var stretch in run.Stretches)
        {
            var before = Math.Clamp(faultMetres - start, 0, stretch.LengthMetres);
            var each = CopperWire.OhmsPerMetre(stretch.Size, stretch.TemperatureKelvins);
            near += before * each;
            far += ((stretch.LengthMetres - before) * each) + (stretch.LengthMetres * CopperWire.OhmsPerMetre(stretch.ReturnSize, stretch.TemperatureKelvins));
            start += stretch.LengthMetres;
        }

        return (near, far);
    }

    /// <summary>Invented: 18 AWG, then 14 AWG, back by 16 AWG, in soil of 15 and 12 C.</summary>
    private static Run TwoGauges() => new()
    {
        Stretches =
        [
            new Stretch { Name = "first", LengthMetres = 55, Size = WireSize.FromAwg(18), ReturnSize = WireSize.FromAwg(16), TemperatureKelvins = 288.15 },
            new Stretch { Name = "second", LengthMetres = 65, Size = WireSize.FromAwg(14), ReturnSize = WireSize.FromAwg(16), TemperatureKelvins = 285.15 },
        ],
    };

    private static MurrayLoop Murray(double returnArm, double faultyArm) => new() { ReturnArm = new(returnArm, 0), FaultyArm = new(faultyArm, 0) };

    private static Run Alike(double metres) => One(metres, WireSize.FromAwg(18), WireSize.FromAwg(18));

    private static Run One(double metres, WireSize size, WireSize back) =>
        new() { Stretches = [new Stretch { Name = "all", LengthMetres = metres, Size = size, ReturnSize = back }] };
}
