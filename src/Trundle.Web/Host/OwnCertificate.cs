using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace Trundle.Web.Host;

/// <summary>
/// A certificate of the workshop's own for https in its own network: an authority that is made once and trusted once on each device, and a server's
/// certificate under it that is renewed by itself.
/// </summary>
/// <param name="Server">With its key, for the server.</param>
/// <param name="Authority">Without its key, for the devices.</param>
public sealed record OwnCertificate(X509Certificate2 Server, X509Certificate2 Authority)
{
    // Browsers take a server's certificate for at most 398 days (the browsers' own published limit, from memory).
    private const int ServerDays = 397;
    private const int RenewDays = 30;
    private const int AuthorityYears = 10;

    /// <summary>The authority's fingerprint, as devices show it: SHA-256 in pairs.</summary>
    public string Fingerprint => string.Join(':', Authority.GetCertHashString(HashAlgorithmName.SHA256).Chunk(2).Select(pair => new string(pair)));

    /// <summary>Reads the certificates beside the workshop's file, and makes or renews what is missing, old, or not for these addresses.</summary>
    /// <param name="database">The workshop's file; the keys lie beside it, readable by its owner only.</param>
    /// <param name="urls">The addresses that are listened at.</param>
    /// <param name="now">The time.</param>
    public static OwnCertificate For(string database, IEnumerable<string> urls, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(urls);
        var (authorityFile, serverFile) = ($"{database}.authority.pfx", $"{database}.server.pfx");
        var authority = Read(authorityFile);
        if (authority is null || authority.NotAfter.ToUniversalTime() < now.UtcDateTime.AddDays(ServerDays))
        {
            authority = MakeAuthority(now);
            Write(authorityFile, authority);
        }

        var hosts = Hosts(urls);
        var server = Read(serverFile);
        if (server is null || server.NotAfter.ToUniversalTime() < now.UtcDateTime.AddDays(RenewDays) || server.Issuer != authority.Subject || !SignedBy(server, authority) || !hosts.All(h => server.MatchesHostname(h)))
        {
            server = MakeServer(authority, hosts, now);
            Write(serverFile, server);
        }

        return new OwnCertificate(server, X509CertificateLoader.LoadCertificate(authority.Export(X509ContentType.Cert)));
    }

    /// <summary>The names and addresses by which devices reach this machine at these addresses.</summary>
    public static IReadOnlyList<string> Hosts(IEnumerable<string> urls)
    {
        ArgumentNullException.ThrowIfNull(urls);
        var hosts = new List<string>();
        foreach (var host in urls.Select(u => new Uri(u.Replace("://*", "://0.0.0.0", StringComparison.Ordinal).Replace("://+", "://0.0.0.0", StringComparison.Ordinal))).Select(u => u.Host.Trim('[', ']')))
        {
            if (IPAddress.TryParse(host, out var address) && (address.Equals(IPAddress.Any) || address.Equals(IPAddress.IPv6Any)))
            {
                var name = Dns.GetHostName();
                hosts.AddRange([name, $"{name}.local", "localhost", "127.0.0.1"]);
                hosts.AddRange(NetworkInterface.GetAllNetworkInterfaces().SelectMany(n => n.GetIPProperties().UnicastAddresses)
                    .Select(a => a.Address).Where(a => a.AddressFamily == AddressFamily.InterNetwork).Select(a => a.ToString()));
            }
            else
            {
                hosts.Add(host);
            }
        }

        return [.. hosts.Distinct(StringComparer.OrdinalIgnoreCase)];
    }

    private static X509Certificate2 MakeAuthority(DateTimeOffset now)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        // Another name each time: two authorities of one name would be taken for each other.
        var request = new CertificateRequest($"CN=Workshop authority {Convert.ToHexString(RandomNumberGenerator.GetBytes(4))}", key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(true, true, 0, true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.KeyCertSign | X509KeyUsageFlags.CrlSign, true));
        request.CertificateExtensions.Add(new X509SubjectKeyIdentifierExtension(request.PublicKey, false));
        return request.CreateSelfSigned(now.AddDays(-1), now.AddYears(AuthorityYears));
    }

    private static X509Certificate2 MakeServer(X509Certificate2 authority, IReadOnlyList<string> hosts, DateTimeOffset now)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=Workshop server", key, HashAlgorithmName.SHA256);
        var names = new SubjectAlternativeNameBuilder();
        foreach (var host in hosts)
        {
            if (IPAddress.TryParse(host, out var address))
            {
                names.AddIpAddress(address);
            }
            else
            {
                names.AddDnsName(host);
            }
        }

        request.CertificateExtensions.Add(names.Build());
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(false, false, 0, true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.DigitalSignature, true));
        request.CertificateExtensions.Add(new X509EnhancedKeyUsageExtension([new Oid("1.3.6.1.5.5.7.3.1")], false));
        request.CertificateExtensions.Add(X509AuthorityKeyIdentifierExtension.CreateFromCertificate(authority, true, false));
        using var signed = request.Create(authority, now.AddDays(-1), now.AddDays(ServerDays), RandomNumberGenerator.GetBytes(16));
        return signed.CopyWithPrivateKey(key);
    }

    private static bool SignedBy(X509Certificate2 server, X509Certificate2 authority)
    {
        using var chain = new X509Chain();
        chain.ChainPolicy.TrustMode = X509ChainTrustMode.CustomRootTrust;
        chain.ChainPolicy.CustomTrustStore.Add(authority);
        chain.ChainPolicy.RevocationMode = X509RevocationMode.NoCheck;
        chain.ChainPolicy.VerificationFlags = X509VerificationFlags.IgnoreNotTimeValid;
        return chain.Build(server);
    }

    private static X509Certificate2? Read(string file)
    {
        try
        {
            return File.Exists(file) ? X509CertificateLoader.LoadPkcs12FromFile(file, null) : null;
        }
        catch (CryptographicException)
        {
            // Not a certificate of ours: a new one is made in its place.
            return null;
        }
    }

    private static void Write(string file, X509Certificate2 certificate)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(file))!);
        var options = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        using var stream = new FileStream(file, options);
        stream.Write(certificate.Export(X509ContentType.Pkcs12));
    }
}
