using Underturf.FieldLog;
using Underturf.Property.Practice;

namespace Underturf.Tests.Reasoning;

/// <summary>Moves against a brute-force expected loss that is computed here, apart from the product.</summary>
public sealed class MoveTests
{
    private static readonly PracticeBook TwoFaults = PracticeBook.Default with
    {
        Faults = [.. PracticeBook.Default.Faults.Where(f => f.Id is "open-coil" or "open-conductor")],
        Questions = PracticeBook.Default.Questions with { ListMoves = 100 },
    };

    [Fact]
    public void The_best_move_of_a_small_case_equals_brute_force()
    {
        var question = OpenStation(60).Answer(TwoFaults).About(1);
        var (coil, wire) = (question.Share("open-coil"), question.Share("open-conductor"));
        Assert.Equal(1, coil + wire, 4);

        var wrong = TwoFaults.Loss.WrongRepairMinutes + (coil * TwoFaults.Repair("coil replaced")!.Minutes) + (wire * TwoFaults.Repair("conductor mended")!.Minutes);
        double Act(double walk, double ofCoil, double ofWire) => ActFrom(walk, ofCoil, ofWire, wrong);

        // A coil read alone, or its leads joined, tells the two apart for certain; whoever has read it stands where the repair is. A look sees each with the
        // book's chance, and where it saw nothing the coil can be read in the same box.
        var told = Act(1, coil, wire) - Act(0, coil, 0) - Act(0, 0, wire);
        var (seenCoil, seenWire) = (TwoFaults.Faults.First(f => f.Id == "open-coil").Seen, TwoFaults.Faults.First(f => f.Id == "open-conductor").Seen);
        var (unseenCoil, unseenWire) = (coil * (1 - seenCoil), wire * (1 - seenWire));
        var read = (TwoFaults.Probe("coil ohms")!.Minutes * (unseenCoil + unseenWire)) + Act(0, unseenCoil, 0) + Act(0, 0, unseenWire);
        var looked = Act(1, coil, wire) - Act(0, coil * seenCoil, 0) - Act(0, 0, wire * seenWire) - Math.Min(read, Act(0, unseenCoil, unseenWire));
        var coilOhms = Assert.Single(question.Moves, m => m.Action.StartsWith("ohms of the coil alone", StringComparison.Ordinal));
        var joined = Assert.Single(question.Moves, m => m.Action.Contains("leads joined", StringComparison.Ordinal));
        Assert.Equal(told, coilOhms.Worth, 1);
        Assert.Equal(told, joined.Worth, 1);
        var look = question.Moves.FirstOrDefault(m => m.Action == TwoFaults.Look.Say);
        Assert.Equal(looked, look?.Worth ?? 0, 1);

        var best = new[] { coilOhms, joined }.MinBy(m => m.Minutes);
        Assert.Equal(best, question.Moves[0]);
    }

    [Fact]
    public void A_move_is_never_worth_less_than_nothing_nor_more_than_all_that_can_be_lost()
    {
        foreach (var question in Odd().Answer().Questions)
        {
            Assert.NotEmpty(question.Moves);
            Assert.All(question.Moves, m => Assert.InRange(m.Worth, 0, PracticeBook.Default.Loss.WrongRepairMinutes + 1e-6));
            Assert.All(question.Moves, m => Assert.True(m.Minutes > 0 && m.Caution.Length > 0));
        }
    }

    [Theory]
    [InlineData("voltmeter", "volts")]
    [InlineData("clamp meter", "current")]
    [InlineData("ohmmeter", "ohms")]
    public void An_instrument_that_is_not_owned_is_not_proposed(string instrument, string word)
    {
        var book = PracticeBook.Default with
        {
            Instruments = [.. PracticeBook.Default.Instruments.Select(i => i.Name == instrument ? i with { Owned = false } : i)],
            Questions = PracticeBook.Default.Questions with { ListMoves = 100 },
        };
        var moves = Odd().Answer(book).Moves;
        Assert.NotEmpty(moves);
        Assert.DoesNotContain(moves, m => m.Action.StartsWith(word, StringComparison.Ordinal));
    }

    [Fact]
    public void A_box_further_away_costs_the_walk_there()
    {
        var book = PracticeBook.Default with { Questions = PracticeBook.Default.Questions with { ListMoves = 100 } };
        double Minutes(double metres) => OpenStation(metres).Answer(book).About(1).Moves.First(m => m.Action == PracticeBook.Default.Look.Say && m.Where == "box 1").Minutes;
        Assert.Equal((600 - 60) / PracticeBook.Default.Walk.MetresPerMinute, Minutes(600) - Minutes(60), 6);
    }

    [Fact]
    public void A_place_that_nobody_has_found_costs_the_search()
    {
        var site = Site.Bare().Station(1).Station(2).Read("station ohms", "over range", "s1").Read("station ohms", "34 ohm", "s2");
        var book = PracticeBook.Default with { Questions = PracticeBook.Default.Questions with { ListMoves = 100 } };
        var away = site.Answer(book).About(1).Moves.Where(m => m.Where != "controller c").ToList();
        Assert.NotEmpty(away);
        Assert.All(away, m => Assert.True(m.Minutes > PracticeBook.Default.Walk.FindMinutes));
    }

    [Fact]
    public void Moves_of_all_questions_stand_best_first()
    {
        var answers = Odd().Answer();
        var gains = answers.Moves.Select(m => m.Worth - m.Minutes).ToList();
        Assert.Equal(gains.OrderDescending(), gains);
        Assert.All(answers.Moves, m => Assert.Contains(answers.Questions, q => q.Id == m.Question));
    }

    [Fact]
    public void What_was_read_once_without_doubt_is_not_proposed_again()
    {
        var question = OpenStation(60).ReadAt("b1", "coil ohms", "over range", "s1").ReadAt("b1", "joined ohms", "1.8 ohm", "s1").Answer(TwoFaults).About(1);
        Assert.DoesNotContain(question.Moves, m => m.Action.StartsWith("ohms of the coil alone", StringComparison.Ordinal));
    }

    /// <summary>Expected minutes of the best that can be done, times the chances of the two worlds: nothing, or a repair in the box.</summary>
    /// <param name="wrong">Minutes of a wrong repair, the right one after it among them.</param>
    private static double ActFrom(double walk, double coil, double wire, double wrong) => new[]
    {
        wrong * (coil + wire),
        ((walk + TwoFaults.Repair("coil replaced")!.Minutes) * (coil + wire)) + (wrong * wire),
        ((walk + TwoFaults.Repair("conductor mended")!.Minutes) * (coil + wire)) + (wrong * coil),
    }.Min();

    private static Site OpenStation(double metres)
    {
        var site = Site.Bare();
        site.Add(new BoxFact { Id = "b1", Label = "box 1", Position = new Position(metres, 0) });
        site.Station(1).Cable("k1", "c", "b1", metres, "s1");
        site.Add(new ValveFact { Id = "v1", Box = "b1", Station = "s1" });
        return site.Read("station ohms", "over range", "s1");
    }

    private static Site Odd() => Site.Line().Sweep(60, (1, "over range"), (3, "18.6 ohm"), (5, "61.0 ohm"));
}
