using CsCheck;
using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Tests.FieldLog;

public sealed class MergeTests
{
    /// <summary>Any lines of a common stock of good entries (a fork and an erased copy among them) and bad lines, in any order.</summary>
    private static readonly Gen<LogDocument> Part = Stock().SelectMany(stock =>
        Gen.Shuffle(stock, 0, stock.Length).Select(Gen.OneOf("\n", "\r\n"), (lines, end) =>
            LogDocument.Read(lines.SelectMany(line => (byte[])[.. line, .. System.Text.Encoding.ASCII.GetBytes(end)]).ToArray())));

    private static readonly Gen<(LogDocument A, LogDocument B, LogDocument C)> Three = Part.Select(Part, Part, (a, b, c) => (a, b, c));

    [Fact]
    public void Merging_is_commutative() => Cases.Each(Three, 150, x => AssertSame(LogMerge.Union(x.A, x.B), LogMerge.Union(x.B, x.A)));

    [Fact]
    public void Merging_is_associative() => Cases.Each(Three, 150, x =>
        AssertSame(LogMerge.Union(LogMerge.Union(x.A, x.B), x.C), LogMerge.Union(x.A, LogMerge.Union(x.B, x.C))));

    [Fact]
    public void Merging_again_changes_nothing() => Cases.Each(Three, 150, x =>
    {
        var union = LogMerge.Union(x.A, x.B);
        AssertSame(union, LogMerge.Union(union, x.B));
        AssertSame(union, LogMerge.Union(union, union));
    });

    [Fact]
    public void Every_distinct_line_of_both_is_in_the_union_exactly_as_stored() => Cases.Each(Three, 100, x =>
    {
        var union = LogMerge.Union(x.A, x.B);
        var held = union.Lines.Select(line => Convert.ToHexString(line.Bytes.Span)).ToHashSet(StringComparer.Ordinal);
        var erased = union.Entries.Where(e => e.Erased).Select(e => e.Header.Hash).ToHashSet(StringComparer.Ordinal);
        foreach (var line in x.A.Lines.Concat(x.B.Lines).Where(l => !l.IsBlank && !(l.Entry is { Erased: false } e && erased.Contains(e.Header.Hash))))
        {
            Assert.Contains(Convert.ToHexString(line.Entry is { } entry ? entry.Line.Span : line.Bytes.Span), held);
        }

        Assert.Equal(held.Count, union.Lines.Count);
    });

    [Fact]
    public void Entries_stand_in_the_order_of_noting_and_bad_lines_after_them() => Cases.Each(Three, 100, x =>
    {
        var union = LogMerge.Union(x.A, x.B);
        Assert.Equal(union.Entries.Select(e => e.Line), union.Lines.TakeWhile(l => l.Entry is not null).Select(l => l.Entry!.Line));
        Assert.Equal(union.Entries.Select(e => e.Header.Noted).Order(), union.Entries.Select(e => e.Header.Noted));
    });

    [Fact]
    public void Both_sides_of_a_fork_are_kept_and_reported()
    {
        var (ann, first) = Begun();
        var copy = ann.Copy();
        var union = LogMerge.Union(Notebook.Read(first, ann.Note(Say.Told("left"))), Notebook.Read(first, copy.NoteLater(Say.Told("right"), 500)));
        Assert.Equal(["first", "left", "right"], union.Standing.Texts());
        union.OnlyProblem().Is(Severity.Error, "writer-a/2", "stands for 2 different entries", "new writer");
    }

    [Fact]
    public void A_log_of_another_property_is_kept_apart_and_reported()
    {
        var (_, first) = Begun();
        var other = new Notebook("writer-b", property: "orchard-9").Note(Say.Told("elsewhere"));
        var union = LogMerge.Union(Notebook.Read(first, new Notebook("writer-c").Note(Say.Told("here"))), Notebook.Read(other));
        Assert.Equal("garden-1", union.Property);
        Assert.Equal(3, union.Entries.Count);
        Assert.DoesNotContain("elsewhere", union.Standing.Texts());
        union.OnlyProblem().Is(Severity.Error, "writer-b/1", "'orchard-9'", "one log for each property");
    }

    [Fact]
    public void A_gap_is_closed_by_the_copy_that_has_the_entry()
    {
        var (ann, first) = Begun();
        var (second, third) = (ann.Note(Say.Told("second")), ann.Note(Say.Told("third")));
        Assert.NotEmpty(Notebook.Read(first, third).Problems);
        Assert.Empty(LogMerge.Union(Notebook.Read(first, third), Notebook.Read(second)).Problems);
    }

    private static (Notebook Ann, Entry First) Begun()
    {
        var ann = new Notebook("writer-a");
        return (ann, ann.Note(Say.Told("first")));
    }

    private static Gen<byte[][]> Stock() => Notebook.Pages.Select(pages =>
    {
        var (ann, first) = Begun();
        var copy = ann.Copy();
        Entry[] extra = [first, ann.Note(Say.Told("left")), copy.Note(Say.Told("right")), Erasure.Erase(first)];
        byte[][] bad = ["{\"kind\":\"told\"}"u8.ToArray(), [0xEF, 0xBB, 0xBF, 0xFF, (byte)'x'], [0xFF, 0xFE, 0x00], [0x01, (byte)'\r'], " "u8.ToArray()];
        return (byte[][])[.. pages.Concat(extra).Select(e => e.Line.ToArray()), .. bad, first.Line.ToArray()];
    });

    private static void AssertSame(LogDocument expected, LogDocument actual)
    {
        Assert.Equal(expected.ToBytes(), actual.ToBytes());
        Assert.Equal(expected.Problems, actual.Problems);
    }
}
