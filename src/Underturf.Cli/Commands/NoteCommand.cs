using System.CommandLine;
using Underturf.FieldLog;

namespace Underturf.Cli.Commands;

/// <summary>Seals notes into a log.</summary>
internal static class NoteCommand
{
    public static Command Make()
    {
        var log = Arguments.Log();
        var notes = new Argument<FileInfo?>("NOTES") { Description = "Notes, one JSON object a line; standard input where nothing is given.", Arity = ArgumentArity.ZeroOrOne };
        var (property, data, again) = (Arguments.Property(), Arguments.Data(), Arguments.Again());
        var command = new Command("note", "Seal notes into a log; a new log is begun where there is none.") { log, notes, property, data, again, NotePhotoCommand.Make() };
        command.SetAction(parsed => Note(
            parsed.GetRequiredValue(log),
            parsed.GetValue(notes),
            parsed.GetValue(property),
            new WriterFolder(parsed.GetValue(data)),
            parsed.GetValue(again)));
        return command;
    }

    private static int Note(FileInfo file, FileInfo? notes, string? property, WriterFolder folder, bool again)
    {
        var drafts = Drafts.Read(notes is null ? StandardInput() : Files.Bytes(notes));
        var code = Guard.Report(drafts.Problems);
        if (code != ExitCode.Good)
        {
            Console.Error.WriteLine("Nothing was noted: mend the lines named above and run it again.");
            return code;
        }

        return new NoteWriter(file, property, folder).Write(drafts.Notes, again);
    }

    private static byte[] StandardInput()
    {
        using var memory = new MemoryStream();
        using var input = Console.OpenStandardInput();
        input.CopyTo(memory);
        return memory.ToArray();
    }
}
