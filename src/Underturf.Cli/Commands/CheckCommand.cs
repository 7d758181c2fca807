using System.CommandLine;
using Underturf.Quantities;

namespace Underturf.Cli.Commands;

/// <summary>Says what is wrong with a log, line by line, and changes nothing.</summary>
internal static class CheckCommand
{
    public static Command Make()
    {
        var (log, book) = (Arguments.Log(), Arguments.Book());
        var command = new Command("check", "Say what is wrong with a log, with the remedy; change nothing.") { log, book };
        command.SetAction(parsed =>
        {
            var notebook = Files.Notebook(parsed.GetRequiredValue(log), parsed.GetValue(book));
            var problems = notebook.Problems;
            var code = Guard.Report(problems);
            var (entries, standing) = (notebook.Log.Entries.Count, notebook.Log.Standing.Count);
            var wrong = problems.Count(p => p.Severity == Severity.Error);
            Console.WriteLine($"{entries} entries, {standing} of them standing; {wrong} {(wrong == 1 ? "thing" : "things")} wrong, {problems.Count - wrong} to note.");
            return code;
        });
        return command;
    }
}
