using Microsoft.AspNetCore.Http;

namespace Underturf.Server;

/// <summary>Lets only paired devices at the log: a stranger on the network gets the page, which holds no fact of anybody, and neither reads nor adds a note.</summary>
internal sealed class PairedOnly(RequestDelegate next, PairingSecret secret)
{
    public Task InvokeAsync(HttpContext context)
    {
        if (!context.Request.Path.StartsWithSegments(LogCalls.Path, StringComparison.OrdinalIgnoreCase) || secret.IsNamedBy(context.Request.Headers.Authorization))
        {
            return next(context);
        }

        context.Response.StatusCode = StatusCodes.Status401Unauthorized;
        return Task.CompletedTask;
    }
}
