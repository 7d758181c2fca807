using System.CommandLine;
using Underturf.Papers;
using Underturf.Reasoning;

namespace Underturf.Cli.Commands;

/// <summary>Findings, station chart and plan.</summary>
internal static class PapersCommand
{
    public static Command Make()
    {
        var (log, book) = (Arguments.Log(), Arguments.Book());
        var target = new Option<DirectoryInfo>("--out") { Description = "The folder to put them in.", Required = true };
        var command = new Command("papers", "Make the papers to hand over: findings, station chart, plan.") { log, book, target };
        command.SetAction(parsed =>
        {
            var notebook = Files.Notebook(parsed.GetRequiredValue(log), parsed.GetValue(book));
            Write(notebook, parsed.GetRequiredValue(target));
            return Guard.Report(notebook.Problems);
        });
        return command;
    }

    public static int Write(Notebook notebook, DirectoryInfo target)
    {
        target.Create();
        foreach (var paper in PaperSet.Make(notebook))
        {
            Files.Write(Path.Combine(target.FullName, paper.FileName), paper.Bytes.Span);
            Console.WriteLine($"{Path.Combine(target.Name, paper.FileName)}: {paper.Title}");
        }

        return ExitCode.Good;
    }
}
