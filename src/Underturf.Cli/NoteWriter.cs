using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.Cli;

/// <summary>Seals notes behind those of a log.</summary>
/// <param name="property">Id of the property, where the log is new.</param>
internal sealed class NoteWriter(FileInfo file, string? property, WriterFolder folder)
{
    private readonly LogDocument log = file.Exists || Directory.Exists(file.FullName) ? Open(file) : LogDocument.Read(ReadOnlyMemory<byte>.Empty);

    /// <summary>Id of the property that is noted about.</summary>
    public string Property
    {
        get
        {
            var named = log.Property ?? property ?? throw new Refusal(new("--property", "is missing, and the log is new", "Name the property, for example --property garden"));
            return property is null || property == named ? named : throw new Refusal(new("--property", $"is {Problem.Quote(property)}, but the log is of {Problem.Quote(named)}", "Leave it out, or name another log"));
        }
    }

    /// <summary>The id of what somebody names; what nobody has noted yet is taken as an id, and named as a doubt.</summary>
    public string? IdOf(string option, string? name)
    {
        if (name is null)
        {
            return null;
        }

        var view = PropertyHistory.Fold(log.Standing).Now;
        var names = new NameFinder(view);
        return names.Meant(view.Ids, name) switch
        {
            [] => name,
            [var only] => only,
            _ => throw new Refusal(names.Find(view.Ids, name, option).Problem!),
        };
    }

    /// <param name="again">What this writer has noted before, byte for byte, is noted once more.</param>
    public int Write(IReadOnlyList<Draft> notes, bool again)
    {
        var (named, writer) = (Property, folder.Writer());
        var before = again ? new NotedBefore(notes, []) : NotedBefore.Of(log, writer, notes);
        if (before.Fresh.Count > 0)
        {
            Seal(before.Fresh, named, writer);
        }
        else
        {
            Console.WriteLine($"Nothing new for {file.Name}.");
        }

        Guard.Report(before.Repeats);
        return before.Repeats.Count > 0 ? ExitCode.BadInput : ExitCode.Good;
    }

    private void Seal(IReadOnlyList<Draft> notes, string named, string writer)
    {
        var (last, clock) = (log.LastHeader(writer), log.LastNoted ?? default);
        var entries = new List<Entry>();
        foreach (var draft in notes)
        {
            Refuse(draft);
            clock = HybridTime.Next(clock, DateTimeOffset.UtcNow.ToUnixTimeMilliseconds());
            var entry = Pen.Seal(named, writer, last, clock, draft.Body);
            if (!entry.Succeeded)
            {
                throw new Refusal(entry.Problem! with { Place = $"line {draft.Line}" });
            }

            entries.Add(entry.Value);
            last = entry.Value.Header;
        }

        var after = log.With(entries);
        Files.Write(file.FullName, after.ToBytes().Span);
        Console.WriteLine($"{entries.Count} noted in {file.Name} by {writer}.");
        Doubts(after);
    }

    /// <summary>A property goes by its clock from then on: a zone that cannot be is not noted.</summary>
    private static void Refuse(Draft draft)
    {
        if (draft.Fact is PropertyFact property && PropertyZone.Doubt(property.Zone, $"line {draft.Line}, field 'zone'") is { Severity: Severity.Error } doubt)
        {
            throw new Refusal(doubt with { Remedy = "Write area and city, for example America/Denver, or Etc/UTC; nothing was noted" });
        }
    }

    private static LogDocument Open(FileInfo file) => LogPack.Is(file)
        ? throw new Refusal(new(file.Name, "is a pack of log and photos, and notes go into a log", $"Unpack it: underturf merge {file.Name} --out {Path.ChangeExtension(file.Name, ".jsonl")}"))
        : Files.Log(file);

    /// <summary>What `check` names since these notes: they are noted all the same, and can be struck.</summary>
    private void Doubts(LogDocument after)
    {
        // Most notes raise no doubt at all: then the log as it was need not be opened for comparison.
        var found = Notebook.Open(after, PracticeBook.Default).Problems;
        var doubts = found.Count == 0 ? [] : found.Except(Notebook.Open(log, PracticeBook.Default).Problems).ToList();
        if (doubts.Count > 0)
        {
            Guard.Report(doubts);
            Console.Error.WriteLine("They are noted all the same. What is wrong can be struck and noted again.");
        }
    }
}
