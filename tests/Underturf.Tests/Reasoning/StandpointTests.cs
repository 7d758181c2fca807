using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Reasoning;

namespace Underturf.Tests.Reasoning;

/// <summary>Where one is, how long one has, and what one visit can do for several questions. All values invented.</summary>
public sealed class StandpointTests
{
    private const string Over = "over range";

    private static readonly Lazy<Notebook> ThreeOpen = new(() => Site.Line(300).Sweep(300, (1, Over), (5, Over), (6, "61.0 ohm")).Open());

    [Fact]
    public void Without_a_word_one_stands_at_the_controller_with_all_the_time_in_the_world()
    {
        var (plain, said) = (ThreeOpen.Value.Answer(), ThreeOpen.Value.Answer(new Standpoint("controller c")).Value);
        Assert.NotEmpty(plain.Moves);
        Assert.Equal(AnswersJson.Write(plain), AnswersJson.Write(said));
    }

    [Theory]
    [InlineData("b3")]
    [InlineData("box 3")]
    [InlineData("BOX 3")]
    public void A_place_is_known_by_id_or_label(string name)
    {
        var moves = ThreeOpen.Value.Answer(new Standpoint(name)).Value.Moves;
        Assert.Contains(moves, m => m.Place == "b3");
        Assert.All(moves.Where(m => m.Place == "b3"), m => Assert.Equal(0, m.WalkMinutes));
    }

    [Fact]
    public void The_walk_is_counted_from_where_one_is()
    {
        double Walk(string? at, string place) => ThreeOpen.Value.Answer(new Standpoint(at)).Value.Questions.SelectMany(q => q.Moves).First(m => m.Place == place).WalkMinutes;
        var perMinute = PracticeBook.Default.Walk.MetresPerMinute;
        Assert.Equal(900 / perMinute, Walk(null, "b3"), 9);
        Assert.Equal(600 / perMinute, Walk("b1", "b3"), 9);
        Assert.Equal(300 / perMinute, Walk("b1", "c"), 9);
    }

    [Fact]
    public void Finding_a_place_that_nobody_has_found_is_no_walking()
    {
        var hidden = Site.Bare().Station(1).Read("station ohms", "15.4 ohm", "s1").Answer().Questions.SelectMany(q => q.Moves).First(m => m.Place != "c");
        var book = PracticeBook.Default.Walk;
        Assert.Equal(book.FindMinutes, hidden.FindMinutes, 9);
        Assert.Equal(book.UnknownMetres / book.MetresPerMinute, hidden.WalkMinutes, 9);
    }

    [Fact]
    public void Where_nothing_fits_the_time_the_nearest_that_would_be_worth_it_is_named()
    {
        var far = Site.Line(300).Sweep(300, (3, Over)).Open();
        var few = far.Answer(new Standpoint("b3", 1)).Value;
        Assert.Empty(few.Together);
        var nearest = few.Nearest!;
        Assert.True(nearest.Minutes > 1 && nearest.Worth > 0);
        Assert.Contains(far.Answer(new Standpoint("b3", nearest.Minutes)).Value.Together, m => m.Place == nearest.Place);
        Assert.Null(far.Answer(new Standpoint("b3", 500)).Value.Nearest);
    }

    [Fact]
    public void A_place_that_nobody_noted_and_minutes_that_are_none_are_told()
    {
        Assert.Contains("is not noted", ThreeOpen.Value.Answer(new Standpoint("box 77")).Problem!.Reason, StringComparison.Ordinal);
        Assert.Contains("box 1", ThreeOpen.Value.Answer(new Standpoint("box 77")).Problem!.Remedy, StringComparison.Ordinal);
        Assert.All(new[] { 0, -5, double.NaN, double.PositiveInfinity }, m => Assert.False(ThreeOpen.Value.Answer(new Standpoint(null, m)).Succeeded));
    }

    [Theory]
    [InlineData(5)]
    [InlineData(30)]
    [InlineData(90)]
    public void What_is_proposed_fits_the_time_and_is_walked_in_order(double minutes)
    {
        var moves = ThreeOpen.Value.Answer(new Standpoint(null, minutes)).Value.Moves;
        Assert.True(moves.Sum(m => m.Minutes) <= minutes + 1e-9);
        var at = 0.0;
        foreach (var move in moves)
        {
            var there = move.Place == "c" ? 0 : 300 * (move.Place[1] - '0');
            Assert.Equal(Math.Abs(there - at) / PracticeBook.Default.Walk.MetresPerMinute, move.WalkMinutes, 9);
            at = there;
        }
    }

    [Fact]
    public void More_time_never_saves_less()
    {
        double Saved(double minutes) => ThreeOpen.Value.Answer(new Standpoint("b2", minutes)).Value.Moves.Sum(m => m.Worth - m.Minutes);
        var saved = new[] { 10.0, 60, 240 }.Select(Saved).ToList();
        Assert.Equal(saved.Order(), saved);
        Assert.True(saved[^1] > 0);
    }

    [Fact]
    public void No_place_is_walked_to_twice_for_what_one_visit_can_do()
    {
        var visits = ThreeOpen.Value.Answer().Moves.Where(m => !m.IsRepair).Select(m => m.Place).ToList();
        Assert.Equal(visits.Distinct(), visits);
    }

    [Fact]
    public void Two_questions_that_end_in_one_far_box_are_one_walk()
    {
        var visit = Assert.Single(TwoInOneBox(Only("open-coil", "open-conductor")).Moves, m => !m.IsRepair);
        Assert.Equal(2, visit.Steps.Select(s => s.Question).Distinct().Count());
        Assert.Equal(300 * (visit.Place[1] - '0') / PracticeBook.Default.Walk.MetresPerMinute, visit.WalkMinutes, 9);
        Assert.Equal(visit.Minutes, visit.WalkMinutes + visit.Steps.Sum(s => s.Minutes), 9);
    }

    [Fact]
    public void A_look_that_serves_two_questions_costs_its_minutes_once()
    {
        var book = Only("parted-splice", "open-coil");
        var answers = TwoInOneBox(book with { Instruments = [.. book.Instruments.Select(i => i with { Owned = false })] });
        var visit = answers.Moves.First(m => !m.IsRepair);
        Assert.IsType<LookFact>(Assert.Single(visit.Steps).Asks);
        Assert.Equal(book.Look.Minutes, visit.Minutes - visit.WalkMinutes, 9);
        Assert.Equal(2, answers.Questions.Count);
        var apart = answers.Questions.Select(q => q.Moves.First(m => m.Place == visit.Place && m.Steps[0].Asks is LookFact).Worth).Sum();
        Assert.Equal(apart, visit.Worth, 0.5);
    }

    private static Answers TwoInOneBox(PracticeBook book) => Site.Line(300).Sweep(300, (5, Over), (6, Over)).Answer(book);

    private static PracticeBook Only(params string[] faults) => PracticeBook.Default with
    {
        Faults = [.. PracticeBook.Default.Faults.Where(f => faults.Contains(f.Id))],
        Questions = PracticeBook.Default.Questions with { ListMoves = 100 },
    };

    [Fact]
    public void Each_move_says_what_it_tells_apart() =>
        Assert.All(ThreeOpen.Value.Answer().Moves.Where(m => !m.IsRepair), m => Assert.Contains("\" from \"", m.Why, StringComparison.Ordinal));
}
