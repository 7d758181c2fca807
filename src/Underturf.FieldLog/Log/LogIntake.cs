using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>What a log that is only ever added to takes of the lines that somebody hands it, and what it does not take.</summary>
/// <param name="Added">Entries that the log lacked, in the order in which they were handed over; both sides of a fork.</param>
/// <param name="Refused">Each line that is not taken, with its reason; whoever handed it over still has it.</param>
public sealed record LogIntake(IReadOnlyList<Entry> Added, IReadOnlyList<Problem> Refused)
{
    /// <summary>Looks through lines, one after the other.</summary>
    public static LogIntake Of(LogDocument log, ReadOnlyMemory<byte> lines)
    {
        var handed = LogDocument.Read(lines, log.Kinds);
        var property = log.Property ?? handed.Property;
        var (held, added, refused) = (new HeldEntries(log.Entries), new List<Entry>(), new List<Problem>());
        foreach (var line in handed.Lines.Where(line => !line.IsBlank))
        {
            if (line.Entry is not { } entry)
            {
                refused.AddRange(handed.Problems.Where(problem => problem.Place == line.Place));
            }
            else if (entry.Header.Property != property)
            {
                refused.Add(Stranger(line, property!));
            }
            else if (held.Add(entry))
            {
                added.Add(entry);
            }
        }

        return new LogIntake(added, refused);
    }

    private static Problem Stranger(LogLine line, string property) => new(
        $"{line.Place}, {line.Entry!.Id}",
        $"is about the property {Problem.Quote(line.Entry.Header.Property)}, this log is about {Problem.Quote(property)}",
        "Keep one log for each property");
}
