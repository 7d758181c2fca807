using System.CommandLine;
using Underturf.Reasoning;

namespace Underturf.Cli.Commands;

/// <summary>What to do next, over all open questions, from where one is and within the time that one has.</summary>
internal static class MovesCommand
{
    public static Command Make()
    {
        var (log, book, json) = (Arguments.Log(), Arguments.Book(), Arguments.Json());
        var at = new Option<string?>("--at") { Description = "Where you are: a place by label or id; the controller where nothing is said." };
        var minutes = new Option<double?>("--minutes") { Description = "How many minutes you have: the best set that fits, in walking order." };
        var command = new Command("moves", "Say what to do next, over all open questions together.") { log, at, minutes, book, json };
        command.SetAction(parsed =>
        {
            var notebook = Files.Notebook(parsed.GetRequiredValue(log), parsed.GetValue(book));
            var standpoint = new Standpoint(parsed.GetValue(at), parsed.GetValue(minutes));
            var answers = notebook.Answer(standpoint);
            if (!answers.Succeeded)
            {
                throw new Refusal(answers.Problem!);
            }

            Console.WriteLine(parsed.GetValue(json) ? AnswersJson.Write(answers.Value.Together) : MovesText.Write(answers.Value, standpoint));
            return Guard.Notes(notebook.Problems);
        });
        return command;
    }
}
