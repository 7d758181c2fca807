using System.IO.Compression;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.ResponseCompression;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.AspNetCore.StaticFiles;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.FileProviders;
using Microsoft.Extensions.Logging;

namespace Underturf.Server;

/// <summary>Web applications of this server: an empty one, and what serves the page with its log.</summary>
internal static class PageApp
{
    /// <summary>An application that answers nothing yet.</summary>
    public static WebApplication Empty(Action<KestrelServerOptions> listen)
    {
        var builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory });
        builder.WebHost.UseKestrelCore().UseKestrelHttpsConfiguration().ConfigureKestrel(listen);
        builder.Services.AddRoutingCore();
        builder.Services.AddResponseCompression(options =>
        {
            // Nobody can have a paired device ask for something: what it says in a header no page of another server knows.
            options.EnableForHttps = true;
            options.MimeTypes = ["text/html", "text/css", "text/javascript", "application/json", "application/wasm", "application/octet-stream", "font/ttf", "application/jsonl"];
        });
        builder.Services.Configure<BrotliCompressionProviderOptions>(options => options.Level = CompressionLevel.Optimal);
        builder.Services.Configure<GzipCompressionProviderOptions>(options => options.Level = CompressionLevel.Optimal);
        builder.Logging.ClearProviders();
        return builder.Build();
    }

    /// <summary>The page's files, and the log.</summary>
    public static void Map(WebApplication app, string page, HeldLog? held, bool takesNotes)
    {
        var files = new PhysicalFileProvider(page);
        app.Use(Revalidated);
        app.UseDefaultFiles(new DefaultFilesOptions { FileProvider = files });
        app.UseStaticFiles(new StaticFileOptions { FileProvider = files, ContentTypeProvider = ContentTypes() });
        app.UseRouting();
        if (held is not null)
        {
            LogCalls.Map(app, held, takesNotes);
        }
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
}
