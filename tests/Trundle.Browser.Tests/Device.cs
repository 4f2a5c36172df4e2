using System.Text.Json;
using Deque.AxeCore.Commons;
using Microsoft.Playwright;

namespace Trundle.Browser.Tests;

/// <summary>
/// One device on which a technician opens page after page, so that the engine is fetched once, with the looks at which each page is checked: no
/// fault that axe finds, nothing wider than its window, and a picture to be looked at. A page is opened once and looked at in each size and theme;
/// axe itself is put into a document once.
/// </summary>
public sealed class Device(Bay bay) : IAsyncLifetime
{
    private static readonly (string Name, int Width, int Height, bool Dark)[] Looks = [("tablet", 1280, 800, false), ("phone", 390, 844, false), ("tablet-dark", 1280, 800, true)];

    private static readonly string Axe = new BundledAxeScriptProvider().GetScript();

    private IPage _page = null!;

    public async ValueTask InitializeAsync()
    {
        _page = await bay.PageAsync();
        await Bay.EnterAsAsync(_page, Bay.Technician());
    }

    public async ValueTask DisposeAsync() => await _page.Context.CloseAsync();

    /// <summary>Opens an address and checks it at every look.</summary>
    /// <param name="address">The page.</param>
    /// <param name="name">What its pictures are called.</param>
    /// <param name="unfolded">Whether everything folded away is opened first.</param>
    /// <param name="part">Words that must stand on the page, so that what is to be looked at is there.</param>
    public async Task CheckAsync(string address, string name, bool unfolded = false, string? part = null)
    {
        await OpenAsync(address);
        if (part is not null)
        {
            await _page.GetByText(part).First.WaitForAsync();
        }

        if (unfolded)
        {
            await _page.EvaluateAsync("() => document.querySelectorAll('details').forEach(d => d.open = true)");
        }

        foreach (var (look, width, height, dark) in Looks)
        {
            await _page.SetViewportSizeAsync(width, height);
            await _page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light, ReducedMotion = ReducedMotion.Reduce });
            await _page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Bay.Pictures, $"{name}-{look}.png") });
            if (Whole)
            {
                await WholeAsync(Path.Combine(Bay.Pictures, $"{name}-{look}-whole.png"), width, height);
            }

            (await FaultsAsync(_page)).ShouldBeEmpty($"{address} {look}");
            var overhang = await _page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth");
            overhang.ShouldBeLessThanOrEqualTo(0, $"{address} {look} is wider than its window");
        }
    }

    /// <summary>Takes besides a picture of the whole page, as long as it is.</summary>
    public bool Whole { get; set; }

    /// <summary>A sheet keeps its foot on the screen and moves inside: for the picture the window is made as long as the page.</summary>
    private async Task WholeAsync(string path, int width, int height)
    {
        var below = await _page.EvaluateAsync<int>("() => Math.max(0, ...[...document.querySelectorAll('.sheet .page, .sheet .middle, .sheet .needed')].map(e => e.scrollHeight - e.clientHeight))");
        await _page.SetViewportSizeAsync(width, height + below);
        await _page.ScreenshotAsync(new PageScreenshotOptions { Path = path });
        await _page.SetViewportSizeAsync(width, height);
    }

    /// <summary>Sends entries to a visit from this device.</summary>
    public async Task SendAsync(string visit, params (string Field, string Typed)[] entries)
    {
        var status = await _page.EvaluateAsync<int>("""
            async ([visit, fields]) => {
              const at = new Date().toISOString();
              const entries = Object.entries(JSON.parse(fields)).map(([field, typed]) => ({ id: crypto.randomUUID(), field, typed, by: "T2", role: "technician", at }));
              return (await fetch(`/api/v1/visits/${visit}/entries`, { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify({ entries }) })).status;
            }
            """, new[] { visit, JsonSerializer.Serialize(entries.ToDictionary(e => e.Field, e => e.Typed)) });
        status.ShouldBe(200);
    }

    /// <summary>Opens a visit with everything that was entered on another, so that what is entered on it is in nobody else's way.</summary>
    /// <param name="visit">The other.</param>
    /// <param name="name">What its vehicle is called.</param>
    /// <returns>The new visit.</returns>
    public async Task<string> CopyAsync(string visit, string name) => await _page.EvaluateAsync<string>("""
        async ([visit, name]) => {
          const fields = { ...(await (await fetch(`/api/v1/visits/${visit}`)).json()).fields, "vehicle.name": name };
          const at = new Date().toISOString();
          const own = field => field === "date" || field === "work.number" || field.startsWith("work.procedure") || field.startsWith("procedure") || field.startsWith("shopRules")
            || field.startsWith("work.permissions"); // What an instructor gave is not a technician's to enter.
          const entries = Object.entries(fields).filter(([field]) => !own(field)).map(([field, typed]) => ({ id: crypto.randomUUID(), field, typed, by: "T2", role: "technician", at }));
          const answer = await fetch("/api/v1/visits", { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify({ by: "T2", entries }) });
          if (answer.status !== 201) throw new Error(await answer.text());
          return (await answer.json()).id;
        }
        """, new[] { visit, name });

    /// <summary>Keeps a form in this browser, as the tool's page keeps it, made of a file of the command.</summary>
    public async Task KeepFormAsync(string key, string json)
    {
        await _page.EvaluateAsync("""
            ([key, json]) => {
              const fields = {};
              const walk = (at, node) => node !== null && typeof node === "object"
                ? Object.entries(node).forEach(([name, child]) => walk(at === "fitted" ? `fitted.${child.position}` : at ? `${at}.${name}` : name, child))
                : (fields[at] = String(node));
              walk("", JSON.parse(json));
              Object.keys(fields).filter(f => /^fitted\.[^.]+\.position$/.test(f)).forEach(f => delete fields[f]);
              localStorage.setItem(`trundle-${key}`, JSON.stringify(fields));
            }
            """, new[] { key, json });
    }

    /// <summary>Another page of the visit that is open is gone to as by a tap, without loading the engine anew; everything else is loaded.</summary>
    private async Task OpenAsync(string address)
    {
        var visit = address.StartsWith("/bay/", StringComparison.Ordinal) && !address.StartsWith("/bay/tools", StringComparison.Ordinal) ? string.Join('/', address.Split('/').Take(3)) + "/" : null;
        if (visit is not null && new Uri(_page.Url).AbsolutePath.StartsWith(visit, StringComparison.Ordinal))
        {
            await _page.EvaluateAsync("address => { document.activeElement?.blur(); Blazor.navigateTo(address); }", address);

            // The page puts the focus on its heading once it is drawn.
            await _page.WaitForFunctionAsync("address => location.pathname === address && document.activeElement?.tagName === 'H1'", address);
            return;
        }

        await _page.GotoAsync(address);
        await BayHand.OpenedAsync(_page);
    }

    /// <summary>What axe finds, each fault in a line: by all the rules that it has on by itself, or by the one rule named.</summary>
    internal static async Task<IReadOnlyList<string>> FaultsAsync(IPage page, string? rule = null)
    {
        if (!await page.EvaluateAsync<bool>("() => 'axe' in window"))
        {
            await page.EvaluateAsync(Axe);
        }

        var answer = await page.EvaluateAsync<JsonElement>("""
            async rule => {
              const result = await axe.run(document, { resultTypes: ["violations"], ...(rule ? { runOnly: { type: "rule", values: [rule] } } : {}) });
              return {
                rules: result.passes.length + result.violations.length,
                faults: result.violations.map(v => `${v.id}: ${v.help} ${v.nodes.slice(0, 3).map(n => n.html).join(" | ")}`),
              };
            }
            """, rule);
        answer.GetProperty("rules").GetInt32().ShouldBeGreaterThan(rule is null ? 10 : 0, "axe ran its rules");
        return [.. answer.GetProperty("faults").EnumerateArray().Select(f => f.GetString()!)];
    }
}
