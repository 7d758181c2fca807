using CsCheck;
using Underturf.FieldLog;

namespace Underturf.Tests.FieldLog;

public sealed class DamageTests
{
    [Fact]
    public void Any_damaged_byte_is_noticed_and_costs_at_most_the_lines_it_touches() => Cases.Each(Notebook.Pages.Select(Gen.Byte), 2, x =>
    {
        var bytes = Notebook.File(x.Item1);
        var lines = LogDocument.Read(bytes).Lines.Select(l => Convert.ToHexString(l.Entry!.Line.Span)).ToArray();
        Assert.Empty(LogDocument.Read(bytes).Problems);
        for (var at = 0; at < bytes.Length; at++)
        {
            foreach (var other in Others(bytes[at], x.Item2))
            {
                AssertCost(bytes, lines, at, other);
            }
        }
    });

    [Fact]
    public void A_log_cut_anywhere_keeps_every_whole_line_and_says_so()
    {
        var bytes = Notebook.File(Cases.Make(Notebook.Pages, 1));
        for (var length = 0; length < bytes.Length; length++)
        {
            var log = LogDocument.Read(bytes.AsMemory(0, length));
            var whole = bytes.AsSpan(0, length).Count((byte)'\n') + (length > 0 && bytes[length] == '\n' ? 1 : 0);
            Assert.Equal(whole, log.Entries.Count);
            Assert.True(log.Problems.Count > 0 || bytes[length - 1] == '\n', $"cut at {length} was not noticed");
        }
    }

    [Fact]
    public void Nothing_that_is_read_makes_the_reader_throw() => Cases.Each(Mangled(), 1000, bytes =>
    {
        var log = LogDocument.Read(bytes);
        Assert.True(bytes.AsSpan().SequenceEqual(log.ToBytes().Span));
        Assert.True(bytes.Where(b => b != '\n').SequenceEqual(log.Lines.SelectMany(line => line.Bytes.ToArray())));
        Assert.True(log.Standing.Count <= log.Entries.Count && log.Entries.Count <= log.Lines.Count);
        Assert.NotNull(LogMerge.Union(log, LogDocument.Read(default)));
        Assert.NotNull(Drafts.Read(bytes));
    });

    [Fact]
    public void Nothing_that_is_noted_makes_the_draft_reader_throw() => Cases.Each(MangledNotes(), 1000, bytes => Assert.NotNull(Drafts.Read(bytes)));

    private static IEnumerable<byte> Others(byte was, byte random) =>
        new[] { (byte)(was ^ 0x20), (byte)'\n', (byte)'\r', random }.Where(b => b != was).Distinct();

    private static void AssertCost(byte[] bytes, string[] lines, int at, byte other)
    {
        var damaged = (byte[])[.. bytes];
        damaged[at] = other;
        var log = LogDocument.Read(damaged);
        var line = bytes.AsSpan(0, at).Count((byte)'\n');
        var touched = bytes[at] == '\n' ? 2 : 1;
        Assert.True(log.Problems.Count > 0, $"byte {at} as {other} was not noticed");

        var held = log.Entries.Select(e => Convert.ToHexString(e.Line.Span)).ToHashSet(StringComparer.Ordinal);
        var lost = lines.Where((text, i) => (i < line || i >= line + touched) && !held.Contains(text));
        Assert.Empty(lost);
    }

    /// <summary>Valid logs with bytes changed, cut out, doubled or put in, so that damage reaches past the first check.</summary>
    private static Gen<byte[]> Mangled() => Notebook.Pages.Select(pages => Notebook.File(pages)).SelectMany(Mangle);

    private static Gen<byte[]> MangledNotes() => FactCases.Any.Array[1, 4]
        .Select(facts => facts.SelectMany(fact => (byte[])[.. BodyText.Write(fact), (byte)'\n']).ToArray())
        .SelectMany(Mangle);

    private static Gen<byte[]> Mangle(byte[] bytes) => Gen.Int[0, bytes.Length - 1].Select(Gen.Int[0, 3], Gen.Byte, Gen.Int[1, 40])
        .Array[1, 6]
        .Select(edits => edits.Aggregate(bytes, (now, edit) => Edit(now, Math.Min(edit.Item1, now.Length), edit.Item2, edit.Item3, edit.Item4)));

    private static byte[] Edit(byte[] bytes, int at, int how, byte value, int length)
    {
        var end = Math.Min(bytes.Length, at + length);
        return how switch
        {
            0 => [.. bytes[..at], value, .. bytes[Math.Min(bytes.Length, at + 1)..]],
            1 => [.. bytes[..at], .. bytes[end..]],
            2 => [.. bytes[..end], .. bytes[at..]],
            _ => [.. bytes[..at], .. Enumerable.Repeat((byte)"{[\"\\,:0n\n\r"[value % 10], length), .. bytes[at..]],
        };
    }
}
