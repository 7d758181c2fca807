using Underturf.FieldLog;
using Underturf.Quantities;
using Underturf.Reasoning.Water;

namespace Underturf.Tests.Reasoning.Water;

/// <summary>Cans set out over a station.</summary>
public sealed class CatchTests
{
    /// <summary>By hand: eight cans, the lowest two 4 and 6 mm, mean 10 mm; (4 + 6) / 2 / 10 = 0.50; 10 mm in 15 min are 40 mm/h.</summary>
    [Fact]
    public void Evenness_is_the_lowest_quarter_by_the_mean_and_the_rate_the_mean_by_the_time()
    {
        var caught = Cans(15, 4, 6, 9, 10, 11, 12, 14, 14).Notebook().Flow("s1").Value.Stations[0].Caught!;
        Assert.Equal((8, 0.5), (caught.Cans, Math.Round(caught.Evenness, 9)));
        Assert.Equal(40, caught.MetresPerSecond!.Value * 3_600_000, 6);
    }

    [Fact]
    public void It_is_told_in_the_units_of_the_property_and_stands_in_the_report()
    {
        var caught = Cans(15, 4, 6, 9, 10, 11, 12, 14, 14).Notebook().Water()!.Stations.Single(s => s.Station == "s1").Caught!;
        Assert.Equal("evenness 0.50 of 8 cans, 40 mm/h", caught.Say(new WaterSay(usUnits: false)));
        Assert.Equal("evenness 0.50 of 8 cans, 1.57 in/h", caught.Say(new WaterSay(usUnits: true)));
    }

    /// <summary>Six cans: one and a half are a quarter, (2 + 0.5 x 4) / 1.5 / 6 = 0.444.</summary>
    [Fact]
    public void The_can_at_the_limit_of_the_quarter_counts_in_part() =>
        Assert.Equal(4 / 1.5 / 6, Cans(null, 2, 4, 6, 7, 8, 9).Notebook().Flow("s1").Value.Stations[0].Caught!.Evenness, 9);

    [Fact]
    public void Cans_of_about_the_usual_evenness_open_no_question() => Assert.Null(Cans(10, 6, 7, 8, 9, 9, 10, 10, 11, 11, 12, 12, 13).Question("water-s1"));

    [Fact]
    public void Uneven_cans_and_a_broken_outlet_seen_stand_in_one_evidence()
    {
        var question = Cans(10, 1, 1, 2, 8, 9, 10, 11, 12, 13, 14, 15, 16).Watch("s1", "broken outlet").Question("water-s1")!;
        Assert.Equal("outlet-broken", question.Explanations[0].Fault);
        var row = Assert.Single(question.Explanations[0].Evidence, e => e.What.StartsWith("catch cans", StringComparison.Ordinal));
        Assert.Equal("0.14 of 12 cans", row.Observed);
        Assert.StartsWith("0.4", row.Predicted, StringComparison.Ordinal);
    }

    [Fact]
    public void More_cans_say_more()
    {
        double Worse(int times) => Cans(10, [.. Enumerable.Repeat(new[] { 3.0, 9, 10, 12 }, times).SelectMany(c => c)]).Watch("s1", "weak").Question("water-s1")!.Explanations.Where(e => e.Fault is "outlet-broken" or "lateral-break").Sum(e => e.Probability);
        Assert.True(Worse(6) > Worse(1));
    }

    [Fact]
    public void Cans_set_out_before_a_repair_are_no_longer_told()
    {
        var mended = Cans(10, 1, 1, 2, 8, 9, 10, 11, 12).With(new WorkFact { Did = "outlet replaced", Target = "s1" });
        Assert.Null(mended.Notebook().Flow("s1").Value.Stations[0].Caught);
        Assert.NotNull(mended.With(new CatchFact { Station = "s1", Cans = [new Length(0.006), new Length(0.008)] }).Notebook().Flow("s1").Value.Stations[0].Caught);
    }

    [Fact]
    public void What_was_read_of_a_station_before_a_valve_of_it_became_another_is_not_weighed()
    {
        var before = Cans(10, 1, 1, 2, 8, 9, 10, 11, 12).With(new ValveFact { Id = "v9", Station = "s1" }).Meter("7 gpm", "s1").Watch("s1", "weak");
        Assert.NotNull(before.Question("water-s1"));
        var after = before.With(new StationFact { Id = "s5", Controller = "c", Terminal = 5 }).With(new WorkFact { Did = "station split", Target = "v9" }).With(new ValveFact { Id = "v9", Station = "s5" }).With(new RenumberedFact { Station = "s5", From = "s1", Was = "1", Now = "5", Valve = "v9" });
        Assert.Null(after.Question("water-s1"));
        Assert.Null(after.Notebook().Flow("s1").Value.Stations[0].Caught);
    }

    [Fact]
    public void Empty_cans_an_unknown_station_and_cans_noted_as_a_reading_are_named_with_what_to_do()
    {
        Assert.Contains(Cans(10, 0, 0, 0).Problems(), p => p.Reason == "has no water in any can" && p.Remedy.Contains("nothing waters", StringComparison.Ordinal));
        Assert.Contains(Orchard.Unpiped().With(new CatchFact { Station = "s77", Cans = [new Length(0.01)] }).Problems(), p => p.Reason.Contains("'s77', which nobody has noted", StringComparison.Ordinal));
        Assert.Contains(Orchard.Unpiped().Read("catch cans", "5 mm", "s1").Problems(), p => p.Reason.Contains("noted can by can", StringComparison.Ordinal));
    }

    private static Orchard Cans(double? minutes, params double[] millimetres) =>
        Orchard.Unpiped().With(new CatchFact { Station = "s1", Minutes = minutes, Cans = [.. millimetres.Select(mm => new Length(mm / 1000))] });
}
