namespace Underturf.Tests.Cli;

/// <summary>The order of the day on the command line.</summary>
public sealed class DayTests
{
    private static readonly string Demo = Path.Combine(Repository.Root, "samples", "memorial-garden", "afternoon.jsonl");

    [Fact]
    public void It_says_the_order_what_waits_and_the_night_and_writes_the_sheet()
    {
        using var bench = new Workbench();
        bench.Run("day", Demo, "--begin", "2031-04-04T07:30-06:00", "--minutes", "60", "--at", "box 8", "--draw", "day.pdf")
            .Worked("ORDER OF THE DAY, 07:30 from box 8, 60 min", "fill and close the hole", "WAITS FOR", "ticket 31-0907: good from 2031-04-05 08:00 on: dig then", "500 ft of 12 AWG, ordered, due 2031-04-06", "NOT TODAY", "no time for it today", "LEFT AS", "head gardener was told", "TONIGHT", "stays dry");
        Assert.Equal("%PDF"u8.ToArray(), File.ReadAllBytes(bench.Path("day.pdf")).Take(4));
    }

    [Fact]
    public void A_beginning_that_is_no_moment_is_refused_with_an_example()
    {
        using var bench = new Workbench();
        bench.Run("day", Demo, "--begin", "tomorrow").Failed(1, "2031-04-04T07:30-06:00");
    }
}
