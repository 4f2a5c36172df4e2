using System.Diagnostics;
using Microsoft.Playwright;

namespace Trundle.Browser.Tests;

/// <summary>A workshop's own file from its first start: the code on the console, two people on one tablet, and a visit entered by PIN.</summary>
public sealed class SigningInTests(Bay bay) : IAsyncLifetime
{
    private const string Password = "four plain grey words";
    private readonly string _folder = Directory.CreateTempSubdirectory("trundle-signing-in-").FullName;
    private Process _serve = null!;
    private IBrowserContext _tablet = null!;
    private IPage _page = null!;
    private string _code = "";

    public async ValueTask InitializeAsync()
    {
        _serve = Process.Start(new ProcessStartInfo(Path.Combine(AppContext.BaseDirectory, "trundle"), ["serve", "--urls", "http://127.0.0.1:0", "--database", Path.Combine(_folder, "shop.db")])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = _folder,
        })!;
        var address = await Bay.AddressAsync(_serve, line => _code = line);
        _tablet = await bay.Browser.NewContextAsync(new BrowserNewContextOptions { Locale = "en-GB", BaseURL = address.ToString(), ReducedMotion = ReducedMotion.Reduce });
        _tablet.SetDefaultTimeout(60_000);
        _page = await _tablet.NewPageAsync();
    }

    public async ValueTask DisposeAsync()
    {
        await _tablet.CloseAsync();
        _serve.Kill(true);
        await _serve.WaitForExitAsync();
        _serve.Dispose();
        Directory.Delete(_folder, true);
    }

    [Fact]
    public async Task From_the_first_start_to_an_entry_by_pin()
    {
        _code.ShouldStartWith("First start: the code ");
        await _page.GotoAsync("/");
        await LookAsync("code-first", "The workshop’s first account");
        await Field("One-time code").FillAsync(_code.Split(' ')[4]);
        await Field("Your name").FillAsync("Robin");
        await ComeInAsync("8264");

        // The board of an empty workshop; the owner lets a technician in.
        await _page.GotoAsync("/people");
        await Field("Name").FillAsync("Kim");
        await Button("Add").ClickAsync();
        await LookAsync("people-new-code", "Code for Kim");
        var code = await _page.Locator(".one-time-code").InnerTextAsync();

        // On the same tablet.
        await _page.GotoAsync("/code");
        await LookAsync("code", "Come in with a code");
        await Field("One-time code").FillAsync(code);
        await ComeInAsync("9317");
        await _page.GotoAsync("/people");
        await LookAsync("people-signed-in", "Password and PIN of Kim");
        await _page.GotoAsync("/people/rights");
        await LookAsync("people-rights", "Who may do what");

        // Kim opens a visit, and Robin takes over in the bay.
        var opened = await _page.EvaluateAsync<string>("async () => (await (await fetch('/api/v1/visits', { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: '{}' })).json()).id");
        await _page.GotoAsync($"/bay/{opened}/arrive");
        await _page.GetByText("Kim, technician").First.WaitForAsync();
        await _page.Locator(".title-block a").First.ClickAsync();
        await Button("Robin, owner").ClickAsync();
        await Field("PIN of Robin").FillAsync("1111");
        await Button("Enter as Robin").ClickAsync();
        await LookAsync("bay-pin-wrong", "That is not the PIN.");
        await Field("PIN of Robin").FillAsync("8264");
        await Button("Enter as Robin").ClickAsync();
        await LookAsync("bay-pin", "Units of Robin");

        // Elsewhere everybody is signed out at once; what the tablet holds waits, and goes when somebody is back.
        var bayAddress = new Uri(_page.Url).AbsolutePath.Replace("/who", "/arrive", StringComparison.Ordinal);
        await _page.GotoAsync(bayAddress);
        await _page.GetByText("Robin, owner").First.WaitForAsync();
        var office = await _tablet.NewPageAsync();
        await office.GotoAsync("/people");
        await office.GetByRole(AriaRole.Button, new() { Name = "Sign out everywhere" }).ClickAsync();
        await office.GetByRole(AriaRole.Heading, new() { Name = "Sign in" }).WaitForAsync();
        await Field("Vehicle").FillAsync("Grey van");
        await Field("Vehicle").BlurAsync();
        await LookAsync("bay-signed-out", "Nobody is signed in on this device: 1 entry waits here.");
        await _page.Locator(".unsent a").ClickAsync();
        await LookAsync("sign-in", "Several people may be signed in");
        await Field("Name").FillAsync("robin");
        await Field("Password").FillAsync(Password);
        await Button("Sign in").ClickAsync();
        await _page.WaitForURLAsync(url => url.EndsWith(bayAddress, StringComparison.Ordinal));
        await _page.Locator(".unsent").Filter(new() { HasNotText = "entry" }).WaitForAsync(new() { State = WaitForSelectorState.Attached });
        var visit = bayAddress.Split('/')[2];
        await BayHand.UntilAsync(_page, "async visit => (await (await fetch(`/api/v1/visits/${visit}`)).json()).fields['vehicle.name'] === 'Grey van'", visit);
    }

    private async Task ComeInAsync(string pin)
    {
        await Field("New password").FillAsync(Password);
        await Field("New PIN").FillAsync(pin);
        await Button("Come in").ClickAsync();
        await _page.GetByRole(AriaRole.Heading, new() { Level = 1 }).WaitForAsync();
        new Uri(_page.Url).AbsolutePath.ShouldBe("/");
    }

    private ILocator Field(string label) => _page.GetByLabel(label, new() { Exact = true });

    private ILocator Button(string name) => _page.GetByRole(AriaRole.Button, new() { Name = name });

    /// <summary>Waits for the words, then looks at the page at two sizes.</summary>
    private async Task LookAsync(string name, string words)
    {
        await _page.GetByText(words).First.WaitForAsync();
        foreach (var (look, width, height) in new[] { ("tablet", 1280, 800), ("phone", 390, 844) })
        {
            await _page.SetViewportSizeAsync(width, height);
            await _page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Bay.Pictures, $"signing-in-{name}-{look}.png") });
            (await Device.FaultsAsync(_page)).ShouldBeEmpty($"{name} {look}");
            (await _page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth")).ShouldBeLessThanOrEqualTo(0, $"{name} {look}");
        }

        await _page.SetViewportSizeAsync(1280, 800);
    }
}
