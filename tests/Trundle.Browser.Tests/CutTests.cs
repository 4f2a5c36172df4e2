using System.Diagnostics;
using System.Globalization;
using System.Text.Json.Nodes;
using Microsoft.Playwright;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;

namespace Trundle.Browser.Tests;

/// <summary>
/// A whole visit entered on a tablet while the network is cut, the server is killed and the page is loaded anew between any two entries: what the workshop has
/// in the end is to the entry what it has without any of that. TRUNDLE_CUTS says which seeded visits are run, such as 1-200; the first by itself, with
/// more cuts than each of many has.
/// </summary>
public sealed class CutTests(Bay bay) : IAsyncLifetime
{
    /// <summary>Counts what the page is writing on the device, so that a test need not guess how long it takes.</summary>
    private const string CountWrites = """
        (() => {
          window.writing = 0;
          const begin = IDBDatabase.prototype.transaction;
          IDBDatabase.prototype.transaction = function (...told) {
            const transaction = begin.apply(this, told);
            if (told[1] === "readwrite") {
              window.writing++;
              for (const end of ["complete", "abort"]) transaction.addEventListener(end, () => window.writing--);
            }
            return transaction;
          };
        })()
        """;

    /// <summary>The page has had its turn, and nothing is being written any more.</summary>
    private const string Kept = "async () => { const turn = () => new Promise(r => setTimeout(r)); for (let i = 0; i < 5; i++) await turn(); while (window.writing > 0) await turn(); }";

    private readonly string _folder = Directory.CreateTempSubdirectory("trundle-cut-").FullName;
    private Process? _server;
    private Uri _address = new("http://127.0.0.1:0");
    private IBrowserContext _tablet = null!;
    private IPage _page = null!;
    private bool _offline;

    private static (int First, int Last) Seeds
    {
        get
        {
            int[] ends = [.. (Environment.GetEnvironmentVariable("TRUNDLE_CUTS") ?? "1-1").Split('-').Select(n => int.Parse(n, NumberStyles.None, CultureInfo.InvariantCulture))];
            return (ends[0], ends[^1]);
        }
    }

    public async ValueTask InitializeAsync()
    {
        await StartAsync();
        _tablet = await bay.Browser.NewContextAsync(new BrowserNewContextOptions { Locale = "en-GB", BaseURL = _address.ToString(), ReducedMotion = ReducedMotion.Reduce });
        _tablet.SetDefaultTimeout(60_000);
        await _tablet.AddInitScriptAsync(CountWrites);
        _page = await _tablet.NewPageAsync();
        await Bay.EnterAsAsync(_page, Bay.Technician());
    }

    public async ValueTask DisposeAsync()
    {
        await _tablet.CloseAsync();
        await KillAsync();
        Directory.Delete(_folder, true);
    }

    [Fact]
    public async Task Nothing_is_lost_and_nothing_doubled()
    {
        var (script, wanted) = await UndisturbedAsync();
        wanted.Count.ShouldBeGreaterThan(80);
        var happened = new Dictionary<string, int>(StringComparer.Ordinal);
        var (first, last) = Seeds;
        var share = first == last ? 0.15 : 0.05;
        for (var seed = first; seed <= last; seed++)
        {
            var random = new Random(seed);
            var visit = await OpenAsync($"Van {seed}");
            var hand = new BayHand(bay, _page, visit);
            await GoAsync(visit);
            foreach (var (place, entries) in script)
            {
                await hand.TapToAsync(place);
                foreach (var (field, value) in entries)
                {
                    if (random.NextDouble() < share)
                    {
                        var what = await DisturbAsync(random, visit, place);
                        happened[what] = happened.GetValueOrDefault(what) + 1;
                    }

                    await hand.TakeAsync(field, value);
                }
            }

            await _tablet.SetOfflineAsync(_offline = false);
            if (_server is null)
            {
                await StartAsync();
            }

            await SentAsync(visit, wanted.Count);
            (await EntriesAsync(visit)).ShouldBe(wanted, $"seed {seed}");
            if (!await SignedAsync(visit, hand))
            {
                throw new InvalidOperationException($"seed {seed}: the visit could not be handed back");
            }

            if (first != last)
            {
                await Console.Error.WriteLineAsync($"seed {seed}: {wanted.Count} entries as wanted; so far {string.Join(", ", happened.OrderBy(h => h.Key, StringComparer.Ordinal).Select(h => $"{h.Key} {h.Value}"))}");
            }
        }

        if (last - first > 20)
        {
            happened.Keys.ShouldBe(["the network goes", "the network is back", "the server is killed", "the server starts", "the page is loaded anew"], ignoreOrder: true);
        }
    }

    [Fact]
    public async Task On_a_secure_address_a_page_opens_with_no_server_and_shows_what_the_device_knows()
    {
        // This machine's own address counts as secure for a browser, as https does elsewhere.
        var visit = await OpenAsync("Silver estate");
        var hand = new BayHand(bay, _page, visit);
        await GoAsync(visit);
        await hand.EnterAsync(("vehicle.odometer", "48200"));
        await SentAsync(visit, null);
        await BayHand.UntilAsync(_page, "async () => (await navigator.serviceWorker.ready) && await caches.match('/bay/') !== undefined");
        await GoAsync(visit, "arrive");
        await _page.WaitForFunctionAsync("() => navigator.serviceWorker.controller !== null");

        await KillAsync();
        await GoAsync(visit, "arrive/axle-1");
        await hand.EnterAsync(("vehicle.axles.0.placard.cold", "230"));
        await _page.GetByText("Silver estate").First.WaitForAsync();
        (await _page.Locator(".unsent").First.TextContentAsync()).ShouldBe("1 entry on this device not yet sent");
        await _page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Bay.Pictures, "bay-no-server.png") });
        await GoAsync(visit, "arrive");
        (await _page.Locator("[id='f-vehicle-odometer']").InputValueAsync()).ShouldBe("48200");

        await StartAsync();
        await SentAsync(visit, null);
        (await EntriesAsync(visit)).ShouldContain("vehicle.axles.0.placard.cold = 230 kPa");
    }

    [Fact]
    public async Task An_open_board_changes_by_itself_and_says_so_when_it_is_not_live()
    {
        var board = await _tablet.NewPageAsync();
        await board.GotoAsync("/");
        await board.GetByText("Live: it changes by itself.").WaitForAsync();
        await OpenAsync("Silver estate");
        await board.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Silver estate", Exact = true }).WaitForAsync();

        // Whoever reads by keyboard stays where they are while the page changes under them.
        await board.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Silver estate", Exact = true }).FocusAsync();
        await OpenAsync("Copper van");
        await board.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Copper van", Exact = true }).WaitForAsync();
        (await board.EvaluateAsync<string>("() => document.activeElement.textContent")).ShouldBe("Silver estate");

        await KillAsync();
        await board.GetByText("Not live: the workshop’s computer does not answer.").WaitForAsync();
        await board.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Copper van", Exact = true }).WaitForAsync();
        await board.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Bay.Pictures, "board-not-live.png") });
        await StartAsync();
        await board.GetByText("Live: it changes by itself.").WaitForAsync();
        await board.CloseAsync();
    }

    /// <summary>The visit once without a fault: what is entered where, and what the workshop then has.</summary>
    private async Task<(List<(string Place, (string? Field, string Value)[] Entries)> Script, List<string> Wanted)> UndisturbedAsync()
    {
        var script = InventedVisit.BeforeTheHandWork.Select(p => (p.Place, p.Entries.Select(e => ((string?)e.Field, e.Value)).ToArray())).ToList();
        var visit = await OpenAsync("Van");
        var hand = new BayHand(bay, _page, visit);
        await GoAsync(visit);
        foreach (var (place, entries) in script)
        {
            await WorkAsync(place, entries);
        }

        while (await NextStepAsync(visit) is { } open)
        {
            var (place, entries) = ($"{open.Step.Leg.Key()}/{open.At}/{open.Step.Id}", InventedVisit.StepEntries(open).ToArray());
            script.Add((place, entries));
            await WorkAsync(place, entries);
            await SentAsync(visit, null);
        }

        return (script, await EntriesAsync(visit));

        async Task WorkAsync(string place, (string? Field, string Value)[] entries)
        {
            await hand.TapToAsync(place);
            foreach (var (field, value) in entries)
            {
                await hand.TakeAsync(field, value);
            }
        }
    }

    /// <summary>Cuts or mends something, whichever can be.</summary>
    private async Task<string> DisturbAsync(Random random, string visit, string place)
    {
        switch (random.Next(3))
        {
            case 0:
                await _tablet.SetOfflineAsync(_offline = !_offline);
                return _offline ? "the network goes" : "the network is back";
            case 1 when _server is not null:
                await KillAsync();
                return "the server is killed";
            case 1:
                await StartAsync();
                return "the server starts";
            default:
                if (_offline)
                {
                    await _tablet.SetOfflineAsync(_offline = false);
                    return "the network is back";
                }

                if (_server is null)
                {
                    await StartAsync();
                    return "the server starts";
                }

                // What a hand typed is on the device before the hand can reach for the page's own button.
                await _page.EvaluateAsync(Kept);
                await GoAsync(visit, place);
                return "the page is loaded anew";
        }
    }

    private async Task<bool> SignedAsync(string visit, BayHand hand)
    {
        await hand.TapToAsync("handBack");
        await hand.TouchAsync("Sign and hand back");
        await SentAsync(visit, null);
        return (await JsonAsync($"/api/v1/visits/{visit}"))["handedBackAt"] is not null;
    }

    private async Task<string> OpenAsync(string name) => await _page.EvaluateAsync<string>("""
        async name => {
          const entry = { id: crypto.randomUUID(), field: "vehicle.name", typed: name, by: "T2", at: new Date().toISOString() };
          const answer = await fetch("/api/v1/visits", { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify({ by: "T2", entries: [entry] }) });
          return (await answer.json()).id;
        }
        """, name);

    private async Task GoAsync(string visit, string place = "arrive")
    {
        await _page.GotoAsync($"/bay/{visit}/{place}");
        await BayHand.OpenedAsync(_page);
        await _page.WaitForFunctionAsync("() => document.activeElement?.tagName === 'H1'");
    }

    private async Task<StepState?> NextStepAsync(string visit)
    {
        var problems = new List<Problem>();
        var state = VisitStanding.Of(FileNode.From(await JsonAsync($"/api/v1/visits/{visit}/file.json")), problems);
        problems.ShouldBeEmpty();
        return state.Legs.Where(l => l.Leg is Leg.OffTheCar or Leg.Refit or Leg.Prove).SelectMany(l => l.Steps).FirstOrDefault(s => s.Standing != StepStanding.Passed);
    }

    /// <summary>Each entry that the tablet made, as field and text, in the order of the fields; the visit's own name is another each time.</summary>
    private async Task<List<string>> EntriesAsync(string visit) =>
        [.. (await JsonAsync($"/api/v1/visits/{visit}"))["entries"]!.AsArray()
            .Select(e => $"{e!["field"]} = {e["typed"]}").Where(e => !e.StartsWith("vehicle.name", StringComparison.Ordinal) && !e.StartsWith("work.number", StringComparison.Ordinal) && !e.StartsWith("date = ", StringComparison.Ordinal)
                // A wheel that was left within its stages was asked after, and answered: once for each time.
                && !e.Contains(".wentOn = ", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)];

    /// <summary>Waits until the tablet holds nothing any more, and the workshop has so many entries where that is known.</summary>
    private async Task SentAsync(string visit, int? entries)
    {
        for (var i = 0; i < 1200; i++)
        {
            var line = await _page.Locator(".unsent").First.TextContentAsync();
            if (line?.Length == 0 && (entries is null || (await EntriesAsync(visit)).Count >= entries))
            {
                return;
            }

            await Task.Delay(20);
        }

        throw new TimeoutException($"the tablet still says '{await _page.Locator(".unsent").First.TextContentAsync()}', and the workshop has {(await EntriesAsync(visit)).Count} of {entries}");
    }

    private async Task<JsonObject> JsonAsync(string address)
    {
        using var client = new HttpClient { BaseAddress = _address };
        return JsonNode.Parse(await client.GetStringAsync(new Uri(address, UriKind.Relative)))!.AsObject();
    }

    private async Task StartAsync()
    {
        _server = Process.Start(new ProcessStartInfo(Path.Combine(AppContext.BaseDirectory, "trundle"), ["demo", "--urls", _address.GetLeftPart(UriPartial.Authority), "--database", Path.Combine(_folder, "workshop.db")])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = _folder,
        })!;
        _address = await Bay.AddressAsync(_server);
    }

    /// <summary>As a loss of power ends it: nothing is closed, nothing is written any more.</summary>
    private async Task KillAsync()
    {
        if (_server is { } server)
        {
            _server = null;
            server.Kill(true);
            await server.WaitForExitAsync();
            server.Dispose();
        }
    }
}
