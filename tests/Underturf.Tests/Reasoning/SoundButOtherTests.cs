using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Tests.Reasoning;

/// <summary>Sound parts that are other than was noted, and notes that are another station's.</summary>
public sealed class SoundButOtherTests
{
    [Fact]
    public void A_sound_coil_of_another_make_asks_nothing()
    {
        var site = Site.Line().Sweep(60, (3, "42.0 ohm"));
        Assert.DoesNotContain(site.Answer().Questions, q => q.Stations.Contains("3"));
        Assert.Contains(site.Answer(Books.AsNoted).Questions, q => q.Stations.Contains("3"));
    }

    [Fact]
    public void A_coil_that_draws_nothing_is_none_of_another_make() =>
        Assert.Equal("open-coil", Site.Line().Sweep(60, (3, "over range")).ReadAt("b2", "coil ohms", "over range", "s3").Answer().About(3).Leading());

    [Fact]
    public void What_both_stations_of_a_run_show_is_a_longer_run_before_it_is_a_fault_of_the_common()
    {
        var more = Site.Ohms(Site.SoundOhms(600, 3) + 9);
        var site = Site.Line(200).Sweep(200, (5, more), (6, more));
        var worlds = Worlds(site, PracticeBook.Default)["s5"];
        Assert.True(Share(worlds, f => f.RunRatio is not null) > 10 * Share(worlds, f => f.Scope == FaultScope.CommonSplice));
        Assert.DoesNotContain(site.Answer().Questions, q => q.Stations.Intersect(["5", "6"]).Any());
    }

    [Fact]
    public void A_valve_that_nobody_found_may_lie_farther_on()
    {
        double Farther(params Fact[] notes)
        {
            var site = Site.Bare();
            site.Add(new BoxFact { Id = "b1", Label = "box 1", Position = new Position(60, 0) });
            site.Cable("k1", "c", "b1", 60, "s1", "s2", "s3", "s4");
            for (var s = 1; s <= 4; s++)
            {
                site.Station(s).Read("station ohms", Site.Ohms(Site.SoundOhms(60, 1) + (s == 1 ? 2 : 0)), $"s{s}");
            }

            foreach (var note in notes)
            {
                site.Add(note);
            }

            return Share(Worlds(site, PracticeBook.Default)["s1"], f => f.MoreMetres is not null);
        }

        Assert.True(Farther() > 0.1);
        Assert.Equal(0, Farther(new ValveFact { Id = "v1", Box = "b1", Station = "s1" }));
    }

    [Fact]
    public void What_all_stations_of_a_cable_show_whose_valves_nobody_found_is_a_cable_that_goes_on_and_no_bad_common()
    {
        var site = Site.TwoCables(4);
        var worlds = Worlds(site, PracticeBook.Default)["s2"];
        var (farther, splice) = (Share(worlds, f => f is { Scope: FaultScope.Run, MoreMetres: not null }), Share(worlds, f => f.Scope == FaultScope.CommonSplice));
        Assert.True(farther > 10 * splice, $"{farther} against {splice}");
        Assert.Empty(site.Answer().Questions);
    }

    [Fact]
    public void A_wrong_note_rather_shows_what_another_station_shows()
    {
        double Wrong(double anothers)
        {
            var book = PracticeBook.Default with { Unmodelled = PracticeBook.Default.Unmodelled with { Anothers = anothers } };
            var site = Site.Line().Sweep(60, (3, "32.8 ohm")).Run(3, "stays shut").Read("station ohms", "3.2 ohm", "s3");
            return Worlds(site, book)["s3"].Where(w => w.Suspects.Any(s => s.Note is not null) && w.Suspects.Length > 1).Sum(w => w.Probability);
        }

        Assert.True(Wrong(0.5) > Wrong(0.01));
    }

    [Fact]
    public void A_coil_on_another_common_of_the_same_controller_reads_open_and_runs()
    {
        double Joined(double live)
        {
            var book = PracticeBook.Default with { Faults = [.. PracticeBook.Default.Faults.Select(f => f.OtherCommon ? f with { OtherLive = live } : f)] };
            return Share(Worlds(Site.Line().Sweep(60, (3, "over range")).Read("station ohms", "over range", "s3").Run(3, "opens", "lawn 3").Read("running amps", "0.21 A", "s3"), book)["s3"], f => f.OtherCommon);
        }

        Assert.True(Joined(0.5) > 0.5, $"{Joined(0.5)}");
        Assert.True(Joined(0) < 0.1, $"{Joined(0)}");
    }

    [Fact]
    public void Between_stations_that_may_return_by_two_commons_an_open_reading_says_little()
    {
        double Sound(int commons)
        {
            var site = Site.Line();
            site.Cable("k9", "c", "b1", 60, "s7").Station(7).With(new ValveFact { Id = "v7", Box = "b1", Station = "s7" });
            for (var c = 1; c <= commons; c++)
            {
                site.Add(new EndFact { Id = $"e{c}", Place = "c", Common = true });
            }

            site.Sweep().Read("station ohms", Site.Ohms(Site.SoundOhms(60, 1)), "s7").Read("station to station ohms", "over range", "s1", "s7");
            return Worlds(site, PracticeBook.Default)["s1"].Where(w => w.AsksNothing).Sum(w => w.Probability);
        }

        Assert.True(Sound(2) > 0.9, $"{Sound(2)}");
        Assert.True(Sound(1) < 0.5, $"{Sound(1)}");
    }

    private static double Share(IEnumerable<World> worlds, Func<FaultPractice, bool> which) => worlds.Where(w => w.Suspects.Any(s => which(s.Fault))).Sum(w => w.Probability);

    private static IReadOnlyDictionary<string, IReadOnlyList<World>> Worlds(Site site, PracticeBook book) =>
        BeliefEngine.Of(new Case(PropertyHistory.Fold(site.Log().Standing), book), "c").Stations;
}
