using System.CommandLine;
using Underturf.Papers;
using Underturf.Planning.Repair;

namespace Underturf.Cli.Commands;

/// <summary>How a valve or a box is repaired; without one, all that belief says wants repair.</summary>
internal static class RepairCommand
{
    public static Command Make()
    {
        var (log, book, json) = (Arguments.Log(), Arguments.Book(), Arguments.Json());
        var thing = new Argument<string?>("THING") { Description = "A valve or box by label or id, or a station with one valve; all that wants repair where nothing is said.", Arity = ArgumentArity.ZeroOrOne };
        var card = new Option<FileInfo?>("--card") { Description = "Write the step card of the thing as PDF into this file." };
        var command = new Command("repair", "Plan a repair: what is wrong, what can be done with minutes and money, parts, what to shut, roots, steps with cautions and checks.") { log, thing, book, json, card };
        command.SetAction(parsed =>
        {
            var notebook = Files.Notebook(parsed.GetRequiredValue(log), parsed.GetValue(book));
            if (parsed.GetValue(thing) is { } name)
            {
                var plan = RepairPlan.Of(notebook, name);
                if (!plan.Succeeded)
                {
                    throw new Refusal(plan.Problem!);
                }

                if (parsed.GetValue(card) is { } file)
                {
                    Files.Write(file.FullName, PaperSet.Card(notebook, plan.Value).Bytes.Span);
                }

                Console.WriteLine(parsed.GetValue(json) ? RepairJson.Write(plan.Value) : RepairText.Write(plan.Value, notebook.History.Facts.UsesUsUnits));
            }
            else
            {
                var all = RepairPlan.All(notebook);
                Console.WriteLine(parsed.GetValue(json) ? RepairJson.Write(all) : RepairText.Write(all));
            }

            return Guard.Notes(notebook.Problems);
        });
        return command;
    }
}
