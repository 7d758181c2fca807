using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property.Practice;
using Underturf.Reasoning;

namespace Underturf.Tests.Reasoning;

/// <summary>Notes that cannot all be right end in "take it again", never in a repair. All readings are invented.</summary>
public sealed class RepeatTests
{
    private static readonly IEnumerable<string> Drifting = PracticeBook.Default.Faults.Where(f => f.Drift > 0).Select(f => f.Id);

    private const string Again = "take again: ";

    [Fact]
    public void Two_readings_ten_sigma_apart_are_taken_again_before_anything_is_repaired()
    {
        var sigma = PracticeBook.Default.Instruments.First(i => i.Name == "ohmmeter").Sigma(34);
        var question = Site.Line().Sweep().Read("station ohms", Site.Ohms(Site.SoundOhms(120, 2) + (10 * sigma)), "s3").Answer().About(3);
        TakenAgain(question);
        Assert.Contains("cannot both be right", question.Repeats[0].Why, StringComparison.Ordinal);
        Assert.Equal("controller c", question.Repeats[0].Where);
        Assert.Equal("station ohms, station 3", question.Repeats[0].What);
    }

    [Fact]
    public void The_notice_of_a_contradiction_and_its_question_name_the_same_notes()
    {
        var notebook = Site.Line().Sweep(60, (4, "88 ohm")).Read("station ohms", "34.3 ohm", "s4").Open();
        var repeat = Assert.Single(notebook.Answer().About(4).Repeats);
        Assert.Contains(notebook.Problems, p => p.Place == string.Join(" and ", repeat.Entries));
    }

    [Fact]
    public void With_work_on_the_station_between_both_readings_may_be_right()
    {
        var site = Site.Line().Sweep(60, (3, "over range"))
            .With(new WorkFact { Did = "splice remade", Place = "b2", Target = "s3" })
            .Read("station ohms", Site.Ohms(Site.SoundOhms(120, 2)), "s3");
        Assert.DoesNotContain(site.Answer().Questions, q => q.Repeats.Count > 0);
    }

    [Fact]
    public void Work_on_another_station_does_not_come_between()
    {
        var site = Site.Line().Sweep(60, (3, "over range"))
            .With(new WorkFact { Did = "splice remade", Place = "b3", Target = "s6" })
            .Read("station ohms", Site.Ohms(Site.SoundOhms(120, 2)), "s3");
        TakenAgain(site.Answer().About(3));
    }

    [Fact]
    public void A_display_noted_as_drifting_contradicts_nothing()
    {
        var site = Site.Line().Sweep(60, (5, "57.5 ohm")).With(Site.Reading("station ohms", "73.5 ohm", null, "s5") with { Drifting = true });
        Assert.DoesNotContain(site.Answer().Questions, q => q.Repeats.Count > 0);
    }

    [Fact]
    public void A_third_reading_that_agrees_with_one_of_them_answers_it()
    {
        var sound = Site.Ohms(Site.SoundOhms(120, 2));
        var site = Site.Line().Sweep().Read("station ohms", "88 ohm", "s3").Read("station ohms", sound, "s3");
        Assert.DoesNotContain(site.Answer().Questions, q => q.Repeats.Count > 0);
    }

    [Fact]
    public void Runs_that_went_differently_are_run_again()
    {
        var question = Site.Line().Sweep().Run(2, "opens", "lawn 2").Run(2, "chatters", "lawn 2").Answer().About(2);
        TakenAgain(question);
        Assert.StartsWith($"{Again}run, station 2", question.Moves[0].Action, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_figures_of_one_supply_are_read_again()
    {
        var answers = Site.Line().Sweep().Read("idle volts", "27.4 V").Read("idle volts", "24.1 V").Answer();
        var question = Assert.Single(answers.Questions, q => q.Repeats.Count > 0);
        TakenAgain(question);
        Assert.Equal("idle volts", question.Repeats[0].What);
    }

    [Fact]
    public void What_has_to_be_taken_again_is_among_the_moves_of_the_day()
    {
        var answers = Site.Line().Sweep(60, (4, "88 ohm")).Read("station ohms", "34.3 ohm", "s4").Answer();
        Assert.Contains(answers.Moves, m => m.Action.StartsWith(Again, StringComparison.Ordinal));
        Assert.DoesNotContain(answers.Moves, m => m.Action.StartsWith("enough known", StringComparison.Ordinal));
    }

    /// <summary>Whatever two figures, at whatever station: a contradiction that no drifting fault reconciles is never settled.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    public void No_contradicting_pair_ends_settled(int seed)
    {
        var random = new SeededGenerator((ulong)seed);
        for (var i = 0; i < 3; i++)
        {
            var station = 1 + (int)(6 * random.NextDouble());
            var site = Site.Line().Sweep(60, (station, Shown(random))).Read("station ohms", Shown(random), $"s{station}");
            var notebook = site.Open();
            if (!notebook.Problems.Any(p => p.Reason.Contains("cannot both be right", StringComparison.Ordinal)))
            {
                continue;
            }

            var question = notebook.Answer().About(station);
            if (question.Share([.. Drifting]) <= 0.5)
            {
                TakenAgain(question);
            }
        }
    }

    private static string Shown(SeededGenerator random) =>
        random.NextDouble() < 0.25 ? "over range" : Site.Ohms(15 * Math.Pow(10, 2 * random.NextDouble()));

    private static void TakenAgain(OpenQuestion question)
    {
        Assert.NotEmpty(question.Repeats);
        Assert.False(question.Settled);
        Assert.True(question.Unexplained);
        Assert.All(question.Explanations, e => Assert.True(e.Doubt));
        Assert.StartsWith(Again, question.Moves[0].Action, StringComparison.Ordinal);
        Assert.DoesNotContain(question.Moves, m => m.Action.StartsWith("enough known", StringComparison.Ordinal));
    }
}
