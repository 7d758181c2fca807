using System.CommandLine;
using Underturf.Reasoning;

namespace Underturf.Cli.Commands;

/// <summary>Open questions, explanations and the next moves.</summary>
internal static class DiagnoseCommand
{
    public static Command Make()
    {
        var (log, book, json) = (Arguments.Log(), Arguments.Book(), Arguments.Json());
        var command = new Command("diagnose", "Explain every symptom and say what to do next.") { log, book, json };
        command.SetAction(parsed =>
        {
            var notebook = Files.Notebook(parsed.GetRequiredValue(log), parsed.GetValue(book));
            var answers = notebook.Answer();
            Console.WriteLine(parsed.GetValue(json) ? AnswersJson.Write(answers) : AnswersText.Write(answers, notebook.History.Facts.UsesUsUnits));
            return Guard.Notes(notebook.Problems);
        });
        return command;
    }
}
