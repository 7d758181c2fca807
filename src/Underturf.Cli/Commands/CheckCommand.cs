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
            var file = parsed.GetRequiredValue(log);
            var notebook = Files.Open(file, parsed.GetValue(book));
            IReadOnlyList<Problem> problems = [.. notebook.Problems, .. PhotoCheck.Problems(file, notebook.History)];
            var code = Guard.Report(problems);
            var (entries, standing) = (notebook.Log.Entries.Count, notebook.Log.Standing.Count);
            var wrong = problems.Count(p => p.Severity == Severity.Error);
            Console.WriteLine($"{entries} entries, {standing} of them standing; {wrong} {(wrong == 1 ? "thing" : "things")} wrong, {problems.Count - wrong} to note.");
            return code;
        });
        return command;
    }
}
