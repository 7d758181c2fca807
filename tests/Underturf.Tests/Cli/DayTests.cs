namespace Underturf.Tests.Cli;

/// <summary>The order of the day on the command line; on the demo it is run by the README.</summary>
public sealed class DayTests
{
    [Fact]
    public void It_goes_from_where_one_is_in_the_minutes_that_one_has_and_refuses_what_cannot_be()
    {
        using var bench = new Workbench();
        bench.Write("notes.jsonl",
        [
            """{"kind":"property","name":"A front garden","zone":"Etc/GMT+6"}""",
            """{"kind":"controller","id":"c","terminals":12}""",
            """{"kind":"station","id":"s1","controller":"c","terminal":1,"waters":["front lawn"]}""",
            """{"kind":"valve","id":"v1","station":"s1","label":"front valve"}""",
            """{"kind":"left-as","place":"v1","state":"hole open","told":"the gardener"}""",
        ]);
        bench.Run("note", "log.jsonl", "notes.jsonl", "--property", "front-garden").Worked();
        bench.Run("day", "log.jsonl", "--begin", "2031-04-04T07:30-06:00", "--minutes", "60", "--at", "front valve").Worked("ORDER OF THE DAY, 07:30 from front valve, 60 min", "fill and close the hole", "the gardener was told; ended today", "by hand only: station 1");
        bench.Run("day", "log.jsonl", "--minutes", "60", "--json").Worked("\"kind\": \"Close\"", "-06:00");
        bench.Run("day", "log.jsonl", "--begin", "tomorrow").Failed(1, "2031-04-04T07:30-06:00");
        bench.Run("day", "log.jsonl", "--at", "the moon").Failed(1, "place 'the moon'", "Name one of");
    }
}
