using System.Runtime.Versioning;
using Microsoft.AspNetCore.Components.WebAssembly.Hosting;
using Underturf.FieldApp;
using Underturf.FieldApp.Browser;

[assembly: SupportedOSPlatform("browser")]

var builder = WebAssemblyHostBuilder.CreateDefault(args);
builder.RootComponents.Add<NotebookPage>("#app");
builder.Services.AddScoped(_ => new HttpClient { BaseAddress = new Uri(builder.HostEnvironment.BaseAddress) });
builder.Services.AddScoped<INotebook, BrowserNotebook>();
builder.Services.AddScoped<IHomeServer, BrowserHomeServer>();
builder.Services.AddScoped<IDevice, BrowserDevice>();
builder.Services.AddScoped<IGroundMap, BrowserGroundMap>();
builder.Services.AddScoped<IBackdropShelf, BrowserBackdropShelf>();
builder.Services.AddScoped<IWhereabouts, BrowserWhereabouts>();
builder.Services.AddScoped<IPhotoShelf, BrowserPhotoShelf>();
await builder.Build().RunAsync();
