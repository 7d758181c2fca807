using Underturf.FieldLog;
using Underturf.Planning.Rework;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Water;

namespace Underturf.Tests.Planning;

/// <summary>Flow and pressure of a shared station, and of each valve once it has its own.</summary>
public sealed class ReworkWaterTests
{
    private const double LitresPerMinute = 1 / 60_000.0;

    [Fact]
    public void Alone_a_valve_gives_more_than_its_share_at_more_pressure_and_less_than_both()
    {
        var (before, after) = Water(Metered());
        Assert.Equal(100, before.CubicMetresPerSecond / LitresPerMinute, 0.1);
        Assert.InRange(after.CubicMetresPerSecond, before.CubicMetresPerSecond / 2, before.CubicMetresPerSecond);
        Assert.True(after.OutletPascals > before.OutletPascals);
        Assert.True(before.Metered && before.SpreadCubicMetresPerSecond > 0 && after.OutletSpreadPascals > 0);
    }

    /// <summary>
    /// By hand: level and loss as the notebook believes them, p = level - loss (q / usual)^1.852 - (q / valve)^2, outlets that go with the root of the pressure;
    /// halving them and their valves, q is where both agree.
    /// </summary>
    [Fact]
    public void It_is_where_the_supply_s_curve_and_half_of_the_outlets_meet()
    {
        var notebook = Metered().Notebook();
        var (before, after) = Water(Metered());
        var (supply, book) = (notebook.Flow("s1").Value.Supply, PracticeBook.Default.Water.Usual);
        double Pascals(double flow, int valves) => supply.StaticPascals
            - (supply.LossPascals * Math.Pow(flow / supply.LossAtCubicMetresPerSecond, 1.852))
            - (Units.From(book.ValveKilopascals, "kPa") * Math.Pow(flow / valves / Units.From(book.StationLitresPerMinute.Median, "L/min"), 2));
        Assert.Equal(Pascals(before.CubicMetresPerSecond, 2), before.OutletPascals, 50.0);
        Assert.Equal(Pascals(after.CubicMetresPerSecond, 1), after.OutletPascals, 50.0);
        Assert.Equal(before.CubicMetresPerSecond / 2 * Math.Sqrt(after.OutletPascals / before.OutletPascals), after.CubicMetresPerSecond, 1e-7);
    }

    [Fact]
    public void Where_nobody_metered_it_each_valve_gives_what_its_fellows_do_and_the_plan_says_so()
    {
        var (before, after) = Water(Ground());
        Assert.False(before.Metered);
        Assert.InRange(before.CubicMetresPerSecond, 1.5 * after.CubicMetresPerSecond, 2 * after.CubicMetresPerSecond);
        Assert.Contains("meter it before and after", ReworkWords.WaterFrom(before), StringComparison.Ordinal);
    }

    [Fact]
    public void Flow_counts_the_valves_that_the_wires_tell_of_as_the_rework_does()
    {
        Assert.All((SharedGround[])[Ground(), Metered()], ground =>
        {
            var (before, _) = Water(ground);
            var row = Assert.Single(ground.Notebook().Flow("s1").Value.Stations);
            Assert.Equal(before.CubicMetresPerSecond, row.CubicMetresPerSecond, 1e-9);
            Assert.Equal(before.OutletPascals, row.OutletPascals, 1.0);
            Assert.Equal(2, row.Valves!.Count);
        });
    }

    [Fact]
    public void It_is_said_in_the_units_of_the_property()
    {
        var flow = new PartFlow(100 * LitresPerMinute, 8 * LitresPerMinute, 250_000, 30_000, Metered: true);
        Assert.Equal("100 ± 8 L/min, 250 ± 30 kPa at the outlets", ReworkWords.Water(flow, usUnits: false));
        Assert.Equal("26.4 ± 2.1 gpm, 36.3 ± 4.4 psi at the outlets", ReworkWords.Water(flow, usUnits: true));
    }

    private static (PartFlow Before, PartFlow After) Water(SharedGround ground)
    {
        var group = Assert.Single(ReworkPlan.Of(ground.Notebook()).Shared);
        return (group.WaterBefore!, group.WaterAfter!);
    }

    private static SharedGround Metered()
    {
        var ground = Ground();
        ground.Note(new ReadingFact { How = "meter flow", Stations = ["s1"], Value = Shown.Parse("100 L/min").Value });
        return ground;
    }

    private static SharedGround Ground() => new(40);
}
