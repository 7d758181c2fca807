using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Water;

namespace Underturf.Tests.Reasoning.Water;

/// <summary>How many places a station waters: wires and water hear of each other, once.</summary>
public sealed class WiringWaterTests
{
    private const string Own = "15.85 gpm", Twice = "31.7 gpm";

    [Fact]
    public void Half_the_ohms_and_twice_the_flow_are_two_valves() => Assert.InRange(Two(HalfTheOhms().Meter(Twice, "s1")), 0.97, 1);

    [Fact]
    public void Its_own_flow_speaks_against_a_second_valve()
    {
        var (own, twice, none) = (Two(HalfTheOhms().Meter(Own, "s1")), Two(HalfTheOhms().Meter(Twice, "s1")), Two(HalfTheOhms()));
        Assert.True(own < none && none < twice);
    }

    [Fact]
    public void The_flow_stands_in_the_evidence_with_what_one_and_two_valves_would_give()
    {
        var row = Assert.Single(HalfTheOhms().Meter(Twice, "s1").Question("station-s1")!.Explanations[0].Evidence, e => e.What.StartsWith("meter flow", StringComparison.Ordinal));
        Assert.Equal((Twice, "about 31.7 gpm"), (row.Observed, row.Predicted));
        Assert.True(row.Weight > 0.5);
    }

    /// <summary>Bayes: the odds that the wires leave, times the ratio of what the water says of each.</summary>
    [Fact]
    public void What_both_say_is_the_product_of_what_each_says()
    {
        var (wires, both) = (Matter(HalfTheOhms()), Matter(HalfTheOhms().Meter(Twice, "s1")));
        var message = Assert.Single(both.Evidence.OfType<WaterEvidence>());
        var belief = BeliefEngine.Of(both, "c");
        double Log(Func<Suspect, bool> wrong) => message.LogChance([belief.Stations["s1"].Select(w => w.Suspects).First(s => s.Length == 1 && wrong(s[0]))[0]], belief.OutlookOf("s1"), both.Cures);
        var ratio = Math.Exp(Log(IsBranch) - Log(IsShorted));
        Assert.True(ratio > 3);
        Assert.Equal(Odds(BeliefEngine.Of(wires, "c")) * ratio, Odds(belief), 0.1 * Odds(belief));
    }

    [Fact]
    public void The_water_hears_from_the_wires_nothing_that_it_told_them()
    {
        var (without, with) = (Matter(HalfTheOhms()), Matter(HalfTheOhms().Meter(Twice, "s1")));
        var (told, back) = (WiringWater.Of("s1", BeliefEngine.Of(without, "c"), without), WiringWater.Of("s1", BeliefEngine.Of(with, "c"), with));
        Assert.All(told, state => Assert.Equal(state.Probability, back.Where(s => (s.Valves, s.StaysShut) == (state.Valves, state.StaysShut)).Sum(s => s.Probability), 0.02));
    }

    [Fact]
    public void What_was_metered_before_the_work_says_nothing_of_the_wires_after_it()
    {
        var before = Matter(HalfTheOhms().Meter(Twice, "s1").With(new WorkFact { Did = "coil replaced", Target = "v1" }));
        Assert.Empty(before.Evidence.OfType<WaterEvidence>());
    }

    [Fact]
    public void Where_no_station_was_metered_nothing_is_said() => Assert.Empty(Matter(HalfTheOhms().Meter("2 gpm")).Evidence.OfType<WaterEvidence>());

    private static double Two(Orchard orchard) => orchard.Question("station-s1") is { Valves: { Count: > 0 } valves } ? valves.Where(v => v.Count == 2).Sum(v => v.Probability) : 0;

    private static double Odds(Belief belief) => Share(belief, IsBranch) / Share(belief, IsShorted);

    private static double Share(Belief belief, Func<Suspect, bool> wrong) => belief.Stations["s1"].Where(w => w.Suspects.Length == 1 && wrong(w.Suspects[0])).Sum(w => w.Probability);

    private static bool IsBranch(Suspect suspect) => suspect is { MoreCoils: 1, Fault.ExtraPlaces: true, Passes: Passes.Both };

    private static bool IsShorted(Suspect suspect) => suspect.Fault!.CoilFactor is not null;

    private static Case Matter(Orchard orchard)
    {
        var (history, book) = (orchard.Notebook().History, PracticeBook.Default);
        var water = new WaterCase(history, book);
        return new Case(history, book, wires => WiringWater.Messages(water, wires));
    }

    /// <summary>Ten spray heads each; station 1 reads half of its sisters, as of two coils or of one that lost half of its turns.</summary>
    private static Orchard HalfTheOhms() => Enumerable.Range(1, 4)
        .Aggregate(Orchard.Unpiped(), (o, n) => o.With(new OutletFact { Id = $"o{n}", Station = $"s{n}", What = "spray head", Count = 10 }))
        .Read("station ohms", "15.5 ohm", "s1").Read("station ohms", "29 ohm", "s2").Read("station ohms", "29.2 ohm", "s3").Read("station ohms", "28.8 ohm", "s4");
}
