using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.RegularExpressions;
using Trundle.Web.Demo;

namespace Trundle.Web.Tests;

/// <summary>What keeps a page to this host, and a fault to itself.</summary>
public sealed partial class GuardTests : IAsyncLifetime
{
    private RunningBay _bay = null!;

    public async ValueTask InitializeAsync() => _bay = await RunningBay.StartAsync();

    public ValueTask DisposeAsync() => _bay.DisposeAsync();

    [Theory]
    [InlineData("/")]
    [InlineData("/arrive")]
    [InlineData("/people")]
    [InlineData("/bay/anything")]
    [InlineData("/api/v1/visits")]
    [InlineData("/css/trundle.css")]
    [InlineData("/nothing-here")]
    public async Task Every_answer_is_kept_to_this_host(string address)
    {
        using var answer = await _bay.Client.GetAsync(new Uri(address, UriKind.Relative));
        var policy = answer.Headers.GetValues("Content-Security-Policy").Single();
        policy.ShouldContain("default-src 'self'");
        policy.ShouldContain("frame-ancestors 'none'");
        policy.ShouldNotContain("unsafe-inline");
        policy.ShouldNotContain("http");
        answer.Headers.GetValues("X-Content-Type-Options").ShouldBe(["nosniff"]);
        answer.Headers.Contains("Server").ShouldBeFalse();
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/arrive")]
    [InlineData("/history")]
    [InlineData("/condemned")]
    [InlineData("/people")]
    [InlineData("/sources")]
    public async Task Office_pages_work_without_script_and_name_no_other_host(string address)
    {
        var (status, page) = await _bay.GetAsync(address);
        status.ShouldBe(HttpStatusCode.OK);
        // The board alone has one, by which it is live; without it, it is looked at again.
        page.Replace("<script src=\"/js/board.js\" type=\"module\"></script>", "", StringComparison.Ordinal).ShouldNotContain("<script");
        page.ShouldNotContain(" style=\"");
        page.ShouldStartWith("<!DOCTYPE html>");
        Addresses().Matches(page).Select(m => m.Groups["to"].Value).Where(a => !a.StartsWith('/') && !a.StartsWith('#') && a != "data:,").ShouldBeEmpty();
    }

    [Theory]
    [InlineData("/", HttpStatusCode.OK)]
    [InlineData("/people", HttpStatusCode.OK)]
    [InlineData("/bay/anything", HttpStatusCode.OK)]
    [InlineData("/css/trundle.css", HttpStatusCode.OK)]
    [InlineData("/api/v1/visits", HttpStatusCode.OK)]
    [InlineData("/nowhere", HttpStatusCode.NotFound)]
    public async Task HEAD_is_answered_like_GET_without_a_body(string address, HttpStatusCode status)
    {
        using var asked = new HttpRequestMessage(HttpMethod.Head, address);
        using var answer = await _bay.Client.SendAsync(asked);
        using var got = await _bay.Client.GetAsync(new Uri(address, UriKind.Relative));
        answer.StatusCode.ShouldBe(status);
        got.StatusCode.ShouldBe(status);
        answer.Content.Headers.ContentType.ShouldBe(got.Content.Headers.ContentType);
        (await answer.Content.ReadAsByteArrayAsync()).ShouldBeEmpty();
        answer.Headers.GetValues("Content-Security-Policy").ShouldBe(got.Headers.GetValues("Content-Security-Policy"));
    }

    [Fact]
    public async Task Every_file_that_a_page_loads_is_served()
    {
        foreach (var page in new[] { "/", "/bay/anything" })
        {
            var (_, html) = await _bay.GetAsync(page);
            var files = Files().Matches(html).Select(m => m.Groups["to"].Value).Where(f => f != "data:,").ToList();
            files.ShouldNotBeEmpty();
            foreach (var file in files)
            {
                (await _bay.GetAsync(file.StartsWith('/') ? file : $"/{file}")).Status.ShouldBe(HttpStatusCode.OK, file);
            }
        }
    }

    [Fact]
    public async Task An_address_that_is_not_there_is_told_as_a_page_or_as_JSON()
    {
        var (status, page) = await _bay.GetAsync("/nothing-here");
        status.ShouldBe(HttpStatusCode.NotFound);
        page.ShouldContain("There is nothing at this address.");
        var (api, body) = await _bay.JsonAsync("/api/v1/nothing-here");
        api.ShouldBe(HttpStatusCode.NotFound);
        body["error"]!["code"]!.GetValue<string>().ShouldBe("not-found");
    }

    [Theory]
    [InlineData("GET", "/api/v1/fitment", "POST")]
    [InlineData("HEAD", "/api/v1/fitment", "POST")]
    [InlineData("PUT", "/api/v1/balance/solve", "POST")]
    [InlineData("DELETE", "/api/v1/visits", "GET, HEAD, POST")]
    [InlineData("POST", "/api/v1/condemned", "GET, HEAD")]
    [InlineData("PATCH", "/api/v1/people/me", "POST")]
    [InlineData("PUT", "/api/v1/visits/0198c7a2-3f00-7000-8000-000000000001", "GET, HEAD")]
    public async Task An_address_asked_in_another_way_says_in_which_it_is(string method, string address, string allowed)
    {
        using var request = new HttpRequestMessage(new HttpMethod(method), address);
        using var answer = await _bay.Client.SendAsync(request);
        answer.StatusCode.ShouldBe(HttpStatusCode.MethodNotAllowed);
        answer.Content.Headers.Allow.Order().ShouldBe(allowed.Split(", "));
        if (method != "HEAD")
        {
            var error = System.Text.Json.Nodes.JsonNode.Parse(await answer.Content.ReadAsStringAsync())!["error"]!;
            error["code"]!.GetValue<string>().ShouldBe("method-not-allowed");
            error["where"]!.GetValue<string>().ShouldBe(address);
            error["message"]!.GetValue<string>().ShouldEndWith($", not by {method}.");
        }
    }

    [Theory]
    [InlineData("POST")]
    [InlineData("DELETE")]
    public async Task An_address_of_the_interface_that_is_not_there_is_not_there_however_it_is_asked(string method)
    {
        using var request = new HttpRequestMessage(new HttpMethod(method), "/api/v1/nothing-here");
        using var answer = await _bay.Client.SendAsync(request);
        answer.StatusCode.ShouldBe(HttpStatusCode.NotFound);
        (await answer.Content.ReadAsStringAsync()).ShouldContain("not-found");
    }

    [Fact]
    public async Task Another_name_for_this_machine_is_not_answered()
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, new Uri("/api/v1/people", UriKind.Relative));
        request.Headers.Host = "workshop.example";
        using var answer = await _bay.Client.SendAsync(request);
        answer.StatusCode.ShouldBe(HttpStatusCode.BadRequest);
    }

    [Fact]
    public async Task A_body_that_is_too_large_is_refused_before_it_is_read()
    {
        // Told by its length alone: nothing of it is sent.
        using var socket = new TcpClient();
        await socket.ConnectAsync(IPAddress.Loopback, _bay.Client.BaseAddress!.Port);
        await using var stream = socket.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes("POST /api/v1/visits HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: application/json\r\nContent-Length: 99999999\r\nConnection: close\r\n\r\n"));
        using var reader = new StreamReader(stream);
        (await reader.ReadLineAsync()).ShouldBe("HTTP/1.1 413 Payload Too Large");
    }

    [Fact]
    public async Task The_invented_workshop_stands_on_the_board_with_wheels_not_tightened()
    {
        var folder = Directory.CreateTempSubdirectory("trundle-demo-");
        try
        {
            var store = Trundle.Store.WorkshopStore.Open(Path.Combine(folder.FullName, "demo.db"));
            var clock = new StandingClock(new DateTimeOffset(2026, 3, 14, 12, 0, 0, TimeSpan.Zero));
            DemoWorkshop.Fill(store, clock).ShouldBeTrue();
            DemoWorkshop.Fill(store, clock).ShouldBeFalse();
            var lines = store.Visits.InTheWorkshop().Select(v => Office.Board.BoardLine.Of(v, store.Condemned.Standing(), clock.Now)).ToList();
            lines.Count.ShouldBe(5);
            lines.Count(l => l.Loose.Count > 0).ShouldBe(2);
            lines.Select(l => l.Leg).Distinct().Count().ShouldBeGreaterThanOrEqualTo(4);
            store.Visits.HandedBack(0, 10).ShouldHaveSingleItem();
            store.Condemned.All().ShouldNotBeEmpty();
            store.Visits.InTheWorkshop().SelectMany(v => v.Entries).Where(e => e.Problem is not null).Select(e => $"{e.Entry.Field} '{e.Entry.Typed}' {e.Problem}").ShouldBeEmpty();
        }
        finally
        {
            Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
            folder.Delete(true);
        }
    }

    [GeneratedRegex("(?:href|src|action)=\"(?<to>[^\"]*)\"")]
    private static partial Regex Addresses();

    [GeneratedRegex("<(?:link|script)[^>]*(?:href|src)=\"(?<to>[^\"]*)\"")]
    private static partial Regex Files();
}
