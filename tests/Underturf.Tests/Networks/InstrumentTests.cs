using Underturf.Networks.Wiring;
using Underturf.Networks.Wiring.Instruments;

namespace Underturf.Tests.Networks;

/// <summary>Meters that touch a conductor. All values are invented; expected ones follow exactly from the stated models.</summary>
public sealed class InstrumentTests
{
    private static readonly Ohmmeter ohmmeter = new(
        [Range(600, 0.1, 1e-3, 1.2), Range(6e3, 1, 1e-4, 1.2), Range(6e6, 1000, 1e-7, 1.2)], new MeasuredOhms(0.3, 0.05));

    [Fact]
    public void An_ohmmeter_shows_its_leads_too_and_belief_takes_them_off()
    {
        var shown = ohmmeter.Show(31.52);

        Assert.Equal(31.8, shown.Si, 1e-9);
        Assert.Equal(31.5, ohmmeter.Read(shown).Ohms, 1e-9);
        Assert.Equal(Math.Sqrt((0.05 * 0.05) + (0.01 / 12)), ohmmeter.Read(shown).SpreadOhms, 1e-12);
        Assert.True(ohmmeter.LogProbability(shown, 31.5) > ohmmeter.LogProbability(shown, 31.8));
        Assert.True(ohmmeter.Show(double.PositiveInfinity).IsOverRange);
        Assert.Equal(0, ohmmeter.LogProbability(ohmmeter.Show(double.PositiveInfinity), double.PositiveInfinity));
        Assert.True(double.IsInfinity(ohmmeter.Read(ohmmeter.Show(1e9)).SpreadOhms));
    }

    [Fact]
    public void A_diode_on_the_way_shows_as_ohms_where_the_test_volts_suffice_and_as_open_where_they_do_not()
    {
        var weak = new Ohmmeter([Range(6e3, 1, 1e-3, 0.4)], default);
        var strong = new Ohmmeter([Range(6e3, 1, 1e-3, 3)], default);

        Assert.True(weak.Show(30, opposingVolts: 0.6).IsOverRange);
        Assert.Equal(630, strong.Show(30, opposingVolts: 0.6).Si, 1e-9);
    }

    [Fact]
    public void Ohms_to_earth_both_ways_give_the_leak_and_the_couple()
    {
        var (forward, reversed) = (ohmmeter.Show(4000, 0.05), ohmmeter.Show(4000, -0.05));
        var found = EarthOhms.From(ohmmeter, forward, reversed).Value;

        Assert.Equal(4500, forward.Si);
        Assert.Equal(3500, reversed.Si);
        Assert.Equal(3999.7, found.Ohms.Ohms, 1e-9);
        Assert.Equal(0.05, found.Galvanic.Volts, 1e-9);
        Assert.Contains("one of the two", EarthOhms.From(ohmmeter, forward, ohmmeter.Show(1e9)).Problem!.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Ohms_to_earth_in_two_ranges_still_give_the_leak()
    {
        // 5,900 ohm against 0.05 V: over the middle range one way, within it the other.
        var found = EarthOhms.From(ohmmeter, ohmmeter.Show(5899.7, 0.05), ohmmeter.Show(5899.7, -0.05)).Value;

        Assert.Equal(5900, found.Ohms.Ohms, 3 * found.Ohms.SpreadOhms);
        Assert.Equal(0.05, found.Galvanic.Volts, 3 * found.Galvanic.SpreadVolts);
    }

    [Fact]
    public void Two_opens_that_read_two_coils_together_are_a_broken_common()
    {
        var broken = new StationToStation { Between = new(64, 0.1) };
        var whole = new StationToStation { First = new(34, 0.1), Second = new(36, 0.1), Between = new(66, 0.1) };

        Assert.True(broken.CommonIsBroken);
        Assert.Contains("broken", broken.SharedCommon().Problem!.Reason, StringComparison.Ordinal);
        Assert.Equal(2, whole.SharedCommon().Value.Ohms, 1e-12);
        Assert.Equal(Math.Sqrt(0.03) / 2, whole.SharedCommon().Value.SpreadOhms, 1e-12);
        Assert.Equal(66, StationToStation.BetweenOhms(34, 36, 2), 1e-12);
        Assert.Contains("over the range", (whole with { First = null }).SharedCommon().Problem!.Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(10e6)]
    [InlineData(3000)]
    public void A_voltmeter_in_the_network_reads_what_its_load_leaves(double inputOhms)
    {
        var meter = new Voltmeter(Digits(0.01), inputOhms);
        var network = new WiringNetwork();
        var (hot, box, common) = (network.Node("hot"), network.Node("box"), network.Node("common"));
        network.AddSource("supply", hot, common, 26, 0);
        network.AddResistor("bad splice", hot, box, 2500);
        meter.AddTo(network, "voltmeter", box, common);
        var solution = network.SolveAc(60).Value;

        Assert.InRange(solution.KirchhoffResidualAmperes, 0, 1e-12);
        Assert.Equal(meter.LoadedVolts(26, 2500), solution.VoltageBetween(box, common).Value.Magnitude, 1e-9);
        Assert.Equal(inputOhms > 1e6 ? 25.99 : 14.18, meter.Show(meter.LoadedVolts(26, 2500)).Si, 1e-9);
    }

    [Fact]
    public void Phantom_volts_vanish_on_a_meter_of_low_impedance()
    {
        var wire = new PhantomVolts { LengthMetres = 100, LiveFaradsPerMetre = 50e-12, CommonFaradsPerMetre = 50e-12 };

        Assert.InRange(wire.Under(new Voltmeter(Digits(0.1), 10e6), 26, 60), 11, 13);
        Assert.InRange(wire.Under(new Voltmeter(Digits(0.1), 3e3), 26, 60), 0, 0.2);
    }

    [Fact]
    public void Ten_turns_through_a_clamp_share_out_its_zero_and_its_last_digit_but_not_its_gain()
    {
        var (one, ten) = (new ClampMeter(Digits(0.01)), new ClampMeter(Digits(0.01), Turns: 10));
        var zero = new MeterError(0, 0.02);

        Assert.Equal(0.22, one.Show(0.2037, zero).Si, 1e-9);
        Assert.Equal(0.206, ten.Read(ten.Show(0.2037, zero)).Amperes, 1e-9);
        Assert.Equal(Math.Sqrt(4e-6 + (1e-4 * 13 / 12)), one.Read(one.Show(0.2)).SpreadAmperes, 1e-12);
        Assert.Equal(Math.Sqrt(4e-6 + (1e-6 * 13 / 12)), ten.Read(ten.Show(0.2)).SpreadAmperes, 1e-12);
        Assert.True(ten.LogProbability(ten.Show(0.2037), 0.2037) > ten.LogProbability(ten.Show(0.2037), 0.25));
    }

    [Fact]
    public void An_ammeter_in_line_lowers_the_current_by_its_burden()
    {
        var meter = new InLineAmmeter(Digits(0.001), 2);
        var network = new WiringNetwork();
        var (hot, valve, common) = (network.Node("hot"), network.Node("valve"), network.Node("common"));
        network.AddSource("supply", hot, common, 26, 0);
        var burden = meter.AddTo(network, "ammeter", hot, valve);
        network.AddCoil("coil", valve, common, 30, 0);

        Assert.Equal(26 / 32.0, network.SolveAc(60).Value.Current(burden).Value.Magnitude, 1e-12);
        Assert.Equal(0.813, meter.Show(26 / 32.0).Si, 1e-9);
    }

    [Fact]
    public void A_test_coil_clicks_where_volts_and_current_both_suffice()
    {
        var coil = new TestCoil
        {
            Ohms = 30,
            Henries = 0.1,
            PullInVolts = 18,
            PullInSpreadVolts = 1,
            PullInAmperes = 0.3,
            PullInSpreadAmperes = 0.02,
            HeardProbability = 0.95,
            ImaginedProbability = 0.01,
        };

        Assert.Equal(0.95, coil.ClickProbability(26, 0.5), 1e-6);
        Assert.Equal(0.01, coil.ClickProbability(26, 0.1), 1e-6);
        Assert.Equal((0.95 + 0.01) / 2, coil.ClickProbability(18, 0.5), 1e-12);
    }

    private static OhmsRange Range(double most, double step, double amperes, double volts) =>
        new(new DisplayRange { MostSi = most - step, StepSi = step }, amperes, volts);

    private static Display Digits(double step) => new([new DisplayRange { MostSi = 60, StepSi = step, GainSpreadShare = 0.01, OffsetSpreadSi = step }]);
}
