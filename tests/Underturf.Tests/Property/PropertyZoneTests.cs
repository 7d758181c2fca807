using Underturf.Property;

namespace Underturf.Tests.Property;

/// <summary>Offsets of invented properties, from the rules of their zones: known by heart, exact.</summary>
public sealed class PropertyZoneTests
{
    private static readonly DateTimeOffset Noon = new(2031, 4, 4, 12, 0, 0, TimeSpan.FromHours(2));

    [Theory]
    [InlineData("Etc/GMT+6", -6)]
    [InlineData("Etc/UTC", 0)]
    [InlineData("Asia/Tokyo", 9)]
    public void A_moment_is_shown_as_the_clock_of_the_property_shows_it(string zone, int hours)
    {
        var there = PropertyZone.Of(zone).Told(Noon);
        Assert.Equal((Noon, TimeSpan.FromHours(hours)), (there, there.Offset));
    }

    [Theory]
    [InlineData("Etc/Nowhere")]
    [InlineData("half past")]
    public void A_zone_that_nobody_knows_leaves_the_clock_that_the_moment_came_with(string zone) =>
        Assert.Equal(Noon.Offset, PropertyZone.Of(zone).Told(Noon).Offset);

    [Fact]
    public void So_does_a_property_that_nobody_noted() => Assert.Equal(Noon.Offset, PropertyZone.None.Told(Noon).Offset);
}
