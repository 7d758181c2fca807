using System.Text;
using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Tests.FieldLog;

/// <summary>Files and lines that are not as they should be: each is told with its place and a remedy, and the rest counts.</summary>
public sealed class BadLineTests
{
    private const string Body = "{\"kind\":\"told\",\"version\":1,\"who\":\"the owner\",\"text\":\"dry\"}";

    private static readonly string Good = Notebook.First(Body);

    [Theory]
    [InlineData("")]
    [InlineData("\n")]
    [InlineData(" \n\r\n")]
    public void An_empty_file_says_so(string text)
    {
        var log = LogDocument.Read(Encoding.UTF8.GetBytes(text));
        Assert.Single(log.Errors()).Is(Severity.Error, "line 1", "the file is empty", "underturf note");
        Assert.Null(log.Property);
        Assert.Null(log.LastNoted);
    }

    [Fact]
    public void A_last_line_cut_off_costs_that_line_only()
    {
        var log = LogDocument.Read(Encoding.UTF8.GetBytes(Good + "\n" + Good[..200]));
        log.OnlyProblem().Is(Severity.Error, "line 2", "cut off", "underturf merge");
        Assert.Equal(["dry"], log.Standing.Texts());
    }

    [Fact]
    public void A_whole_last_line_without_line_end_counts() =>
        Counts(Encoding.UTF8.GetBytes(Good)).Is(Severity.Notice, "line 1", "no line end", "add a line feed");

    [Fact]
    public void A_byte_order_mark_is_passed_over() =>
        Counts([0xEF, 0xBB, 0xBF, .. Notebook.File(Good)]).Is(Severity.Error, "line 1", "byte-order mark", "without one");

    [Fact]
    public void Carriage_returns_are_passed_over() =>
        Counts(Encoding.UTF8.GetBytes(Good + "\r\n")).Is(Severity.Error, "line ends", "1 of 1 lines", "line feeds");

    [Fact]
    public void A_blank_line_is_passed_over() => Counts(Notebook.File("", Good)).Is(Severity.Notice, "line 1", "is blank", "passed over");

    [Fact]
    public void A_repeated_line_counts_once() => Counts(Notebook.File(Good, Good)).Is(Severity.Error, "line 2", "repeats line 1", "counts once");

    [Fact]
    public void A_file_in_UTF_16_is_named_as_such_once()
    {
        foreach (var encoding in new[] { Encoding.Unicode, Encoding.BigEndianUnicode, Encoding.UTF32 })
        {
            byte[] bare = encoding.GetBytes(Good + "\n" + Good + "\n");
            LogDocument.Read(bare).OnlyProblem().Is(Severity.Error, "line 1", "UTF-16", "as UTF-8");
            LogDocument.Read((byte[])[.. encoding.GetPreamble(), .. bare]).OnlyProblem().Is(Severity.Error, "line 1", "UTF-16", "as UTF-8");
        }
    }

    [Fact]
    public void A_line_in_another_encoding_is_told_and_the_rest_counts()
    {
        byte[] latin = [.. Encoding.Latin1.GetBytes(Notebook.First(Body.Replace("dry", "trocken für Wochen", StringComparison.Ordinal))), (byte)'\n'];
        var log = LogDocument.Read((byte[])[.. latin, .. Notebook.File(Good)]);
        log.OnlyProblem().Is(Severity.Error, "line 1", "not UTF-8", "as UTF-8");
        Assert.Equal(["dry"], log.Standing.Texts());
    }

    [Fact]
    public void Ten_megabytes_on_one_line_are_refused_by_their_length()
    {
        var log = LogDocument.Read((byte[])[.. Notebook.File(new string('x', 10 << 20)), .. Notebook.File(Good)]);
        log.OnlyProblem().Is(Severity.Error, "line 1", "10485760 bytes long", "SHA-256");
        Assert.Equal(["dry"], log.Standing.Texts());
    }

    [Fact]
    public void A_hundred_thousand_levels_are_refused() =>
        Refused(new string('[', 100_000)).Is(Severity.Error, "line 1", "nested deeper than 24", "docs/field-log.md");

    [Fact]
    public void A_bare_note_is_sent_to_be_sealed() => Refused(Body).Is(Severity.Error, "line 1", "without head and digest", "underturf note");

    [Fact]
    public void A_line_without_digest_is_sent_to_be_sealed() =>
        Refused($"{{\"head\":{Notebook.Head(Body)},\"body\":{Body}}}").Is(Severity.Error, "line 1", "no digest", "underturf note");

    [Theory]
    [InlineData("hello", "is not JSON from byte 1", "note it again")]
    [InlineData("{\"a\":1,\"b\":tru}", "is not JSON from byte", "note it again")]
    [InlineData("{\"kind\":\"told\",\"kind\":\"test\"}", "gives the field 'kind' twice", "Keep one")]
    [InlineData("{\"kind\":\"\\ud800\"}", "half of a character", "Write the character whole")]
    [InlineData("{\"\\ud800\":1}", "half of a character", "Write the character whole")]
    [InlineData("[1,2]", "not in the form of an entry", "docs/field-log.md")]
    [InlineData("null", "not in the form of an entry", "docs/field-log.md")]
    public void A_line_that_is_no_entry_says_what_it_is(string line, string reason, string remedy) => Refused(line).Is(Severity.Error, "line 1", reason, remedy);

    [Fact]
    public void Blanks_between_the_parts_or_after_them_are_refused()
    {
        Refused(Good.Replace(",\"body\":", ", \"body\":", StringComparison.Ordinal)).Is(Severity.Error, "line 1", "not in the form", "without blanks");
        Refused(Good + " ").Is(Severity.Error, "line 1", "not in the form", "nothing after");
    }

    [Fact]
    public void A_changed_line_does_not_match_its_digest() =>
        Refused(Good.Replace("dry", "wet", StringComparison.Ordinal)).Is(Severity.Error, "line 1", "does not match its digest", "underturf merge");

    [Fact]
    public void A_body_that_the_head_was_not_made_for_is_refused() =>
        Refused(Notebook.Sealed(Body.Replace("dry", "wet", StringComparison.Ordinal), Notebook.Head(Body))).Is(Severity.Error, "line 1", "another body", "underturf merge");

    [Theory]
    [InlineData("\"format\":1", "\"format\":2", "line 1", "of format 2")]
    [InlineData("\"format\":1", "\"format\":\"1\"", "line 1, field 'format'", "is \"1\"")]
    [InlineData("\"seq\":1", "\"seq\":0", "line 1, field 'seq'", "not the entry's number")]
    [InlineData("\"seq\":1", "\"seq\":1.5", "line 1, field 'seq'", "not the entry's number")]
    [InlineData("\"prev\":\"\"", "\"prev\":\"ABC\"", "line 1, field 'prev'", "not the hash of a header")]
    [InlineData("T15:12:00.000Z/0", "T15:12:00Z", "line 1, field 'noted'", "not a time of noting")]
    [InlineData("T15:12:00.000Z/0", "T15:12:00.000Z/-1", "line 1, field 'noted'", "not a time of noting")]
    [InlineData("\"writer\":\"writer-x\"", "\"writer\":\" \"", "line 1, field 'writer'", "is empty")]
    [InlineData("\"writer\":\"writer-x\"", "\"writer\":\"a\\u0007\"", "line 1, field 'writer'", "is not an id")]
    [InlineData("\"writer\":\"writer-x\",", "", "line 1, field 'writer'", "is missing")]
    [InlineData("\"property\":\"garden-1\",", "", "line 1, field 'property'", "is missing")]
    public void A_head_with_a_wrong_field_names_it(string was, string now, string place, string reason)
    {
        var problem = LogDocument.Read(Notebook.File(Notebook.Sealed(Body, Notebook.Head(Body).Replace(was, now, StringComparison.Ordinal)))).Errors()[0];
        Assert.Equal(place, problem.Place);
        Assert.Contains(reason, problem.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_field_of_the_head_that_is_not_known_is_noticed_and_the_entry_counts() =>
        Counts(Notebook.File(Notebook.Sealed(Body, Notebook.Head(Body).Replace("{\"format\"", "{\"colour\":1,\"format\"", StringComparison.Ordinal))))
            .Is(Severity.Notice, "line 1, field 'colour'", "is not a field of 'head'", "format, property");

    [Fact]
    public void Long_logs_are_read_in_proportion_to_their_length()
    {
        // Twenty thousand lines that all claim one name, and a strike of it: work that grew with the square would not end.
        var lines = Enumerable.Range(0, 20_000).Select(i => Notebook.First(Body.Replace("dry", $"dry {i}", StringComparison.Ordinal)));
        var log = LogDocument.Read(Notebook.File(lines));
        Assert.Equal(20_000, log.Entries.Count);
        log.OnlyProblem().Is(Severity.Error, "writer-x/1", "20000 different entries", "new writer");
    }

    private static Problem Counts(byte[] bytes)
    {
        var log = LogDocument.Read(bytes);
        Assert.Equal(["dry"], log.Standing.Texts());
        Assert.Equal(bytes, log.ToBytes());
        return log.OnlyProblem();
    }

    /// <summary>The bad line stands before a good one, which must count.</summary>
    private static Problem Refused(string line)
    {
        var log = LogDocument.Read(Notebook.File(line, Notebook.Sealed(Body, Notebook.Head(Body, writer: "writer-y"))));
        Assert.Equal(["dry"], log.Standing.Texts());
        Assert.Equal(2, log.Lines.Count);
        return log.OnlyProblem();
    }
}
