using System.Text.Json;
using Underturf.FieldLog;
using Underturf.Quantities;
using Underturf.Tests.Reasoning;

namespace Underturf.Tests.Cli;

/// <summary>Ties on the command line.</summary>
public sealed class TieTests : IDisposable
{
    private readonly Workbench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void Tie_says_where_what_is_off_and_from_where_to_tape()
    {
        bench.Write("log.jsonl", Site.Line()
            .With(new GroundFact { Id = "shed", What = "building", Label = "the shed", Shape = [new(-30, -30), new(-20, -30), new(-20, -20), new(-30, -20)] })
            .With(new GroundFact { Id = "oak", What = "tree", Label = "the oak", Shape = [new(-10, -38)] })
            .With(new BoxFact { Id = "b99", Label = "99" })
            .With(new TieFact { Thing = "b99", Mark = "oak", Distance = new Length(Math.Sqrt(29)) })
            .With(new TieFact { Thing = "b99", Mark = "shed", Corner = new(-20, -30), Distance = new Length(Math.Sqrt(34)) })
            .With(new TieFact { Thing = "b99", Mark = "shed", Corner = new(-20, -20), Distance = new Length(Math.Sqrt(194)) })
            .Log().ToBytes().ToArray());
        bench.Run("tie", "log.jsonl").Worked("box 99: 49.2 ft west, 108.3 ft south (measured)", "the south-east corner of the shed");
        bench.Run("tie", "log.jsonl", "box 99").Worked("Best marks: ", "give or take");
        bench.Run("show", "log.jsonl").Worked("Tie: box 99 lies");
        var json = JsonDocument.Parse(bench.Run("tie", "log.jsonl", "b99", "--json").Worked().Out).RootElement.GetProperty("things")[0];
        Assert.Equal(-15, json.GetProperty("spots")[0].GetProperty("at").GetProperty("eastMetres").GetDouble(), 0.01);
        bench.Run("tie", "log.jsonl", "box 98").Failed(1, "'box 98'", "Name one of");
    }
}
