using Underturf.FieldLog;

namespace Underturf.Tests.Reasoning.Water;

/// <summary>Readings of the meter with several stations running.</summary>
public sealed class TogetherTests
{
    private static Orchard Heads()
    {
        var orchard = Orchard.Unpiped().Read("static pressure", "65 psi");
        foreach (var station in new[] { "s1", "s2" })
        {
            orchard.With(new OutletFact { Id = $"heads {station}", Station = station, What = "spray head", Count = 10 });
        }

        return orchard;
    }

    [Fact]
    public void What_one_gives_alone_tells_what_the_other_gives()
    {
        // 10 heads give about 15 gpm; together much less than twice that says that the other gives too little.
        Assert.Null(Heads().Meter("15.0 gpm", "s1").Question("water-s2"));
        var little = Heads().Meter("15.0 gpm", "s1").Meter("20.0 gpm", "s1", "s2").Question("water-s2")!;
        Assert.Contains(little.Explanations.Take(3), e => e.Fault is "valve-half-open" or "pipe-small");
        Assert.Contains(little.Explanations[0].Evidence, e => e.What.EndsWith("together", StringComparison.Ordinal));
        Assert.Null(Heads().Meter("15.0 gpm", "s1").Meter("29.0 gpm", "s1", "s2").Question("water-s2"));
    }

    [Fact]
    public void Little_of_both_together_that_gave_enough_alone_is_the_way_to_them()
    {
        var enough = Heads().Meter("15.0 gpm", "s1").Meter("15.0 gpm", "s2");
        var together = Heads().Meter("15.0 gpm", "s1").Meter("15.0 gpm", "s2").Meter("19.0 gpm", "s1", "s2");
        Assert.True(Narrow(together) > 3 * Narrow(enough), $"{Narrow(together)} beside {Narrow(enough)}");
    }

    [Fact]
    public void With_everything_off_it_is_no_reading() => Assert.Null(Heads().Meter("29.0 gpm", "s1", "s2").Question("water-idle"));

    [Fact]
    public void A_gauge_while_two_run_counts_the_flow_of_both()
    {
        // 5 psi less with both than alone is what friction takes; the same with one of them alone is four times as much.
        var (both, one) = (Heads().Meter("15.0 gpm", "s1").Meter("15.0 gpm", "s2"), Heads().Meter("15.0 gpm", "s1").Meter("15.0 gpm", "s2"));
        Assert.True(Narrow(both.Read("running pressure", "35 psi", "s1", "s2")) < Narrow(one.Read("running pressure", "35 psi", "s1")));
    }

    [Fact]
    public void What_is_read_of_one_is_not_read_of_two() =>
        Assert.Contains(Heads().Read("outlet pressure", "30 psi", "s1", "s2").Problems(), p => p.Reason == "outlet pressure names 2 stations, but it is read of one");

    [Fact]
    public void An_unknown_station_among_them_is_named() =>
        Assert.Contains(Heads().Meter("30 gpm", "s1", "s9").Problems(), p => p.Reason.StartsWith("names station 's9'", StringComparison.Ordinal));

    [Fact]
    public void One_named_twice_ran_alone() => Assert.Equal(Answer(Heads().Meter("7.5 gpm", "s1")), Answer(Heads().Meter("7.5 gpm", "s1", "s1")));

    private static double Answer(Orchard orchard) => orchard.Question("water-s1")!.Share("valve-half-open");

    private static double Narrow(Orchard orchard) => orchard.Notebook().Water()!.Supply.Where(s => s.Faults.Contains("way-narrow")).Sum(s => s.Probability);
}
