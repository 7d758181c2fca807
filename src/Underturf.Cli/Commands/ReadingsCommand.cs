using System.CommandLine;
using Underturf.Reasoning;

namespace Underturf.Cli.Commands;

/// <summary>Every reading beside what is expected with nothing broken.</summary>
internal static class ReadingsCommand
{
    public static Command Make()
    {
        var (log, book, json) = (Arguments.Log(), Arguments.Book(), Arguments.Json());
        var command = new Command("readings", "Put every reading beside its prediction, with its spread and how surprising it is.") { log, book, json };
        command.SetAction(parsed =>
        {
            var notebook = Files.Notebook(parsed.GetRequiredValue(log), parsed.GetValue(book));
            var lines = notebook.Readings();
            Console.WriteLine(parsed.GetValue(json) ? AnswersJson.Write(lines) : Text(lines));
            return Guard.Notes(notebook.Problems);
        });
        return command;
    }

    private static string Text(IReadOnlyList<ReadingLine> lines)
    {
        var rows = lines.Select(l => new[] { l.Entry.ToString(), l.What, l.Observed, l.Predicted, Surprise(l.Surprise) });
        return TextTable.Of(["entry", "reading", "read", "expected with nothing broken", "surprise"], rows);
    }

    private static string Surprise(double powers) => powers switch
    {
        < 1 => "none",
        < 2 => "some",
        > 9 => "beyond belief",
        _ => $"1 in {Math.Pow(10, Math.Round(powers)):N0}",
    };
}
