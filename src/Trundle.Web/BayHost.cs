using Microsoft.AspNetCore.Builder;

namespace Trundle.Web;

public static class BayHost
{
    public static WebApplication Build(string[] urls)
    {
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { ApplicationName = "trundle", EnvironmentName = "Production", ContentRootPath = AppContext.BaseDirectory });
        builder.WebHost.UseStaticWebAssets();
        builder.WebHost.UseUrls(urls);
        builder.Services.AddRouting();
        builder.Services.AddRazorComponents();
        var app = builder.Build();
        app.MapStaticAssets(Path.Combine(AppContext.BaseDirectory, "trundle.staticwebassets.endpoints.json"));
        app.MapGet("/", () => "hello");
        return app;
    }
}
