using System.Runtime.CompilerServices;
using Microsoft.AspNetCore.Components.WebAssembly.Hosting;

namespace Underturf.FieldApp.Browser;

/// <summary>The page, and what it asks of a browser.</summary>
internal static class Furniture
{
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static void Bring(WebAssemblyHostBuilder builder)
    {
        builder.RootComponents.Add<NotebookPage>("#app");
        builder.Services.AddScoped<ILateRooms, BrowserLateRooms>();
        builder.Services.AddScoped<INotebook, LaterNotebook>();
        builder.Services.AddScoped<IHomeServer, BrowserHomeServer>();
        builder.Services.AddScoped<IDevice, BrowserDevice>();
        builder.Services.AddScoped<IGroundMap, BrowserGroundMap>();
        builder.Services.AddScoped<IBackdropShelf, BrowserBackdropShelf>();
        builder.Services.AddScoped<IWhereabouts, BrowserWhereabouts>();
        builder.Services.AddScoped<IPhotoShelf, BrowserPhotoShelf>();
    }
}
