using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.DataProtection.KeyManagement;
using Microsoft.AspNetCore.HostFiltering;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Trundle.Store;
using Trundle.Web.Accounts;
using Trundle.Web.Api;
using Trundle.Web.Bay;
using Trundle.Web.Host;
using Trundle.Web.Office;
using Trundle.Web.Languages;
using Trundle.Web.People;
using Trundle.Web.Visits;

namespace Trundle.Web;

/// <summary>The host: office pages, the bay's pages, and the HTTP interface over one workshop's store.</summary>
public static class BayHost
{
    /// <summary>Makes the host; it listens once it is started. The store must be open for as long as the host runs.</summary>
    public static WebApplication Build(BayOptions options, WorkshopStore store)
    {
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(store);
        var folder = AppContext.BaseDirectory;
        var assets = Manifest(folder);
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions
        {
            ApplicationName = assets ?? "trundle",
            EnvironmentName = "Production",
            ContentRootPath = folder,
        });
        if (assets is not null && File.Exists(Path.Combine(folder, $"{assets}.staticwebassets.runtime.json")))
        {
            // Built, not published: the files still lie where the build made them, and this manifest tells where.
            builder.WebHost.UseStaticWebAssets();
        }

        builder.WebHost.UseUrls([.. options.Urls]);
        if (options.Certificate is { } certificate)
        {
            builder.WebHost.UseKestrelHttpsConfiguration();
            builder.WebHost.ConfigureKestrel(kestrel => kestrel.ConfigureHttpsDefaults(https => https.ServerCertificate = certificate.Server));
        }

        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = ApiAnswer.MostBytes;
        });
        builder.Logging.SetMinimumLevel(LogLevel.Warning);
        // The keys sign forms of this host only, and lie in the workshop's own file.
        builder.Logging.AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error);
        builder.Services.AddSingleton(store);
        builder.Services.AddSingleton<Office.Board.BoardLines>();
        builder.Services.AddSingleton(options.Clock);
        builder.Services.AddSingleton(options);
        builder.Services.AddSingleton(options.ShopRules);
        builder.Services.AddSingleton(new Door(options.SignIn, store, options.Clock));
        builder.Services.AddTries();
        builder.Services.AddRazorComponents();
        builder.Services.AddHttpContextAccessor();
        builder.Services.AddAntiforgery(antiforgery =>
        {
            antiforgery.Cookie.Name = "trundle-form";
            antiforgery.Cookie.SameSite = SameSiteMode.Strict;
        });
        builder.Services.AddDataProtection().SetApplicationName("trundle");
        builder.Services.Configure<KeyManagementOptions>(keys => keys.XmlRepository = new StoreXmlKeys(store.Keys));
        if (options.Urls.All(IsLoopback))
        {
            // A page elsewhere that points its own name at this machine is not answered.
            builder.Services.Configure<HostFilteringOptions>(hosts => hosts.AllowedHosts = ["localhost", "127.0.0.1", "[::1]"]);
        }

        var app = builder.Build();
        app.UseHostFiltering();
        app.UseGuard();
        app.UseHead();
        app.UseRouting();
        app.UseRateLimiter();
        app.UseGate();
        app.UseAntiforgery();
        app.UseReader();
        if (assets is not null)
        {
            app.MapStaticAssets(Path.Combine(folder, $"{assets}.staticwebassets.endpoints.json")).Add(file => file.Metadata.Add(HoldsNothing.Mark));
        }

        if (options.Certificate is { } own)
        {
            var authority = own.Authority.Export(System.Security.Cryptography.X509Certificates.X509ContentType.Cert);
            app.MapGet("/authority.cer", () => Results.File(authority, "application/x-x509-ca-cert", "workshop-authority.cer")).WithMetadata(HoldsNothing.Mark);
        }

        app.MapTexts();
        app.MapSignIn();
        app.MapOperations();
        app.MapVisits();
        app.MapPeople();
        app.MapBay();
        app.MapOffice();
        app.MapOtherMethods();
        app.Map("/api/{**rest}", () => Results.NotFound()).WithMetadata(HoldsNothing.Mark);
        return app;
    }

    /// <summary>The one-time code that makes the workshop's first account; null where there is one, or where nobody signs in.</summary>
    public static string? FirstCode(WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        return app.Services.GetRequiredService<Door>().FirstCode;
    }

    /// <summary>True where an address is reached from this machine only.</summary>
    public static bool IsLoopback(string url) =>
        Uri.TryCreate(url, UriKind.Absolute, out var uri) && (uri.IsLoopback || (IPAddress.TryParse(uri.Host, out var address) && IPAddress.IsLoopback(address)));

    /// <summary>The name of the list of static files that the build wrote: the command's, else the host's own.</summary>
    private static string? Manifest(string folder) =>
        new[] { "trundle", "Trundle.Web" }.FirstOrDefault(name => File.Exists(Path.Combine(folder, $"{name}.staticwebassets.endpoints.json")));
}
