using System.Text.Json;
using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>
/// Notes that a writer gives a second time, byte for byte: a file of notes that has grown and is given whole again. One with a time of its own
/// (`at`) is the same note wherever it stands; of those without, two or more in the order in which they stand in the log, or the very last one:
/// a valve that is shut, opened and shut again is noted in the same words and is no repetition.
/// </summary>
/// <param name="Fresh">Those that the log lacks.</param>
/// <param name="Repeats">What was left out, with the entries that say it already.</param>
public sealed record NotedBefore(IReadOnlyList<Draft> Fresh, IReadOnlyList<Problem> Repeats)
{
    public static NotedBefore Of(LogDocument log, string writer, IReadOnlyList<Draft> notes)
    {
        List<Entry> own = [.. log.Entries.Where(e => e.Id.Writer == writer)];
        var places = own.Index().ToLookup(e => e.Item.Header.BodyHash, e => e.Index, StringComparer.Ordinal);
        string[] hashes = [.. notes.Select(n => Sha256Hex.Of(n.Body.Span))];
        var (fresh, repeats) = (new List<Draft>(), new List<Problem>());
        for (var note = 0; note < notes.Count;)
        {
            var (first, length) = places[hashes[note]].Select(at => (At: at, Length: Alike(own, at, hashes, note))).OrderByDescending(run => run.Length).FirstOrDefault();
            if (length > 1 || (length == 1 && (HasTime(notes[note]) || (places[hashes[note]].Contains(own.Count - 1) && fresh.Count == 0))))
            {
                repeats.Add(Repeat(notes[note].Line, notes[note + length - 1].Line, own[first], own[first + length - 1]));
                note += length;
                continue;
            }

            fresh.Add(notes[note]);
            note++;
        }

        return new NotedBefore(fresh, repeats);
    }

    private static int Alike(List<Entry> own, int at, string[] hashes, int note)
    {
        var length = 0;
        while (at + length < own.Count && note + length < hashes.Length && own[at + length].Header.BodyHash == hashes[note + length])
        {
            length++;
        }

        return length;
    }

    private static bool HasTime(Draft note)
    {
        using var body = JsonDocument.Parse(note.Body);
        return note.Fact is not (StrikeFact or RestoreFact) && body.RootElement.TryGetProperty("at", out _);
    }

    private static Problem Repeat(int firstLine, int lastLine, Entry first, Entry last) => firstLine == lastLine
        ? new Problem($"line {firstLine}", $"says the same as {first.Id} and was left out", "If it was seen or read once more, note it with --again", Severity.Notice)
        : new Problem($"lines {firstLine} to {lastLine}", $"say the same as {first.Id} to {last.Id.Seq} and were left out", "If all of it was seen or read once more, note it with --again", Severity.Notice);
}
