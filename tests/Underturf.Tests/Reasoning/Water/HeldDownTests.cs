namespace Underturf.Tests.Reasoning.Water;

/// <summary>Pressure that nothing holds down takes a street that gives much.</summary>
public sealed class HeldDownTests
{
    [Fact]
    public void Misting_is_a_regulator_that_is_gone_where_the_street_gives_much_and_not_where_it_gives_little()
    {
        var (little, unread, much) = (Gone("42 psi"), Gone(null), Gone("80 psi"));
        Assert.True(little < 0.3 * unread && much > unread, $"{little} {unread} {much}");
    }

    private static double Gone(string? rest)
    {
        var orchard = Orchard.Unpiped();
        _ = rest is null ? orchard : orchard.Read("static pressure", rest);
        return orchard.Watch("s1", "misting").Notebook().Water()!.Stations.Single(s => s.Station == "s1").States.Where(s => s.Faults.Contains("regulator-gone")).Sum(s => s.Probability);
    }
}
