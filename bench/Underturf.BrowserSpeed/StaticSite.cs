using System.IO.Compression;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.ResponseCompression;
using Microsoft.AspNetCore.StaticFiles;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.FileProviders;
using Microsoft.Extensions.Logging;

namespace Underturf.Benchmarks;

/// <summary>The files of a page on loopback, compressed alike whatever page it is, with a log beside them.</summary>
internal sealed class StaticSite : IAsyncDisposable
{
    private readonly WebApplication app;

    private StaticSite(WebApplication app) => this.app = app;

    public static string OwnPage { get; } = Path.Combine(AppContext.BaseDirectory, "page");

    public static string EmptyPage { get; } = Path.GetFullPath(Path.Combine(AppContext.BaseDirectory, "../../../../Underturf.EmptyPage/bin/Release/net10.0/publish/wwwroot"));

    public string Address => app.Urls.First();

    public static async Task<StaticSite> StartAsync(string folder, byte[] log)
    {
        var builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions { ContentRootPath = folder });
        builder.WebHost.UseKestrelCore().ConfigureKestrel(kestrel => kestrel.Listen(System.Net.IPAddress.Loopback, 0));
        builder.Logging.ClearProviders();
        builder.Services.AddRoutingCore();
        builder.Services.AddResponseCompression(options => options.MimeTypes = ["text/html", "text/css", "text/javascript", "application/javascript", "application/json", "application/wasm", "application/octet-stream", "font/ttf", "application/jsonl"]);
        builder.Services.Configure<BrotliCompressionProviderOptions>(options => options.Level = CompressionLevel.Fastest);
        var site = new StaticSite(builder.Build());
        site.Map(folder, log);
        await site.app.StartAsync();
        return site;
    }

    public ValueTask DisposeAsync() => app.DisposeAsync();

    private void Map(string folder, byte[] log)
    {
        var types = new FileExtensionContentTypeProvider();
        types.Mappings[".dat"] = "application/octet-stream";
        types.Mappings[".wasm"] = "application/wasm";
        var files = new PhysicalFileProvider(folder);
        app.UseResponseCompression();
        app.UseDefaultFiles(new DefaultFilesOptions { FileProvider = files });
        app.UseStaticFiles(new StaticFileOptions { FileProvider = files, ContentTypeProvider = types });
        app.UseRouting();
        app.MapGet("/log.jsonl", () => Results.Bytes(log, "application/jsonl"));
    }
}
