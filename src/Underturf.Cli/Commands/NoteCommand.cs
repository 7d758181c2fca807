using System.CommandLine;
using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.Cli.Commands;

/// <summary>Seals notes into a log.</summary>
internal static class NoteCommand
{
    public static Command Make()
    {
        var log = Arguments.Log();
        var notes = new Argument<FileInfo?>("NOTES") { Description = "Notes, one JSON object a line; standard input where nothing is given.", Arity = ArgumentArity.ZeroOrOne };
        var property = new Option<string>("--property") { Description = "Id of the property, for the first note of a new log." };
        var data = new Option<DirectoryInfo?>("--data") { Description = "The data folder that makes you a writer of your own." };
        var command = new Command("note", "Seal notes into a log; a new log is begun where there is none.") { log, notes, property, data };
        command.SetAction(parsed => Note(
            parsed.GetRequiredValue(log),
            parsed.GetValue(notes),
            parsed.GetValue(property),
            new WriterFolder(parsed.GetValue(data))));
        return command;
    }

    private static int Note(FileInfo file, FileInfo? notes, string? property, WriterFolder folder)
    {
        var drafts = Drafts.Read(notes is null ? StandardInput() : Files.Bytes(notes));
        var code = Guard.Report(drafts.Problems);
        if (code != ExitCode.Good)
        {
            Console.Error.WriteLine("Nothing was noted: mend the lines named above and run it again.");
            return code;
        }

        var log = file.Exists || Directory.Exists(file.FullName) ? Files.Log(file) : LogDocument.Read(ReadOnlyMemory<byte>.Empty);
        var named = log.Property ?? property ?? throw new Refusal(new("--property", "is missing, and the log is new", "Name the property, for example --property garden"));
        if (property is not null && property != named)
        {
            throw new Refusal(new("--property", $"is {Problem.Quote(property)}, but the log is of {Problem.Quote(named)}", "Leave it out, or name another log"));
        }

        var writer = folder.Writer();
        var (last, clock) = (log.LastHeader(writer), log.LastNoted ?? default);
        var entries = new List<Entry>();
        foreach (var draft in drafts.Notes)
        {
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
        Doubts(log, after);
        return ExitCode.Good;
    }

    /// <summary>What `check` names since these notes: they are noted all the same, and can be struck.</summary>
    private static void Doubts(LogDocument before, LogDocument after)
    {
        // Most notes raise no doubt at all: then the log as it was need not be opened for comparison.
        var found = Notebook.Open(after, PracticeBook.Default).Problems;
        var doubts = found.Count == 0 ? [] : found.Except(Notebook.Open(before, PracticeBook.Default).Problems).ToList();
        if (doubts.Count > 0)
        {
            Guard.Report(doubts);
            Console.Error.WriteLine("They are noted all the same. What is wrong can be struck and noted again.");
        }
    }

    private static byte[] StandardInput()
    {
        using var memory = new MemoryStream();
        using var input = Console.OpenStandardInput();
        input.CopyTo(memory);
        return memory.ToArray();
    }
}
