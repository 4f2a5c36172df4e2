using System.Security.Cryptography.X509Certificates;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Trundle.Store;
using Trundle.Web.Host;

namespace Trundle.Web.Tests;

/// <summary>The workshop's own certificate: a device that trusts its authority reaches the bay, and goes on trusting it for years.</summary>
public sealed class OwnCertificateTests : IDisposable
{
    private static readonly DateTimeOffset Now = DateTimeOffset.UtcNow;
    private readonly string _folder = Directory.CreateTempSubdirectory("trundle-https-").FullName;

    private string Database => Path.Combine(_folder, "shop.db");

    public void Dispose()
    {
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(_folder, true);
    }

    [Fact]
    public async Task A_device_that_trusts_the_authority_is_answered_and_another_is_not()
    {
        var own = OwnCertificate.For(Database, ["https://127.0.0.1:0"], Now);
        await using var app = BayHost.Build(new BayOptions(Database, ["https://127.0.0.1:0"]) { Certificate = own }, WorkshopStore.Open(Database));
        await app.StartAsync(TestContext.Current.CancellationToken);
        var address = new Uri(app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single());
        address.Scheme.ShouldBe("https");

        using var trusting = new SocketsHttpHandler();
        trusting.SslOptions.CertificateChainPolicy = new X509ChainPolicy { TrustMode = X509ChainTrustMode.CustomRootTrust, RevocationMode = X509RevocationMode.NoCheck };
        trusting.SslOptions.CertificateChainPolicy.CustomTrustStore.Add(own.Authority);
        using var device = new HttpClient(trusting) { BaseAddress = address };
        (await device.GetStringAsync(new Uri("/code", UriKind.Relative), TestContext.Current.CancellationToken)).ShouldContain("first account");
        var given = await device.GetByteArrayAsync(new Uri("/authority.cer", UriKind.Relative), TestContext.Current.CancellationToken);
        X509CertificateLoader.LoadCertificate(given).ShouldBe(own.Authority);

        using var stranger = new HttpClient { BaseAddress = address };
        await Should.ThrowAsync<HttpRequestException>(() => stranger.GetStringAsync(new Uri("/code", UriKind.Relative), TestContext.Current.CancellationToken));
    }

    [Fact]
    public void It_is_kept_and_renewed_under_the_same_authority()
    {
        var first = OwnCertificate.For(Database, ["https://127.0.0.1:5151"], Now);
        OwnCertificate.For(Database, ["https://127.0.0.1:5151"], Now.AddDays(300)).Server.Thumbprint.ShouldBe(first.Server.Thumbprint);

        var renewed = OwnCertificate.For(Database, ["https://127.0.0.1:5151"], Now.AddDays(380));
        renewed.Server.Thumbprint.ShouldNotBe(first.Server.Thumbprint);
        renewed.Fingerprint.ShouldBe(first.Fingerprint);
        (renewed.Server.NotAfter - renewed.Server.NotBefore).TotalDays.ShouldBeLessThanOrEqualTo(398);

        var elsewhere = OwnCertificate.For(Database, ["https://192.0.2.10:5151"], Now.AddDays(380));
        elsewhere.Server.MatchesHostname("192.0.2.10").ShouldBeTrue();
        elsewhere.Fingerprint.ShouldBe(first.Fingerprint);
    }

    [Fact]
    public void Its_keys_are_read_by_their_owner_only_and_a_broken_file_is_made_anew()
    {
        var first = OwnCertificate.For(Database, ["https://127.0.0.1:5151"], Now);
        OperatingSystem.IsWindows().ShouldBeFalse("the tests run on Debian");
        foreach (var file in Directory.GetFiles(_folder, "*.pfx"))
        {
#pragma warning disable CA1416 // Said above.
            File.GetUnixFileMode(file).ShouldBe(UnixFileMode.UserRead | UnixFileMode.UserWrite, file);
#pragma warning restore CA1416
        }

        File.WriteAllText($"{Database}.server.pfx", "not a certificate");
        OwnCertificate.For(Database, ["https://127.0.0.1:5151"], Now).Fingerprint.ShouldBe(first.Fingerprint);
    }

    [Fact]
    public void Open_to_every_address_it_is_for_this_machines_names_and_addresses()
    {
        var hosts = OwnCertificate.Hosts(["https://0.0.0.0:5151", "https://*:5152"]);
        hosts.ShouldContain("127.0.0.1");
        hosts.ShouldContain("localhost");
        hosts.ShouldContain(System.Net.Dns.GetHostName());
        hosts.ShouldBe(hosts.Distinct());
    }
}
