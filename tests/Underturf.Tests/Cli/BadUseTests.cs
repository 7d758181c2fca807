using System.Text;
using Underturf.Property.Practice;

namespace Underturf.Tests.Cli;

public sealed class BadUseTests : IDisposable
{
    private readonly Workbench bench = new();

    public void Dispose() => bench.Dispose();

    [Theory]
    [InlineData("")]
    [InlineData("diagnoze log.jsonl")]
    [InlineData("diagnose")]
    [InlineData("diagnose a.jsonl b.jsonl")]
    [InlineData("diagnose log.jsonl --jason")]
    [InlineData("papers log.jsonl")]
    [InlineData("papers log.jsonl --out")]
    [InlineData("merge --out x.jsonl")]
    [InlineData("merge log.jsonl")]
    [InlineData("serve --port many")]
    [InlineData("trial --stations many")]
    [InlineData("trial LOG")]
    [InlineData("moves")]
    [InlineData("moves log.jsonl --at")]
    [InlineData("moves log.jsonl --minutes soon")]
    public void A_command_that_is_not_understood_exits_with_2(string arguments)
    {
        bench.Run(arguments.Split(' ', StringSplitOptions.RemoveEmptyEntries)).Failed(2, "underturf: ", "--help");
        Assert.Empty(bench.Names());
    }

    [Theory]
    [InlineData("check")]
    [InlineData("show")]
    [InlineData("readings")]
    [InlineData("diagnose")]
    [InlineData("moves")]
    [InlineData("book")]
    public void A_file_that_is_not_there_and_a_folder_are_named(string command)
    {
        Directory.CreateDirectory(bench.Path("folder"));
        bench.Run(command, "missing.jsonl").Failed(1, "missing.jsonl");
        bench.Run(command, "folder").Failed(1, "folder");
        Assert.Equal(["folder"], bench.Names());
    }

    [Theory]
    [InlineData("--stations", "9")]
    [InlineData("--stations", "301")]
    [InlineData("--faults", "0")]
    [InlineData("--faults", "7")]
    [InlineData("--properties", "0")]
    [InlineData("--properties", "1001")]
    [InlineData("--seed", "-1")]
    public void A_trial_beyond_its_bounds_is_told_with_what_may_be_given(string option, string value) =>
        bench.Run("trial", option, value).Failed(1, $"{option}: is {value}", "Give a whole number from");

    [Fact]
    public void Papers_and_merge_name_a_file_that_is_not_there_and_write_nothing()
    {
        bench.Run("papers", "missing.jsonl", "--out", "papers").Failed(1, "missing.jsonl: is not there");
        bench.Run("merge", "missing.jsonl", "--out", "all.jsonl").Failed(1, "missing.jsonl: is not there");
        Assert.Empty(bench.Names());
    }

    [Fact]
    public void A_place_that_cannot_be_written_is_told()
    {
        Log();
        bench.Write("taken", "not a folder");
        bench.Run("papers", "log.jsonl", "--out", "taken").Failed(1, "taken", "Check the path");
        bench.Run("papers", "log.jsonl", "--out", "taken/deeper").Failed(1, "taken", "Check the path");
        bench.Run("demo", "--out", "taken").Failed(1, "taken", "Check the path");
        bench.Run("merge", "log.jsonl", "--out", "no/such/folder/all.jsonl").Failed(1, "no/such/folder", "Check the path");
        Assert.Equal(["log.jsonl", "taken"], bench.Names());
    }

    /// <summary>No permission stops the superuser, but nobody can write into the process table.</summary>
    [Fact]
    public void A_read_only_place_is_told()
    {
        Log();
        bench.Run("merge", "log.jsonl", "--out", "/proc/all.jsonl").Failed(1, "/proc/all.jsonl", "Check the path");
        bench.Run("demo", "--out", "/proc/demo").Failed(1, "/proc/demo", "Check the path");
    }

    [Fact]
    public void A_folder_in_place_of_the_united_log_is_told_and_leaves_nothing_half_written()
    {
        Log();
        Directory.CreateDirectory(bench.Path("folder"));
        bench.Run("merge", "log.jsonl", "--out", "folder").Failed(1, "folder");
        Assert.Equal(["folder", "log.jsonl"], bench.Names());
    }

    [Theory]
    [InlineData("\"ohms\": 31,", "\"ohms\": 0,", "coil.ohms")]
    [InlineData("\"hertz\": 60,", "\"hertz\": \"sixty\",", "line ")]
    [InlineData("\"version\"", "\"verzion\"", "verzion")]
    [InlineData("{", "", "practice book")]
    public void A_bad_practice_book_is_told_with_its_place_and_remedy(string old, string edited, string place)
    {
        Log();
        var text = Encoding.UTF8.GetString(PracticeBook.DefaultBytes());
        var at = text.IndexOf(old, StringComparison.Ordinal);
        bench.Write("book.json", Encoding.UTF8.GetBytes(text[..at] + edited + text[(at + old.Length)..]));
        foreach (var command in new[] { "check", "show", "readings", "diagnose" })
        {
            bench.Run(command, "log.jsonl", "--book", "book.json").Failed(1, "practice book", place, "underturf book");
        }

        bench.Run("book", "book.json").Failed(1, place, "underturf book");
    }

    [Fact]
    public void Damage_in_one_log_does_not_keep_the_others_from_being_united()
    {
        Log();
        bench.Write("bad.jsonl", "{\"head\":", Workbench.Lines[0]);
        bench.Run("merge", "log.jsonl", "bad.jsonl", "--out", "all.jsonl").Failed(1, "line ", "is not JSON");
        var united = Encoding.UTF8.GetString(bench.Read("all.jsonl"));
        Assert.Contains("{\"head\":\n", united, StringComparison.Ordinal);
        Assert.All(Workbench.Lines, l => Assert.Contains(l, united, StringComparison.Ordinal));
    }

    private void Log() => bench.Write("log.jsonl", Workbench.Sound.ToBytes().ToArray());

    [Theory]
    [InlineData("moves", "log.jsonl", "--minutes", "abc")]
    [InlineData("serve", "--port", "abc")]
    public void What_is_no_number_is_said_in_words_of_the_trade(params string[] words)
    {
        var said = bench.Run(words).Failed(2, "'abc'", "give a number").Error;
        Assert.DoesNotContain("System.", said, StringComparison.Ordinal);
    }
}
