using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Tests.Reasoning.Water;

/// <summary>How a station waters.</summary>
public sealed class StationWaterTests
{
    [Fact]
    public void A_flow_as_its_outlets_add_up_to_opens_no_question() =>
        Assert.Null(Heads(10).Meter("15.8 gpm", "s1").Question("water-s1"));

    [Fact]
    public void Much_flow_and_bubbling_water_is_a_broken_lateral() =>
        Assert.InRange(Heads(10).Meter("32 gpm", "s1").Watch("s1", "bubbling", "weak").Question("water-s1")!.Share("lateral-break"), 0.9, 1);

    [Fact]
    public void Much_flow_and_a_broken_outlet_seen_is_that() =>
        Assert.InRange(Heads(10).Meter("26 gpm", "s1").Watch("s1", "broken outlet").Question("water-s1")!.Share("outlet-broken"), 0.9, 1);

    [Fact]
    public void Half_the_flow_is_a_valve_or_a_pipe_that_lets_too_little_through()
    {
        var question = Heads(10).Meter("7.5 gpm", "s1").Watch("s1", "weak").Question("water-s1")!;
        Assert.InRange(question.Share("valve-half-open") + question.Share("pipe-small"), 0.8, 1);
    }

    [Fact]
    public void Misting_is_pressure_that_nothing_holds_down() =>
        Assert.InRange(Heads(10).Read("static pressure", "65 psi").Meter("20 gpm", "s1").Read("outlet pressure", "60 psi", "s1").Watch("s1", "misting").Question("water-s1")!.Explanations.Where(e => e.Names("regulator-gone")).Sum(e => e.Probability), 0.6, 1);

    [Fact]
    public void A_minute_to_close_is_a_blocked_port() =>
        Assert.InRange(Orchard.Unpiped().Read("closing time", "60 s", "s2").Question("water-s2")!.Share("port-blocked"), 0.9, 1);

    [Fact]
    public void Two_valves_that_the_wiring_names_explain_twice_the_flow()
    {
        var alone = Heads(10).Meter("31.6 gpm", "s1");
        Assert.NotNull(alone.Question("water-s1"));
        var shared = Heads(10).Read("station ohms", "14.6 ohm", "s1").Read("station ohms", "29 ohm", "s2").Read("station ohms", "29.2 ohm", "s3").Read("station ohms", "28.8 ohm", "s4")
            .With(new TestFact { Station = "s1", Watered = ["rows 1", "rows 9"], Behaved = "opens" })
            .Meter("31.6 gpm", "s1");
        Assert.Null(shared.Question("water-s1"));
    }

    [Fact]
    public void Low_at_rest_and_running_is_the_supply()
    {
        var question = Orchard.Unpiped().Read("static pressure", "30 psi").Read("running pressure", "26 psi", "s1").Question("water-supply")!;
        Assert.Equal("supply-weak", question.Explanations[0].Fault);
    }

    [Fact]
    public void Usual_at_rest_and_low_running_is_something_on_the_way()
    {
        var question = Orchard.Unpiped().Read("static pressure", "66 psi").Meter("14 gpm", "s1").Read("running pressure", "28 psi", "s1").Question("water-supply")!;
        Assert.InRange(question.Share("way-narrow"), 0.95, 1);
    }

    [Fact]
    public void Usual_pressures_open_no_question() =>
        Assert.Null(Orchard.Unpiped().Read("static pressure", "66 psi").Meter("14 gpm", "s1").Read("running pressure", "61 psi", "s1").Question("water-supply"));

    [Fact]
    public void What_leaks_elsewhere_is_taken_off_a_station_s_flow()
    {
        // 15.8 gpm of outlets and 8 gpm that run anyhow.
        var orchard = Heads(10).Meter("8 gpm").Meter("8 gpm").Meter("8 gpm").Meter("23.8 gpm", "s1");
        Assert.Null(orchard.Question("water-s1"));
        Assert.NotNull(Heads(10).Meter("0 gpm").Meter("23.8 gpm", "s1").Question("water-s1"));
    }

    [Fact]
    public void A_pressure_in_the_wrong_unit_is_asked_about()
    {
        var problem = Assert.Single(Orchard.Unpiped().Read("static pressure", "65 kPa").Problems(), p => p.Reason.Contains("psi", StringComparison.Ordinal));
        Assert.Equal("static pressure of 65 kPa would be very little, 65 psi would be usual", problem.Reason);
        Assert.Empty(Orchard.Unpiped().Read("static pressure", "65 psi").Problems());
    }

    [Theory]
    [InlineData("meter flow", "12 psi", "is pressure, but meter flow reads flow")]
    [InlineData("meter flow", "over range", "was over range")]
    public void A_reading_that_cannot_be_says_why(string how, string shown, string reason) =>
        Assert.Contains(Orchard.Unpiped().Read(how, shown).Problems(), p => p.Reason.Contains(reason, StringComparison.Ordinal));

    [Fact]
    public void Readings_that_cannot_both_be_right_are_named()
    {
        Assert.Contains(Orchard.Unpiped().Meter("2.4 gpm").Meter("9 gpm").Problems(), p => p.Reason.Contains("cannot both be right", StringComparison.Ordinal));
        Assert.Empty(Orchard.Piped().Meter("2.4 gpm").Turn("i1", "shut").Meter("0 gpm").Problems());
        Assert.Empty(Orchard.Unpiped().Meter("2.4 gpm").With(new WorkFact { Did = "valve rebuilt", Target = "v1" }).Meter("0 gpm").Problems());
    }

    [Fact]
    public void Pressures_that_nothing_explains_are_said_to_be_so() =>
        Assert.Equal("water-unmodelled", Orchard.Unpiped().Read("static pressure", "2 psi").Read("running pressure", "90 psi", "s1").Read("static pressure", "60 psi").Question("water-supply")!.Explanations[0].Fault);

    [Fact]
    public void Pressure_at_rest_names_no_station() =>
        Assert.Contains(Orchard.Unpiped().Read("static pressure", "60 psi", "s1").Problems(), p => p.Reason.Contains("with nothing running", StringComparison.Ordinal));

    [Fact]
    public void Pipes_without_length_or_end_are_named()
    {
        var problems = Orchard.Unpiped()
            .With(new PipeFact { Id = "p", From = "poc", To = "poc", Length = new Length(0), Size = "7/8" })
            .With(new PipeFact { Id = "q", From = "v3", To = "v4", Series = "lead" })
            .Problems();
        Assert.Contains(problems, p => p.Reason == "goes from 'poc' to itself");
        Assert.Contains(problems, p => p.Reason.StartsWith("is noted with a length ", StringComparison.Ordinal));
        Assert.Contains(problems, p => p.Place == "pipe 'p'" && p.Reason.Contains("not in the table", StringComparison.Ordinal));
        Assert.Contains(problems, p => p.Place == "pipe 'q'" && p.Reason.Contains("'lead'", StringComparison.Ordinal));
        Assert.Contains(problems, p => p.Reason == "is joined to no point of connection by the pipes that are noted");
    }

    [Fact]
    public void A_valve_of_no_size_is_named() =>
        Assert.Contains(Orchard.Unpiped().With(new ValveFact { Id = "v1", Station = "s1", Size = new Length(0) }).Problems(), p => p is { Place: "valve 'v1'", Reason: "is noted with no size" });

    /// <summary>So many spray heads of 6 L/min on station 1.</summary>
    private static Orchard Heads(int count) => Orchard.Unpiped().With(new OutletFact { Id = "heads", Station = "s1", What = "spray head", Count = count });
}
