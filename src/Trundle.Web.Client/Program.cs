using Microsoft.AspNetCore.Components.Web;
using Microsoft.AspNetCore.Components.WebAssembly.Hosting;
using Trundle.Web.Client;
using Trundle.Web.Client.Entries;
using Trundle.Web.Client.Refit;

var builder = WebAssemblyHostBuilder.CreateDefault(args);
builder.RootComponents.Add<BayRoot>("#bay");
builder.RootComponents.Add<HeadOutlet>("head::after");
builder.Services.AddSingleton(TimeProvider.System);
builder.Services.AddSingleton<Browser>();
builder.Services.AddSingleton<Outbox>();
builder.Services.AddSingleton<Photos>();
builder.Services.AddSingleton<KnownVisits>();
builder.Services.AddSingleton<OpenVisit>();
builder.Services.AddSingleton<WrenchInHand>();
await builder.Build().RunAsync();
