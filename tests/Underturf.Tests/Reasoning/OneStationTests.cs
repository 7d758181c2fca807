using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Tests.Reasoning;

/// <summary>Single faults of one station, as a technician would judge them. All values invented, in keeping with R = Rwire + Rcoil/n.</summary>
public sealed class OneStationTests
{
    [Fact]
    public void Stations_of_one_number_on_two_controllers_are_two_questions()
    {
        var site = Site.Line().With(new ControllerFact { Id = "d", Terminals = 12, Label = "cellar" });
        site.Add(new StationFact { Id = "t3", Controller = "d", Terminal = 3 });
        var answers = site.Sweep(60, (3, "over range")).Read("station ohms", "over range", "t3").Answer();
        Assert.Equal(["3 (controller c)", "3 (controller cellar)"], answers.Questions.SelectMany(q => q.Stations).Order(StringComparer.Ordinal));
        Assert.Equal(2, answers.Questions.Select(q => q.Id).Distinct().Count());
    }

    [Fact]
    public void A_reading_is_judged_with_the_supply_as_it_was()
    {
        var site = Site.Line().Sweep().Read("idle volts", "20.5 V").Read("terminal volts", "19.4 V", "s1");
        site.Add(new WorkFact { Did = "transformer replaced", Place = "c" });
        var after = site.Read("idle volts", "27.4 V").Read("terminal volts", "26.0 V", "s1");
        Assert.Empty(after.Answer().Questions);
        Assert.Empty(after.Open().Problems);
    }

    [Fact]
    public void Idle_volts_that_no_supply_in_order_gives_are_asked_about()
    {
        var question = Assert.Single(Site.Line().Sweep().Read("idle volts", "0.0 V").Answer().Questions);
        Assert.Contains("0.0 V", question.Symptom, StringComparison.Ordinal);
        Assert.Contains("fuse", question.Explanations[0].Summary, StringComparison.Ordinal);
    }

    [Fact]
    public void Idle_volts_that_contradict_each_other_are_named()
    {
        var problem = Assert.Single(Site.Line().Sweep().Read("idle volts", "27.6 V").Read("idle volts", "25.0 V").Open().Problems);
        Assert.Contains("no work on the supply", problem.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void After_what_stations_share_was_mended_an_old_failed_run_asks_nothing()
    {
        var site = Site.Line().Sweep(60, (5, "over range"), (6, "over range")).Run(5, "stays shut").Run(6, "stays shut");
        site.Add(new LookFact { Place = "b3", Stations = ["s5", "s6"], Found = ["parted-common-splice"] });
        site.Add(new WorkFact { Did = "splice remade", Place = "b3" });
        Assert.Empty(site.Read("station ohms", Site.Ohms(Site.SoundOhms(180, 3)), "s5").Answer().Questions);
    }

    [Fact]
    public void A_broken_conductor_lies_between_two_places()
    {
        var site = Site.Line().Sweep(60, (5, "over range")).ReadAt("b2", "outward ohms", "over range", "s5").ReadAt("b3", "outward ohms", "31.0 ohm", "s5");
        var place = site.Answer().About(5).Explanation("open-conductor").Places[0];
        Assert.Equal("between box 2 and box 3", place.Label);
    }

    [Fact]
    public void Wire_ohms_alone_with_the_coil_lifted_are_a_conductor_that_touches_the_common()
    {
        var low = Site.Line().Sweep(60, (3, Site.Ohms(Site.WireOhms(60, 1) + 0.3))).Run(3, "stays shut").Read("station ohms", Site.Ohms(Site.WireOhms(60, 1) + 0.3), "s3");
        Assert.True(low.Answer().About(3).Share("shorted-conductors", "touching-run") > 0.5);
        var question = low.ReadAt("b2", "coil ohms", "31.2 ohm", "s3").Answer().About(3);
        Assert.True(question.At("box 1", "shorted-conductors") > 0.85);
        Assert.True(question.Share("shorted-conductors", "touching-run") > 0.98, "the rest touches just before or just behind the box");
    }

    [Fact]
    public void A_short_that_opened_splices_show_between_two_boxes_is_inside_the_run()
    {
        var site = Site.Line(200).Sweep(200, (5, Site.Ohms(Site.WireOhms(300, 2) + 0.3)))
            .ReadAt("b1", "outward ohms", Site.Ohms(Site.WireOhms(100, 1) + 0.3), "s5").ReadAt("b2", "outward ohms", Site.Ohms(Site.SoundOhms(200, 1)), "s5");
        var question = site.Answer().About(5);
        Assert.Equal("touching-run", question.Leading());
        Assert.Equal("between box 1 and box 2", question.Explanation("touching-run").Places[0].Label);
    }

    [Fact]
    public void Open_to_its_own_common_and_ordinary_to_another_is_a_wrong_common()
    {
        var open = Site.Line().Sweep(60, (5, "over range"));
        Assert.True(open.Answer().About(5).Share("wrong-common") < 0.1);
        Assert.True(open.Read("other common ohms", Site.Ohms(Site.SoundOhms(180, 3)), "s5").Answer().About(5).Share("wrong-common") > 0.95);
    }

    [Fact]
    public void Ohms_that_hang_on_the_polarity_of_the_meter_are_a_half_wave_device()
    {
        var answers = Site.Line().Sweep(60, (5, "over range")).Read("reversed ohms", "2.4 kohm", "s5").Run(5, "opens", "lawn 5").Answer();
        Assert.Equal("sharing-device", answers.About(5).Leading());
    }

    [Fact]
    public void A_valve_that_opened_and_then_stayed_shut_is_a_remark_not_a_mistake()
    {
        var problem = Assert.Single(Site.Line().Sweep().Run(3, "opens", "lawn 3").Run(3, "stays shut").Open().Problems);
        Assert.Equal(Severity.Notice, problem.Severity);
        Assert.Contains("then stays shut", problem.Reason, StringComparison.Ordinal);
    }

    private const string Over = "over range";

    [Fact]
    public void A_normal_sweep_opens_no_question() => Assert.Empty(Site.Line().Sweep().Answer().Questions);

    [Fact]
    public void A_normal_sweep_with_normal_runs_opens_no_question()
    {
        var site = Site.Line().Sweep();
        for (var s = 1; s <= 6; s++)
        {
            site.Run(s, "opens", $"lawn {s}");
        }

        Assert.Empty(site.Answer().Questions);
    }

    [Theory]
    [InlineData(2, 60)]
    [InlineData(3, 60)]
    [InlineData(4, 60)]
    [InlineData(2, 250)]
    [InlineData(3, 250)]
    public void Like_coils_on_one_conductor_are_counted(int coils, double legMetres)
    {
        var read = Site.Ohms(Site.WireOhms(2 * legMetres, 2) + (31.0 / coils));
        var question = Site.Line(legMetres).Sweep(legMetres, (3, read)).Run(3, "opens", [.. Enumerable.Range(0, coils).Select(i => $"lawn {3 + (10 * i)}")]).Answer().About(3);
        Assert.Equal("plain-branch", question.Leading());
        Assert.Equal(coils, question.Valves.MaxBy(v => v.Probability)!.Count);
        Assert.Equal(1, question.Valves.Sum(v => v.Probability), 6);
    }

    [Fact]
    public void From_ohms_alone_the_count_is_a_range_and_wider_on_a_long_run()
    {
        double Spread(double legMetres)
        {
            var read = Site.Ohms(Site.WireOhms(2 * legMetres, 2) + (31.0 / 3));
            var valves = Site.Line(legMetres).Sweep(legMetres, (3, read)).Answer().About(3).Valves;
            var mean = valves.Sum(v => v.Count * v.Probability);
            return valves.Sum(v => (v.Count - mean) * (v.Count - mean) * v.Probability);
        }

        Assert.True(Spread(300) > Spread(20));
    }

    [Fact]
    public void A_coil_that_reads_next_to_nothing_is_shorted()
    {
        var question = Site.Line().Sweep(60, (3, Site.Ohms(Site.WireOhms(120, 2) + 1.6))).Answer().About(3);
        Assert.Equal("shorted-coil", question.Leading());
        Assert.Equal("box 2", question.Explanations[0].Places[0].Place);
    }

    [Fact]
    public void High_and_drifting_ohms_are_a_bad_splice()
    {
        var site = Site.Line().Sweep(60, (3, "92.4 ohm"));
        site.Add(Site.Reading("station ohms", "71.0 ohm", null, "s3") with { Drifting = true });
        Assert.True(site.Answer().About(3).Share("bad-splice") > 0.9);
    }

    [Fact]
    public void An_open_station_is_open_coil_or_conductor_until_the_coil_is_read()
    {
        var question = Site.Line().Sweep(60, (3, Over)).Answer().About(3);
        Assert.InRange(question.Share("open-coil"), 0.2, 0.8);
        Assert.InRange(question.Share("open-conductor", "parted-splice"), 0.2, 0.8);
    }

    [Fact]
    public void An_open_station_whose_coil_alone_is_open_has_an_open_coil()
    {
        var question = Site.Line().Sweep(60, (3, Over)).ReadAt("b2", "coil ohms", Over, "s3").Answer().About(3);
        Assert.True(question.Share("open-coil") > 0.95);
        Assert.True(question.Settled);
    }

    [Fact]
    public void An_open_station_whose_coil_is_good_has_a_broken_conductor()
    {
        var question = Site.Line().Sweep(60, (3, Over)).ReadAt("b2", "coil ohms", "31.2 ohm", "s3").Answer().About(3);
        Assert.True(question.Share("open-conductor", "parted-splice", "wrong-common") > 0.93);
        Assert.True(question.Share("open-conductor", "parted-splice", "wrong-common", "sharing-device") > 0.96, "a diode may block the one polarity that was read");
    }

    [Fact]
    public void Still_open_with_the_leads_joined_at_the_valve_is_the_wire_and_not_the_coil()
    {
        var joined = Site.Line().Sweep(60, (3, Over)).ReadAt("b2", "joined ohms", Over, "s3").Answer().About(3);
        Assert.True(joined.Share("open-coil") < 0.05);
        var sound = Site.Line().Sweep(60, (3, Over)).ReadAt("b2", "joined ohms", Site.Ohms(Site.WireOhms(120, 2)), "s3").Answer().About(3);
        Assert.True(sound.Share("open-coil") > 0.9);
    }

    [Fact]
    public void Two_places_on_the_ohms_of_one_coil_are_paired_laterals()
    {
        var question = Site.Line().Sweep().Run(3, "opens", "lawn 3", "the pond").Run(1, "opens", "lawn 1").Run(4, "opens", "lawn 4").Answer().About(3);
        Assert.Equal("paired-laterals", question.Leading());
    }

    [Fact]
    public void Good_wiring_and_a_valve_that_stays_shut_is_a_matter_of_the_valve()
    {
        var question = Site.Line().Sweep().Run(3, "stays shut").Answer().About(3);
        Assert.Equal("stuck-shut", question.Leading());
    }

    [Fact]
    public void Low_ohms_to_an_earth_pin_are_a_leak()
    {
        var site = Site.Line().Sweep().Read("earth ohms", "15 kohm", "s3").Read("earth ohms", Over, "s4");
        Assert.True(site.Answer().About(3).Share("leak-to-earth", "leaking-run") > 0.9);
    }

    [Fact]
    public void A_long_thin_run_that_chatters_has_nothing_broken()
    {
        var site = Site.Bare();
        site.Add(new BoxFact { Id = "b1", Label = "box 1", Position = new(1000, 0) });
        site.Station(1).Cable("k1", "c", "b1", 1000, "s1");
        site.Add(new ValveFact { Id = "v1", Box = "b1", Station = "s1" });
        site.Add(new CableFact { Id = "k1", From = "c", To = "b1", CommonGauge = WireSize.FromAwg(18) });
        var ohms = 31 + (1000 * 2 * 6.385 / 304.8 * (1 - (0.00393 * 5)));
        site.Read("idle volts", "26.5 V").Read("station ohms", Site.Ohms(ohms), "s1").Run(1, "chatters");
        var question = site.Answer().About(1);
        Assert.Equal("as-built", question.Leading());
        Assert.Equal(PracticeBook.Default.Repair("run improved")!.Say, question.Explanations[0].Repair);
    }

    [Fact]
    public void A_doubtful_reading_is_taken_again_until_two_agree_against_it_and_asks_nothing_more()
    {
        var site = Site.Line().Sweep(60, (4, "24.0 ohm")).Run(4, "opens", "lawn 4").ReadAt("b2", "valve volts", "25.9 V", "s4");
        Assert.Equal("misread", site.Answer(Books.AsNoted).About(4).Leading());
        var sound = Site.Ohms(Site.SoundOhms(120, 2));
        Assert.NotEmpty(site.Read("station ohms", sound, "s4").Answer(Books.AsNoted).About(4).Repeats);
        Assert.DoesNotContain(site.Read("station ohms", sound, "s4").Answer(Books.AsNoted).Questions, q => q.Stations.Contains("4"));
    }

    [Fact]
    public void A_reading_that_fits_nothing_is_to_be_repeated_or_is_not_modelled()
    {
        var question = Site.Line().Sweep().Read("terminal volts", "41.7 V", "s3").Answer().About(3);
        Assert.True(question.Share("misread", "unmodelled") > 0.95);
    }

    [Fact]
    public void Volts_that_no_controller_gives_are_a_danger_before_they_are_a_slip()
    {
        var site = Site.Line().Sweep().Read("terminal volts", "120 V", "s3");
        Assert.Contains(site.Open().Problems, p => p.Reason.Contains("mains", StringComparison.Ordinal) && p.Remedy.Contains("Hands off", StringComparison.Ordinal));
        Assert.All(site.Answer().About(3).Moves, m => Assert.StartsWith("Mains may be on this wire", m.Caution, StringComparison.Ordinal));
    }

    [Fact]
    public void Stations_whose_wires_nobody_noted_can_be_swapped()
    {
        var site = Site.Bare().Station(1).Station(2).Station(3);
        site.Read("station ohms", "29 ohm", "s1").Read("station ohms", "30 ohm", "s2").Read("station ohms", "31 ohm", "s3");
        Assert.Equal("swapped-conductors", site.Run(1, "opens", "lawn 2").Run(2, "opens", "lawn 1").Run(3, "opens", "lawn 3").Answer().About(1).Leading());
    }

    [Fact]
    public void A_valve_that_opened_somewhere_else_needs_no_thicker_wire()
    {
        var question = Site.Line().Sweep().Run(3, "opens", "the pond").Answer().About(3);
        Assert.DoesNotContain(question.Moves, m => m.Action.Contains("thicker wire", StringComparison.Ordinal));
    }
}
