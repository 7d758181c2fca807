using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using CsCheck;
using Underturf.FieldLog;

namespace Underturf.Tests.FieldLog;

/// <summary>An invented writer with a pen, and ways to put what it wrote into a file.</summary>
internal sealed class Notebook(string writer, string property = "garden-1", long startMilliseconds = 1_932_909_120_000)
{
    private Header? last;
    private HybridTime time = new(startMilliseconds, 0);

    /// <summary>A log that two writers wrote by turns, with a strike and a kind that nobody knows.</summary>
    public static Gen<Entry[]> Pages { get; } = FactCases.Plain.Array[2, 6].Select(FactCases.Plain.Array[1, 4], (a, b) =>
    {
        var ann = new Notebook("writer-a");
        var ben = new Notebook("writer-b", startMilliseconds: 1_932_909_121_000);
        Entry[] first = [.. a.Select(fact => ann.Note(fact))];
        Entry[] second = [.. b.Select(fact => ben.Note(fact))];
        return (Entry[])[.. first, .. second, ben.Note(new StrikeFact { Entry = first[0].Id.ToString() })];
    });

    public static byte[] File(params IEnumerable<Entry> entries) => [.. entries.SelectMany(e => (byte[])[.. e.Line.Span, (byte)'\n'])];

    public static byte[] File(params IEnumerable<string> lines) => Encoding.UTF8.GetBytes(string.Concat(lines.Select(line => line + "\n")));

    public static LogDocument Read(params IEnumerable<Entry> entries) => LogDocument.Read(File(entries));

    public static string Text(Entry entry) => Encoding.UTF8.GetString(entry.Line.Span);

    /// <summary>Seals as a stranger's script would: by docs/field-log.md alone, without the product's code.</summary>
    public static string Sealed(string body, string head) =>
        $"{{\"head\":{head},\"body\":{body}" is var covered ? $"{covered},\"digest\":\"{Sha(covered)}\"}}" : "";

    public static string Head(string body, long seq = 1, string prev = "", string writer = "writer-x", string noted = "2031-04-02T15:12:00.000Z/0", string property = "garden-1") =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{{\"format\":1,\"property\":\"{property}\",\"writer\":\"{writer}\",\"seq\":{seq},\"prev\":\"{prev}\",\"body\":\"{Sha(body)}\",\"noted\":\"{noted}\"}}");

    /// <summary>The first entry of a writer with this body.</summary>
    public static string First(string body) => Sealed(body, Head(body));

    public static string Sha(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    /// <summary>Writes a fact down one second after the one before.</summary>
    public Entry Note(Fact fact, DateTimeOffset? at = null) => Keep(Pen.Seal(property, writer, last, Tick(), fact, at).Value);

    public Entry NoteLater(Fact fact, long milliseconds)
    {
        time = time with { UnixMilliseconds = time.UnixMilliseconds + milliseconds };
        return Note(fact);
    }

    /// <summary>The same notebook, copied: both go on with the same next number.</summary>
    public Notebook Copy() => new(writer, property) { last = last, time = time };

    private HybridTime Tick() => time = HybridTime.Next(time, time.UnixMilliseconds + 1000);

    private Entry Keep(Entry entry)
    {
        last = entry.Header;
        return entry;
    }
}
