using System.Text;
using Underturf.FieldLog;

namespace Underturf.Tests.Cli;

public sealed class NoteTests : IDisposable
{
    private const string Told = """{"kind":"told","who":"the gardener","text":"It was dry all June"}""";
    private const string Board = """{"kind":"controller","id":"c","terminals":12}""";

    private readonly Workbench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void Notes_that_are_given_again_are_left_out_and_said_so_unless_they_are_meant()
    {
        bench.Write("notes.jsonl", Board, Told);
        bench.Run("note", "log.jsonl", "notes.jsonl", "--property", "garden", "--data", "me").Worked("2 noted");
        var first = bench.Read("log.jsonl");
        bench.Run("note", "log.jsonl", "notes.jsonl", "--data", "me").Failed(1, "lines 1 to 2: say the same as cli-", "/1 to 2 and were left out", "--again");
        Assert.Equal(first, bench.Read("log.jsonl"));
        bench.Write("notes.jsonl", Board, Told, """{"kind":"told","who":"the gardener","text":"It rained in July"}""");
        Assert.Contains("1 noted", bench.Run("note", "log.jsonl", "notes.jsonl", "--data", "me").Failed(1, "lines 1 to 2").Out, StringComparison.Ordinal);
        bench.Run("note", "log.jsonl", "notes.jsonl", "--data", "you").Worked("3 noted");
        bench.Run("note", "log.jsonl", "notes.jsonl", "--data", "me", "--again").Worked("3 noted");
    }

    [Fact]
    public void Times_are_told_in_the_zone_of_the_property_and_a_zone_that_no_table_has_is_not_noted()
    {
        bench.Write("zone.jsonl", """{"kind":"property","name":"A front garden","zone":"America/Nowhere"}""");
        bench.Run("note", "log.jsonl", "zone.jsonl", "--property", "front-garden").Failed(1, "line 1, field 'zone'", "America/Nowhere", "America/Denver");
        Assert.DoesNotContain("log.jsonl", bench.Names());
        bench.Write("notes.jsonl",
        [
            """{"kind":"property","name":"A front garden","zone":"America/Denver"}""",
            """{"kind":"box","id":"b","at":"2031-07-01T18:30Z"}""",
            """{"kind":"left-as","place":"b","state":"hole open","at":"2031-07-01T18:30Z"}""",
        ]);
        bench.Run("note", "log.jsonl", "notes.jsonl", "--property", "front-garden").Worked();
        bench.Run("show", "log.jsonl").Worked("A front garden", "hole open, 2031-07-01 12:30");
        bench.Run("day", "log.jsonl", "--begin", "2031-07-01T20:00+02:00").Worked("ORDER OF THE DAY, 12:00", "since 2031-07-01 12:30");
    }

    [Fact]
    public void Notes_of_a_file_begin_a_log_and_notes_typed_in_go_on_with_it()
    {
        bench.Write("notes.jsonl", Board, Told);
        bench.Run("note", "log.jsonl", "notes.jsonl", "--property", "garden", "--data", "me").Worked("2 noted in log.jsonl");
        var first = bench.Read("log.jsonl");
        bench.Type(Encoding.UTF8.GetBytes(Told + "\n"), "note", "log.jsonl", "--data", "me", "--again").Worked("1 noted in log.jsonl");
        var log = LogDocument.Read(bench.Read("log.jsonl"));
        Assert.Empty(log.Problems);
        Assert.Equal([1L, 2L, 3L], log.Entries.Select(e => e.Id.Seq));
        Assert.Single(log.Entries.Select(e => e.Id.Writer).Distinct());
        Assert.True(bench.Read("log.jsonl").AsSpan().StartsWith(first));
    }

    [Fact]
    public void One_bad_note_keeps_all_from_being_written()
    {
        bench.Write("good.jsonl", Told);
        bench.Run("note", "log.jsonl", "good.jsonl", "--property", "garden", "--data", "me").Worked();
        var before = bench.Read("log.jsonl");
        bench.Write("notes.jsonl", Told, """{"kind":"reading","how":"station ohms","stations":["s1"],"value":"3 parsec"}""");
        bench.Run("note", "log.jsonl", "notes.jsonl", "--data", "me").Failed(1, "line 2", "no unit that can stand here", "Nothing was noted");
        Assert.Equal(before, bench.Read("log.jsonl"));
    }

    [Fact]
    public void One_bad_note_begins_no_log()
    {
        bench.Write("notes.jsonl", Told, "{");
        bench.Run("note", "log.jsonl", "notes.jsonl", "--property", "garden", "--data", "me").Failed(1, "line 2", "Nothing was noted");
        Assert.Equal(["notes.jsonl"], bench.Names());
    }

    [Fact]
    public void A_new_log_needs_the_name_of_its_property()
    {
        bench.Write("notes.jsonl", Told);
        bench.Run("note", "log.jsonl", "notes.jsonl", "--data", "me").Failed(1, "--property", "the log is new", "--property garden");
        Assert.DoesNotContain("log.jsonl", bench.Names());
    }

    [Fact]
    public void A_property_that_is_no_id_is_refused()
    {
        bench.Write("notes.jsonl", Told);
        bench.Run("note", "log.jsonl", "notes.jsonl", "--property", " garden ", "--data", "me").Failed(1, "not an id");
        Assert.DoesNotContain("log.jsonl", bench.Names());
    }

    [Theory]
    [InlineData("")]
    [InlineData("\n\n")]
    public void Nothing_to_note_is_told(string typed) =>
        bench.Type(Encoding.UTF8.GetBytes(typed), "note", "log.jsonl", "--property", "garden", "--data", "me").Failed(1, "Nothing was noted");

    [Fact]
    public void Another_data_folder_is_another_writer_and_a_copied_one_too()
    {
        bench.Write("notes.jsonl", Told);
        bench.Run("note", "log.jsonl", "notes.jsonl", "--property", "garden", "--data", "me").Worked();
        bench.Run("note", "log.jsonl", "notes.jsonl", "--data", "you").Worked();
        Directory.CreateDirectory(bench.Path("copy"));
        File.Copy(bench.Path("me/writer"), bench.Path("copy/writer"));
        bench.Run("note", "log.jsonl", "notes.jsonl", "--data", "copy").Worked();
        var log = LogDocument.Read(bench.Read("log.jsonl"));
        Assert.Empty(log.Problems);
        Assert.Equal(3, log.Entries.Select(e => e.Id.Writer).Distinct().Count());
    }

    [Fact]
    public void Notes_go_into_a_damaged_log_without_touching_its_bytes()
    {
        byte[] damaged = [.. Workbench.Sound.ToBytes().Span[..^40]];
        bench.Write("log.jsonl", damaged);
        bench.Write("notes.jsonl", Told);
        bench.Run("note", "log.jsonl", "notes.jsonl", "--data", "me").Worked();
        Assert.True(bench.Read("log.jsonl").AsSpan().StartsWith(damaged));
    }

    [Fact]
    public void A_folder_in_place_of_the_log_or_the_notes_is_named()
    {
        Directory.CreateDirectory(bench.Path("folder"));
        bench.Write("notes.jsonl", Told);
        bench.Run("note", "folder", "notes.jsonl", "--property", "garden", "--data", "me").Failed(1, "folder");
        bench.Run("note", "log.jsonl", "folder", "--property", "garden", "--data", "me").Failed(1, "folder: is a folder");
        bench.Run("note", "log.jsonl", "missing.jsonl", "--property", "garden", "--data", "me").Failed(1, "missing.jsonl: is not there");
        Assert.Equal(["folder", "notes.jsonl"], bench.Names());
    }
}
