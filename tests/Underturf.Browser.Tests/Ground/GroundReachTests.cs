using Underturf.FieldApp;
using Underturf.FieldLog;

namespace Underturf.Browser;

/// <summary>What a tap hits and what catches it, on an invented plan; a pixel spans a tenth of a metre.</summary>
public sealed class GroundReachTests
{
    private static readonly GroundFeature lawn = new("lawn", "lawn", Grade.Measured, "lawn", GroundForm.Outline, [new(0, 0), new(40, 0), new(40, 30), new(0, 30)]);
    private static readonly GroundFeature wall = new("wall", "wall", Grade.Measured, "wall", GroundForm.Line, [new(0, 10), new(40, 10)]);
    private static readonly GroundFeature box = new("box", "box", Grade.Measured, "box 1", GroundForm.Point, [new(20, 12)]);
    private static readonly GroundPlan plan = new([lawn, wall, box], []);

    [Theory]
    [InlineData(21, 11, "box")]
    [InlineData(30, 10.5, "wall")]
    [InlineData(30, 20, "lawn")]
    [InlineData(60, 20, null)]
    public void A_tap_means_the_point_under_the_thumb_before_the_line_and_the_line_before_the_outline(double east, double north, string? expected) =>
        Assert.Equal(expected, GroundReach.Under(plan, Tap(east, north))?.Id);

    [Theory]
    [InlineData(20.5, 12.8, 20, 12, "box")]
    [InlineData(39.4, 29.2, 40, 30, "lawn")]
    [InlineData(30, 10.8, 30, 10, "wall")]
    [InlineData(30, 20, 30, 20, null)]
    public void A_tap_is_caught_by_a_known_point_before_an_edge_and_by_nothing_far_off(double east, double north, double eastCaught, double northCaught, string? by)
    {
        var (at, to) = GroundReach.Snap(plan, Tap(east, north));
        Assert.Equal((new Position(eastCaught, northCaught), by), (at, to?.Id));
    }

    [Fact]
    public void A_thing_that_is_moved_is_not_caught_by_itself() =>
        Assert.Equal(new Position(20.5, 12.8), GroundReach.Snap(plan, Tap(20.5, 12.8), without: "box").At);

    [Fact]
    public void A_distance_is_the_sum_of_its_legs_and_is_said_in_the_units_of_the_property()
    {
        // 3-4-5 triangle: exact.
        Position[] legs = [new(0, 0), new(3, 4), new(3, 10)];
        Assert.Equal(11, GroundReach.LengthMetres(legs));
        Assert.Equal("11.0 m", GroundWords.Distance(11, feet: false));
        // 11 m / 0.3048 m, exact by definition of the foot.
        Assert.Equal("36.1 ft", GroundWords.Distance(11, feet: true));
        Assert.Equal("5.0 m west, 2.5 m north", GroundWords.Where(new Position(-5, 2.5), feet: false));
    }

    [Fact]
    public void A_cable_between_two_things_at_one_place_is_hit_like_any_line()
    {
        var loop = new GroundFeature("k", "cable", Grade.Told, "cable k", GroundForm.Line, [new(5, 5), new(5, 5)]);
        Assert.Equal("k", GroundReach.Under(new GroundPlan([loop], []), Tap(5.5, 5))?.Id);
    }

    private static GroundTap Tap(double east, double north) => new(new Position(east, north), 0.1);
}
