using System.Text;

namespace Underturf.Papers;

/// <summary>
/// The PDF library puts chance into two places: the six letters before an embedded font's name and the two identifiers in the metadata. They are
/// overwritten, letter for letter so that no offset in the file moves, with values that follow from the order in the file.
/// </summary>
internal static class StableBytes
{
    /// <summary>Sixteen characters, as the library asks. A paper is told from another by its hash in the log, not by this.</summary>
    public const string DocumentId = "underturf-paper0";

    private const int TagLetters = 6;
    private const string Uuid = "00000000-0000-4000-8000-000000000000";

    private static readonly byte[][] fontNames = ["/FontName/"u8.ToArray(), "/BaseFont/"u8.ToArray()];
    private static readonly byte[] uuid = "uuid:"u8.ToArray();

    public static byte[] Of(byte[] pdf)
    {
        var tags = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var at in fontNames.SelectMany(name => After(pdf, name)).Order().Where(at => IsTag(pdf, at)))
        {
            var tag = Encoding.ASCII.GetString(pdf, at, TagLetters);
            if (!tags.TryGetValue(tag, out var stable))
            {
                stable = $"UNDER{(char)('A' + tags.Count)}";
                tags[tag] = stable;
            }

            Encoding.ASCII.GetBytes(stable, pdf.AsSpan(at));
        }

        foreach (var at in After(pdf, uuid).Where(at => at + Uuid.Length <= pdf.Length && pdf[at + 8] == '-'))
        {
            Encoding.ASCII.GetBytes(Uuid, pdf.AsSpan(at));
        }

        return pdf;
    }

    private static bool IsTag(byte[] pdf, int at) =>
        at + TagLetters < pdf.Length && pdf[at + TagLetters] == '+' && pdf.AsSpan(at, TagLetters).IndexOfAnyExceptInRange((byte)'A', (byte)'Z') < 0;

    private static List<int> After(byte[] pdf, byte[] sought)
    {
        var found = new List<int>();
        var from = 0;
        while (pdf.AsSpan(from).IndexOf(sought) is var at and >= 0)
        {
            from += at + sought.Length;
            found.Add(from);
        }

        return found;
    }
}
