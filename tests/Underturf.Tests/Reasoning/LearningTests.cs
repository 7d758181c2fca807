using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Tests.Reasoning;

/// <summary>What looks, work and questions do to belief. All values invented.</summary>
public sealed class LearningTests
{
    private const string Over = "over range";
    private static readonly string[] Broken = ["open-conductor", "parted-splice"];

    [Fact]
    public void Looking_into_a_box_and_finding_nothing_lowers_that_place()
    {
        var before = Site.Line().Sweep(60, (5, Over)).Answer().About(5);
        var after = Site.Line().Sweep(60, (5, Over)).With(new LookFact { Place = "b2", Stations = ["s5"] }).Answer().About(5);
        Assert.True(after.At("box 2", Broken) < 0.7 * before.At("box 2", Broken));
        Assert.True(after.At("box 1", Broken) > before.At("box 1", Broken));
    }

    [Fact]
    public void Finding_the_device_settles_a_shared_station()
    {
        var site = Site.Line().Sweep(60, (5, Site.Ohms(Site.WireOhms(180, 3) + 15.3))).Run(5, "opens", "lawn 5", "the pond");
        Assert.True(site.Answer().About(5).Share("sharing-device") < 0.5);
        var question = site.With(new LookFact { Place = "b2", Stations = ["s5"], Found = ["plain branch"] }).Answer().About(5);
        Assert.True(question.At("box 2", "plain-branch") > 0.9);
        Assert.True(question.Settled);
        Assert.StartsWith("enough known", question.Moves[0].Action, StringComparison.Ordinal);
    }

    [Fact]
    public void A_wire_sharing_device_that_was_seen_explains_its_station()
    {
        var site = Site.Line().Sweep(60, (5, "2.6 kohm")).Read("reversed ohms", "2.6 kohm", "s5").Run(5, "opens", "lawn 5", "the pond");
        var question = site.With(new LookFact { Place = "b3", Stations = ["s5"], Found = ["sharing device"] }).Answer().About(5);
        Assert.True(question.At("box 3", "sharing-device") > 0.9);
    }

    [Fact]
    public void After_the_work_and_a_normal_reading_nothing_is_asked()
    {
        var site = Site.Line().Sweep(60, (3, Over)).ReadAt("b2", "coil ohms", Over, "s3");
        Assert.Single(site.Answer().Questions);
        site.Add(new WorkFact { Did = "coil replaced", Place = "b2", Target = "s3" });
        Assert.Empty(site.Read("station ohms", Site.Ohms(Site.SoundOhms(120, 2)), "s3").Answer().Questions);
    }

    [Fact]
    public void A_fault_that_was_seen_is_asked_about_though_the_readings_are_ordinary()
    {
        var site = Site.Line().Sweep().With(new LookFact { Place = "b1", Stations = ["s3"], Found = ["bad-splice"] });
        var question = site.Answer().About(3);
        Assert.Contains("look into box 1: bad-splice", question.Symptom, StringComparison.Ordinal);
        Assert.Empty(site.With(new WorkFact { Did = "splice remade", Place = "b1", Target = "s3" }).Answer().Questions);
    }

    [Fact]
    public void Words_that_the_practice_book_does_not_know_are_named_and_harm_nothing()
    {
        var site = Site.Line().Sweep()
            .With(new LookFact { Place = "b1", Stations = ["s3"], Found = ["a nest of mice"] })
            .With(new WorkFact { Did = "splices redone", Place = "b1" })
            .With(new LookFact { Place = "b2", Found = ["plain branch"] });
        var notices = site.Open().Problems;
        Assert.All(notices, p => Assert.Equal(Severity.Notice, p.Severity));
        Assert.Equal(["a nest of mice", "splices redone", "names no station"], notices.OrderBy(p => p.Place.Length).ThenBy(p => p.Place, StringComparer.Ordinal).Select(p => p.Reason.Split('\'') is [_, var quoted, ..] ? quoted : p.Reason.Split(',')[0]));
        Assert.Empty(site.Answer().Questions);
    }

    [Fact]
    public void Work_noted_in_one_breath_with_readings_lies_between_them()
    {
        var site = Site.Line().InOneBreath().Sweep(60, (3, "5.5 ohm"));
        site.Add(new WorkFact { Did = "coil replaced", Target = "v3" });
        var after = site.Read("station ohms", Site.Ohms(Site.SoundOhms(120, 2)), "s3");
        Assert.Empty(after.Answer().Questions);
        Assert.Empty(after.Open().Problems);
    }

    [Fact]
    public void After_the_wrong_work_and_the_same_reading_it_is_still_asked()
    {
        var site = Site.Line().Sweep(60, (3, Over));
        site.Add(new WorkFact { Did = "coil replaced", Place = "b2", Target = "s3" });
        var question = site.Read("station ohms", Over, "s3").Answer().About(3);
        Assert.True(question.Share(Broken) > 0.8);
    }

    [Fact]
    public void A_struck_reading_says_nothing_any_more()
    {
        var site = Site.Line().Sweep();
        var slip = site.Add(Site.Reading("station ohms", "365 ohm", null, "s3"));
        Assert.NotEmpty(site.Answer().Questions);
        Assert.Empty(site.With(new StrikeFact { Entry = slip.ToString() }).Answer().Questions);
    }

    [Fact]
    public void Without_any_cable_noted_an_open_station_is_still_found()
    {
        var site = Site.Bare();
        for (var s = 1; s <= 6; s++)
        {
            site.Station(s).Read("station ohms", s == 3 ? Over : $"{33 + s}.5 ohm", $"s{s}");
        }

        var question = Assert.Single(site.Answer().Questions);
        Assert.Equal(["3"], question.Stations);
        Assert.True(question.Share("open-coil", "open-conductor", "parted-splice", "parted-common-splice", "broken-common") > 0.9);
    }

    [Fact]
    public void A_station_that_somebody_asks_about_is_answered()
    {
        var asked = new QuestionOpenedFact { Id = "q1", Text = "Is 3 all right?", About = "s3" };
        var question = Assert.Single(Site.Line().Sweep().With(asked).Answer().Questions);
        Assert.Equal(["3"], question.Stations);
        Assert.Equal("as-built", question.Leading());
        Assert.Empty(Site.Line().Sweep().With(asked).With(new QuestionClosedFact { Id = "q1", Answer = "It is." }).Answer().Questions);
    }
}
