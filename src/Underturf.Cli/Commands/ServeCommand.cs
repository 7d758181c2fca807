using System.CommandLine;
using Underturf.Server;

namespace Underturf.Cli.Commands;

/// <summary>Serves the page on this machine.</summary>
internal static class ServeCommand
{
    private const int UsualPort = 5080;

    public static Command Make()
    {
        var log = new Argument<FileInfo?>("LOG") { Description = "The log that the page opens; the demo where nothing is given.", Arity = ArgumentArity.ZeroOrOne };
        var port = new Option<int>("--port") { Description = "Port on this machine; 0 takes a free one.", DefaultValueFactory = _ => UsualPort };
        var command = new Command("serve", "Serve the page that does the same in a browser, to this machine only.") { log, port };
        command.SetAction(async (parsed, cancellation) =>
        {
            var own = parsed.GetValue(log)?.FullName;
            var options = new ServeOptions(parsed.GetValue(port), own ?? DemoLog(), at => Say(at, own)) { TakesNotes = own is not null };
            var problem = await ServerHost.RunAsync(options, cancellation);
            return problem is null ? ExitCode.Good : Guard.Report([problem]);
        });
        return command;
    }

    private static void Say(Uri at, string? own)
    {
        Console.WriteLine($"The page is at {at} (stop with Ctrl+C).");
        Console.WriteLine(own is null ? "It shows the demo; what is noted stays in the browser." : $"What is noted on it is added to {Path.GetFileName(own)}.");
    }

    private static string DemoLog()
    {
        var path = Path.Combine(Path.GetTempPath(), $"underturf-demo-{Environment.ProcessId}.jsonl");
        Files.Write(path, Simulation.MemorialGarden.Make(Property.Practice.PracticeBook.Default).Log.ToBytes().Span);
        return path;
    }
}
