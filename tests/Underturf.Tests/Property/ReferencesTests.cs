using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Quantities;

namespace Underturf.Tests.Property;

public sealed class ReferencesTests
{
    public static TheoryData<Fact, string> Dangling { get; } = new()
    {
        { new StationFact { Id = "s", Controller = "nowhere", Terminal = 1 }, "controller" },
        { new ValveFact { Id = "v", Box = "nowhere" }, "box" },
        { new ValveFact { Id = "v", Station = "nowhere" }, "station" },
        { new CoilFact { Id = "k", Valve = "nowhere" }, "valve" },
        { new EndFact { Id = "e", Place = "nowhere" }, "place" },
        { new EndFact { Id = "e", Place = "c", FarEnd = "nowhere" }, "end" },
        { new EndFact { Id = "e", Place = "c", Mates = ["nowhere"] }, "end" },
        { new SpliceFact { Id = "j", Place = "c", Joins = ["nowhere"] }, "end" },
        { new CableFact { Id = "k", From = "c", To = "nowhere" }, "place" },
        { new ControllerFact { Id = "c", Terminals = 6, Master = "nowhere" }, "valve or place" },
        { new CableFact { Id = "k", From = "c", To = "nowhere", Carries = ["nowhere"] }, "station" },
        { new LookFact { Place = "nowhere" }, "place" },
        { new ReadingFact { How = "coil ohms", Value = Shown.OverRange, Place = "nowhere" }, "place" },
        { new WorkFact { Did = "looked", Target = "nowhere" }, "thing" },
        { new LeftAsFact { Place = "nowhere", State = "open" }, "place" },
        { new LeftAsFact { Place = "c", State = "open", Stations = ["nowhere"] }, "station" },
        { new LocateTicketFact { Id = "t", Places = ["nowhere"] }, "place" },
        { new ApprovalFact { Id = "a", About = "nowhere", Of = "owner", State = "asked" }, "thing" },
        { new PartsFact { Id = "p", For = "nowhere", State = "needed" }, "thing" },
    };

    [Theory]
    [MemberData(nameof(Dangling), DisableDiscoveryEnumeration = true)]
    public void A_name_of_something_nobody_noted_is_told_with_its_remedy(Fact fact, string kind)
    {
        var diary = Controller();
        var entry = diary.Note(2, fact);
        var problem = Assert.Single(References.Problems(diary.Fold()));
        Assert.Equal(entry.ToString(), problem.Place);
        Assert.Contains("'nowhere'", problem.Reason, StringComparison.Ordinal);
        Assert.Contains(kind, problem.Remedy, StringComparison.Ordinal);
    }

    public static TheoryData<Fact, string> Impossible { get; } = new()
    {
        { new CableFact { Id = "k", From = "c", To = "c" }, "to itself" },
        { new ControllerFact { Id = "d", Terminals = 12, Supply = new Voltage(0) }, "not within 1 V to 1000 V" },
        { new ControllerFact { Id = "d", Terminals = 12, Frequency = new Frequency(0) }, "not within 1 Hz to 1000 Hz" },
        { new ControllerFact { Id = "d", Terminals = 12, Frequency = new Frequency(1e9) }, "not within 1 Hz to 1000 Hz" },
        { new ControllerFact { Id = "d", Terminals = 12, Rated = new ApparentPower(0) }, "not within 1 VA to 100000 VA" },
        { new ControllerFact { Id = "d", Terminals = 12, Rated = new ApparentPower(0.04) }, "not within 1 VA to 100000 VA" },
        { new ControllerFact { Id = "d", Terminals = 12, Master = "k" }, "is no valve and no place" },
        { new ControllerFact { Id = "d", Terminals = 12, PumpRelay = new PumpRelay(true, new Resistance(0)) }, "not within 0.1 ohm to 1000000 ohm" },
        { new ControllerFact { Id = "d", Terminals = 12, PumpRelay = new PumpRelay(true, new Resistance(1e12)) }, "not within 0.1 ohm to 1000000 ohm" },
        { new ControllerFact { Id = "d", Terminals = 12, Master = "d" }, "names the controller itself" },
    };

    [Theory]
    [MemberData(nameof(Impossible), DisableDiscoveryEnumeration = true)]
    public void What_cannot_be_is_told_with_its_remedy(Fact fact, string reason)
    {
        var diary = Controller();
        diary.Note(2, new BoxFact { Id = "b" });
        diary.Note(3, new CableFact { Id = "k", From = "c", To = "b" });
        diary.Note(4, fact);
        Assert.Contains(reason, Assert.Single(References.Problems(diary.Fold())).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Each_field_of_a_supply_that_cannot_be_is_told_by_itself()
    {
        var diary = Controller();
        diary.Note(2, new ControllerFact { Id = "d", Terminals = 12, Supply = new Voltage(1e6), Frequency = new Frequency(1e9), Rated = new ApparentPower(0) });
        Assert.Equal(["supply", "frequency", "rated"], References.Problems(diary.Fold()).Select(p => p.Place.Split('\'')[3]));
    }

    [Theory]
    [InlineData("America/Denver", true)]
    [InlineData("America/Argentina/Salta", true)]
    [InlineData("Etc/GMT+7", true)]
    [InlineData("UTC", true)]
    [InlineData("MST", false)]
    [InlineData("mountain time", false)]
    [InlineData("america/denver", false)]
    [InlineData("America/", false)]
    [InlineData("America/Denver/", false)]
    [InlineData("UTC-7", false)]
    [InlineData("America/Nowhere", false)]
    [InlineData("../etc/passwd", false)]
    public void A_time_zone_is_held_against_the_table_of_time_zones(string zone, bool sane)
    {
        var diary = Controller();
        diary.Note(2, new PropertyFact { Name = "A made-up garden", Zone = zone });
        Assert.Equal(sane, !References.Problems(diary.Fold()).Any(p => p.Place == "property, field 'zone'" && p.Remedy.Contains("America/Denver", StringComparison.Ordinal)));
    }

    public static TheoryData<Fact, string> NotTheSame { get; } = new()
    {
        { new SameAsFact { A = "s1", B = "b" }, "are the same" },
        { new SameAsFact { A = "s1", B = "s2" }, "terminals 1 and 2" },
        { new SameAsFact { A = "s1", B = "nowhere" }, "'nowhere', which nobody has noted" },
        { new ValveFact { Id = "b" }, "for a box and for a valve" },
    };

    [Theory]
    [MemberData(nameof(NotTheSame), DisableDiscoveryEnumeration = true)]
    public void Ids_that_cannot_stand_for_one_thing_are_told(Fact fact, string reason)
    {
        var diary = Controller();
        diary.Note(2, new StationFact { Id = "s1", Controller = "c", Terminal = 1 });
        diary.Note(3, new StationFact { Id = "s2", Controller = "c", Terminal = 2 });
        diary.Note(4, new BoxFact { Id = "b" });
        diary.Note(5, fact);
        Assert.Contains(References.Problems(diary.Fold()), p => p.Reason.Contains(reason, StringComparison.Ordinal) && p.Remedy.Length > 0);
    }

    [Fact]
    public void A_thing_noted_after_it_was_named_is_known()
    {
        var diary = Controller();
        diary.Note(2, new ValveFact { Id = "v", Box = "b" });
        diary.Note(3, new BoxFact { Id = "b" });
        Assert.Empty(References.Problems(diary.Fold()));
    }

    [Fact]
    public void A_valve_that_is_said_to_sit_in_a_valve_is_told_and_has_no_place()
    {
        var diary = Controller();
        diary.Note(2, new ValveFact { Id = "v", Box = "w" });
        diary.Note(3, new ValveFact { Id = "w", Box = "v" });
        diary.Note(4, new ValveFact { Id = "x", Box = "x" });
        Assert.Equal(["valve 'v'", "valve 'w'", "valve 'x'"], References.Problems(diary.Fold()).Select(p => p.Place));
        Assert.All(["v", "w", "x"], id => Assert.Null(diary.Fold().Now.PositionOf(id)));
    }

    [Fact]
    public void Two_stations_on_one_terminal_are_told_until_they_are_said_to_be_the_same()
    {
        var diary = Controller();
        diary.Note(2, new StationFact { Id = "s1", Controller = "c", Terminal = 3 });
        diary.Note(3, new StationFact { Id = "s2", Controller = "c", Terminal = 3 });
        var problem = Assert.Single(References.Problems(diary.Fold()));
        Assert.Equal("stations 's1', 's2'", problem.Place);
        Assert.Contains("share terminal 3", problem.Reason, StringComparison.Ordinal);
        Assert.Contains("same-as", problem.Remedy, StringComparison.Ordinal);
        diary.Note(4, new SameAsFact { A = "s1", B = "s2" });
        Assert.Empty(References.Problems(diary.Fold()));
    }

    [Fact]
    public void A_terminal_that_the_controller_does_not_have_is_told()
    {
        var diary = Controller();
        diary.Note(2, new StationFact { Id = "s", Controller = "c", Terminal = 7 });
        Assert.Contains(References.Problems(diary.Fold()), p =>
            p.Place == "station 's'" && p.Reason.Contains("terminal 7, but the controller has 1 to 6", StringComparison.Ordinal));
    }

    [Fact]
    public void The_same_terminal_of_two_controllers_is_no_clash()
    {
        var diary = Controller();
        diary.Note(2, new ControllerFact { Id = "d", Terminals = 6 });
        diary.Note(3, new StationFact { Id = "s1", Controller = "c", Terminal = 3 });
        diary.Note(4, new StationFact { Id = "s2", Controller = "d", Terminal = 3 });
        Assert.Empty(References.Problems(diary.Fold()));
    }

    private static Diary Controller()
    {
        var diary = new Diary();
        diary.Note(1, new ControllerFact { Id = "c", Terminals = 6 });
        return diary;
    }
}
