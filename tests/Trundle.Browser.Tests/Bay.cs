using System.Diagnostics;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(Trundle.Browser.Tests.Bay))]

namespace Trundle.Browser.Tests;

/// <summary>The command as a user starts it, over a store of its own, and a real Chromium. Shared by all tests of the room, which run side by side.</summary>
public sealed partial class Bay : IAsyncLifetime
{
    private readonly string _folder = Directory.CreateTempSubdirectory("trundle-browser-").FullName;
    private Process? _process;
    private IPlaywright? _playwright;

    public Uri Address { get; private set; } = null!;

    public IBrowser Browser { get; private set; } = null!;

    /// <summary>Where screenshots go, to be looked at.</summary>
    public static string Pictures { get; } = Directory.CreateDirectory(Path.Combine(Checkout(), "artifacts", "screenshots")).FullName;

    public async ValueTask InitializeAsync()
    {
        var command = Path.Combine(AppContext.BaseDirectory, "trundle");
        _process = Process.Start(new ProcessStartInfo(command, ["demo", "--urls", "http://127.0.0.1:0", "--database", Path.Combine(_folder, "workshop.db")])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = _folder,
        })!;
        Address = await AddressAsync(_process);
        _playwright = await Playwright.CreateAsync();
        Browser = await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = new[] { "/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome" }.First(File.Exists),
            Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
    }

    /// <summary>A new browser window of a size, as of a person's own device.</summary>
    public async Task<IPage> PageAsync(int width = 1280, int height = 800, bool dark = false)
    {
        var context = await Browser.NewContextAsync(new BrowserNewContextOptions
        {
            Locale = "en-GB",
            BaseURL = Address.ToString(),
            ViewportSize = new ViewportSize { Width = width, Height = height },
            ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light,
            AcceptDownloads = true,
            ReducedMotion = ReducedMotion.Reduce,
        });
        context.SetDefaultTimeout(60_000);
        return await context.NewPageAsync();
    }

    /// <summary>Says on this device who enters: the first person whose name and role fit.</summary>
    public static async Task EnterAsAsync(IPage page, Regex who)
    {
        await page.GotoAsync("/people");
        await page.GetByRole(AriaRole.Radio, new PageGetByRoleOptions { NameRegex = who }).First.CheckAsync();
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Enter as this person" }).ClickAsync();
        await page.GetByText("Units of").WaitForAsync();
    }

    public async Task<JsonObject> JsonAsync(string address)
    {
        using var client = new HttpClient { BaseAddress = Address };
        return JsonNode.Parse(await client.GetStringAsync(new Uri(address, UriKind.Relative)))!.AsObject();
    }

    /// <summary>The address of the first link on a page whose address begins so and goes on with an identifier.</summary>
    public async Task<string> LinkAsync(string page, string start)
    {
        using var client = new HttpClient { BaseAddress = Address };
        return System.Text.RegularExpressions.Regex.Match(await client.GetStringAsync(new Uri(page, UriKind.Relative)), $"{start}[0-9a-f-]{{36}}").Value;
    }

    /// <summary>The visit of the demo's vehicle whose name begins so.</summary>
    public async Task<string> VisitAsync(string vehicle)
    {
        foreach (var visit in (await JsonAsync("/api/v1/visits"))["visits"]!.AsArray().Select(v => v!["id"]!.GetValue<string>()))
        {
            if ((await JsonAsync($"/api/v1/visits/{visit}"))["fields"]!["vehicle.name"]?.GetValue<string>().StartsWith(vehicle, StringComparison.Ordinal) == true)
            {
                return visit;
            }
        }

        throw new InvalidOperationException($"The demo has no '{vehicle}'.");
    }

    public async ValueTask DisposeAsync()
    {
        if (Browser is not null)
        {
            await Browser.DisposeAsync();
        }

        _playwright?.Dispose();
        if (_process is { HasExited: false })
        {
            _process.Kill(true);
            await _process.WaitForExitAsync();
        }

        _process?.Dispose();
        Directory.Delete(_folder, true);
    }

    internal static async Task<Uri> AddressAsync(Process process, Action<string>? later = null)
    {
        using var limit = new CancellationTokenSource(TimeSpan.FromSeconds(90));
        while (await process.StandardOutput.ReadLineAsync(limit.Token) is { } line)
        {
            if (Url().Match(line) is { Success: true } url)
            {
                later?.Invoke(await process.StandardOutput.ReadLineAsync(limit.Token) ?? "");
                // What is printed later must be read, or the command would wait for it.
                _ = process.StandardOutput.ReadToEndAsync(CancellationToken.None);
                _ = process.StandardError.ReadToEndAsync(CancellationToken.None);
                return new Uri(url.Value);
            }
        }

        throw new InvalidOperationException($"The bay did not start: {await process.StandardError.ReadToEndAsync(CancellationToken.None)}");
    }

    /// <summary>The text of a sample of the repository.</summary>
    public static string Sample(string name) => File.ReadAllText(Path.Combine(Checkout(), "samples", name));

    /// <summary>The folder of the repository.</summary>
    internal static string Checkout()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            if (File.Exists(Path.Combine(at.FullName, "Trundle.slnx")))
            {
                return at.FullName;
            }
        }

        return AppContext.BaseDirectory;
    }

    [GeneratedRegex("technician")]
    internal static partial Regex Technician();

    [GeneratedRegex(@"http://127\.0\.0\.1:\d+")]
    private static partial Regex Url();
}
