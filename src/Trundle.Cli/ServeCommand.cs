using System.CommandLine;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Trundle.Measures;
using Trundle.Store;
using Trundle.Visits.Bay;
using Trundle.Web;
using Trundle.Web.Demo;
using Trundle.Web.Host;
using Trundle.Words;

namespace Trundle.Cli;

/// <summary>Starts the bay: <c>serve</c> on a workshop's own file, <c>demo</c> on a file with an invented workshop in it.</summary>
internal static class ServeCommand
{
    private static Option<string> Urls() => new("--urls")
    {
        Description = "Addresses to listen at, parted by ';'. The default is reached from this machine only.",
        DefaultValueFactory = _ => BayOptions.DefaultUrl,
    };

    private static Option<string> Database(string name) => new("--database")
    {
        Description = "The workshop's SQLite file; made where there is none.",
        DefaultValueFactory = _ => Path.Combine(DataFolder(), name),
    };

    private static Option<string?> ShopRules() => new("--shop-rules")
    {
        Description = "A JSON file with the workshop's own stricter rules and its corrections; each visit takes them along when it is opened.",
    };

    private static Option<bool> Https() => new("--https")
    {
        Description = "Listens by https, with a certificate of the workshop's own that lies beside its file. Then the bay's pages open with no network, too.",
    };

    private static Option<string> Locale() => new("--locale")
    {
        Description = "The workshop's own locale, en-GB or en-US: of its papers and their size, and of its pages where a browser asks for neither.",
        DefaultValueFactory = _ => Texts.Source,
    };

    private static string LocaleOf(string? word) => Locales.Of(word) ?? throw new InputProblemException(new Problem("--locale", "word-unknown", $"'{NumberText.Shown(word ?? "")}' is not spoken here; write {ChoiceText.Of(Locales.All)}."));

    public static Command Serve()
    {
        var (urls, database, rules, https, locale) = (Urls(), Database("workshop.db"), ShopRules(), Https(), Locale());
        var command = new Command("serve", "Starts the bay in a browser, on a workshop's own file.") { urls, database, rules, https, locale };
        command.SetAction((parse, stop) => RunAsync(parse.GetRequiredValue(urls), parse.GetRequiredValue(database), false, parse.GetValue(https), Rules(parse.GetValue(rules)), LocaleOf(parse.GetValue(locale)), stop));
        return command;
    }

    public static Command Demo()
    {
        var (urls, database, locale) = (Urls(), Database("demo.db"), Locale());
        var command = new Command("demo", "Starts the bay on a file with an invented workshop in it.") { urls, database, locale };
        command.SetAction((parse, stop) => RunAsync(parse.GetRequiredValue(urls), parse.GetRequiredValue(database), true, false, WorkshopRules.None, LocaleOf(parse.GetValue(locale)), stop));
        return command;
    }

    private static async Task<int> RunAsync(string urls, string database, bool demo, bool https, WorkshopRules rules, string locale, CancellationToken stop)
    {
        var addresses = urls.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        foreach (var address in addresses)
        {
            if (!Uri.TryCreate(address.Replace("://*", "://0.0.0.0", StringComparison.Ordinal), UriKind.Absolute, out var uri) || uri.Scheme is not ("http" or "https"))
            {
                throw new InputProblemException(new Problem("--urls", "address-unreadable", $"'{NumberText.Shown(address)}' is not an address; write it like {BayOptions.DefaultUrl}."));
            }
        }

        if (addresses.Length == 0)
        {
            throw new InputProblemException(new Problem("--urls", "missing", $"Give at least one address, like {BayOptions.DefaultUrl}."));
        }

        if (demo && addresses.FirstOrDefault(a => !BayHost.IsLoopback(a)) is { } open)
        {
            throw new InputProblemException(new Problem("--urls", "not-loopback", $"'{NumberText.Shown(open)}' is reached from elsewhere. Nobody signs in at the invented workshop, so it listens on this machine only; a workshop of your own is started by 'trundle serve'."));
        }

        if (Directory.Exists(database))
        {
            throw new InputProblemException(new Problem("--database", "file-unusable", $"'{NumberText.Shown(database)}' is a folder; name a file in it."));
        }

        if (https)
        {
            addresses = [.. addresses.Select(a => a.StartsWith("http:", StringComparison.OrdinalIgnoreCase) ? $"https{a[4..]}" : a)];
        }
        else if (addresses.FirstOrDefault(a => a.StartsWith("https:", StringComparison.OrdinalIgnoreCase)) is { } secure)
        {
            throw new InputProblemException(new Problem("--urls", "https-without-certificate", $"'{NumberText.Shown(secure)}' needs a certificate: add --https, which makes one of the workshop's own."));
        }

        var store = Open(database);
        if (demo && DemoWorkshop.Fill(store, TimeProvider.System))
        {
            await Console.Error.WriteLineAsync($"An invented workshop was written into {store.Path}").ConfigureAwait(false);
        }

        var certificate = https ? OwnCertificate.For(store.Path, addresses, TimeProvider.System.GetUtcNow()) : null;
        var app = BayHost.Build(new BayOptions(database, addresses) 
        {
            ShopRules = rules, SignIn = !demo, Certificate = certificate, Locale = locale,
        }, store);
        await using (app.ConfigureAwait(false))
        {
            await app.StartAsync(stop).ConfigureAwait(false);
            foreach (var address in app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses)
            {
                Console.Out.WriteLine($"Trundle's bay is at {address}");
            }

            if (certificate is not null)
            {
                Console.Out.WriteLine($"Each device trusts this workshop's authority once: /authority.cer at that address, SHA-256 {certificate.Fingerprint}");
            }

            if (BayHost.FirstCode(app) is { } code)
            {
                Console.Out.WriteLine($"First start: the code {code} makes the owner's account, once, within a day. Open the address and type it.");
            }

            await app.WaitForShutdownAsync(stop).ConfigureAwait(false);
        }

        return 0;
    }

    /// <summary>The workshop's rules from its file, read before anything is started.</summary>
    private static WorkshopRules Rules(string? file) => file is null
        ? WorkshopRules.None
        : WorkshopRules.Read(FileText.Read(file)).Match(rules => rules, problem => throw new InputProblemException(problem.At($"{file}: {problem.Where}")));

    /// <summary>Opens a workshop's file; an <see cref="InputProblemException"/> where it cannot be used as one.</summary>
    internal static WorkshopStore Open(string database)
    {
        try
        {
            return WorkshopStore.Open(database);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or Microsoft.Data.Sqlite.SqliteException)
        {
            throw new InputProblemException(new Problem("--database", "file-unusable", $"'{NumberText.Shown(database)}' cannot be used as a workshop's file: {e.Message}"));
        }
    }

    /// <summary>Where a program keeps a person's data on this system.</summary>
    private static string DataFolder() => Path.Combine(
        Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify) is { Length: > 0 } folder ? folder : Environment.CurrentDirectory,
        "trundle");
}
