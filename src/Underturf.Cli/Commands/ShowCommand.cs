using System.CommandLine;

namespace Underturf.Cli.Commands;

/// <summary>What is known, how well, and what is not.</summary>
internal static class ShowCommand
{
    public static Command Make()
    {
        var (log, book) = (Arguments.Log(), Arguments.Book());
        var command = new Command("show", "Say what is known of the property, how well, and what is not.") { log, book };
        command.SetAction(parsed =>
        {
            var notebook = Files.Notebook(parsed.GetRequiredValue(log), parsed.GetValue(book));
            Console.WriteLine(PropertyText.Write(notebook));
            return Guard.Notes(notebook.Problems);
        });
        return command;
    }
}
