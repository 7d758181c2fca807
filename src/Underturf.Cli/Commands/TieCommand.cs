using System.CommandLine;
using Underturf.Reasoning;

namespace Underturf.Cli.Commands;

/// <summary>Where taped distances put things, and from which marks to tape.</summary>
internal static class TieCommand
{
    public static Command Make()
    {
        var (log, book, json) = (Arguments.Log(), Arguments.Book(), Arguments.Json());
        var thing = new Argument<string?>("THING") { Description = "A box, valve or controller by label or id; everything that is tied where nothing is said.", Arity = ArgumentArity.ZeroOrOne };
        var command = new Command("tie", "Say where taped distances put things, and from which marks to tape.") { log, thing, book, json };
        command.SetAction(parsed =>
        {
            var notebook = Files.Notebook(parsed.GetRequiredValue(log), parsed.GetValue(book));
            var answer = parsed.GetValue(thing) is { } name ? notebook.Tie(name) : notebook.Ties();
            if (!answer.Succeeded)
            {
                throw new Refusal(answer.Problem!);
            }

            Console.WriteLine(parsed.GetValue(json) ? AnswersJson.Write(answer.Value) : TieText.Write(answer.Value, notebook.History.Facts.UsesUsUnits));
            return Guard.Notes(notebook.Problems);
        });
        return command;
    }
}
