using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Reasoning;

namespace Underturf.Tests.Reasoning;

/// <summary>A move can be carried out by a program: its steps name the notes that they lead to. All values invented.</summary>
public sealed class MoveStepTests
{
    private static readonly PracticeBook All = PracticeBook.Default with { Questions = PracticeBook.Default.Questions with { ListMoves = 100 } };

    private static readonly Lazy<IReadOnlyList<Move>> Odd = new(() =>
        [.. Site.Line().Sweep(60, (1, "over range"), (3, "18.6 ohm"), (5, "61.0 ohm")).Answer(All).Questions.SelectMany(q => q.Moves)]);

    [Fact]
    public void A_move_s_minutes_are_those_of_its_steps_of_the_walk_and_of_finding_its_place() =>
        Assert.All(Odd.Value, m => Assert.Equal(m.Minutes, m.WalkMinutes + m.FindMinutes + m.Steps.Sum(s => s.Minutes), 9));

    [Fact]
    public void Every_step_asks_for_a_note_at_the_place_of_its_move()
    {
        Assert.Contains(Odd.Value, m => m.Place != "c");
        Assert.All(Odd.Value.SelectMany(m => m.Steps.Select(s => (Move: m, Step: s))), p => Assert.Equal(p.Move.Place, PlaceOf(p.Step.Asks)));
    }

    [Fact]
    public void A_reading_s_step_names_a_way_of_reading_of_the_practice_book_and_its_stations()
    {
        var readings = Odd.Value.SelectMany(m => m.Steps).Select(s => s.Asks).OfType<ReadingFact>().ToList();
        Assert.NotEmpty(readings);
        Assert.All(readings, r => Assert.NotNull(All.Probe(r.How)));
        Assert.All(readings, r => Assert.True(r.Stations.Count == (r.How == "station to station ohms" ? 2 : 1) && r.Value.IsOverRange));
    }

    [Fact]
    public void The_work_that_is_proposed_is_work_that_settles_the_question()
    {
        var site = Site.Line().Sweep(60, (3, "over range")).ReadAt("b2", "coil ohms", "over range", "s3");
        var repair = site.Answer().Moves.Concat(site.Answer().Questions[0].Moves).First(m => m.IsRepair);
        Assert.StartsWith("enough known", repair.Action, StringComparison.Ordinal);
        site.Add(Assert.Single(repair.Steps).Asks);
        Assert.Empty(site.Read("station ohms", Site.Ohms(Site.SoundOhms(120, 2)), "s3").Answer().Questions);
    }

    private static string PlaceOf(Fact asks) => asks switch
    {
        ReadingFact reading => reading.Place ?? "c",
        LookFact look => look.Place,
        TestFact => "c",
        WorkFact work => work.Place ?? "c",
        _ => string.Empty,
    };
}
