using System.Text.Json;

namespace Underturf.Tests.Cli;

public sealed class MovesTests : IDisposable
{
    private readonly Workbench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void Moves_are_numbered_with_way_caution_reason_and_question()
    {
        Log();
        bench.Run("moves", "log.jsonl").Worked("NEXT MOVES, best first", "1. At ", "to get there", "For: [", "Local codes and licensed practice prevail");
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

    private void Log() => bench.Write("log.jsonl", Workbench.Sound.ToBytes().ToArray());
}
