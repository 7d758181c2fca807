using System.Security.Cryptography;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Routing;
using Microsoft.Net.Http.Headers;
using Underturf.Quantities;

namespace Underturf.Server;

/// <summary>What pages ask about the log that is served: to have it, and to add lines to it (docs/decisions/0014-push-and-pull.md).</summary>
internal static class LogCalls
{
    /// <summary>Where the log is, relative to the page.</summary>
    public const string Path = "/log.jsonl";

    private const string Lines = "application/jsonl";

    /// <summary>64 MiB: a season of notes many times over.</summary>
    private const long LargestPush = 64L << 20;

    public static void Map(IEndpointRouteBuilder app, HeldLog log, bool takesNotes)
    {
        app.MapGet(Path, (Delegate)((HttpContext context) => GiveAsync(context, log, takesNotes)));
        if (takesNotes)
        {
            app.MapPost(Path, (Delegate)((HttpContext context) => TakeAsync(context, log)));
        }
    }

    /// <summary>The exact bytes, under their digest: a browser that has them is told so and sent nothing.</summary>
    private static async Task<IResult> GiveAsync(HttpContext context, HeldLog log, bool takesNotes)
    {
        var bytes = await log.ReadAsync(context.RequestAborted);
        context.Response.Headers.Allow = takesNotes ? "GET, POST" : "GET";
        var digest = new EntityTagHeaderValue($"\"{Convert.ToHexStringLower(SHA256.HashData(bytes))}\"");
        return Results.Bytes(bytes, $"{Lines}; charset=utf-8", entityTag: digest);
    }

    /// <summary>Only the page that this server gave out may add: another site cannot send this type unasked, nor say that it is this one.</summary>
    private static async Task<IResult> TakeAsync(HttpContext context, HeldLog log)
    {
        if (!IsOwnPage(context.Request))
        {
            return Results.StatusCode(StatusCodes.Status403Forbidden);
        }

        if (!MediaTypeHeaderValue.TryParse(context.Request.ContentType, out var type) || !type.MediaType.Equals(Lines, StringComparison.OrdinalIgnoreCase))
        {
            return Results.StatusCode(StatusCodes.Status415UnsupportedMediaType);
        }

        context.Features.Get<IHttpMaxRequestBodySizeFeature>()?.MaxRequestBodySize = LargestPush;
        using var lines = new MemoryStream();
        await context.Request.Body.CopyToAsync(lines, context.RequestAborted);
        try
        {
            var taken = await log.AddAsync(lines.ToArray(), context.RequestAborted);
            return Results.Bytes(PushAnswer.Write(taken), "application/json");
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            var unwritten = new Problem(log.Name, $"cannot be written on the server ({error.Message.TrimEnd('.')})", "Check its permissions and the space on the server's disk");
            return Results.Bytes(PushAnswer.Write(new PushAnswer(0, [unwritten])), "application/json");
        }
    }

    private static bool IsOwnPage(HttpRequest request) =>
        request.Headers.Origin.ToString() is var origin && (origin.Length == 0 || (Uri.TryCreate(origin, UriKind.Absolute, out var from) && from.Authority.Equals(request.Host.Value, StringComparison.OrdinalIgnoreCase)));
}
