using System.CommandLine;
using Underturf.Reasoning;

namespace Underturf.Cli.Commands;

/// <summary>What water comes in, what each station takes, and what runs though nothing should.</summary>
internal static class FlowCommand
{
    public static Command Make()
    {
        var (log, book, json) = (Arguments.Log(), Arguments.Book(), Arguments.Json());
        var stations = new Argument<string[]>("STATIONS") { Description = "Stations that run together, by number or id; each alone where nothing is said.", Arity = ArgumentArity.ZeroOrMore };
        var command = new Command("flow", "Compute flow and pressure of stations that run, and what is lost with everything off.") { log, stations, book, json };
        command.SetAction(parsed =>
        {
            var notebook = Files.Notebook(parsed.GetRequiredValue(log), parsed.GetValue(book));
            var flow = notebook.Flow(parsed.GetValue(stations) ?? []);
            if (!flow.Succeeded)
            {
                throw new Refusal(flow.Problem!);
            }

            Console.WriteLine(parsed.GetValue(json) ? AnswersJson.Write(flow.Value) : FlowText.Write(flow.Value, notebook.History.Facts.UsesUsUnits));
            return Guard.Notes(notebook.Problems);
        });
        return command;
    }
}
