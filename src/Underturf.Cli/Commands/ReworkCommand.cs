using System.CommandLine;
using Underturf.Planning.Rework;

namespace Underturf.Cli.Commands;

/// <summary>A conductor and a number for every valve of a shared station.</summary>
internal static class ReworkCommand
{
    public static Command Make()
    {
        var (log, book, json) = (Arguments.Log(), Arguments.Book(), Arguments.Json());
        var command = new Command("rework", "Plan a station of its own for every valve of a shared one: conductors, terminals, numbers, steps with checks, price.") { log, book, json };
        command.SetAction(parsed =>
        {
            var notebook = Files.Notebook(parsed.GetRequiredValue(log), parsed.GetValue(book));
            var answer = ReworkPlan.Of(notebook);
            Console.WriteLine(parsed.GetValue(json) ? ReworkJson.Write(answer) : ReworkText.Write(answer, notebook.History.Facts.UsesUsUnits));
            return Guard.Notes(notebook.Problems);
        });
        return command;
    }
}
