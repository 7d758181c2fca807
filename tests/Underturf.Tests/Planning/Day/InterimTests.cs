using Underturf.FieldLog;
using Underturf.Planning.Day;
using Underturf.Planning.Day.Interim;
using Underturf.Property.Practice;
using Underturf.Reasoning;
using Underturf.Tests.Reasoning.Water;

namespace Underturf.Tests.Planning.Day;

/// <summary>What may run tonight, from invented explanations: their weights and the effects of their faults decide, never a name.</summary>
public sealed class InterimTests
{
    private static readonly DateTimeOffset Eight = new(2032, 4, 13, 8, 0, 0, TimeSpan.Zero);
    private static readonly Notebook Quiet = Orchard.Unpiped().Notebook();

    /// <summary>Worked by hand: unattended 0.9 (0.5 x 120) = 54, attended 15 + 0.9 (0.1 x 120) = 25.8, dry 60 (1 - 0.9 x 0.97) = 7.62: the least is to leave it off.</summary>
    [Fact]
    public void A_short_circuit_must_not_run()
    {
        var station = TonightOf("s1", ("shorted-conductors", 0.9), ("as-built", 0.1));
        Assert.Equal(Tonight.MustNot, station.What);
        Assert.Equal((54, 25.8, 7.62), (Math.Round(station.Harm, 2), Math.Round(station.HandHarm, 2), Math.Round(station.DryLoss, 2)));
        Assert.Contains("protection", station.Why[0].Say);
    }

    [Fact]
    public void The_same_fault_under_another_id_does_the_same()
    {
        var book = PracticeBook.Default;
        var renamed = book with { Faults = [.. book.Faults.Select(f => f.Id == "shorted-conductors" ? f with { Id = "something-else", Say = "in other words" } : f)] };
        Assert.Equal(Tonight.MustNot, TonightOf(Orchard.Unpiped().Notebook(renamed), "s1", ("something-else", 0.9)).What);
        Assert.Equal(Tonight.Run, TonightOf(Orchard.Unpiped().Notebook(renamed), "s1", ("shorted-conductors", 0.9)).What);
    }

    [Fact]
    public void A_lateral_that_spills_runs_by_hand_only() => Assert.Equal(Tonight.ByHand, TonightOf("s1", ("lateral-break", 0.9)).What);

    [Fact]
    public void An_open_circuit_stays_dry_whatever_the_programme_says() => Assert.Equal(Tonight.StaysDry, TonightOf("s1", ("open-conductor", 0.95)).What);

    [Fact]
    public void A_station_about_which_nothing_is_asked_runs_and_so_does_one_with_a_trifle() =>
        Assert.Equal([Tonight.Run, Tonight.Run], [TonightOf("s2").What, TonightOf("s1", ("bad-splice", 0.8)).What]);

    [Fact]
    public void Explanations_that_no_move_tells_apart_count_by_their_own_shares()
    {
        var told = new Explanation("open-conductor", 0.9, "one of two", [], [], "") { Alike = [new("open-conductor", 0.5, "", ""), new("shorted-conductors", 0.4, "", "")] };
        var station = TonightOf(Quiet, "s1", told);
        Assert.Equal(0.4 * 60, station.Harm, 0.2);
    }

    [Fact]
    public void A_hole_that_today_closes_lets_its_station_run_after_the_order()
    {
        var day = DayPlan.Of(Orchard.Unpiped().With(new LeftAsFact { Place = "v1", State = "hole open" }).Notebook(), new DayAsk(Eight)).Value;
        var station = day.Tonight.Stations.Single(s => s.Number == "1");
        Assert.NotEqual(Tonight.Run, station.What);
        Assert.Equal(Tonight.Run, station.Then);
    }

    [Fact]
    public void A_temporary_splice_concerns_the_stations_it_names_and_else_one_of_those_that_pass()
    {
        LeftAsFact left = new() { Place = "c", State = "wire cut" };
        var all = DayPlan.Of(Orchard.Unpiped().With(left).Notebook(), new DayAsk(Eight)).Value.Tonight;
        var one = DayPlan.Of(Orchard.Unpiped().With(left with { Stations = ["s2"] }).Notebook(), new DayAsk(Eight)).Value.Tonight;
        Assert.All(all.Stations, s => Assert.Equal(0.75, s.Waters, 1e-9));
        Assert.Equal(["2"], one.Of(Tonight.StaysDry).Select(s => s.Number));
    }

    private static StationTonight TonightOf(string station, params (string Fault, double Share)[] told) => TonightOf(Quiet, station, told);

    private static StationTonight TonightOf(Notebook notebook, string station, params (string Fault, double Share)[] told) =>
        TonightOf(notebook, station, [.. told.Select(t => new Explanation(t.Fault, t.Share, t.Fault, [], [], ""))]);

    private static StationTonight TonightOf(Notebook notebook, string station, params Explanation[] told)
    {
        var question = new OpenQuestion("q", "something is odd", ["1"], told, [], [], false);
        var answers = new Answers("0", "0", told.Length > 0 ? [question] : [], []);
        return DayPlan.Of(notebook, new DayAsk(Eight), answers).Value.Tonight.Stations.Single(s => s.Station == station);
    }
}
