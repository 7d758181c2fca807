using System.CommandLine;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning;
using Underturf.Simulation;

namespace Underturf.Cli.Commands;

/// <summary>The made-up property, from its notes to papers.</summary>
internal static class DemoCommand
{
    public static Command Make()
    {
        var target = new Option<DirectoryInfo>("--out")
        {
            Description = "Where to put the log and the papers.",
            DefaultValueFactory = _ => new DirectoryInfo("demo"),
        };
        var command = new Command("demo", "Work through a made-up property: notes, questions, next move, papers.") { target };
        command.SetAction(parsed => Run(parsed.GetRequiredValue(target)));
        return command;
    }

    private static int Run(DirectoryInfo target)
    {
        var book = PracticeBook.Default;
        var world = MemorialGarden.Make(book);
        Files.MakeFolder(target);
        var log = Path.Combine(target.FullName, "log.jsonl");
        Files.Write(log, world.Log.ToBytes().Span);
        Files.Write(Path.Combine(target.FullName, "truth.json"), MemorialGarden.TruthBytes());
        Files.Write(Path.Combine(target.FullName, "afternoon.jsonl"), MemorialGarden.Afternoon(book).ToBytes().Span);
        var reworked = MemorialGarden.Reworked(book);
        Files.Write(Path.Combine(target.FullName, "reworked.jsonl"), reworked.ToBytes().Span);
        Files.Write(Path.Combine(target.FullName, "repaired.jsonl"), MemorialGarden.Repaired(book, reworked).ToBytes().Span);

        var notebook = Notebook.Open(world.Log, book);
        var stock = Stock.Of(notebook.History);
        var writers = world.Log.Entries.Select(e => e.Id.Writer).Distinct().Order();
        Console.WriteLine($"{notebook.History.Facts.Property?.Name}, made up: {world.Log.Entries.Count} notes by {string.Join(" and ", writers)}; "
            + $"{stock.InUse} of {stock.Terminals} terminals in use, {stock.ValvesFound} valves found.");
        Console.WriteLine();
        Console.WriteLine(AnswersText.Write(notebook.Answer(), notebook.History.Facts.UsesUsUnits));
        Console.WriteLine();
        return PapersCommand.Write(notebook, target);
    }
}
