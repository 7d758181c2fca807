using System.CommandLine;
using Underturf.Reasoning;

namespace Underturf.Cli.Commands;

/// <summary>What to shut so that a place has no pressure.</summary>
internal static class IsolateCommand
{
    public static Command Make()
    {
        var (log, book, json) = (Arguments.Log(), Arguments.Book(), Arguments.Json());
        var place = new Argument<string>("PLACE") { Description = "A valve, station, box, fitting, pipe or isolation valve, by label or id." };
        var at = new Option<string?>("--at") { Description = "Where you are: a place by label or id; the controller where nothing is said." };
        var command = new Command("isolate", "Say what to shut so that a place has no pressure, what goes dry, how to prove it, and how to fill again.") { log, place, at, book, json };
        command.SetAction(parsed =>
        {
            var notebook = Files.Notebook(parsed.GetRequiredValue(log), parsed.GetValue(book));
            var isolation = notebook.Isolate(parsed.GetRequiredValue(place), parsed.GetValue(at));
            if (!isolation.Succeeded)
            {
                throw new Refusal(isolation.Problem!);
            }

            Console.WriteLine(parsed.GetValue(json) ? AnswersJson.Write(isolation.Value) : IsolationText.Write(isolation.Value, notebook.History.Facts.UsesUsUnits));
            return Guard.Notes(notebook.Problems);
        });
        return command;
    }
}
