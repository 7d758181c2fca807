using System.CommandLine;
using Underturf.Reasoning;
using Underturf.Reasoning.Water;

namespace Underturf.Cli.Commands;

/// <summary>What to shut so that a place has no pressure.</summary>
internal static class IsolateCommand
{
    public static Command Make()
    {
        var (log, book, json) = (Arguments.Log(), Arguments.Book(), Arguments.Json());
        var place = new Argument<string?>("PLACE") { Description = "A valve, station, box, fitting, pipe or isolation valve, by label or id; where nothing is said, all that can be named are listed.", Arity = ArgumentArity.ZeroOrOne };
        var at = new Option<string?>("--at") { Description = "Where you are: a place by label or id; the controller where nothing is said." };
        var command = new Command("isolate", "Say what to shut so that a place has no pressure, what goes dry, how to prove it, and how to fill again.") { log, place, at, book, json };
        command.SetAction(parsed =>
        {
            var notebook = Files.Notebook(parsed.GetRequiredValue(log), parsed.GetValue(book));
            if (parsed.GetValue(place) is not { } named)
            {
                var places = MakingDry.Places(notebook.History.Now, notebook.Book);
                Console.WriteLine(parsed.GetValue(json) ? AnswersJson.Write(places) : IsolationText.Write(places));
                return Guard.Notes(notebook.Problems);
            }

            var isolation = notebook.Isolate(named, parsed.GetValue(at));
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
