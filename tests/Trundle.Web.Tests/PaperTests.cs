using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json.Nodes;
using Trundle.Visits.Bay;

namespace Trundle.Web.Tests;

/// <summary>The visit's paper over the interface and in the office: photographs, stock, scrap, and what may be erased.</summary>
public sealed class PaperTests : IAsyncLifetime
{
    /// <summary>A grey PNG of one pixel, with a comment of a camera in it.</summary>
    private static readonly byte[] Png = Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAAEHRFWHRDb21tZW50AEdQUyAxMi4z10uSSAAAAApJREFUeJxjaAAAAIIAgXfNcrYAAAAASUVORK5CYII=");

    private readonly StandingClock _clock = new(new DateTimeOffset(2026, 3, 14, 9, 0, 0, TimeSpan.Zero));
    private RunningBay _bay = null!;

    public async ValueTask InitializeAsync() => _bay = await RunningBay.StartAsync(_clock);

    public ValueTask DisposeAsync() => _bay.DisposeAsync();

    private Guid Visit(params (string Field, string Typed)[] fields)
    {
        var id = Guid.NewGuid();
        _bay.Store.Visits.Open(id, "D1", _clock.Now, new DateOnly(2026, 3, 14));
        _bay.Store.Visits.Append(id, [.. fields.Select(f => new Entry(Guid.NewGuid(), f.Field, f.Typed, "T1", Role.Technician, _clock.Now))], _clock.Now).Value.Refused.ShouldBeEmpty();
        return id;
    }

    private async Task<(HttpStatusCode Status, JsonObject Body)> PutAsync(string address, byte[] bytes, string type)
    {
        using var content = new ByteArrayContent(bytes);
        content.Headers.ContentType = new MediaTypeHeaderValue(type);
        using var answer = await _bay.Client.PutAsync(new Uri(address, UriKind.Relative), content);
        return (answer.StatusCode, JsonNode.Parse(await answer.Content.ReadAsStringAsync())!.AsObject());
    }

    [Fact]
    public async Task A_photograph_is_taken_once_shown_and_printed_on_the_sheet_for_the_file()
    {
        var photo = Guid.NewGuid();
        var visit = Visit(("vehicle.name", "Plum saloon, DEMO 31"), ("arrival.damage.0.place", "front left wing"), ("arrival.damage.0.photos.0", $"{photo:D}"));
        var address = $"/api/v1/visits/{visit:D}/photos/{photo:D}";
        (await PutAsync(address, Png, "image/png")).Body["error"]!["code"]!.GetValue<string>().ShouldBe("person-unknown");
        for (var i = 0; i < 2; i++)
        {
            var (status, body) = await PutAsync($"{address}?by=T1", Png, "image/png");
            status.ShouldBe(HttpStatusCode.OK, body.ToJsonString());
            body["by"]!.GetValue<string>().ShouldBe("T1");
        }

        using var shown = await _bay.Client.GetAsync(new Uri(address, UriKind.Relative));
        shown.Content.Headers.ContentType!.MediaType.ShouldBe("image/png");
        Encoding.Latin1.GetString(await shown.Content.ReadAsByteArrayAsync()).ShouldNotContain("GPS");
        var (_, page) = await _bay.GetAsync($"/visits/{visit:D}");
        page.ShouldContain($"src=\"{address}\"");
        page.ShouldContain("front left wing");

        var sheet = await _bay.Client.GetByteArrayAsync(new Uri($"/api/v1/visits/{visit:D}/sheet.pdf?for=file", UriKind.Relative));
        Encoding.Latin1.GetString(sheet).ShouldContain("/Subtype/Image");
    }

    [Theory]
    [InlineData("image/png", "not a picture", HttpStatusCode.BadRequest, "not-a-picture")]
    [InlineData("text/plain", "not a picture", HttpStatusCode.UnsupportedMediaType, "not-a-picture")]
    public async Task What_is_no_picture_is_refused_in_one_sentence(string type, string text, HttpStatusCode status, string code)
    {
        var visit = Visit();
        var (answered, body) = await PutAsync($"/api/v1/visits/{visit:D}/photos/{Guid.NewGuid():D}?by=T1", Encoding.ASCII.GetBytes(text), type);
        answered.ShouldBe(status);
        body["error"]!["code"]!.GetValue<string>().ShouldBe(code);
    }

    [Fact]
    public async Task One_that_is_too_large_is_refused_with_how_large_it_may_be()
    {
        var visit = Visit();
        var (status, body) = await PutAsync($"/api/v1/visits/{visit:D}/photos/{Guid.NewGuid():D}?by=T1", [.. Png, .. new byte[2_100_000]], "image/png");
        status.ShouldBe(HttpStatusCode.RequestEntityTooLarge);
        body["error"]!["message"]!.GetValue<string>().ShouldContain("2 MB");
        (await PutAsync($"/api/v1/visits/{Guid.NewGuid():D}/photos/{Guid.NewGuid():D}?by=T1", Png, "image/png")).Status.ShouldBe(HttpStatusCode.NotFound);
    }

    [Fact]
    public async Task The_stock_is_kept_by_forms_and_what_is_low_stands_on_the_board()
    {
        (await _bay.SendFormAsync("/stock", "/stock", ("kind", "valve"), ("name", "snap-in, short"), ("onHand", "12"))).Text.ShouldContain("First choose who enters");
        await _bay.EnterAsAsync("D1");
        var form = new[] { ("id", $"{Guid.NewGuid():D}"), ("kind", "valve"), ("name", "snap-in, <short>"), ("unit", "piece"), ("onHand", "12"), ("level", "10") };
        for (var i = 0; i < 2; i++)
        {
            (await _bay.SendFormAsync("/stock", "/stock", form)).To.ShouldBe("/stock");
        }

        var item = _bay.Store.Stock.All().ShouldHaveSingleItem();
        (await _bay.SendFormAsync("/stock", "/stock", ("kind", "clip"), ("mass", "10 kPa"), ("onHand", "5"))).Text.ShouldContain("id=\"mass-problem\"");
        (await _bay.SendFormAsync("/stock", "/stock", ("kind", "clip"), ("mass", "10"), ("onHand", "many"))).Text.ShouldContain("id=\"onHand-problem\"");
        (await _bay.GetAsync("/")).Text.ShouldNotContain("To order: ");

        var visit = Visit(("work.stock.0.kind", "valve"), ("work.stock.0.item", "snap-in, <short>"), ("work.stock.0.count", "3"), ("work.stock.1.kind", "other"), ("work.stock.1.item", "hub ring"));
        var (_, page) = await _bay.GetAsync("/stock");
        page.ShouldContain("9 left, to be ordered at 10");
        page.ShouldContain("1 × hub ring");
        page.ShouldNotContain("<short>");
        (await _bay.GetAsync("/")).Text.ShouldContain("To order: valve: snap-in, &lt;short&gt;");
        (await _bay.JsonAsync($"/api/v1/visits/{visit:D}")).Body["stock"]![0]!["item"]!.GetValue<string>().ShouldBe("snap-in, <short>");

        (await _bay.SendFormAsync("/stock", $"/stock/{item.Id:D}", ("form", "receive"), ("id", $"{Guid.NewGuid():D}"), ("count", "20"))).To.ShouldBe("/stock");
        (await _bay.SendFormAsync("/stock", $"/stock/{item.Id:D}", ("form", "level"), ("count", ""))).To.ShouldBe("/stock");
        _bay.Store.Stock.All().ShouldHaveSingleItem().ShouldSatisfyAllConditions(i => i.OnHand.ShouldBe(29), i => i.ReorderLevel.ShouldBeNull());
        (await _bay.SendFormAsync("/stock", $"/stock/{item.Id:D}", ("form", "count"), ("count", "x"))).Text.ShouldContain("is not a whole number");
    }

    [Fact]
    public async Task Scrap_is_a_table_month_by_month_with_its_total()
    {
        var visit = Visit(("date", "2026-03-14"), ("work.scrap.tyres.0.tin", "1AB CDEFHJ 2220"), ("work.scrap.tyres.0.words", "=SUM(1), \"front\""), ("work.scrap.leadWeights", "85 g"), ("work.scrap.note", "WN 0031"));
        var number = _bay.Store.Visits.Find(visit)!.Heading.Number;
        var (_, csv) = await _bay.GetAsync("/scrap.csv?month=2026-03");
        csv.Split("\r\n").ShouldBe([
            "month,date,visit,what,tin,words,tyres,lead_g,note",
            $"2026-03,2026-03-14,{number},tyre,1AB CDEFHJ 2220,\"'=SUM(1), \"\"front\"\"\",1,,WN 0031",
            $"2026-03,2026-03-14,{number},lead weights,,,,85,WN 0031",
            "2026-03,,,total,,,1,85,",
            "",
        ]);
        (await _bay.GetAsync("/scrap.csv?month=2026-02")).Text.Trim().ShouldBe("month,date,visit,what,tin,words,tyres,lead_g,note");
        (await _bay.GetAsync("/scrap")).Text.ShouldContain("1 tyre, 85 g of lead weights");
    }

    [Fact]
    public async Task Incidents_are_listed_newest_first_and_only_who_answers_for_trainees_sees_who_recorded_them()
    {
        Visit(("work.incidents.0.kind", "near miss"), ("work.incidents.0.where", "Refit"));
        _clock.Now = _clock.Now.AddHours(1);
        Visit(("work.incidents.0.kind", "incident"), ("work.incidents.0.words", "a jack sank, nobody under it"), ("work.incidents.1.kind", "near miss"), ("work.incidents.2.kind", ""));
        await _bay.EnterAsAsync("T1");
        var (_, plain) = await _bay.GetAsync("/incidents");
        plain.IndexOf("a jack sank, nobody under it", StringComparison.Ordinal).ShouldBeInRange(1, plain.IndexOf("<td>Refit</td>", StringComparison.Ordinal));
        plain.Split("nobody has said yet what happened").Length.ShouldBe(3);
        plain.ShouldNotContain("Recorded by");
        await _bay.EnterAsAsync("I2");
        (await _bay.GetAsync("/incidents")).Text.ShouldContain("<td>T1, technician</td>");
    }

    [Fact]
    public async Task Whom_to_call_is_shown_in_the_office_and_can_be_erased_from_every_entry()
    {
        await _bay.EnterAsAsync("D1");
        var visit = Visit(("work.contact", "the driver, 0000 070 031"));
        _clock.Now = _clock.Now.AddMinutes(1);
        _bay.Store.Visits.Append(visit, [new Entry(Guid.NewGuid(), "work.contact", "the driver, 0000 070 032", "T1", Role.Technician, _clock.Now)], _clock.Now);
        (await _bay.GetAsync($"/visits/{visit:D}")).Text.ShouldContain("0000 070 031");
        (await _bay.SendFormAsync($"/visits/{visit:D}", $"/visits/{visit:D}/erase", ("what", "contact"))).To.ShouldBe($"/visits/{visit:D}");
        var (_, page) = await _bay.GetAsync($"/visits/{visit:D}");
        page.ShouldNotContain("0000 070");
        page.ShouldContain("erased for good");
        page.ShouldNotContain("Erase whom to call");
    }

    [Fact]
    public async Task A_photograph_can_be_erased_and_that_it_is_not_here_is_said()
    {
        var photo = Guid.NewGuid();
        var visit = Visit(("arrival.damage.0.place", "rear bumper"), ("arrival.damage.0.photos.0", $"{photo:D}"));
        _bay.Store.Photos.Add(visit, photo, Png, "T1", _clock.Now).IsRead.ShouldBeTrue();
        await _bay.EnterAsAsync("T4");
        (await _bay.SendFormAsync($"/visits/{visit:D}", $"/visits/{visit:D}/erase", ("photo", $"{photo:D}"))).Text.ShouldContain("A trainee may not erase it");
        await _bay.EnterAsAsync("D1");
        (await _bay.SendFormAsync($"/visits/{visit:D}", $"/visits/{visit:D}/erase", ("photo", $"{photo:D}"))).Status.ShouldBe(HttpStatusCode.Redirect);
        (await _bay.GetAsync($"/api/v1/visits/{visit:D}/photos/{photo:D}")).Status.ShouldBe(HttpStatusCode.NotFound);
        (await _bay.GetAsync($"/visits/{visit:D}")).Text.ShouldContain("One photograph is not here yet: still on a device, or erased");
    }
}
