using System.CommandLine;
using Underturf.FieldLog;

namespace Underturf.Cli.Commands;

/// <summary>Makes one log of several.</summary>
internal static class MergeCommand
{
    public static Command Make()
    {
        var logs = new Argument<FileInfo[]>("LOGS") { Description = "The logs to unite.", Arity = ArgumentArity.OneOrMore };
        var target = new Option<FileInfo>("--out") { Description = "The file to write.", Required = true };
        var command = new Command("merge", "Unite logs of several phones; every line of each is kept.") { logs, target };
        command.SetAction(parsed =>
        {
            var united = parsed.GetRequiredValue(logs).Select(Files.Log).Aggregate(LogMerge.Union);
            Files.Write(parsed.GetRequiredValue(target).FullName, united.ToBytes().Span);
            Console.WriteLine($"{united.Entries.Count} entries in {parsed.GetRequiredValue(target).Name}.");
            return Guard.Report(united.Problems);
        });
        return command;
    }
}
