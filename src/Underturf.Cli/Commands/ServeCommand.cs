using System.CommandLine;
using System.Net;
using Underturf.FieldLog;
using Underturf.Quantities;
using Underturf.Server;

namespace Underturf.Cli.Commands;

/// <summary>Serves the page, to this machine or to the phones of its network.</summary>
internal static class ServeCommand
{
    private const int UsualPort = 5080;
    private const int UsualNetworkPort = 5443;

    private static readonly Argument<FileInfo?> log = new("LOG") { Description = "The log that the page opens and adds to; the demo where nothing is given.", Arity = ArgumentArity.ZeroOrOne };
    private static readonly Option<int> port = new("--port") { Description = "Port on this machine; 0 takes a free one.", DefaultValueFactory = _ => UsualPort };
    private static readonly Option<bool> network = new("--network") { Description = "Serve to paired devices of the local network too, over HTTPS." };
    private static readonly Option<int> networkPort = new("--network-port") { Description = "Port of that; the next one shows phones how to trust the server.", DefaultValueFactory = _ => UsualNetworkPort };
    private static readonly Option<string?> address = new("--address") { Description = "The address by which phones reach this machine, where it has several." };
    private static readonly Option<FileInfo?> certificate = new("--certificate") { Description = "A certificate of your own (PEM, with its chain) for --network." };
    private static readonly Option<FileInfo?> key = new("--key") { Description = "The key of that certificate (PEM)." };
    private static readonly Option<DirectoryInfo?> data = new("--data") { Description = "The data folder that keeps the authority and the pairing secret." };

    public static Command Make()
    {
        var command = new Command("serve", "Serve the page that does the same in a browser, to this machine or to phones on its network.") { log, port, network, networkPort, address, certificate, key, data };
        command.SetAction(async (parsed, cancellation) =>
        {
            var own = parsed.GetValue(log)?.FullName;
            if (File.Exists(own))
            {
                Tell(LogDocument.Read(await File.ReadAllBytesAsync(own, cancellation)), Path.GetFileName(own));
            }

            var options = new ServeOptions(parsed.GetValue(port), own ?? DemoLog(), at => Say(at, own)) { TakesNotes = own is not null, Network = Network(parsed) };
            var problem = await ServerHost.RunAsync(options, cancellation);
            return problem is null ? ExitCode.Good : Guard.Report([problem]);
        });
        return command;
    }

    private static NetworkOptions? Network(ParseResult parsed)
    {
        if (!parsed.GetValue(network) && parsed.GetValue(certificate) is null && parsed.GetValue(key) is null)
        {
            return null;
        }

        var at = parsed.GetValue(networkPort);
        return new NetworkOptions(Path.Combine(new WriterFolder(parsed.GetValue(data)).Path, "network"), at, at == 0 ? 0 : at + 1, Say)
        {
            Address = parsed.GetValue(address) is { } named ? Address(named) : null,
            Certificate = parsed.GetValue(certificate)?.FullName,
            Key = parsed.GetValue(key)?.FullName,
        };
    }

    private static IPAddress Address(string named) => IPAddress.TryParse(named, out var read) ? read
        : throw new Refusal(new("--address", $"is {Problem.Quote(named)}, which is no address", "Give one in figures, for example 192.168.1.7"));

    private static void Say(Uri at, string? own)
    {
        Console.WriteLine($"The page is at {at} (stop with Ctrl+C).");
        Console.WriteLine(own is null ? "It shows the demo; what is noted stays in the browser." : $"What is noted on it is added to {Path.GetFileName(own)}.");
    }

    /// <summary>A log that is not whole is served all the same: whoever serves it hears of it before somebody out in the field does.</summary>
    private static void Tell(LogDocument log, string name)
    {
        if (log.Lines.All(line => line.IsBlank))
        {
            Console.WriteLine($"{name} is empty: the page begins it.");
            return;
        }

        Guard.Errors(log.Problems);
        if (log.Problems.Any(problem => problem.Severity == Severity.Error))
        {
            Console.Error.WriteLine($"{name} is served all the same; every other line of it counts.");
        }
    }

    private static void Say(NetworkDoors doors)
    {
        if (doors.Authority is { } authority)
        {
            Console.WriteLine();
            Console.WriteLine($"1. Once for each phone, to trust this server: {authority}");
            Console.WriteLine(QrPicture.Terminal(authority));
            Console.WriteLine($"   Fingerprint of its authority (SHA-256): {doors.Fingerprint}");
        }

        Console.WriteLine();
        Console.WriteLine($"{(doors.Authority is null ? "" : "2. ")}The page on a phone; whoever has this address reads the log and adds to it: {doors.Page}");
        Console.WriteLine(QrPicture.Terminal(doors.Page));
        Console.WriteLine("The same codes stand on /phones of the page on this machine.");
    }

    private static string DemoLog()
    {
        var path = Path.Combine(Path.GetTempPath(), $"underturf-demo-{Environment.ProcessId}.jsonl");
        Files.Write(path, Simulation.MemorialGarden.Make(Property.Practice.PracticeBook.Default).Log.ToBytes().Span);
        return path;
    }
}
