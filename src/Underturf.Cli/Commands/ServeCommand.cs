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
            var offered = parsed.GetValue(log)?.FullName ?? DemoLog();
            var problem = await ServerHost.RunAsync(
                new ServeOptions(parsed.GetValue(port), offered, at => Console.WriteLine($"The page is at {at} (stop with Ctrl+C).")),
                cancellation);
            return problem is null ? ExitCode.Good : Guard.Report([problem]);
        });
        return command;
    }

    private static string DemoLog()
    {
        var path = Path.Combine(Path.GetTempPath(), $"underturf-demo-{Environment.ProcessId}.jsonl");
        Files.Write(path, Simulation.MemorialGarden.Make(Property.Practice.PracticeBook.Default).Log.ToBytes().Span);
        return path;
    }
}
