using System.CommandLine;
using System.Security.Cryptography;
using Underturf.FieldLog;
using Underturf.Papers;
using Underturf.Reasoning;

namespace Underturf.Cli.Commands;

/// <summary>Findings, station chart, plan, test sheets.</summary>
internal static class PapersCommand
{
    public static Command Make()
    {
        var (log, book) = (Arguments.Log(), Arguments.Book());
        var target = new Option<DirectoryInfo>("--out") { Description = "The folder to put them in.", Required = true };
        var command = new Command("papers", "Make the papers to hand over: findings, station chart, plan, test sheets for unnamed conductor ends.") { log, book, target };
        command.SetAction(parsed =>
        {
            var notebook = Files.Notebook(parsed.GetRequiredValue(log), parsed.GetValue(book));
            Write(notebook, parsed.GetRequiredValue(target));
            return Guard.Notes(notebook.Problems);
        });
        return command;
    }

    /// <summary>Writes the papers, and beside them the notes that say which were handed out, for sealing once they are.</summary>
    public static int Write(Notebook notebook, DirectoryInfo target)
    {
        Files.MakeFolder(target);
        using var issued = new MemoryStream();
        foreach (var paper in PaperSet.Make(notebook))
        {
            Files.Write(Path.Combine(target.FullName, paper.FileName), paper.Bytes.Span);
            issued.Write(BodyText.Write(Issue(paper, notebook)));
            issued.WriteByte((byte)'\n');
            Console.WriteLine($"{Path.Combine(target.Name, paper.FileName)}: {paper.Title}");
        }

        Files.Write(Path.Combine(target.FullName, IssuedName), issued.ToArray());
        Console.WriteLine($"{Path.Combine(target.Name, IssuedName)}: notes to seal with \"underturf note\" once the papers are handed out");
        return ExitCode.Good;
    }

    private const string IssuedName = "issued.jsonl";

    private static PaperIssuedFact Issue(Paper paper, Notebook notebook) => new()
    {
        Paper = paper.FileName,
        Hash = Convert.ToHexString(SHA256.HashData(paper.Bytes.Span)).ToLowerInvariant(),
        Engine = Notebook.Engine,
        Book = notebook.Book.Version,
    };
}
