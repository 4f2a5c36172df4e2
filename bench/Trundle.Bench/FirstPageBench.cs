using System.Globalization;
using System.Net;
using Microsoft.Playwright;

namespace Trundle.Bench;

/// <summary>The bay's first page in a cold browser over a slow network, and the way from leg to leg, beside a bare page of the same framework.</summary>
internal static class FirstPageBench
{
    private const int Loads = 5;
    private const int Rounds = 8;

    // A crowded wireless network at the far end of a workshop: our own choice.
    private const double BytesPerSecond = 500_000;
    private const int LatencyMilliseconds = 30;

    /// <summary>Told to the page: the milliseconds from a press until the picture with another heading is drawn.</summary>
    private const string Press = """
        (link) => new Promise(done => {
          const heading = () => document.querySelector('h1')?.textContent ?? '';
          const before = heading() + location.pathname;
          const from = performance.now();
          const look = () => heading() + location.pathname !== before && heading() ? requestAnimationFrame(() => setTimeout(() => done(performance.now() - from))) : setTimeout(look, 0);
          link.click();
          look();
        })
        """;

    public static async Task RunAsync(string published, Report report)
    {
        var folder = Directory.CreateTempSubdirectory("trundle-bench-page-");
        try
        {
            using var bay = EntryBench.Demo(published, Path.Combine(folder.FullName, "demo.db"));
            using var bare = new Folder(Path.Combine(published, "bare", "wwwroot"));
            using var playwright = await Playwright.CreateAsync().ConfigureAwait(false);
            await using var browser = await playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
            {
                ExecutablePath = new[] { "/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome" }.First(File.Exists),
                Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
            }).ConfigureAwait(false);
            var visit = await VisitAsync(bay.Address).ConfigureAwait(false);
            // There once the program runs: what the server sends at first, for the eye, does not count.
            const string Legs = "nav.legs a:not([aria-current])";
            var contenders = new (string Name, Uri Page, string Sign)[]
            {
                ("bare page", bare.Address, "h1"),
                ("bay, a visit’s page", new Uri(bay.Address, $"bay/{visit}/lookOver"), Legs),
                ("office, the board", bay.Address, "h1"),
            };
            var loads = contenders.ToDictionary(c => c.Name, _ => (Bytes: new List<double>(), Times: new List<double>()));
            for (var i = 0; i < Loads; i++)
            {
                foreach (var (name, page, sign) in contenders)
                {
                    var (bytes, time) = await LoadAsync(browser, page, sign).ConfigureAwait(false);
                    loads[name].Bytes.Add(bytes);
                    loads[name].Times.Add(time);
                }
            }

            var (first, start) = (StartBench.Median(loads["bare page"].Bytes), StartBench.Median(loads["bare page"].Times));
            report.Table(
                "The first page on a cold browser over a slow network",
                $"Chromium {browser.Version} with nothing kept, {BytesPerSecond / 1000:F0} kB/s and {LatencyMilliseconds} ms each way (our own choice); from the address until the page can be worked with; medians of {Loads} loads in turn. Aim: at most 2 times the bare page’s bytes.",
                ["what", "bytes", "ratio", "s", "ratio"],
                contenders.Select(c => (IReadOnlyList<string>)[c.Name, StartBench.Text(StartBench.Median(loads[c.Name].Bytes), "F0"), StartBench.Text(StartBench.Median(loads[c.Name].Bytes) / first, "F2"), StartBench.Text(StartBench.Median(loads[c.Name].Times) / 1000, "F2"), StartBench.Text(StartBench.Median(loads[c.Name].Times) / start, "F2")]));

            var plain = await ChangesAsync(browser, bare.Address, "p a").ConfigureAwait(false);
            var legs = await ChangesAsync(browser, contenders[1].Page, Legs).ConfigureAwait(false);
            report.Table(
                "From leg to leg",
                $"Milliseconds from the press until the next leg’s heading is drawn, in WebAssembly in Chromium {browser.Version}, the program loaded; every leg in turn, {Rounds} rounds. Aim: 100 ms.",
                ["what", "median", "p95", "most"],
                [Row("bare page, to its other page", plain), Row("bay, to another leg", legs)]);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static string[] Row(string name, List<double> times) => [name, StartBench.Text(StartBench.Median(times), "F1"), StartBench.Text(EntryBench.Quantile(times, 0.95), "F1"), StartBench.Text(times.Max(), "F1")];

    private static async Task<(double Bytes, double Milliseconds)> LoadAsync(IBrowser browser, Uri page, string sign)
    {
        await using var context = await EnteringAsync(browser, page).ConfigureAwait(false);
        var open = await context.NewPageAsync().ConfigureAwait(false);
        var network = await context.NewCDPSessionAsync(open).ConfigureAwait(false);
        await network.SendAsync("Network.enable").ConfigureAwait(false);
        await network.SendAsync("Network.emulateNetworkConditions", new Dictionary<string, object>
        {
            ["offline"] = false, ["latency"] = LatencyMilliseconds, ["downloadThroughput"] = BytesPerSecond, ["uploadThroughput"] = BytesPerSecond,
        }).ConfigureAwait(false);
        var bytes = 0.0;
        network.Event("Network.loadingFinished").OnEvent += (_, told) => bytes += told?.GetProperty("encodedDataLength").GetDouble() ?? 0;
        var clock = System.Diagnostics.Stopwatch.StartNew();
        await open.GotoAsync(page.ToString(), new PageGotoOptions { Timeout = 120_000, WaitUntil = WaitUntilState.Commit }).ConfigureAwait(false);
        await open.Locator(sign).First.WaitForAsync(new LocatorWaitForOptions { Timeout = 120_000 }).ConfigureAwait(false);
        var time = clock.Elapsed.TotalMilliseconds;
        await open.WaitForLoadStateAsync(LoadState.NetworkIdle, new PageWaitForLoadStateOptions { Timeout = 60_000 }).ConfigureAwait(false);
        return (bytes, time);
    }

    private static async Task<List<double>> ChangesAsync(IBrowser browser, Uri page, string links)
    {
        await using var context = await EnteringAsync(browser, page).ConfigureAwait(false);
        var open = await context.NewPageAsync().ConfigureAwait(false);
        await open.GotoAsync(page.ToString()).ConfigureAwait(false);
        await open.Locator(links).First.WaitForAsync().ConfigureAwait(false);
        var times = new List<double>();
        for (var round = 0; round <= Rounds; round++)
        {
            var count = await open.Locator(links).CountAsync().ConfigureAwait(false);
            for (var i = 0; i < count; i++)
            {
                var link = await open.Locator(links).Nth(i).ElementHandleAsync().ConfigureAwait(false);
                var took = await open.EvaluateAsync<double>(Press, link).ConfigureAwait(false);
                if (round > 0)
                {
                    // The first round finds code that never ran.
                    times.Add(took);
                }
            }
        }

        return times;
    }

    /// <summary>A browser with nothing kept, on which somebody of the workshop enters already; the bare page knows nobody.</summary>
    private static async Task<IBrowserContext> EnteringAsync(IBrowser browser, Uri page)
    {
        var context = await browser.NewContextAsync().ConfigureAwait(false);
        var people = new Uri(page, "/api/v1/people");
        var answer = await context.APIRequest.GetAsync(people.ToString()).ConfigureAwait(false);
        if (answer.Ok && await answer.JsonAsync().ConfigureAwait(false) is { ValueKind: System.Text.Json.JsonValueKind.Object } told)
        {
            var someone = told.GetProperty("people").EnumerateArray().First(p => p.GetProperty("role").GetString() == "technician");
            var chosen = await context.APIRequest.PostAsync(new Uri(page, "/api/v1/people/me").ToString(), new APIRequestContextOptions
            {
                DataObject = new { id = someone.GetProperty("id").GetInt32(), units = new { pressure = "kPa", depth = "mm", torque = "N·m", mass = "g" } },
            }).ConfigureAwait(false);
            if (!chosen.Ok)
            {
                throw new InvalidOperationException($"Nobody could be chosen: {await chosen.TextAsync().ConfigureAwait(false)}");
            }
        }

        return context;
    }

    private static async Task<string> VisitAsync(Uri address)
    {
        using var client = new HttpClient { BaseAddress = address };
        foreach (var visit in System.Text.Json.Nodes.JsonNode.Parse(await client.GetStringAsync("api/v1/visits").ConfigureAwait(false))!["visits"]!.AsArray())
        {
            var id = visit!["id"]!.GetValue<string>();
            if ((await client.GetStringAsync($"api/v1/visits/{id}").ConfigureAwait(false)).Contains("lue hatchback", StringComparison.Ordinal))
            {
                return id;
            }
        }

        throw new InvalidOperationException("The invented workshop has no blue hatchback.");
    }

    /// <summary>A folder's files over http as a server sends them: the compressed twin where there is one.</summary>
    private sealed class Folder : IDisposable
    {
        private readonly HttpListener _listener = new();
        private readonly string _folder;

        public Folder(string folder)
        {
            _folder = folder;
            Address = Server.FreeAddress();
            _listener.Prefixes.Add(Address.ToString());
            _listener.Start();
            _ = ServeAsync();
        }

        public Uri Address { get; }

        public void Dispose() => _listener.Close();

        private async Task ServeAsync()
        {
            while (_listener.IsListening)
            {
                HttpListenerContext context;
                try
                {
                    context = await _listener.GetContextAsync().ConfigureAwait(false);
                }
                catch (Exception e) when (e is HttpListenerException or ObjectDisposedException)
                {
                    return;
                }

                _ = Task.Run(() => AnswerAsync(context));
            }
        }

        private async Task AnswerAsync(HttpListenerContext context)
        {
            using var response = context.Response;
            var path = Path.Combine(_folder, context.Request.Url!.AbsolutePath.TrimStart('/'));
            if (!File.Exists(path))
            {
                path = Path.Combine(_folder, "index.html");
            }

            if (context.Request.Url.AbsolutePath.StartsWith("/api/", StringComparison.Ordinal))
            {
                response.StatusCode = 404;
                return;
            }

            response.ContentType = Path.GetExtension(path) switch
            {
                ".html" => "text/html",
                ".js" => "text/javascript",
                ".wasm" => "application/wasm",
                ".json" => "application/json",
                _ => "application/octet-stream",
            };
            if (File.Exists(path + ".br") && (context.Request.Headers["Accept-Encoding"] ?? "").Contains("br", StringComparison.Ordinal))
            {
                response.Headers["Content-Encoding"] = "br";
                path += ".br";
            }

            try
            {
                await response.OutputStream.WriteAsync(await File.ReadAllBytesAsync(path).ConfigureAwait(false)).ConfigureAwait(false);
            }
            catch (HttpListenerException)
            {
                // The browser went on.
            }
        }
    }
}
