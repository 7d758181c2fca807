using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Underturf.Quantities;

namespace Underturf.Server;

/// <summary>Serves the page and one log: on loopback to this machine, and where that is asked for to the devices of its network.</summary>
public static class ServerHost
{
    /// <summary>Serves until cancelled. Null when it ended well, else what kept it from serving.</summary>
    public static async Task<Problem?> RunAsync(ServeOptions options, CancellationToken cancellation)
    {
        if (FindPage() is not { } page)
        {
            return new Problem("page", "the page was not built with this program", "Run ./underturf serve, or build with -c Release");
        }

        if (options.OfferedLog is { } log && !File.Exists(log))
        {
            return new Problem(log, "there is no such file", "Give the path of a field log; an empty file begins a new one");
        }

        if (Unusable(options.Port) is { } unusable)
        {
            return unusable;
        }

        using var held = options.OfferedLog is { } offered ? new HeldLog(Path.GetFullPath(offered)) : null;
        if (options.Network is null)
        {
            return await RunAsync(options, page, held, null, cancellation);
        }

        var opened = NetworkHost.Open(options.Network, TimeProvider.System);
        if (!opened.Succeeded)
        {
            return opened.Problem;
        }

        await using var network = opened.Value;
        return await RunAsync(options, page, held, network, cancellation);
    }

    private static async Task<Problem?> RunAsync(ServeOptions options, string page, HeldLog? held, NetworkHost? network, CancellationToken cancellation)
    {
        await using var app = PageApp.Empty(kestrel => kestrel.Listen(IPAddress.Loopback, options.Port));
        app.UseMiddleware<LoopbackOnly>();
        PageApp.Map(app, page, held, options.TakesNotes);
        if (network is not null)
        {
            app.MapGet(PhonesPage.Path, () => Results.Content(PhonesPage.Of(network.Doors), "text/html; charset=utf-8"));
        }

        if (await StartAsync(app, options.Port, "--port", cancellation) is { } unstarted)
        {
            return unstarted;
        }

        if (network is not null && await network.StartAsync(page, held, options.TakesNotes, cancellation) is { } closed)
        {
            return closed;
        }

        options.Started(new Uri(app.Urls.First()));
        network?.Tell();
        await WaitAsync(cancellation);
        await app.StopAsync(CancellationToken.None);
        return null;
    }

    internal static Problem? Unusable(int port) => port is < IPEndPoint.MinPort or > IPEndPoint.MaxPort
        ? new Problem($"port {port}", "is no port of a machine", $"Give a number from {IPEndPoint.MinPort} to {IPEndPoint.MaxPort}; 0 takes a free one")
        : null;

    /// <summary>Starts to listen, or says what keeps it from that.</summary>
    internal static async Task<Problem?> StartAsync(WebApplication app, int port, string option, CancellationToken cancellation)
    {
        try
        {
            await app.StartAsync(cancellation);
            return null;
        }
        catch (IOException failure)
        {
            return new Problem($"port {port}", failure.Message.TrimEnd('.'), $"Choose another with {option}");
        }
    }

    /// <summary>The page's files stand beside the program, put there by the build.</summary>
    private static string? FindPage()
    {
        var page = Path.Combine(AppContext.BaseDirectory, "page");
        return File.Exists(Path.Combine(page, "index.html")) ? page : null;
    }

    private static Task WaitAsync(CancellationToken cancellation)
    {
        var ended = new TaskCompletionSource();
        cancellation.Register(ended.SetResult);
        return ended.Task;
    }
}
