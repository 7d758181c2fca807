using System.Text.RegularExpressions;
using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Tests.FieldLog;

/// <summary>docs/field-log.md against the code: kinds, fields, units, and the worked line with its hashes.</summary>
public sealed partial class DocumentedFormatTests
{
    private static readonly string Page = Repository.Read("docs/field-log.md");

    private static readonly string[] Lines = Page.Split('\n');

    [Fact]
    public void Every_kind_stands_on_the_page_with_its_fields()
    {
        var sections = Page[(Page.IndexOf("\n## Kinds", StringComparison.Ordinal) + 1)..].Split("\n### ");
        Assert.Equal(FactKinds.All.Select(k => k.Kind), sections.Skip(1).Select(s => s.Split('\n')[0]));
        Assert.Equal(RecordFields.Common, Fields(sections[0]));
        foreach (var (kind, section) in FactKinds.All.Zip(sections.Skip(1)))
        {
            Assert.Equal(RecordFields.Own(kind.Type), Fields(section));
        }
    }

    [Fact]
    public void The_worked_lines_are_what_a_script_and_the_pen_make()
    {
        var body = Indented("{\"kind\":\"reading\"");
        var head = Indented("{\"format\":1");
        var line = Notebook.Sealed(body, head);
        Assert.Equal(line, Examples()[0]);
        Assert.Equal(head, Notebook.Head(body, writer: "writer-a"));
        Assert.Contains($"has the hash `{Notebook.Sha(body)}`", Page, StringComparison.Ordinal);
        Assert.Contains($"is `{Notebook.Sha(head)}`", Page, StringComparison.Ordinal);
        Assert.Contains($"`{Notebook.Sha(line[..^77])}`", Page, StringComparison.Ordinal);
        Assert.True(HybridTime.TryParse("2031-04-02T15:12:00.000Z/0", out var noted));
        Assert.Equal(line, Notebook.Text(Pen.Seal("garden-1", "writer-a", null, noted, System.Text.Encoding.UTF8.GetBytes(body)).Value));
    }

    [Fact]
    public void The_worked_log_is_read_as_the_page_says()
    {
        var log = LogDocument.Read(Notebook.File(Examples()[..2]));
        Assert.Empty(log.Problems);
        Assert.Equal(2, log.Entries.Count);
        Assert.Empty(log.Standing);
        Assert.Equal(Examples()[2], Notebook.Text(Erasure.Erase(log.Entries[0])));
    }

    [Fact]
    public void Every_unit_on_the_page_is_a_unit_of_its_quantity()
    {
        var rows = Lines.SkipWhile(l => l != "| quantity | units |").Skip(2).TakeWhile(l => l.StartsWith('|')).ToList();
        Assert.Equal(Enum.GetValues<Dimension>().Select(Units.Name).Order(StringComparer.Ordinal), rows.Select(r => r.Split('|')[1].Trim()).Order(StringComparer.Ordinal));
        foreach (var row in rows)
        {
            var dimension = Enum.GetValues<Dimension>().Single(d => Units.Name(d) == row.Split('|')[1].Trim());
            var units = Ticked().Matches(row).Select(m => m.Groups["unit"].Value).ToList();
            Assert.All(units, unit => Assert.True(Units.Parse($"1 {unit}", dimension).Succeeded, unit));
            Assert.EndsWith($"Use one of: {string.Join(", ", units)}", Units.Parse("1 ?", dimension).Problem!.Remedy, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_limits_on_the_page_are_those_of_the_reader()
    {
        var fits = "{\"kind\":\"told\"}" + new string(' ', (1 << 20) - 15);
        Assert.Contains("bare note", LogDocument.Read(Notebook.File(fits)).OnlyProblem().Reason, StringComparison.Ordinal);
        Assert.Contains("1048577 bytes long", LogDocument.Read(Notebook.File(fits + " ")).OnlyProblem().Reason, StringComparison.Ordinal);
        Assert.Contains("1,048,576 bytes and nest 24 levels", Page, StringComparison.Ordinal);
        Assert.DoesNotContain("nested", LogDocument.Read(Notebook.File(new string('[', 24) + new string(']', 24))).OnlyProblem().Reason, StringComparison.Ordinal);
        Assert.Contains("nested", LogDocument.Read(Notebook.File(new string('[', 25) + new string(']', 25))).OnlyProblem().Reason, StringComparison.Ordinal);
    }

    private static string Indented(string start) => Lines.Single(l => l.StartsWith("    " + start, StringComparison.Ordinal)).Trim();

    private static string[] Examples() => [.. Lines.Where(l => l.StartsWith("{\"head\":{\"", StringComparison.Ordinal))];

    private static (string Name, bool Required)[] Fields(string section) =>
        [.. Row().Matches(section).Select(m => (m.Groups["name"].Value, m.Groups["required"].Value.Length > 0))];

    [GeneratedRegex(@"^\| `(?<name>[^`]+)` \| [^|]+ \| (?<required>required|) ?\|", RegexOptions.Multiline | RegexOptions.ExplicitCapture)]
    private static partial Regex Row();

    [GeneratedRegex("`(?<unit>[^`]+)`", RegexOptions.ExplicitCapture)]
    private static partial Regex Ticked();
}
