using System.Text.Json;
using Underturf.FieldLog;
using Underturf.Planning.Repair;
using Underturf.Planning.Rework;
using Underturf.Property.Practice;
using Underturf.Reasoning;
using Underturf.Simulation;
using Underturf.Tests.Reasoning;

namespace Underturf.Tests.Simulation;

public sealed class MemorialGardenTests
{
    private static readonly Lazy<Notebook> Garden = new(() => Notebook.Open(MemorialGarden.Make(PracticeBook.Default).Log, PracticeBook.Default));
    private static readonly Lazy<Answers> Answered = new(() => Garden.Value.Answer());

    [Theory]
    [InlineData("log.jsonl")]
    [InlineData("afternoon.jsonl")]
    [InlineData("reworked.jsonl")]
    [InlineData("repaired.jsonl")]
    [InlineData("truth.json")]
    public void The_committed_sample_is_what_is_made_now(string name)
    {
        var made = name switch
        {
            "log.jsonl" => MemorialGarden.Make(PracticeBook.Default).Log.ToBytes().ToArray(),
            "afternoon.jsonl" => MemorialGarden.Afternoon(PracticeBook.Default).ToBytes().ToArray(),
            "reworked.jsonl" => MemorialGarden.Reworked(PracticeBook.Default).ToBytes().ToArray(),
            "repaired.jsonl" => MemorialGarden.Repaired(PracticeBook.Default).ToBytes().ToArray(),
            _ => MemorialGarden.TruthBytes(),
        };
        Assert.Equal(Repository.Read($"samples/memorial-garden/{name}"), System.Text.Encoding.UTF8.GetString(made));
    }

    [Fact]
    public void The_garden_is_as_large_as_it_is_said_to_be()
    {
        var view = Garden.Value.History.Now;
        Assert.Equal((40, 16, 48), (view.Stations.Count, view.Boxes.Count, view.Controllers["c1"].Terminals));
        Assert.InRange(Garden.Value.Log.Entries.Count, 90, 250);
        Assert.Equal(2, Garden.Value.Log.Entries.Select(e => e.Id.Writer).Distinct().Count());
        Assert.Empty(Garden.Value.Problems);
    }

    [Fact]
    public void The_questions_are_the_faults_of_the_truth_and_the_three_that_are_no_faults()
    {
        var questions = Answered.Value.Questions.Select(q => string.Join(' ', q.Stations)).Order(StringComparer.Ordinal);
        Assert.Equal(["", "12", "18 19 20 21 22 23 24", "29", "33", "40"], questions);
        using var truth = JsonDocument.Parse(MemorialGarden.TruthBytes());
        foreach (var fault in truth.RootElement.GetProperty("faults").EnumerateArray().Where(f => !f.TryGetProperty("until", out _)))
        {
            var place = $"box {fault.GetProperty("place").GetString()![1..]}";
            var station = fault.TryGetProperty("station", out var s) ? s.GetString()![1..] : "18";
            var question = Answered.Value.About(int.Parse(station, System.Globalization.CultureInfo.InvariantCulture));
            Assert.True(question.Share(fault.GetProperty("fault").GetString()!) > 0.3, question.Symptom);
            Assert.Contains(question.Explanations.SelectMany(e => e.Places).Where(p => p.Probability > 0.05), p => p.Place == place);
        }
    }

    /// <summary>The box that nobody knew, worked through to its end.</summary>
    [Fact]
    public void In_the_afternoon_every_end_of_the_unnamed_box_gets_its_name_and_one_is_a_proven_spare()
    {
        var before = Garden.Value.Name("box 10", new NamingCrew(2)).Value;
        Assert.DoesNotContain(before.Ends, e => e.Named);
        var afternoon = Notebook.Open(MemorialGarden.Afternoon(PracticeBook.Default), PracticeBook.Default);
        Assert.Empty(afternoon.Problems);
        var naming = afternoon.Name("box 10", new NamingCrew(2)).Value;
        Assert.All(naming.Ends, e => Assert.True(e.Named, e.Name));
        Assert.Equal([null, "s25", "c1", "s26", "x1"], naming.Ends.Select(e => e.Shares[0].Wire));
        Assert.Empty(naming.Doubts);
        var spare = Assert.Single(naming.Spares);
        Assert.True(spare.Proven, string.Join("; ", spare.Missing));
        Assert.Equal("box 10", spare.To);
    }

    /// <summary>A valve that was traced, listened for and probed for in vain, until it was found.</summary>
    [Fact]
    public void The_valve_that_was_looked_for_in_the_morning_is_found_in_the_afternoon_and_teaches_where_the_next_one_lies()
    {
        var morning = Garden.Value.Locate("station 14").Value;
        Assert.Equal(3, morning.Things[0].Notes.Count);
        var afternoon = Notebook.Open(MemorialGarden.Afternoon(PracticeBook.Default), PracticeBook.Default);
        Assert.DoesNotContain(afternoon.Hidden(), h => h.Station == "s14");
        double Paving(LocationAnswer answer) => answer.Learned.Single(e => e.Mark == "edge of paving").Here;
        var next = afternoon.Locate("station 17").Value;
        Assert.Equal(morning.Found + 1, next.Found);
        Assert.True(Paving(next) > Paving(morning));
    }

    [Fact]
    public void The_station_that_waters_two_places_is_shared_by_two_valves()
    {
        var question = Answered.Value.About(12);
        Assert.Equal("plain-branch", question.Leading());
        Assert.Equal(2, question.Valves.MaxBy(v => v.Probability)!.Count);
    }

    /// <summary>The shared station, worked through to its end: what was said beforehand is what is read afterwards.</summary>
    [Fact]
    public void After_the_rework_the_readings_agree_with_what_was_said_and_nobody_asks_about_the_station_any_more()
    {
        var reworked = Notebook.Open(LogDocument.Read(System.Text.Encoding.UTF8.GetBytes(Repository.Read("samples/memorial-garden/reworked.jsonl"))), PracticeBook.Default);
        Assert.Empty(reworked.Problems);
        Assert.Equal(["18 19 20 21 22 23 24", "29", "33", "40"], reworked.Answer().Questions.Where(q => q.Stations.Count > 0).Select(q => string.Join(' ', q.Stations)).Order(StringComparer.Ordinal));
        var plan = ReworkPlan.Of(reworked);
        Assert.True(plan.IsDone);
        Assert.Equal(("12", "41"), (plan.Numbers[0].Was, plan.Numbers[0].Now));
        foreach (var line in reworked.Readings().Where(l => l.Entry.Writer == "maren" && l.What.EndsWith("station 41", StringComparison.Ordinal)))
        {
            Assert.InRange(line.Surprise, 0, 1);
        }
    }

    [Fact]
    public void The_far_station_chatters_with_nothing_broken() => Assert.Equal("as-built", Answered.Value.About(40).Leading());

    [Fact]
    public void The_reading_that_fits_nothing_is_to_be_taken_again() => Assert.Equal("misread", Answered.Value.About(33).Leading());

    [Fact]
    public void The_creeping_meter_is_explained_with_what_it_loses()
    {
        var question = Assert.Single(Answered.Value.Questions, q => q.Stations.Count == 0);
        Assert.Equal("valve-not-closing", question.Leading());

        // 1.8 gpm are 2592 gal a day.
        Assert.InRange(2592 * 0.003785411784, question.WaterLost!.LeastCubicMetresADay, question.WaterLost.MostCubicMetresADay);
    }

    /// <summary>The creeping meter, worked through to its end: a shut gate and a shut valve say where, the repair is carried out as planned, and the meter stands still.</summary>
    [Fact]
    public void After_the_repair_of_the_valve_that_let_water_through_nothing_runs_and_nobody_asks_about_it()
    {
        var repaired = LogDocument.Read(System.Text.Encoding.UTF8.GetBytes(Repository.Read("samples/memorial-garden/repaired.jsonl")));
        var opened = repaired.Entries.Select((e, i) => (e.Fact, Index: i)).First(e => e.Fact is StepFact { Job: "valve repair" }).Index;
        var before = Notebook.Open(LogDocument.Read(ReadOnlyMemory<byte>.Empty).With(repaired.Entries.Take(opened)), PracticeBook.Default).Answer();
        var creeping = Assert.Single(before.Questions, q => q.Stations.Count == 0).Explanations[0];
        Assert.Equal(("valve-not-closing", "valve of station 30"), (creeping.Fault, creeping.Places[0].Place));
        Assert.True(creeping.Probability * creeping.Places[0].Probability > 0.9);

        var after = Notebook.Open(repaired, PracticeBook.Default);
        Assert.Empty(after.Problems);
        Assert.DoesNotContain(after.Answer().Questions, q => q.Stations.Count == 0 || q.Stations.Contains("30"));
        var plan = RepairPlan.Of(after, "station 30").Value;
        Assert.Empty(plan.Steps);
        Assert.Null(plan.Chance);
    }

    [Fact]
    public void The_repaired_station_is_not_asked_about() => Assert.DoesNotContain(Answered.Value.Questions, q => q.Stations.Contains("27"));
}
