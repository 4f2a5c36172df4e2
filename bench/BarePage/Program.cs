using Microsoft.AspNetCore.Components.WebAssembly.Hosting;
using Trundle.Bench.BarePage;

var builder = WebAssemblyHostBuilder.CreateDefault(args);
builder.RootComponents.Add<Page>("#app");
await builder.Build().RunAsync();
