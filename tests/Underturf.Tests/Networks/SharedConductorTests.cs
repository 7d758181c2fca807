using Underturf.Networks.Wiring;
using Underturf.Networks.Wiring.HalfWave;

namespace Underturf.Tests.Networks;

/// <summary>Two valves on one conductor with half-wave devices, as a technician meets them. All values invented, in the range of practice.</summary>
public sealed class SharedConductorTests
{
    private const double Hertz = 60;
    private const double CoilOhms = 30;

    private static readonly Junction silicon = new(1e-9, 1.8, 300);

    [Fact]
    public void Only_the_valve_whose_diode_agrees_with_the_controllers_runs()
    {
        var station = new Station(first: true, second: false);
        var solution = station.Solve();
        Assert.True(solution.Duty(station.Coils[0], 0.2).Value.Holds);
        Assert.False(solution.Duty(station.Coils[1], 0.2).Value.Holds);
    }

    [Fact]
    public void The_idle_valve_carries_the_running_coils_current_while_it_coasts()
    {
        // When the supply turns, the running coil drives its current on, and the idle valve's diode lets it return through the idle coil.
        var station = new Station(first: true, second: false);
        var solution = station.Solve();
        var (running, idle) = (solution.Current(station.Coils[0]).Value, solution.Current(station.Coils[1]).Value);
        Assert.InRange(idle.Rms(), 0.02 * running.Rms(), 0.25 * running.Rms());
        Assert.True(idle.Average() < 0);
    }

    [Fact]
    public void Without_the_controllers_half_both_valves_run_together()
    {
        var station = new Station(first: true, second: false);
        var failed = station.Circuit.With(station.Circuit.Wiring.With(station.ControllerDiode, 0));
        var solution = failed.SolvePeriodic(Hertz).Value;
        Assert.All(station.Coils, coil => Assert.True(solution.Duty(coil, 0.2).Value.Holds));
    }

    [Fact]
    public void A_diode_failed_open_stops_its_valve()
    {
        var station = new Station(first: true, second: true);
        var failed = station.Circuit.With(station.Circuit.Wiring.With(station.Circuit.Diodes[0].Element, double.PositiveInfinity));
        var solution = failed.SolvePeriodic(Hertz).Value;
        Assert.InRange(solution.Current(station.Coils[0]).Value.Rms(), 0, 1e-6);
        Assert.True(solution.Duty(station.Coils[1], 0.2).Value.Holds);
    }

    [Fact]
    public void A_clamp_loses_the_direct_part_that_an_in_line_meter_shows()
    {
        var station = new Station(first: true, second: false);
        var current = station.Solve().Current(station.Coils[0]).Value;
        var (direct, alternating, both) =
            (current.ShownBy(MeterResponse.Direct), current.ShownBy(MeterResponse.TrueRms), current.ShownBy(MeterResponse.TrueRmsWithDirect));
        Assert.True(direct > 0.5 * both);
        Assert.Equal(both, double.Hypot(direct, alternating), 1e-9);
    }

    [Fact]
    public void Unloaded_behind_one_diode_the_meters_show_the_half_sine()
    {
        // Exact for an ideal diode: average sqrt(2) / pi, rms sqrt(1 / 2), AC rms sqrt(1 / 2 - 2 / pi^2) of the source's rms volts. The drop
        // at a microampere takes up to 2 % off.
        var wiring = new WiringNetwork();
        var (supply, common, end) = (wiring.Node("supply"), wiring.Node("common"), wiring.Node("end"));
        wiring.AddSource("transformer", supply, common, 26, 0);
        wiring.AddResistor("meter", end, common, 1e7);
        var circuit = new DiodeNetwork(wiring);
        circuit.AddDiode("controller", supply, end, silicon, 0.05);
        var volts = circuit.SolvePeriodic(Hertz).Value.VoltageBetween(end, common).Value;
        Assert.InRange(volts.ShownBy(MeterResponse.Direct) / 26, 0.98 * Math.Sqrt(2) / Math.PI, Math.Sqrt(2) / Math.PI);
        Assert.InRange(volts.ShownBy(MeterResponse.TrueRmsWithDirect) / 26, 0.98 * Math.Sqrt(0.5), Math.Sqrt(0.5));
        var alternating = Math.Sqrt(0.5 - (2 / (Math.PI * Math.PI)));
        Assert.InRange(volts.ShownBy(MeterResponse.TrueRms) / 26, 0.98 * alternating, alternating);
    }

    [Fact]
    public void A_perfect_joint_and_an_ideal_source_are_the_limit_of_few_ohms()
    {
        var ideal = new Station(first: true, second: true, sourceOhms: 0, conductorOhms: 0).Solve();
        var nearly = new Station(first: true, second: true, sourceOhms: 1e-4, conductorOhms: 1e-4).Solve();
        for (var e = 0; e < 6; e++)
        {
            Assert.Equal(nearly.Current(e).Value.Rms(), ideal.Current(e).Value.Rms(), 1e-5);
            Assert.Equal(nearly.Current(e).Value.Average(), ideal.Current(e).Value.Average(), 1e-5);
        }
    }

    [Fact]
    public void Across_the_only_diode_the_meter_sees_it_with_one_polarity_and_nothing_with_the_other()
    {
        var station = new Station(first: true, second: false, secondValve: false);
        var drive = TestDrive.ConstantCurrent(1e-3, 2.5);
        var (one, other) = (station.Read(station.Box, station.Leads[0], drive), station.Read(station.Leads[0], station.Box, drive));
        Assert.False(one.IsOverRange);
        Assert.True(other.IsOverRange);
        // The diode range: the forward drop at one milliampere, n k T / q ln(1e-3 / 1e-9) = 0.643 V (exact).
        Assert.Equal(1.8 * 1.380649e-23 * 300 / 1.602176634e-19 * Math.Log(1e6 + 1), one.Volts, 1e-3);
    }

    [Fact]
    public void With_two_valves_the_meter_gets_through_with_either_polarity()
    {
        // Red at the box finds valve 1; black at the box finds valve 2: the drop and the coil's ohms each time.
        var station = new Station(first: true, second: false);
        var drive = TestDrive.ConstantCurrent(1e-3, 2.5);
        var (one, other) = (station.Read(station.Box, station.Common, drive), station.Read(station.Common, station.Box, drive));
        Assert.InRange(one.Volts, 0.6, 0.7);
        Assert.Equal(one.Volts, other.Volts, 1e-6);
    }

    [Fact]
    public void Test_volts_below_the_diodes_drop_are_over_range_both_ways()
    {
        var station = new Station(first: true, second: false);
        var drive = TestDrive.ThroughOhms(0.25, 1000, 20_000);
        Assert.True(station.Read(station.Box, station.Leads[0], drive).IsOverRange);
        Assert.True(station.Read(station.Leads[0], station.Box, drive).IsOverRange);
    }

    [Fact]
    public void Without_a_diode_in_its_way_the_ohmmeter_reads_what_the_linear_one_reads()
    {
        var station = new Station(first: true, second: false);
        // The diodes beside the coil, at 30 mV and below, still pass 1e-7 of the current.
        foreach (var drive in new[] { TestDrive.ConstantCurrent(1e-3, 2.5), TestDrive.ThroughOhms(0.2, 100, 1e4) })
        {
            var reading = station.Read(station.Leads[0], station.Common, drive);
            Assert.Equal(CoilOhms + 1, reading.Ohms, 1e-4);
            Assert.InRange(reading.KirchhoffResidualAmperes, 0, 1e-12);
        }
    }

    [Fact]
    public void What_cannot_be_solved_is_named()
    {
        var station = new Station(first: true, second: false);
        Assert.Equal("source 'transformer'", station.Circuit.ReadOhms(station.Box, station.Common, TestDrive.ConstantCurrent(1e-3, 2)).Problem!.Place);
        Assert.Equal("ohmmeter", station.TryRead(TestDrive.ThroughOhms(0, 100, 1e4)).Problem!.Place);
        Assert.Equal("frequency", station.Circuit.SolvePeriodic(0).Problem!.Place);
        station.Circuit.AddDiode("odd", station.Box, station.Common, new Junction(0, 1, 300), 0.05);
        Assert.Equal("diode 'odd'", station.Circuit.SolvePeriodic(Hertz).Problem!.Place);
    }

    [Fact]
    public void A_coil_shorted_by_hardly_any_ohms_settles_although_its_current_would_take_hours()
    {
        // Exact: the average volts across the coil are its ohms times its average current, and the short's times the short's.
        var wiring = new WiringNetwork();
        var (supply, common, end) = (wiring.Node("supply"), wiring.Node("common"), wiring.Node("end"));
        wiring.AddSource("transformer", supply, common, 26, 0.5);
        var coil = wiring.AddCoil("coil", end, common, 1e-5, 0.1);
        var wire = wiring.AddResistor("short", end, common, 2e-5);
        var circuit = new DiodeNetwork(wiring);
        circuit.AddDiode("controller", supply, end, silicon, 0.05);
        var solution = circuit.SolvePeriodic(Hertz).Value;
        Assert.Equal(2, solution.Current(coil).Value.Average() / solution.Current(wire).Value.Average(), 1e-3);
    }

    /// <summary>A transformer, a diode at the controller for each half that runs, one conductor, a diode and a coil a valve.</summary>
    private sealed class Station
    {
        internal Station(bool first, bool second, double sourceOhms = 0.5, double conductorOhms = 3, bool secondValve = true)
        {
            var wiring = new WiringNetwork();
            var (supply, terminal) = (wiring.Node("supply"), wiring.Node("terminal"));
            (Common, Box) = (wiring.Node("common"), wiring.Node("box"));
            var boxCommon = wiring.Node("box common");
            Leads = [wiring.Node("lead 1"), wiring.Node("lead 2")];
            wiring.AddSource("transformer", supply, Common, 26, sourceOhms);
            wiring.AddResistor("conductor", terminal, Box, conductorOhms);
            wiring.AddResistor("common run", boxCommon, Common, 1);
            Coils = [.. Leads.Select((lead, k) => wiring.AddCoil($"coil {k + 1}", lead, boxCommon, CoilOhms, 0.08))];
            Circuit = new DiodeNetwork(wiring);
            Circuit.AddDiode("valve 1", Box, Leads[0], silicon, 0.05);
            if (secondValve)
            {
                Circuit.AddDiode("valve 2", Leads[1], Box, silicon, 0.05);
            }

            ControllerDiode = first ? Circuit.AddDiode("controller 1", supply, terminal, silicon, 0.05) : -1;
            if (second)
            {
                Circuit.AddDiode("controller 2", terminal, supply, silicon, 0.05);
            }
        }

        internal DiodeNetwork Circuit { get; }

        internal int Common { get; }

        internal int Box { get; }

        internal int[] Leads { get; }

        internal int[] Coils { get; }

        internal int ControllerDiode { get; }

        internal PeriodicSolution Solve()
        {
            var solution = Circuit.SolvePeriodic(Hertz).Value;
            Assert.InRange(solution.KirchhoffResidualAmperes, 0, 1e-8);
            return solution;
        }

        internal DriveReading Read(int red, int black, TestDrive drive) =>
            Circuit.With(Circuit.Wiring.WithoutSources()).ReadOhms(red, black, drive).Value;

        internal Underturf.Quantities.Outcome<DriveReading> TryRead(TestDrive drive) =>
            Circuit.With(Circuit.Wiring.WithoutSources()).ReadOhms(Box, Common, drive);
    }
}
