using System.Text;
using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Tests.FieldLog;

public sealed class DraftTests
{
    [Fact]
    public void Notes_are_read_with_or_without_their_version()
    {
        var drafts = Read("{\"kind\":\"told\",\"who\":\"a\",\"text\":\"b\"}", "", " {\"version\":1,\"kind\":\"told\",\"who\":\"c\",\"text\":\"d\"}\r");
        Assert.Empty(drafts.Problems);
        Assert.Equal([1, 3], drafts.Notes.Select(n => n.Line));
        Assert.Equal("{\"version\":1,\"kind\":\"told\",\"who\":\"a\",\"text\":\"b\"}", Encoding.UTF8.GetString(drafts.Notes[0].Body.Span));
        Assert.All(drafts.Notes, n => Assert.NotNull(Pen.Seal("garden-1", "writer-a", null, new HybridTime(0, 0), n.Body).Value.Fact));
    }

    [Theory]
    [InlineData("{\"kind\":\"told\",\"who\":\"a\"}", "line 2, field 'text'", "is missing", "Add \"text\"")]
    [InlineData("{\"kind\":\"tolled\",\"who\":\"a\"}", "line 2, field 'kind'", "cannot be sealed here", "property, ground")]
    [InlineData("{\"kind\":\"tolled\",\"version\":1}", "line 2, field 'kind'", "cannot be sealed here", "property, ground")]
    [InlineData("{\"kind\":\"told\",\"version\":9}", "line 2, field 'version'", "newer than what can be sealed here", "Write version 1")]
    [InlineData("3", "line 2", "not an object", "kind")]
    [InlineData("{", "line 2", "is not JSON", "note it again")]
    [InlineData("{\"kind\":\"told\",\"who\":\"a\",\"text\":\"b\", }", "line 2", "has a comma before its closing brace, at byte 38", "Take that comma out")]
    [InlineData("{\"kind\":\"station\",\"waters\":[\"a\",]}", "line 2", "has a comma before its closing bracket", "Take that comma out")]
    [InlineData("{\"kind\":\"told\",\"who\":\"a\",\"text\":\"b\"},", "line 2", "has a comma after its end, at byte 37", "one note a line")]
    [InlineData("[", "line 2", "is a bracket by itself", "one note a line")]
    [InlineData("]", "line 2", "is a bracket by itself", "one note a line")]
    [InlineData("{kind:\"told\"}", "line 2", "without double quotation marks", "\"kind\"")]
    [InlineData("{'kind':'told'}", "line 2", "without double quotation marks", "\"kind\"")]
    [InlineData("{\"kind\":\"reading\",\"how\":\"x\",\"value\":\"3 parsec\"}", "line 2, field 'value'", "no unit that can stand here", "ohm")]
    public void A_bad_note_is_told_with_its_line_and_the_others_are_given(string line, string place, string reason, string remedy)
    {
        var drafts = Read("{\"kind\":\"told\",\"who\":\"a\",\"text\":\"b\"}", line);
        drafts.Problems.First(p => p.Severity == Severity.Error).Is(Severity.Error, place, reason, remedy);
        Assert.Single(drafts.Notes);
    }

    [Fact]
    public void A_note_too_long_is_refused() =>
        Assert.Single(Read(new string(' ', 1 << 20) + "{}").Problems).Is(Severity.Error, "line 1", "bytes long", "SHA-256");

    [Fact]
    public void No_notes_at_all_are_told() => Assert.Single(Read("").Problems).Is(Severity.Error, "line 1", "there is none", "one note a line");

    [Fact]
    public void Notes_in_UTF_16_are_named_as_such() =>
        Assert.Contains("UTF-16", Drafts.Read(Encoding.Unicode.GetBytes("{\"kind\":\"told\"}\n{\"kind\":\"told\"}\n")).Problems[0].Reason, StringComparison.Ordinal);

    private static Drafts Read(params string[] lines) => Drafts.Read(Notebook.File(lines));
}
