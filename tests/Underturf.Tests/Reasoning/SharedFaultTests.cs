using Underturf.FieldLog;

namespace Underturf.Tests.Reasoning;

/// <summary>Faults that stations share, and pairs, as a technician would judge them. All values invented.</summary>
public sealed class SharedFaultTests
{
    private const string Over = "over range";

    private static Site Downstream() => Site.Line().Sweep(60, (3, Over), (4, Over), (5, Over), (6, Over));

    [Fact]
    public void A_downstream_group_open_together_has_lost_its_common_at_the_right_stretch()
    {
        var answers = Downstream().Answer();
        var question = Assert.Single(answers.Questions);
        Assert.Equal(["3", "4", "5", "6"], question.Stations);
        Assert.True(question.Share("broken-common", "parted-common-splice") > 0.9);
        Assert.True(question.At("box 2", "broken-common", "parted-common-splice") > 0.9);
    }

    [Fact]
    public void Two_opens_that_read_two_coils_together_have_a_broken_common()
    {
        var bare = Site.Line().Sweep(60, (5, Over), (6, Over));
        var pair = Site.Ohms(62 + (2 * 180 * 6.385 / 304.8 * 0.98) + 0.2);
        var question = bare.Read("station to station ohms", pair, "s5", "s6").Answer().About(5);
        Assert.Equal(["5", "6"], question.Stations);
        Assert.True(question.Share("broken-common", "parted-common-splice") > 0.99);
    }

    [Fact]
    public void What_the_stations_of_all_cables_of_a_box_show_is_the_one_splice_of_their_common()
    {
        var site = Site.Bare();
        site.Add(new BoxFact { Id = "b0", Label = "box 0", Position = new Position(0, 60) });
        site.Add(new BoxFact { Id = "b1", Label = "box 1", Position = new Position(60, 0) });
        site.Cable("k0", "c", "b0", 60, [.. Enumerable.Range(5, 8).Select(s => $"s{s}")]).Cable("k1", "c", "b1", 60, "s1", "s2").Cable("k2", "c", "b1", 60, "s3", "s4");
        for (var s = 1; s <= 12; s++)
        {
            site.Station(s).With(new ValveFact { Id = $"v{s}", Box = s > 4 ? "b0" : "b1", Station = $"s{s}" }).Read("station ohms", Site.Ohms(Site.SoundOhms(60, 1) + (s > 4 ? 0 : 40)), $"s{s}");
        }

        var question = Assert.Single(site.Answer().Questions);
        Assert.Equal(["1", "2", "3", "4"], question.Stations);
        Assert.True(question.At("box 1", "bad-common-splice") > 0.9);
    }

    [Fact]
    public void Everything_open_is_first_of_all_the_sensor()
    {
        var question = Assert.Single(Site.Line().Sweep(60, [.. Enumerable.Range(1, 6).Select(s => (s, Over))]).Answer().Questions);
        Assert.Equal("open-sensor", question.Leading());
    }

    [Fact]
    public void Sound_stations_of_which_none_waters_lack_the_water()
    {
        var site = Site.Line().Sweep().Run(1, "stays shut").Run(4, "stays shut").Run(6, "stays shut");
        Assert.Equal("no-water", site.Answer().About(4).Leading());
        Assert.True(site.Read("terminal volts", "25.9 V", "s4").Answer().About(4).Share("no-water") > 0.95, "the supply is not weak");
    }

    [Fact]
    public void A_station_that_waters_shows_that_there_is_water()
    {
        var question = Site.Line().Sweep().Run(1, "stays shut").Run(4, "stays shut").Run(6, "opens", "lawn 6").Answer().About(4);
        Assert.True(question.Share("no-water") < 0.1);
    }

    [Fact]
    public void Two_stations_that_water_each_others_places_are_swapped()
    {
        var question = Assert.Single(Site.Line().Sweep().Run(3, "opens", "lawn 4").Run(4, "opens", "lawn 3").Answer().Questions);
        Assert.Equal(["3", "4"], question.Stations);
        Assert.True(question.Share("swapped-conductors") > 0.95);
        Assert.Contains("station 3 and station 4", question.Moves[0].Action, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_stations_that_read_each_others_ohms_are_swapped()
    {
        var (near, far) = (Site.Ohms(Site.SoundOhms(150, 1)), Site.Ohms(Site.SoundOhms(450, 3)));
        var question = Assert.Single(Site.Line(150).Sweep(150, (2, far), (5, near)).Answer().Questions);
        Assert.Equal(["2", "5"], question.Stations);
        Assert.True(question.Share("swapped-conductors") > 0.9);
    }

    /// <summary>What each terminal reads is an odd coil of its own station, or a usual one of the other's: neither may swear to the first before the second is asked.</summary>
    [Fact]
    public void Two_stations_that_water_each_others_places_are_swapped_though_both_read_nearly_as_they_should()
    {
        var site = Site.Line().Sweep(60, (3, "39.0 ohm"), (5, "33.0 ohm")).Run(3, "opens", "lawn 5").Run(5, "opens", "lawn 3");
        var question = Assert.Single(site.Answer().Questions);
        Assert.Equal(["3", "5"], question.Stations);
        Assert.True(question.Share("swapped-conductors") > 0.95);
    }

    [Fact]
    public void Two_terminals_that_both_read_low_and_water_both_places_are_crossed()
    {
        var low = Site.Ohms(Site.WireOhms(120, 2) + (31.0 / 2));
        var site = Site.Line().Sweep(60, (3, low), (4, low)).Run(3, "opens", "lawn 3", "lawn 4").Run(4, "opens", "lawn 4", "lawn 3");
        var question = Assert.Single(site.Answer().Questions);
        Assert.Equal(["3", "4"], question.Stations);
        Assert.True(question.Share("crossed-conductors") > 0.95);
        Assert.DoesNotContain(", with station", question.Explanations[0].Summary, StringComparison.Ordinal);
    }

    [Fact]
    public void However_many_readings_only_a_crossing_explains_the_answer_stays_a_number()
    {
        var low = Site.Ohms(Site.WireOhms(120, 2) + (31.0 / 2));
        var site = Site.Line().Sweep(60, (3, low), (4, low));
        for (var i = 0; i < 8; i++)
        {
            site.Read("station ohms", low, "s3").Read("station ohms", low, "s4").Run(3, "opens", "lawn 3", "lawn 4").Run(4, "opens", "lawn 4", "lawn 3");
        }

        Assert.Equal(1, site.Answer().About(3).Share("crossed-conductors"), 0.01);
    }

    [Fact]
    public void A_reading_against_a_third_station_leaves_two_crossed_ones_crossed()
    {
        var low = Site.Ohms(Site.WireOhms(120, 2) + (31.0 / 2));
        var against = Site.Ohms(Conductor(120) + (31.0 / 2) + Common(60) + 31 + Conductor(60));
        var site = Site.Line().Sweep(60, (3, low), (4, low)).Run(3, "opens", "lawn 3", "lawn 4").Run(4, "opens", "lawn 4", "lawn 3").Read("station to station ohms", against, "s3", "s1");
        Assert.True(site.Answer().About(3).Share("crossed-conductors") > 0.9);
    }

    [Fact]
    public void A_reading_against_a_third_station_and_no_volts_at_its_own_valve_leave_two_swapped_ones_swapped()
    {
        var against = Site.Ohms(Conductor(180) + 31 + Common(60) + 31 + Conductor(120));
        var site = Site.Line()
            .Sweep(60, (2, Site.Ohms(Site.SoundOhms(180, 3))), (5, Site.Ohms(Site.SoundOhms(60, 1))))
            .Run(2, "opens", "lawn 5")
            .Run(5, "opens", "lawn 2")
            .Read("station to station ohms", against, "s2", "s3")
            .ReadAt("b1", "valve volts", "0.0 V", "s2");
        Assert.InRange(site.Answer().About(2).Share("swapped-conductors"), 0.95, 1 + 1e-9);
    }

    /// <summary>Copper as in <see cref="Site.WireOhms"/>, a splice each 60 m.</summary>
    private static double Conductor(double metres) => (metres * 6.385 / 304.8 * (1 - (0.00393 * 5))) + (metres / 60 * 0.03);

    private static double Common(double metres) => (metres * 2.525 / 304.8 * (1 - (0.00393 * 5))) + (metres / 60 * 0.03);

    [Fact]
    public void Two_terminals_that_both_read_low_and_water_places_of_no_station_are_two_shared_stations()
    {
        var low = Site.Ohms(Site.WireOhms(120, 2) + (31.0 / 2));
        var site = Site.Line().Sweep(60, (3, low), (4, low)).Run(3, "opens", "lawn 3", "the pond").Run(4, "opens", "lawn 4", "the hedge");
        var answers = site.Answer();
        Assert.Equal("plain-branch", answers.About(3).Leading());
        Assert.Equal("plain-branch", answers.About(4).Leading());
    }

    [Fact]
    public void The_same_extra_place_on_every_station_is_a_valve_that_does_not_close()
    {
        var site = Site.Line().Sweep();
        for (var s = 1; s <= 6; s++)
        {
            site.Run(s, "opens", $"lawn {s}", "the pond");
        }

        var question = Assert.Single(site.Answer().Questions);
        Assert.Equal("unclosed-valve", question.Leading());
        Assert.Equal(6, question.Stations.Count);
    }

    [Fact]
    public void Volts_that_sag_on_every_station_are_a_weak_supply()
    {
        var site = Site.Line().Sweep().Read("idle volts", "26.5 V");
        foreach (var s in Enumerable.Range(1, 6))
        {
            site.Read("terminal volts", "22.8 V", $"s{s}");
        }

        Assert.Equal("weak-supply", site.Answer().About(1).Leading());
    }

    [Fact]
    public void A_second_controller_is_a_part_of_its_own()
    {
        var site = Downstream();
        site.Add(new ControllerFact { Id = "d", Terminals = 6, Position = new Position(500, 0) });
        foreach (var s in new[] { 11, 12, 13 })
        {
            site.Add(new StationFact { Id = $"s{s}", Controller = "d", Terminal = s - 10, Label = $"{s}" });
            site.Read("station ohms", s == 13 ? Over : "34.0 ohm", $"s{s}");
        }

        var answers = site.Answer();
        Assert.Equal(2, answers.Questions.Count);
        Assert.Equal(["3", "4", "5", "6"], answers.About(3).Stations);
        Assert.Equal(["13"], answers.About(13).Stations);
    }

    [Fact]
    public void A_broken_common_takes_only_the_stations_that_return_by_it()
    {
        var site = Site.Line();
        foreach (var s in new[] { 2, 4, 6 })
        {
            site.Add(new StationFact { Id = $"s{s}", Controller = "c", Terminal = s, Common = "A", Waters = [$"lawn {s}"] });
        }

        var question = Assert.Single(site.Sweep(60, (2, "over range"), (4, "over range"), (6, "over range")).Answer().Questions);
        Assert.Equal(["2", "4", "6"], question.Stations);
        Assert.True(question.Share("broken-common", "parted-common-splice") > 0.95);
        Assert.Contains("common A", question.Explanations[0].Summary, StringComparison.Ordinal);
    }

    [Fact]
    public void A_reading_between_two_stations_does_not_let_the_one_stick_for_the_other()
    {
        var between = Site.Ohms(Site.SoundOhms(120, 2) + Site.SoundOhms(180, 3));
        var site = Site.Line().Sweep().Run(3, "stays shut").Run(5, "opens", "lawn 5").Read("station to station ohms", between, "s3", "s5");
        Assert.Equal("stuck-shut", site.Answer().About(3).Leading());
        Assert.True(site.Answer().About(3).Share("stuck-shut") > 0.9);
    }

    [Fact]
    public void A_reading_between_two_stations_does_not_let_a_branch_of_the_one_water_for_the_other()
    {
        var between = Site.Ohms(Site.SoundOhms(120, 2) + Site.SoundOhms(180, 3));
        var site = Site.Line().Sweep().Run(3, "opens", "lawn 3", "the pond").Run(5, "opens", "lawn 5").Read("station to station ohms", between, "s3", "s5");
        Assert.DoesNotContain(site.Answer().Questions, q => q.Stations.Contains("5"));
    }
}
