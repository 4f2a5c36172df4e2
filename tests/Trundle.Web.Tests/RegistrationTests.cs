using System.Net;
using Trundle.Visits.Bay;
using Trundle.Visits.Keeping;

namespace Trundle.Web.Tests;

/// <summary>Tyres sold and registered, from the workshop's own word that it does so to the purchaser's name taken out.</summary>
public sealed class RegistrationTests : IAsyncLifetime
{
    private readonly StandingClock _clock = new(new DateTimeOffset(2026, 3, 14, 9, 0, 0, TimeSpan.Zero));
    private RunningBay _bay = null!;

    public async ValueTask InitializeAsync() => _bay = await RunningBay.StartAsync(_clock);

    public ValueTask DisposeAsync() => _bay.DisposeAsync();

    private static (string, string)[] Address(string at, string name) => [($"{at}.name", name), ($"{at}.street", "1 Demo Road"), ($"{at}.city", "Demoville"), ($"{at}.state", "ZZ"), ($"{at}.postcode", "00001")];

    private async Task DeclareAsync()
    {
        await _bay.EnterAsAsync("I2");
        var (status, text, _) = await _bay.SendFormAsync("/registrations", "/registrations/seller", [("form", "seller"), .. Address("party", "Invented Tyre Shop"), ("kind", "independent")]);
        status.ShouldBe(HttpStatusCode.Redirect, text);
        await _bay.EnterAsAsync("D1");
    }

    private async Task<Guid> SellAsync(params (string, string)[] tyres)
    {
        var id = Guid.NewGuid();
        var (status, text, to) = await _bay.SendFormAsync("/registrations", "/registrations", [("form", "sold"), ("id", $"{id:D}"), ("on", "2026-03-12"), .. Address("purchaser", "Pat <Invented>"), .. tyres]);
        status.ShouldBe(HttpStatusCode.Redirect, text);
        to.ShouldBe($"/registrations/{id:D}");
        return id;
    }

    [Fact]
    public async Task Until_the_workshop_says_so_the_page_is_empty_and_says_why()
    {
        var (_, page) = await _bay.GetAsync("/registrations");
        page.ShouldContain("has not said that it registers");
        page.ShouldNotContain("Purchaser’s name");
        await _bay.EnterAsAsync("D1");
        var (status, refused, _) = await _bay.SendFormAsync("/registrations", "/registrations/seller", [("form", "seller"), .. Address("party", "Shop"), ("kind", "independent")]);
        status.ShouldBe(HttpStatusCode.BadRequest);
        refused.ShouldContain("An instructor or the owner says");
        await DeclareAsync();
        var (_, open) = await _bay.GetAsync("/registrations");
        open.ShouldContain("Purchaser");
        open.ShouldContain("at least every 30 days (49 CFR 574.8(a)(1) (from memory");
    }

    [Fact]
    public async Task A_sale_stands_in_the_list_the_csv_and_the_form_until_it_was_given_or_sent()
    {
        await DeclareAsync();
        var id = await SellAsync(("tyres[0].tin", "1AB CDEFHJ 0226"), ("tyres[0].maker", "invented"), ("tyres[2].tin", "1AB CDEFHJ 0226"));
        _bay.Store.Registrations.Find(id)!.Sale.Tyres.Count.ShouldBe(2);
        var (_, list) = await _bay.GetAsync("/registrations");
        list.ShouldContain("Pat &lt;Invented&gt;");
        list.ShouldContain("11 Apr 2026");
        (await _bay.GetAsync("/registrations.csv")).Text.Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Length.ShouldBe(3);
        using (var form = await _bay.Client.GetAsync(new Uri($"/registrations/{id}/form.pdf?paper=letter", UriKind.Relative)))
        {
            form.Content.Headers.ContentType!.MediaType.ShouldBe("application/pdf");
        }

        (await _bay.SendFormAsync($"/registrations/{id}", $"/registrations/{id}", ("form", "done"), ("id", $"{Guid.NewGuid():D}"), ("on", "2026-03-14"), ("way", RegistrationRecords.Electronic))).Status.ShouldBe(HttpStatusCode.Redirect);
        (await _bay.GetAsync($"/registrations/{id}")).Text.ShouldContain("sent by electronic means, 14 Mar 2026, by D1");
        (await _bay.GetAsync("/registrations")).Text.ShouldNotContain("11 Apr 2026");
    }

    [Fact]
    public async Task A_partial_number_is_said_at_its_row_and_nothing_is_kept()
    {
        await DeclareAsync();
        var (status, text, _) = await _bay.SendFormAsync("/registrations", "/registrations", [("form", "sold"), ("id", $"{Guid.NewGuid():D}"), ("on", "2026-03-12"), .. Address("purchaser", "Pat"), ("tyres[1].tin", "1AB CDEFHJ 0226"), ("tyres[3].tin", "1AB CDEFHJ")]);
        status.ShouldBe(HttpStatusCode.BadRequest);
        text.ShouldContain("only a part of a TIN");
        var row = text[text.IndexOf("name=\"tyres[3].tin\"", StringComparison.Ordinal)..text.IndexOf("name=\"tyres[3].maker\"", StringComparison.Ordinal)];
        row.ShouldContain("only a part of a TIN");
        _bay.Store.Registrations.All().ShouldBeEmpty();
        var (_, nameless, _) = await _bay.SendFormAsync("/registrations", "/registrations", ("form", "sold"), ("id", $"{Guid.NewGuid():D}"), ("on", "2026-03-12"), ("tyres[0].tin", "1AB CDEFHJ 0226"));
        nameless.ShouldContain("the registration is theirs");
    }

    [Fact]
    public async Task New_tyres_of_a_visit_stand_in_the_form()
    {
        await DeclareAsync();
        var visit = Guid.NewGuid();
        _bay.Store.Visits.Open(visit, "T1", _clock.Now, new DateOnly(2026, 3, 14));
        _bay.Store.Visits.Append(visit, [.. new[] { ("work.renewed.1L.tyre.tin", "1AB CDEFHJ 0326"), ("work.renewed.1L.tyre.marking", "195/65 R15 91H") }.Select(f => new Entry(Guid.NewGuid(), f.Item1, f.Item2, "T1", Role.Technician, _clock.Now))], _clock.Now).Value.Refused.ShouldBeEmpty();
        (await _bay.GetAsync($"/visits/{visit}")).Text.ShouldContain($"/registrations?visit={visit:D}");
        var (_, form) = await _bay.GetAsync($"/registrations?visit={visit}");
        form.ShouldContain("value=\"1AB CDEFHJ 0326\"");
        form.ShouldContain("value=\"195/65 R15 91H\"");
    }

    [Fact]
    public async Task The_purchaser_is_taken_out_by_an_instructor_once_the_form_was_given()
    {
        await DeclareAsync();
        var id = await SellAsync(("tyres[0].tin", "1AB CDEFHJ 0226"));
        (await _bay.GetAsync($"/registrations/{id}")).Text.ShouldNotContain("Take them out");
        await _bay.SendFormAsync($"/registrations/{id}", $"/registrations/{id}", ("form", "done"), ("id", $"{Guid.NewGuid():D}"), ("on", "2026-03-14"), ("way", RegistrationRecords.Given));
        (await _bay.SendFormAsync($"/registrations/{id}", $"/registrations/{id}/purchaser")).Text.ShouldContain("An instructor or the owner");
        await _bay.EnterAsAsync("I2");
        (await _bay.SendFormAsync($"/registrations/{id}", $"/registrations/{id}/purchaser")).Status.ShouldBe(HttpStatusCode.Redirect);
        var (_, page) = await _bay.GetAsync($"/registrations/{id}");
        page.ShouldContain("taken out of this record");
        page.ShouldNotContain("Invented&gt;");
        (await _bay.GetAsync("/recall?plant=1AB&code=&from=0226&to=0226")).Text.ShouldContain("1 tyre matches");
    }
}
