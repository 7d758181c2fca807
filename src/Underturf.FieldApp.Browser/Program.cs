using System.Runtime.Versioning;
using Microsoft.AspNetCore.Components.WebAssembly.Hosting;
using Underturf.FieldApp.Browser;

[assembly: SupportedOSPlatform("browser")]

// The page itself comes while the runtime starts; nothing here names a type of it before it is here.
var builder = WebAssemblyHostBuilder.CreateDefault(args);
await LateRooms.TakePageAsync();
Furniture.Bring(builder);
await builder.Build().RunAsync();
