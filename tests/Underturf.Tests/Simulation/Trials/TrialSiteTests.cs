using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;
using Underturf.Simulation;
using Underturf.Simulation.Trials;
using Underturf.Tests.Reasoning;

namespace Underturf.Tests.Simulation.Trials;

/// <summary>What work and looks do to an invented property of six stations on three boxes in a line. Faults are invented.</summary>
public sealed class TrialSiteTests
{
    private static readonly PracticeBook Book = PracticeBook.Default;

    [Fact]
    public void A_right_repair_mends_its_fault_and_the_next_reading_is_sound()
    {
        var site = Of(Fault("parted-splice", "s3", "b2"));
        Assert.Equal("over range", site.See(Ohms("s3")));
        Assert.True(site.Work(new WorkFact { Did = "splice remade", Place = "b2", Target = "s3" }));
        Assert.Empty(site.Truth.Faults);
        Assert.NotEqual("over range", site.See(Ohms("s3")));
        Assert.Contains(site.Log.Standing, e => e.Fact is WorkFact { Did: "splice remade" });
    }

    [Theory]
    [InlineData("splice remade", "b1", "s3")]
    [InlineData("splice remade", "b2", "s4")]
    [InlineData("coil replaced", "b2", "s3")]
    public void A_repair_of_another_kind_place_or_station_mends_nothing(string did, string place, string station)
    {
        var site = Of(Fault("parted-splice", "s3", "b2"));
        Assert.False(site.Work(new WorkFact { Did = did, Place = place, Target = station }));
        Assert.Single(site.Truth.Faults);
        Assert.Equal("over range", site.See(Ohms("s3")));
    }

    [Fact]
    public void A_repair_without_a_place_of_its_own_mends_wherever_it_is_done()
    {
        var site = Of(Fault("stuck-shut", "s5", null), new TrueFault("swapped-conductors", "s1", "s2", "b1", 0, 0, []));
        Assert.Equal("stays shut", site.See(new TestFact { Station = "s5" }));
        Assert.True(site.Work(new WorkFact { Did = "valve rebuilt", Place = "b3", Target = "s5" }));
        Assert.StartsWith("opens", site.See(new TestFact { Station = "s5" }), StringComparison.Ordinal);
        Assert.True(site.Work(new WorkFact { Did = "terminals exchanged", Target = "s2" }));
        Assert.Empty(site.Truth.Faults);
    }

    [Fact]
    public void What_stations_share_is_mended_by_work_on_no_station_at_its_place()
    {
        var site = Of(new TrueFault("parted-common-splice", null, null, "b2", 0, 0, []));
        Assert.False(site.Work(new WorkFact { Did = "splice remade", Place = "b1" }));
        Assert.True(site.Work(new WorkFact { Did = "splice remade", Place = "b2" }));
        Assert.NotEqual("over range", site.See(Ohms("s5")));
    }

    [Fact]
    public void Work_at_the_controller_cures_what_has_no_place_and_no_stations_own_valve()
    {
        var site = Of(Fault("stuck-shut", "s5", null), new TrueFault("unclosed-valve", null, null, null, 0, 0, ["the pond"]));
        Assert.True(site.Work(new WorkFact { Did = "valve rebuilt", Place = "c" }));
        Assert.Equal("stuck-shut", Assert.Single(site.Truth.Faults).Fault);
        Assert.False(site.Work(new WorkFact { Did = "valve rebuilt", Place = "c" }));
        Assert.True(site.Work(new WorkFact { Did = "valve rebuilt", Place = "b3" }));
    }

    [Fact]
    public void Thicker_wire_helps_a_sound_station_that_does_not_open_and_no_other()
    {
        var far = new TrialSite(World(Site.Line(900).Log()), 0);
        Assert.NotEqual("opens", far.See(new TestFact { Station = "s5" }).Split(',')[0]);
        Assert.True(far.Work(new WorkFact { Did = Book.AsBuilt.WeakRepair, Place = "b3", Target = "s5" }));
        Assert.StartsWith("opens", far.See(new TestFact { Station = "s5" }), StringComparison.Ordinal);
        Assert.False(Of().Work(new WorkFact { Did = Book.AsBuilt.WeakRepair, Place = "b3", Target = "s5" }));
    }

    [Fact]
    public void A_look_sees_what_is_there_by_the_chance_of_the_book()
    {
        const int Looks = 400;
        var site = Of(Fault("parted-splice", "s3", "b2"));
        var chance = Book.Faults.First(f => f.Id == "parted-splice").Seen;
        var seen = Enumerable.Range(0, Looks).Count(_ => site.See(new LookFact { Place = "b2" }).Contains("parted-splice", StringComparison.Ordinal));

        // Four standard deviations of so many looks.
        Assert.InRange((double)seen / Looks, chance - (4 * Math.Sqrt(chance * (1 - chance) / Looks)), chance + (4 * Math.Sqrt(chance * (1 - chance) / Looks)));
        Assert.Equal("nothing odd", site.See(new LookFact { Place = "b1" }));
    }

    [Fact]
    public void A_look_that_finds_something_says_of_the_others_that_pass_that_nothing_is_odd()
    {
        var site = Of(Fault("parted-splice", "s3", "b2"));
        while (!site.See(new LookFact { Place = "b2" }).Contains("parted", StringComparison.Ordinal))
        {
        }

        var last = site.Log.Standing.Select(e => e.Fact).OfType<LookFact>().TakeLast(2).ToList();
        Assert.Equal(["s3"], last[0].Stations);
        Assert.Equal(["s4", "s5", "s6"], last[1].Stations.Order());
        Assert.Empty(last[1].Found);
    }

    [Fact]
    public void Ohms_outward_of_an_opened_splice_do_not_see_what_lies_between_it_and_the_controller()
    {
        var site = Of(new TrueFault("plain-branch", "s5", null, "b1", 0, 1, ["another place"]));
        var sound = Of();
        Assert.Equal(Outward(sound, "b2"), Outward(site, "b2"));
        Assert.NotEqual(Outward(sound, "b1"), Outward(site, "b1"));
    }

    [Fact]
    public void A_reading_that_does_not_pass_a_drifting_splice_does_not_drift()
    {
        var bad = Of(new TrueFault("bad-splice", "s5", null, "b1", 200, 0, []));
        Assert.Equal(Outward(Of(), "b1"), Outward(bad, "b1"));
        Assert.Equal(Of().See(Coil("s5", "b3")), bad.See(Coil("s5", "b3")));
    }

    [Fact]
    public void A_coil_that_is_not_where_it_was_noted_is_read_where_it_is()
    {
        var built = Site.Line().With(new BoxFact { Id = "x" }).Cable("k4", "b2", "x", 20, "s3").With(new ValveFact { Id = "v3", Box = "x", Station = "s3" });
        var paths = new PathFinder(PropertyHistory.Fold(built.Log().Standing).Now, Book).All();
        Assert.Equal("x", paths.First(p => p.Station == "s3").Valves[0].Place);
        var site = new TrialSite(new World(Site.Line().Log(), []) { Truth = new TrueWiring(paths, [], Book, new TrueNumbers(Book, 7)) }, 0);
        Assert.NotEqual("over range", site.See(Coil("s3", "b2")));
        Assert.Equal(Coil("s3", "b2").Place, Assert.IsType<ReadingFact>(site.Log.Standing[^1].Fact).Place);
    }

    private static string Outward(TrialSite site, string place) =>
        site.See(new ReadingFact { How = "outward ohms", Stations = ["s5"], Place = place, Value = Shown.OverRange });

    private static ReadingFact Coil(string station, string place) => new() { How = "coil ohms", Stations = [station], Place = place, Value = Shown.OverRange };

    private static ReadingFact Ohms(string station) => new() { How = "station ohms", Stations = [station], Value = Shown.OverRange };

    private static TrueFault Fault(string fault, string station, string? place) => new(fault, station, null, place, 0, 0, []);

    private static TrialSite Of(params TrueFault[] faults) => new(World(Site.Line().Log(), faults), 0);

    private static World World(LogDocument log, params TrueFault[] faults)
    {
        var paths = new PathFinder(PropertyHistory.Fold(log.Standing).Now, Book).All();
        return new World(log, faults) { Truth = new TrueWiring(paths, faults, Book, new TrueNumbers(Book, 7)) };
    }
}
