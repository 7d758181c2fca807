using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.StaticFiles;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.FileProviders;
using Microsoft.Extensions.Logging;
using Underturf.Quantities;

namespace Underturf.Server;

/// <summary>Serves the page and one log on loopback, to this machine only.</summary>
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
            return new Problem(log, "there is no such file", "Give the path of a field log");
        }

        if (options.Port is < IPEndPoint.MinPort or > IPEndPoint.MaxPort)
        {
            return new Problem($"port {options.Port}", "is no port of a machine", $"Give a number from {IPEndPoint.MinPort} to {IPEndPoint.MaxPort}; 0 takes a free one");
        }

        using var held = options.OfferedLog is { } offered ? new HeldLog(Path.GetFullPath(offered)) : null;
        await using var app = Build(options, page, held);
        try
        {
            await app.StartAsync(cancellation);
        }
        catch (IOException failure)
        {
            return new Problem($"port {options.Port}", failure.Message.TrimEnd('.'), "Choose another with --port");
        }

        options.Started(new Uri(app.Urls.First()));
        await WaitAsync(cancellation);
        await app.StopAsync(CancellationToken.None);
        return null;
    }

    private static WebApplication Build(ServeOptions options, string page, HeldLog? held)
    {
        var builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions { ContentRootPath = page, WebRootPath = page });
        builder.WebHost.UseKestrelCore().ConfigureKestrel(kestrel => kestrel.Listen(System.Net.IPAddress.Loopback, options.Port));
        builder.Services.AddRoutingCore();
        builder.Logging.ClearProviders();
        var app = builder.Build();
        Map(app, options, page, held);
        return app;
    }

    private static void Map(WebApplication app, ServeOptions options, string page, HeldLog? held)
    {
        var files = new PhysicalFileProvider(page);
        app.UseMiddleware<LoopbackOnly>();
        app.Use(Revalidated);
        app.UseDefaultFiles(new DefaultFilesOptions { FileProvider = files });
        app.UseStaticFiles(new StaticFileOptions { FileProvider = files, ContentTypeProvider = ContentTypes() });
        app.UseRouting();
        if (held is not null)
        {
            LogCalls.Map(app, held, options.TakesNotes);
        }
    }

    /// <summary>The page's files stand beside the program, put there by the build.</summary>
    private static string? FindPage()
    {
        var page = Path.Combine(AppContext.BaseDirectory, "page");
        return File.Exists(Path.Combine(page, "index.html")) ? page : null;
    }

    private static FileExtensionContentTypeProvider ContentTypes()
    {
        var types = new FileExtensionContentTypeProvider();
        types.Mappings[".dat"] = "application/octet-stream";
        types.Mappings[".wasm"] = "application/wasm";
        return types;
    }

    // File names carry no fingerprint and a log grows, so a browser must ask each time whether its copy still holds.
    private static Task Revalidated(HttpContext context, RequestDelegate next)
    {
        context.Response.Headers.CacheControl = "no-cache";
        return next(context);
    }

    private static Task WaitAsync(CancellationToken cancellation)
    {
        var ended = new TaskCompletionSource();
        cancellation.Register(ended.SetResult);
        return ended.Task;
    }
}
