using System.CommandLine;
using Underturf.Reasoning;

namespace Underturf.Cli.Commands;

/// <summary>Which wire each conductor end of a place is, and what to touch next.</summary>
internal static class IdentifyCommand
{
    public static Command Make()
    {
        var (log, book, json) = (Arguments.Log(), Arguments.Book(), Arguments.Json());
        var place = new Argument<string>("PLACE") { Description = "The place whose conductor ends want names: by label or id." };
        var people = new Option<int?>("--people") { Description = "How many there are: 1 walks for each change, 2 call it out; the practice book's where nothing is said." };
        var remote = new Option<bool>("--remote") { Description = "One can switch stations from the box." };
        var source = new Option<bool>("--source") { Description = "A portable 24 V source is at hand: it is put on ends in a box while wires are touched at the controller, or on wires at their valves for the ends at a controller." };
        var plan = new Option<string?>("--plan") { Description = "The plans to choose from, by a part of their names, for example tone; all where nothing is said." };
        var sheet = new Option<bool>("--sheet") { Description = "Write out all rounds of the plan, to be worked on paper." };
        var command = new Command("identify", "Say which wire each conductor end is, and what to touch next.") { log, place, people, remote, source, plan, sheet, book, json };
        command.SetAction(parsed =>
        {
            var notebook = Files.Notebook(parsed.GetRequiredValue(log), parsed.GetValue(book));
            var naming = notebook.Name(parsed.GetRequiredValue(place), new NamingCrew(People(parsed.GetValue(people)), parsed.GetValue(remote) ? true : null, parsed.GetValue(plan), parsed.GetValue(source)));
            if (!naming.Succeeded)
            {
                throw new Refusal(naming.Problem!);
            }

            Console.WriteLine(parsed.GetValue(json) ? AnswersJson.Write(naming.Value) : NamingText.Write(naming.Value, parsed.GetValue(sheet)));
            return Guard.Notes(notebook.Problems);
        });
        return command;
    }

    private static int? People(int? people) => people is < 1 or > 9
        ? throw new Refusal(new($"--people {people}", "is no number of people for this", "Give 1 where one walks, 2 where two call it out"))
        : people;
}
