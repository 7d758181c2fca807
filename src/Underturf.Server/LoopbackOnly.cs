using Microsoft.AspNetCore.Http;

namespace Underturf.Server;

/// <summary>
/// Refuses requests that name another host than this machine: a foreign site could otherwise read the log through a name
/// that it points to loopback.
/// </summary>
internal sealed class LoopbackOnly(RequestDelegate next)
{
    private static readonly string[] names = ["localhost", "127.0.0.1", "[::1]"];

    public Task InvokeAsync(HttpContext context)
    {
        if (names.Contains(context.Request.Host.Host, StringComparer.OrdinalIgnoreCase))
        {
            return next(context);
        }

        context.Response.StatusCode = StatusCodes.Status421MisdirectedRequest;
        return Task.CompletedTask;
    }
}
