using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Trundle.Store;
using Trundle.Visits.Bay;

namespace Trundle.Web.Tests;

/// <summary>The real host with its real server on a free loopback port, over a store of its own.</summary>
public sealed partial class RunningBay : IAsyncDisposable
{
    private readonly string _folder;
    private readonly WebApplication _app;

    private RunningBay(string folder, WebApplication app, WorkshopStore store, Uri address)
    {
        (_folder, _app, Store) = (folder, app, store);
        Client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false, CookieContainer = new CookieContainer() }) { BaseAddress = address };
    }

    public static async Task<RunningBay> StartAsync(TimeProvider? clock = null, WorkshopRules? rules = null, bool signIn = false, Func<BayOptions, BayOptions>? with = null, Action<WorkshopStore>? fill = null)
    {
        var folder = Directory.CreateTempSubdirectory("trundle-web-").FullName;
        var path = Path.Combine(folder, "workshop.db");
        var store = WorkshopStore.Open(path);
        fill?.Invoke(store);
        foreach (var (name, role) in new[] { ("D1", Role.Desk), ("T1", Role.Technician), ("T4", Role.Trainee), ("I2", Role.Instructor) })
        {
            store.People.Add(name, role, UnitHabits.Metric);
        }

        var options = new BayOptions(path, ["http://127.0.0.1:0"]) { SignIn = signIn, Clock = clock ?? TimeProvider.System, ShopRules = rules ?? WorkshopRules.None };
        var app = BayHost.Build(with?.Invoke(options) ?? options, store);
        await app.StartAsync();
        var address = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single();
        return new RunningBay(folder, app, store, new Uri(address));
    }

    public WorkshopStore Store { get; }

    /// <summary>One browser: it keeps cookies and shows redirections as they are.</summary>
    public HttpClient Client { get; }

    public async Task<(HttpStatusCode Status, string Text)> GetAsync(string address)
    {
        using var answer = await Client.GetAsync(new Uri(address, UriKind.Relative));
        return (answer.StatusCode, await answer.Content.ReadAsStringAsync());
    }

    public async Task<(HttpStatusCode Status, JsonObject Body)> JsonAsync(string address)
    {
        var (status, text) = await GetAsync(address);
        return (status, JsonNode.Parse(text)!.AsObject());
    }

    public async Task<(HttpStatusCode Status, JsonObject Body)> PostAsync(string address, string json)
    {
        using var content = new StringContent(json, Encoding.UTF8, "application/json");
        using var answer = await Client.PostAsync(new Uri(address, UriKind.Relative), content);
        return (answer.StatusCode, JsonNode.Parse(await answer.Content.ReadAsStringAsync())!.AsObject());
    }

    /// <summary>Fills a form of a page and sends it, as a browser does.</summary>
    public Task<(HttpStatusCode Status, string Text, string? To)> SendFormAsync(string page, string action, params (string Name, string Value)[] fields) =>
        SendFormAsync(Client, page, action, fields);

    /// <summary>The one-time code that the host printed, or null.</summary>
    public string? FirstCode => BayHost.FirstCode(_app);

    /// <summary>Whoever enters in this browser, an owner or an instructor, gives a person a one-time code.</summary>
    public async Task<string> CodeForAsync(string name)
    {
        var person = Store.People.All().Single(p => p.Name == name);
        var (status, page, _) = await SendFormAsync("/people", $"/people/{person.Id}", ("do", "code"), ("role", person.Role.Word()), ("left", "false"));
        status.ShouldBe(HttpStatusCode.OK);
        return Code().Match(page).Groups["code"].Value;
    }

    /// <summary>Another browser at the same host, with no cookies yet.</summary>
    public HttpClient OtherBrowser() => new(new HttpClientHandler { AllowAutoRedirect = false, CookieContainer = new CookieContainer() }) { BaseAddress = Client.BaseAddress };

    /// <summary>The same in another browser.</summary>
    public static async Task<(HttpStatusCode Status, string Text, string? To)> SendFormAsync(HttpClient browser, string page, string action, params (string Name, string Value)[] fields)
    {
        var html = await browser.GetStringAsync(new Uri(page, UriKind.Relative));
        var token = Token().Match(html).Groups["token"].Value;
        token.ShouldNotBeEmpty($"{page} has no form with a token");
        using var content = new FormUrlEncodedContent([new("__RequestVerificationToken", token), .. fields.Select(f => new KeyValuePair<string, string>(f.Name, f.Value))]);
        using var answer = await browser.PostAsync(new Uri(action, UriKind.Relative), content);
        return (answer.StatusCode, await answer.Content.ReadAsStringAsync(), answer.Headers.Location?.ToString());
    }

    /// <summary>Chooses who enters in this browser.</summary>
    public async Task EnterAsAsync(string name)
    {
        var id = Store.People.All().Single(p => p.Name == name).Id;
        (await SendFormAsync("/people", "/people/choose", ("person", $"{id}"))).Status.ShouldBe(HttpStatusCode.Redirect);
    }

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        await _app.DisposeAsync();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(_folder, true);
    }

    [GeneratedRegex("<p class=\"one-time-code\">(?<code>[A-Z0-9-]+)</p>")]
    private static partial Regex Code();

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"(?<token>[^\"]+)\"")]
    private static partial Regex Token();
}

/// <summary>A clock that stands still until it is put forward.</summary>
public sealed class StandingClock(DateTimeOffset now) : TimeProvider
{
    public DateTimeOffset Now { get; set; } = now;

    public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

    public override DateTimeOffset GetUtcNow() => Now;
}
