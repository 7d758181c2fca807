using System.CommandLine;
using Underturf.Reasoning;

namespace Underturf.Cli.Commands;

/// <summary>Where hidden things lie, and where to look first.</summary>
internal static class LocateCommand
{
    public static Command Make()
    {
        var (log, book, json) = (Arguments.Log(), Arguments.Book(), Arguments.Json());
        var thing = new Argument<string?>("THING") { Description = "What to look for: a hidden thing or a station, by label or id; all where nothing is said.", DefaultValueFactory = _ => null };
        var at = new Option<string?>("--at") { Description = "Where you are: a place by label or id; the controller where nothing is said." };
        var command = new Command("locate", "Say where hidden valves, boxes, splices and devices lie, and where to look first.") { log, thing, at, book, json };
        command.SetAction(parsed =>
        {
            var notebook = Files.Notebook(parsed.GetRequiredValue(log), parsed.GetValue(book));
            var location = notebook.Locate(parsed.GetValue(thing), parsed.GetValue(at));
            if (!location.Succeeded)
            {
                throw new Refusal(location.Problem!);
            }

            Console.WriteLine(parsed.GetValue(json) ? AnswersJson.Write(location.Value) : LocationText.Write(location.Value, notebook.History.Facts.UsesUsUnits));
            return Guard.Report(notebook.Problems);
        });
        return command;
    }
}
