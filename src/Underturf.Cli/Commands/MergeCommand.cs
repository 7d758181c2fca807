using System.CommandLine;
using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.Cli.Commands;

/// <summary>Makes one log of several, and brings the photos together.</summary>
internal static class MergeCommand
{
    public static Command Make()
    {
        var logs = new Argument<FileInfo[]>("LOGS") { Description = "The logs to unite, or packs of log and photos.", Arity = ArgumentArity.OneOrMore };
        var target = new Option<FileInfo>("--out") { Description = "The file to write; one that ends in \".zip\" is a pack of log and photos.", Required = true };
        var command = new Command("merge", "Unite logs of several phones; every line of each is kept, and every photo.") { logs, target };
        command.SetAction(parsed => Merge(parsed.GetRequiredValue(logs), parsed.GetRequiredValue(target)));
        return command;
    }

    private static int Merge(FileInfo[] logs, FileInfo target)
    {
        var united = logs.Select(Files.Log).Aggregate(LogMerge.Union);
        var album = PhotoAlbum.Of(PropertyHistory.Fold(united.Standing));
        var sources = logs.Select(log => new PhotoSource(log)).ToList();
        try
        {
            var (there, noted) = Write(united, album, sources, target);
            Console.WriteLine($"{united.Entries.Count} entries in {target.Name}.{(noted == 0 ? "" : $" Photos: {there} of {noted}.")}");
        }
        finally
        {
            sources.ForEach(source => source.Dispose());
        }

        return Guard.Report(united.Problems);
    }

    private static (int There, int Noted) Write(LogDocument united, PhotoAlbum album, IReadOnlyList<PhotoSource> sources, FileInfo target)
    {
        if (!LogPack.IsNamed(target))
        {
            Files.Write(target.FullName, united.ToBytes().Span);
            return PhotoCopy.ToFolder(album, sources, target.FullName);
        }

        using var pack = new MemoryStream();
        var counted = PhotoCopy.ToPack(album, sources, Path.ChangeExtension(target.Name, ".jsonl"), united.ToBytes().Span, pack);
        Files.Write(target.FullName, pack.GetBuffer().AsSpan(0, (int)pack.Length));
        return counted;
    }
}
