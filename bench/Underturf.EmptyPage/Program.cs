using Microsoft.AspNetCore.Components.WebAssembly.Hosting;
using Underturf.EmptyPage;

// The least that a page of this kind can be: what the real one is measured against.
var builder = WebAssemblyHostBuilder.CreateDefault(args);
builder.RootComponents.Add<Ready>("#app");
await builder.Build().RunAsync();
