using Underturf.FieldLog;
using Underturf.Planning.Day;
using Underturf.Planning.Day.Interim;
using Underturf.Reasoning;
using Underturf.Tests.Reasoning.Water;

namespace Underturf.Tests.Planning.Day;

/// <summary>On the made-up orchard: what people noted of tickets, parts and states, and laterals that spill.</summary>
public sealed class DayPlanTests
{
    private static readonly DateTimeOffset Eight = new(2032, 4, 13, 8, 0, 0, TimeSpan.Zero);

    /// <summary>No ticket, approval or part changes what is believed.</summary>
    private static readonly Lazy<Answers> Spills = new(() => Broken().Notebook().Answer());

    [Fact]
    public void A_hole_that_was_left_open_is_closed_today_and_its_station_is_watched_or_stays_off_tonight()
    {
        var day = Day(Orchard.Unpiped().With(new LeftAsFact { Place = "v1", State = "hole open, cone beside it", Told = "the gardener" }));
        var left = Assert.Single(day.Left);
        Assert.True(left.Today);
        Assert.Equal("the gardener", left.Told);
        Assert.Contains(day.Rows, r => r.Kind == RowKind.Close && r.Place == "v1");
        var tonight = Station(day, "1");
        Assert.NotEqual(Tonight.Run, tonight.What);
        Assert.Contains("hole", tonight.Why[0].Say);
        Assert.Equal("the gardener", tonight.Why[0].Told);
        Assert.Equal(Tonight.Run, Station(day, "2").What);
    }

    [Fact]
    public void The_day_goes_by_the_clock_of_the_property_wherever_it_is_asked_from()
    {
        var orchard = Orchard.Unpiped().With(new LeftAsFact { Place = "v1", State = "hole open" });
        var day = DayPlan.Of(orchard.Notebook(), new DayAsk(Eight.ToOffset(TimeSpan.FromHours(9)))).Value;
        Assert.Equal((Eight, TimeSpan.Zero, TimeSpan.Zero), (day.Begin, day.Begin.Offset, day.Rows[0].Start.Offset));
    }

    [Fact]
    public void A_place_that_was_closed_since_is_not_carried_over()
    {
        var day = Day(Orchard.Unpiped().With(new LeftAsFact { Place = "v1", State = "hole open" }).With(new LeftAsFact { Place = "v1", State = "closed and tidy" }));
        Assert.Empty(day.Left);
        Assert.All(day.Tonight.Stations, s => Assert.Equal(Tonight.Run, s.What));
    }

    [Fact]
    public void What_does_not_fit_into_the_minutes_is_for_another_day()
    {
        var orchard = Orchard.Unpiped().With(new LeftAsFact { Place = "v1", State = "hole open" }).With(new LeftAsFact { Place = "v4", State = "hole open, covered" });
        var day = Day(orchard, minutes: 25);
        Assert.Equal("v1", Assert.Single(day.Rows).Place);
        Assert.Equal("v4", Assert.Single(day.Later).Place);
        Assert.Equal(["v1"], day.Left.Where(l => l.Today).Select(l => l.Place));
        Assert.All(day.Rows, r => Assert.True(r.End <= Eight.AddMinutes(25)));
    }

    [Fact]
    public void Digging_waits_for_a_ticket_that_is_good_when_it_begins()
    {
        DayAnswer With(params Fact[] facts) => Day(facts.Aggregate(Broken(), (o, f) => o.With(f)), answers: Spills.Value);
        var none = With();
        Assert.DoesNotContain(none.Rows, r => r.Say.Contains("lateral", StringComparison.Ordinal));
        Assert.Equal("a locate ticket for this place", Waiting(none));

        var expired = With(Ticket(Eight.AddDays(-20), Eight.AddHours(-1)));
        Assert.Contains("expired", Waiting(expired));

        var early = With(Ticket(Eight.AddDays(2), Eight.AddDays(20)));
        Assert.Contains("good from", Waiting(early));

        var good = With(Ticket(Eight.AddDays(-2), Eight.AddDays(9)) with { Marked = ["gas", "power"] });
        var row = Assert.Single(good.Rows, r => r.Say.Contains("lateral", StringComparison.Ordinal));
        Assert.Contains("marks of gas, power. Dig by hand within 2 ft of a mark", row.Cautions[0]);
        Assert.Equal("walk along the utility marks", row.Steps[0].Say);
        Assert.True(Assert.Single(good.Tickets).IsValid);

        var later = With(Ticket(Eight.AddMinutes(90), Eight.AddDays(9)));
        Assert.True(Assert.Single(later.Rows, r => r.Say.Contains("lateral", StringComparison.Ordinal)).Start >= Eight.AddMinutes(90));
    }

    [Fact]
    public void A_job_waits_for_parts_that_are_on_order_and_not_for_those_at_hand()
    {
        DayAnswer With(string state) => Day(Broken().With(Ticket(Eight.AddDays(-2), Eight.AddDays(9))).With(new PartsFact { Id = "p", What = "pipe and glue", For = "s1", State = state }), answers: Spills.Value);
        Assert.Contains("pipe and glue, ordered", Waiting(With("ordered")));
        Assert.Empty(With("at hand").Waiting);
    }

    [Fact]
    public void Water_is_shut_once_for_all_jobs_that_need_it_shut_and_let_in_again()
    {
        var day = Day(Orchard.Piped().Turn("i2", "open")
            .Meter("20 gpm", "s3").Meter("20 gpm", "s4").Watch("s1", "bubbling", "wet ground", "weak").Watch("s2", "bubbling", "wet ground", "weak")
            .Read("outlet pressure", "12 psi", "s1").Read("outlet pressure", "12 psi", "s2").Meter("33 gpm", "s1").Meter("33 gpm", "s2")
            .With(Ticket(Eight.AddDays(-2), Eight.AddDays(9)) with { Places = ["v1", "v2"] }));
        Assert.Equal([RowKind.Shut, RowKind.Repair, RowKind.Repair, RowKind.Open], day.Rows.Where(r => r.Kind is RowKind.Shut or RowKind.Open or RowKind.Repair).Select(r => r.Kind));
        Assert.Equal(["1", "2"], day.Rows.First(r => r.Kind == RowKind.Shut).Stations);
        Assert.Equal("i1", day.Rows.First(r => r.Kind == RowKind.Shut).Place);
    }

    [Fact]
    public void A_station_whose_water_stands_shut_stays_dry_tonight()
    {
        var day = Day(Orchard.Piped().Turn("i1", "shut"));
        Assert.Equal(["1", "2"], day.Tonight.Of(Tonight.StaysDry).Select(s => s.Number));
        Assert.Contains("stands shut", Station(day, "1").Why[0].Say);
        Assert.Equal(["3", "4"], day.Tonight.Of(Tonight.Run).Select(s => s.Number));
    }

    [Fact]
    public void Work_is_looked_at_again_once_its_days_are_over()
    {
        var orchard = Orchard.Unpiped().With(new WorkFact { Did = "coil replaced", Place = "v2", Target = "s2" });
        Assert.DoesNotContain(Day(orchard).Rows, r => r.Kind == RowKind.Recheck);
        var row = Assert.Single(Day(orchard, begin: Eight.AddDays(20)).Rows, r => r.Kind == RowKind.Recheck);
        Assert.Equal("run station 2 again: does \"coil replaced\" of 2032-04-12 hold?", row.Say);
    }

    [Fact]
    public void A_place_minutes_or_a_day_that_cannot_be_are_refused_with_a_remedy()
    {
        var notebook = Orchard.Unpiped().Notebook();
        Assert.Contains("Name one of", DayPlan.Of(notebook, new DayAsk(Eight, "nowhere")).Problem!.Remedy);
        Assert.Contains("Give the minutes", DayPlan.Of(notebook, new DayAsk(Eight, null, -3)).Problem!.Remedy);
        Assert.Contains("Give at most 1440", DayPlan.Of(notebook, new DayAsk(Eight, null, 1e9)).Problem!.Remedy);
        Assert.Contains("Give the day", DayPlan.Of(notebook, new DayAsk(DateTimeOffset.MaxValue)).Problem!.Remedy);
    }

    /// <summary>Station 1 spills from a broken lateral, by its flow, its pressure and what was seen.</summary>
    private static Orchard Broken() => Orchard.Unpiped().Meter("20 gpm", "s3").Meter("20 gpm", "s4").Meter("20 gpm", "s2").Watch("s1", "bubbling", "wet ground", "weak").Read("outlet pressure", "12 psi", "s1").Meter("33 gpm", "s1");

    private static LocateTicketFact Ticket(DateTimeOffset from, DateTimeOffset expires) => new() { Id = "t", Number = "A-1107", Places = ["v1"], From = from, Expires = expires };

    private static DayAnswer Day(Orchard orchard, double? minutes = null, DateTimeOffset? begin = null, Answers? answers = null) => DayPlan.Of(orchard.Notebook(), new DayAsk(begin ?? Eight, null, minutes), answers).Value;

    private static string Waiting(DayAnswer day) => Assert.Single(Assert.Single(day.Waiting, w => w.Place == "v1").Wants).Say;

    private static StationTonight Station(DayAnswer day, string number) => Assert.Single(day.Tonight.Stations, s => s.Number == number);
}
