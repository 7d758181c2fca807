using System.Text.Json;
using Underturf.Tests.Reasoning;

namespace Underturf.Tests.Cli;

public sealed class MovesTests : IDisposable
{
    private readonly Workbench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void Moves_are_numbered_with_way_caution_reason_and_question()
    {
        Log();
        bench.Run("moves", "log.jsonl", "--at", "box 3").Worked("NEXT MOVES, best first", "1. At ", "to walk there", "For: [", "Local codes and licensed practice prevail");
        using var json = JsonDocument.Parse(bench.Run("moves", "log.jsonl", "--json").Worked().Out);
        Assert.All(json.RootElement.EnumerateArray(), m => Assert.True(m.GetProperty("steps").GetArrayLength() > 0));
    }

    [Fact]
    public void A_limit_of_minutes_is_kept()
    {
        Log();
        bench.Run("moves", "log.jsonl", "--minutes", "45").Worked("WITHIN 45 MIN, in walking order");
        using var json = JsonDocument.Parse(bench.Run("moves", "log.jsonl", "--minutes", "45", "--json").Worked().Out);
        Assert.True(json.RootElement.EnumerateArray().Sum(m => m.GetProperty("minutes").GetDouble()) <= 45);
    }

    [Fact]
    public void A_place_that_is_not_noted_and_minutes_that_are_none_are_told()
    {
        Log();
        bench.Run("moves", "log.jsonl", "--at", "the moon").Failed(1, "place 'the moon'", "Name one of");
        bench.Run("moves", "log.jsonl", "--minutes", "0").Failed(1, "minutes");
        bench.Run("moves", "log.jsonl", "--minutes", "-5").Failed(1, "minutes");
    }

    [Fact]
    public void That_nothing_is_hidden_is_an_answer_and_a_thing_that_nobody_knows_is_none()
    {
        bench.Write("sound.jsonl", Site.Line().Sweep(60).Log().ToBytes().ToArray());
        bench.Run("locate", "sound.jsonl").Worked("Nothing to look for: property: has nothing hidden. Note what is looked for");
        using var json = JsonDocument.Parse(bench.Run("locate", "sound.jsonl", "--json").Worked().Out);
        Assert.Equal(0, json.RootElement.GetProperty("things").GetArrayLength());
        Log();
        bench.Run("locate", "log.jsonl", "station 1").Worked("Nothing to look for: thing 'station 1': is not among what is hidden");
        bench.Run("locate", "log.jsonl", "the moon").Failed(1, "thing 'the moon'");
    }

    private void Log() => bench.Write("log.jsonl", Workbench.Sound.ToBytes().ToArray());
}
