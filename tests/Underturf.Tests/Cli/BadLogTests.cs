using System.Text;
using Underturf.FieldLog;
using Underturf.Tests.Reasoning;

namespace Underturf.Tests.Cli;

/// <summary>Damaged and odd logs: told with place and remedy, exit 1, answered from the other lines, and not a byte changed.</summary>
public sealed class BadLogTests : IDisposable
{
    private readonly Workbench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void A_truncated_file() => Told([.. Workbench.Sound.ToBytes().Span[..^30]], 1, "is cut off", "underturf merge");

    [Fact]
    public void A_log_that_is_served_is_told_to_be_damaged_or_empty_before_anybody_opens_it()
    {
        bench.Write("cut.jsonl", Workbench.Sound.ToBytes().Span[..^30].ToArray());
        bench.Run("serve", "cut.jsonl", "--port", "70000").Failed(1, "is cut off", "cut.jsonl is served all the same");
        bench.Write("new.jsonl", Array.Empty<byte>());
        Assert.Contains("new.jsonl is empty: the page begins it.", bench.Run("serve", "new.jsonl", "--port", "70000").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_in_UTF_16_is_refused_with_a_remedy()
    {
        var text = Encoding.UTF8.GetString(Workbench.Sound.ToBytes().Span);
        Refused([.. Encoding.Unicode.GetPreamble(), .. Encoding.Unicode.GetBytes(text)], "UTF-16", "UTF-8");
        Refused(Encoding.BigEndianUnicode.GetBytes(text), "UTF-16", "UTF-8");
    }

    [Fact]
    public void A_byte_order_mark_is_told_and_every_entry_counts() => Told([0xEF, 0xBB, 0xBF, .. Workbench.Sound.ToBytes().Span], 1, "byte-order mark");

    [Fact]
    public void Carriage_returns_are_told_and_every_entry_counts() => Told(Encoding.UTF8.GetBytes(string.Join("\r\n", Workbench.Lines) + "\r\n"), 1, "carriage return");

    [Fact]
    public void Repeated_lines_are_told_and_count_once() => Told(Bytes([.. Workbench.Lines, .. Workbench.Lines]), 1, "repeats line");

    [Fact]
    public void A_fork_of_one_id()
    {
        var fork = Site.Line().Sweep(60, (3, "12.5 ohm")).Log();
        var other = Encoding.UTF8.GetString(fork.Entries.First(e => e.Fact is ReadingFact r && r.Stations.Contains("s3")).Line.Span);
        Told(Bytes([.. Workbench.Lines, other]), 1, "ann/", "2 different entries");
    }

    [Fact]
    public void A_gap_in_the_numbers() => Told(Bytes([.. Workbench.Lines.Where((_, i) => i != 2)]), 1, "ann/3", "missing");

    [Fact]
    public void A_strike_before_its_target()
    {
        var site = Site.Line();
        var struck = site.Add(Site.Reading("station ohms", "365 ohm", null, "s3"));
        site.With(new StrikeFact { Entry = struck.ToString() }).Sweep(60, (3, "over range"));
        var lines = Encoding.UTF8.GetString(site.Log().ToBytes().Span).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        var (target, strike) = (Array.FindIndex(lines, l => l.Contains("365", StringComparison.Ordinal)), Array.FindIndex(lines, l => l.Contains("\"strike\"", StringComparison.Ordinal)));
        (lines[target], lines[strike]) = (lines[strike], lines[target]);
        Assert.DoesNotContain("365", Told(Bytes(lines), 0).Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_strike_of_nothing() => Told(Site.Line().Sweep(60, (3, "over range")).With(new StrikeFact { Entry = "bob/7" }).Log(), 1, "bob/7");

    [Fact]
    public void Readings_that_contradict_each_other() =>
        Told(Site.Line().Sweep(60, (3, "over range")).Read("station ohms", "61.5 ohm", "s5").Log(), 1, "cannot both be right", "Take the reading again");

    [Fact]
    public void An_end_to_nowhere() => Told(
        Site.Line().Sweep(60, (3, "over range")).With(new EndFact { Id = "e", Place = "b1", FarEnd = "nowhere" }).Log(), 1, "'nowhere', which nobody has noted", "strike this entry");

    [Fact]
    public void An_unknown_way_of_reading() => Told(
        Site.Line().Sweep(60, (3, "over range")).Read("licked it", "3 ohm", "s1").Log(), 1, "'licked it' is no way of reading", "station ohms");

    [Fact]
    public void The_wrong_unit_and_the_wrong_number_of_stations() => Told(
        Site.Line().Sweep(60, (3, "over range")).Read("station ohms", "24 V", "s1").Read("terminal volts", "24 V").Log(), 1, "'24 V' is", "needs 1 station(s)");

    [Fact]
    public void An_unknown_unit()
    {
        const string body = """{"kind":"reading","version":1,"how":"station ohms","stations":["s1"],"value":"3 parsec"}""";
        var line = Tests.FieldLog.Notebook.Sealed(body, Tests.FieldLog.Notebook.Head(body, property: "small-site", noted: "2031-04-02T12:12:00.000Z/0"));
        Told(Bytes([.. Workbench.Lines, line]), 1, "parsec", $"line {Workbench.Lines.Length + 1}");
    }

    [Fact]
    public void Ten_megabytes_on_one_line() => Told([.. Workbench.Sound.ToBytes().Span, .. Enumerable.Repeat((byte)'x', 10_000_000)], 1, $"line {Workbench.Lines.Length + 1}", "bytes");

    [Fact]
    public void Lines_that_are_no_JSON_at_all() => Told([.. Workbench.Sound.ToBytes().Span, 0, 1, 2, 255, 254, 10, .. "<html>\n"u8], 1, $"line {Workbench.Lines.Length + 1}", $"line {Workbench.Lines.Length + 2}");

    [Fact]
    public void What_is_wrong_is_said_before_the_answer()
    {
        bench.Write("log.jsonl", [.. Workbench.Sound.ToBytes().Span, .. "<html>\n"u8]);
        var both = bench.Both("diagnose", "log.jsonl");
        Assert.StartsWith("wrong: ", both, StringComparison.Ordinal);
        Assert.Contains("NEXT MOVE", both, StringComparison.Ordinal);
    }

    [Fact]
    public void An_empty_file() => Refused([], "line 1", "the file is empty", "underturf note");

    [Fact]
    public void A_file_of_blank_lines() => Refused("\n \n\n"u8.ToArray(), "the file is empty");

    private static byte[] Bytes(string[] lines) => Encoding.UTF8.GetBytes(string.Concat(lines.Select(l => l + "\n")));

    private Ran Told(LogDocument log, int code, params string[] words) => Told(log.ToBytes().ToArray(), code, words);

    /// <summary>Told by every command, and station 3 is still diagnosed from the lines that are sound.</summary>
    private Ran Told(byte[] log, int code, params string[] words)
    {
        bench.Write("log.jsonl", log);
        Complains("check", code, words);
        var answer = Complains("diagnose", code, words);
        Assert.Contains("station-s3", answer.Out, StringComparison.Ordinal);
        Assert.Equal(log, bench.Read("log.jsonl"));
        Assert.Equal(["log.jsonl"], bench.Names());
        return answer;
    }

    private Ran Complains(string command, int code, string[] words)
    {
        var ran = bench.Run(command, "log.jsonl").Failed(code, words);
        Assert.All(ran.Complaints, c => Assert.Matches("^(wrong|note): .+: .+\\. .+\\.$", c));
        return ran;
    }

    private void Refused(byte[] log, params string[] words)
    {
        bench.Write("log.jsonl", log);
        foreach (var command in new[] { "check", "show", "readings", "diagnose" })
        {
            var ran = bench.Run(command, "log.jsonl").Failed(1, words);
            Assert.True(command == "check" || ran.Out.Length == 0, ran.Out);
        }

        Assert.Equal(log, bench.Read("log.jsonl"));
    }
}
