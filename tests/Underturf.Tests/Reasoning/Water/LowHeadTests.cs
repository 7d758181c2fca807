using Underturf.FieldLog;
using Underturf.Networks.Hydraulics;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Water;

namespace Underturf.Tests.Reasoning.Water;

/// <summary>What runs out of a lateral after it shuts, by heights. The slope is made up: station 1, its valve at the top, three quarters of an inch down to the low end.</summary>
public sealed class LowHeadTests
{
    private static readonly WaterSay say = new(usUnits: false);

    [Fact]
    public void Water_and_time_are_those_of_the_hand_formula()
    {
        var lateral = Assert.Single(Drained(Slope(3)));
        var bore = PipeSize.InsideDiameterMetres(PipeSeries.Schedule40, "3/4").Value;
        var cubic = HoleDischarge.AreaSquareMetres(bore) * 30;
        Assert.Equal(cubic, lateral.LeastCubicMetres, 1e-6);
        Assert.Equal(cubic, lateral.MostCubicMetres, 1e-6);
        Assert.Equal(3, lateral.HeadMetres, bore);

        // Two spray heads of 6 L/min at 207 kPa, as nozzles: t = A / (k sqrt(rho g)) 2 sqrt H; at worst three tenths of that run.
        var k = 2 * 6.0 / 60000 / Math.Sqrt(207e3);
        var exact = cubic / 3 / (k * Math.Sqrt(new Underturf.Networks.Hydraulics.Water(PracticeBook.Default.Wire.SoilKelvins).PascalsPerMetre)) * 2 * Math.Sqrt(3);
        Assert.Equal(exact / 0.3, lateral.MostSeconds, 0.002 * exact / 0.3);
        Assert.InRange(lateral.LeastSeconds, 0.2 * exact, 1.001 * exact);
    }

    [Fact]
    public void The_low_outlets_go_on_the_high_ones_stop_and_check_valves_help()
    {
        var lateral = Assert.Single(Drained(Slope(3)));
        Assert.Equal("low heads", Assert.Single(lateral.Low).Id);
        Assert.Empty(lateral.Later);
        Assert.StartsWith("after it shuts 2 spray heads at the low end go on running: 10 L stand up to 3 m over them and run out in", lateral.Say(say), StringComparison.Ordinal);
        Assert.Equal("outlets with check valves at the low end, made to hold 3 m of water", lateral.Help(say));
        var middle = Assert.Single(Drained(Slope(3).With(new OutletFact { Id = "mid", Station = "s1", What = "rotor", Count = 1, Elevation = new Length(11) })));
        Assert.Equal("mid", Assert.Single(middle.Later).Id);
        Assert.Contains("one rotor, up to 1 m higher, stop before", middle.Say(say), StringComparison.Ordinal);
    }

    [Fact]
    public void A_level_lateral_lets_next_to_nothing_run_out()
    {
        var lateral = Assert.Single(Drained(Slope(0)));
        Assert.True(lateral.IsLevel);
        Assert.Null(lateral.Help(say));
        Assert.Contains("next to nothing runs out", lateral.Say(say), StringComparison.Ordinal);
    }

    [Fact]
    public void Where_no_lateral_is_noted_heights_of_outlets_alone_give_a_wide_range()
    {
        var lateral = Assert.Single(Drained(Outlets((12, 4), (10, 2))));
        Assert.True(lateral.Reckoned);
        var book = PracticeBook.Default.Water.LowHead;
        Assert.Equal(4 * book.SpacingMetresLeast * HoleDischarge.AreaSquareMetres(book.BoreMillimetresLeast / 1000), lateral.LeastCubicMetres, 1e-9);
        Assert.Equal(4 * book.SpacingMetresMost * HoleDischarge.AreaSquareMetres(book.BoreMillimetresMost / 1000), lateral.MostCubicMetres, 1e-9);
        Assert.Contains("(lengths or bores as is usual)", lateral.Say(say), StringComparison.Ordinal);
    }

    [Fact]
    public void Heights_of_half_of_the_outlets_leave_it_open_which_is_the_lowest()
    {
        var half = Outlets((12, 4), (10, 2)).With(new OutletFact { Id = "o9", Station = "s1", What = "rotor", Count = 3 });
        Assert.Contains("3 outlets have no height noted, and the lowest may be among them", Assert.Single(Drained(half)).Say(say), StringComparison.Ordinal);
        Assert.Empty(Drained(Outlets((12, 4))));
        Assert.Empty(Drained(Orchard.Unpiped().With(new OutletFact { Id = "o", Station = "s1", What = "rotor", Count = 3 })));
    }

    [Fact]
    public void Heights_count_from_any_level()
    {
        var (low, high) = (Assert.Single(Drained(Slope(3, 0))), Assert.Single(Drained(Slope(3, 1700))));
        Assert.Equal(low.MostCubicMetres, high.MostCubicMetres, 1e-9);
        Assert.Equal(low.MostSeconds, high.MostSeconds, 1e-3);
        var flows = new[] { 0.0, 1700 }.Select(level => Slope(3, level).Notebook().Flow("1").Value.Stations[0]).ToList();
        Assert.Equal(flows[0].OutletPascals, flows[1].OutletPascals, 1);
        Assert.Equal(flows[0].CubicMetresPerSecond, flows[1].CubicMetresPerSecond, 1e-9);
    }

    [Fact]
    public void A_height_that_no_pressure_reaches_is_asked_about_and_moves_no_other()
    {
        var slipped = Slope(3).With(new OutletFact { Id = "slip", Station = "s2", What = "rotor", Count = 2, Elevation = new Length(480) });
        Assert.Equal("outlets 'slip'", Assert.Single(slipped.Problems(), p => p.Reason.Contains("no usual pressure", StringComparison.Ordinal)).Place);
        Assert.DoesNotContain(Slope(3).Problems(), p => p.Reason.Contains("no usual pressure", StringComparison.Ordinal));
        Assert.Equal(Slope(3).Notebook().Flow("1").Value.Stations[0].OutletPascals, slipped.Notebook().Flow("1").Value.Stations[0].OutletPascals, 30e3);
        Assert.Contains(slipped.Notebook().Flow("1").Value.Unknown, u => u.StartsWith("no height of the point of connection", StringComparison.Ordinal));
    }

    [Fact]
    public void An_outlet_that_lies_higher_has_the_less_pressure()
    {
        double Pascals(double? metres) => Orchard.Unpiped().With(new WaterSupplyFact { Id = "poc", Elevation = new Length(10) })
            .With(new OutletFact { Id = "o", Station = "s1", What = "rotor", Count = 4, Elevation = metres is { } m ? new Length(m) : null }).Notebook().Flow("1").Value.Stations[0].OutletPascals;
        Assert.Equal(Pascals(null), Pascals(10), 1);
        Assert.InRange(Pascals(10) - Pascals(16), 0.4 * 6 * 9800, 6 * 9800);
    }

    [Fact]
    public void A_part_whose_height_nobody_noted_lies_between_its_neighbours()
    {
        var hidden = Slope(3).With(new FittingFact { Id = "bend" }).With(new PipeFact { Id = "a", From = "v1", To = "bend", Size = "3/4", Length = new Length(15) }).With(new PipeFact { Id = "b", From = "bend", To = "low", Size = "3/4", Length = new Length(15) });
        var lateral = Assert.Single(Drained(hidden));
        Assert.True(lateral.LeastCubicMetres < 0.9 * lateral.MostCubicMetres);
        Assert.Equal(3, lateral.HeadMetres, 0.02);
    }

    [Fact]
    public void Wet_ground_at_the_low_end_is_low_head_drainage_where_much_stands_over_it_and_not_where_it_is_level()
    {
        double Share(Orchard orchard) => LowHead(orchard.Watch("s1", "wet ground"));
        var (steep, flat, unknown) = (Share(Slope(3)), Share(Slope(0)), Share(Orchard.Unpiped()));
        Assert.True(steep > 1.5 * unknown && flat < 0.5 * unknown, $"{steep} {unknown} {flat}");
    }

    [Fact]
    public void The_more_stands_over_the_low_end_the_better_it_explains_what_weeps_there()
    {
        double[] shares = [.. new[] { 0, 0.2, 0.6, 3 }.Select(height => LowHead(Slope(height).Watch("s1", "weeping ends")))];
        Assert.Equal(shares.Order(), shares);
        Assert.True(shares[^1] > 0.9, string.Join(", ", shares));
        Assert.True(LowHead(Slope(3).Watch("s1")) < LowHead(Slope(0.2).Watch("s1", "weeping ends")));
    }

    [Fact]
    public void Where_it_was_seen_counts()
    {
        double At(double east) => LowHead(Slope(3).With(new OutletFact { Id = "far", Station = "s1", What = "spray head", Count = 4, Fitting = "top" }).With(new WatchFact { Station = "s1", Seen = ["wet ground"], Where = [new Position(east, 10)] }));
        Assert.True(At(70) > At(40), $"{At(70)} {At(40)}");
        Assert.True(At(40) < 0.5 * At(70));
    }

    [Fact]
    public void A_wet_place_at_the_low_end_that_names_no_station_speaks_for_it_too()
    {
        double At(double east) => LowHead(Slope(3).With(new WatchFact { Seen = ["wet ground"], Where = [new Position(east, 10)] }).Watch("s1"));
        Assert.True(At(70) > 1.5 * At(200), $"{At(70)} {At(200)}");
    }

    [Fact]
    public void Check_outlets_that_were_fitted_hold_it()
    {
        var fitted = Slope(3).Watch("s1", "weeping ends").With(new WorkFact { Did = "check outlets fitted", Target = "s1" });
        var lateral = Assert.Single(Drained(fitted));
        Assert.True(lateral.Held);
        Assert.Contains("were fitted; they hold if made for 3 m", lateral.Help(say), StringComparison.Ordinal);
        Assert.Null(fitted.Question("water-s1"));
    }

    [Fact]
    public void Laterals_of_two_valves_are_told_apart()
    {
        var two = Slope(3).With(new ValveFact { Id = "v9", Station = "s1", Elevation = new Length(12) }).With(new FittingFact { Id = "other", Elevation = new Length(11) })
            .With(new PipeFact { Id = "v9-other", From = "v9", To = "other", Size = "3/4", Length = new Length(10) }).With(new OutletFact { Id = "o9", Station = "s1", What = "rotor", Count = 2, Fitting = "other" });
        Assert.Equal([3, 1], Drained(two).Select(d => Math.Round(d.HeadMetres, 1)));
    }

    private static double LowHead(Orchard orchard) => orchard.Notebook().Water()!.Stations.Single(s => s.Station == "s1").States.Where(s => s.Faults.Contains("low-head")).Sum(s => s.Probability);

    private static IReadOnlyList<LateralDrainage> Drained(Orchard orchard) => orchard.Notebook().Water()?.Drainage ?? [];

    /// <summary>Two spray heads at the low end of thirty metres, two at the top.</summary>
    private static Orchard Slope(double height, double level = 10) => Orchard.Unpiped()
        .With(new ValveFact { Id = "v1", Station = "s1", Elevation = new Length(level + height) })
        .With(new FittingFact { Id = "top", Position = new Position(40, 10), Elevation = new Length(level + height) })
        .With(new FittingFact { Id = "low", Position = new Position(70, 10), Elevation = new Length(level) })
        .With(new PipeFact { Id = "a", From = "v1", To = "low", Series = "Schedule 40", Size = "3/4", Length = new Length(30) })
        .With(new PipeFact { Id = "stub", From = "v1", To = "top", Series = "Schedule 40", Size = "3/4", Length = new Length(1e-6) })
        .With(new OutletFact { Id = "low heads", Station = "s1", What = "spray head", Count = 2, Fitting = "low" })
        .With(new OutletFact { Id = "top heads", Station = "s1", What = "spray head", Count = 2, Fitting = "top" });

    private static Orchard Outlets(params (double Metres, int Count)[] groups) => groups.Index().Aggregate(Orchard.Unpiped(), (orchard, g) =>
        orchard.With(new OutletFact { Id = $"o{g.Index}", Station = "s1", What = "spray head", Count = g.Item.Count, Elevation = new Length(g.Item.Metres) }));
}
