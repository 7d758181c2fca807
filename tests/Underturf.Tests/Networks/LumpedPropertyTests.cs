using Underturf.Networks.Hydraulics;
using Underturf.Networks.Hydraulics.Lumped;
using Underturf.Quantities;

namespace Underturf.Tests.Networks;

/// <summary>What a meter and a gauge at the point of connection say of a property whose pipes nobody knows. All values invented.</summary>
public sealed class LumpedPropertyTests
{
    private static readonly Water water = new(288.15);

    [Fact]
    public void A_station_alone_shows_what_was_read()
    {
        var answer = Property(spread: 0).With([0]).Value;
        Assert.Equal(12, Units.In(answer.Flow.Si, "gpm"), 1e-6);
        Assert.Equal((0, 0), (answer.Flow.SpreadSi, answer.Pressure.SpreadSi));
        Assert.InRange(Units.In(answer.Pressure.Si, "psi"), 55, 70);
    }

    [Fact]
    public void Two_stations_together_give_less_each_and_pull_the_pressure_down()
    {
        var property = Property(spread: 0);
        var (alone, both) = (property.With([0]).Value, property.With([0, 1]).Value);
        Assert.True(both.Pressure.Si < alone.Pressure.Si);
        Assert.True(both.Each[0].Si < alone.Each[0].Si);
        Assert.Equal(both.Flow.Si, both.Each.Sum(e => e.Si), 1e-12);
    }

    [Fact]
    public void A_leak_shows_on_the_meter_with_all_off_and_little_on_the_gauge()
    {
        var answer = (Property(spread: 0) with { AllOff = new Reading(Units.From(1.5, "gpm"), 0) }).With([]).Value;
        Assert.Equal(1.5, Units.In(answer.Flow.Si, "gpm"), 0.02);
        Assert.Equal(70, Units.In(answer.Pressure.Si, "psi"), 0.5);
    }

    [Fact]
    public void Readings_a_few_per_cent_off_spread_the_answer_by_about_as_much()
    {
        var answer = Property(spread: 0.03).With([0]).Value;
        Assert.InRange(answer.Flow.SpreadSi / answer.Flow.Si, 0.02, 0.045);
        Assert.InRange(answer.Pressure.SpreadSi / answer.Pressure.Si, 0.01, 0.06);
    }

    [Fact]
    public void A_flow_that_the_supply_cannot_have_given_is_named()
    {
        var property = Property(spread: 0);
        var slip = property with { Stations = [new LumpedStation("7", new Reading(Units.From(1200, "gpm"), 0))] };
        Assert.Equal("station '7'", slip.With([0]).Problem!.Place);
        Assert.Equal("supply", (property with { Running = new Reading(Units.From(90, "psi"), 0) }).With([0]).Problem!.Place);
    }

    private static LumpedProperty Property(double spread)
    {
        Reading Of(double value, string unit) => new(Units.From(value, unit), spread * Units.From(value, unit));
        return new LumpedProperty(water, Of(70, "psi"), Of(55, "psi"), Of(25, "gpm"), [new LumpedStation("1", Of(12, "gpm")), new LumpedStation("2", Of(18, "gpm"), Of(62, "psi"))]);
    }
}
