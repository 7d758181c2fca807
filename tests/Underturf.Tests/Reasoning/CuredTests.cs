using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Reasoning;

namespace Underturf.Tests.Reasoning;

/// <summary>What work does to a question, and what may be looked at or read once more. All values invented.</summary>
public sealed class CuredTests
{
    [Fact]
    public void The_repair_of_what_has_no_place_is_noted_at_the_controller_and_cures_it_for_all()
    {
        var move = Unclosed().Answer().Moves.First(m => m.IsRepair);
        var work = Assert.IsType<WorkFact>(Assert.Single(move.Steps).Asks);
        Assert.Equal(("c", null), (work.Place, work.Target));
        Assert.Empty(Unclosed().With(work).Answer().Questions);
    }

    [Theory]
    [InlineData("v4")]
    [InlineData("s2")]
    public void Whoever_rebuilt_the_valve_itself_is_not_sent_to_rebuild_it_again(string target)
    {
        var site = Unclosed().With(new WorkFact { Did = "valve rebuilt", Target = target });
        Assert.Empty(site.Answer().Questions);
        Assert.Empty(site.Run(1, "opens", "lawn 1").Answer().Questions);
    }

    [Fact]
    public void A_place_that_still_waters_after_the_repair_is_a_question_and_not_the_same_repair_again()
    {
        var site = Unclosed().With(new WorkFact { Did = "valve rebuilt", Place = "c" });
        var answers = site.Run(1, "opens", "lawn 1", "the pond").Answer();
        Assert.NotEqual("unclosed-valve", answers.About(1).Leading());
        Assert.DoesNotContain(answers.Moves, m => m.IsRepair && m.Action.Contains("rebuild", StringComparison.Ordinal));
    }

    /// <summary>The note of the work names one of the two; both read otherwise afterwards.</summary>
    [Fact]
    public void Two_terminals_that_were_exchanged_need_not_be_read_again()
    {
        var (near, far) = (Site.Ohms(Site.SoundOhms(150, 1)), Site.Ohms(Site.SoundOhms(450, 3)));
        var site = Site.Line(150).Sweep(150, (2, far), (5, near)).With(new WorkFact { Did = "terminals exchanged", Target = "s2" });
        Assert.DoesNotContain(site.Read("station ohms", near, "s2").Read("station ohms", far, "s5").Answer().Questions, q => q.Repeats.Count > 0);
    }

    [Fact]
    public void A_box_may_be_looked_into_once_more_and_no_third_time()
    {
        var site = OpenBeyondTheController();
        Assert.Contains(Looks(site), m => m.Place == "b1");
        Assert.Contains(Looks(site.With(new LookFact { Place = "b1", Stations = ["s1"] })), m => m.Place == "b1");
        Assert.DoesNotContain(Looks(site.With(new LookFact { Place = "b1", Stations = ["s1"] })), m => m.Place == "b1");
    }

    /// <summary>Neither coil nor wire has changed between the two, so the second can only show that the first was misread.</summary>
    [Fact]
    public void A_reading_taken_again_tells_nothing_but_whether_it_was_misread()
    {
        var question = Site.Line().Sweep(60, (3, "42.0 ohm")).Answer(All).About(3);
        Assert.True(question.Share("misread") > 0);
        var again = question.Moves.Where(m => m.Steps.Any(s => s.Asks is ReadingFact { How: "station ohms" })).ToList();
        Assert.NotEmpty(again);
        Assert.All(again, m => Assert.Contains("one note is wrong", m.Why, StringComparison.Ordinal));
    }

    /// <summary>Every move is listed, and no sound coil or run is another than was noted.</summary>
    private static readonly PracticeBook All = Books.AsNoted with { Questions = PracticeBook.Default.Questions with { ListMoves = 100 } };

    private static IEnumerable<Move> Looks(Site site) => site.Answer(All).About(1).Moves.Where(m => m.Steps.Any(s => s.Asks is LookFact));

    private static Site OpenBeyondTheController() => Site.Line().Sweep(60, (1, "over range")).ReadAt("b1", "coil ohms", "31.0 ohm", "s1");

    private static Site Unclosed()
    {
        var site = Site.Line().Sweep();
        for (var s = 1; s <= 6; s++)
        {
            site.Run(s, "opens", $"lawn {s}", "the pond");
        }

        return site;
    }
}
