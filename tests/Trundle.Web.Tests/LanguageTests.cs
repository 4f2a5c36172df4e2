using System.Net;
using System.Text.RegularExpressions;
using Trundle.Sheets;
using Trundle.Store;
using Trundle.Tests;
using Trundle.Web.Demo;
using Trundle.Words;

namespace Trundle.Web.Tests;

/// <summary>The office in its reader's texts: every page, with an invented workshop in it.</summary>
public sealed partial class LanguageTests
{
    private static readonly StandingClock Clock = new(new DateTimeOffset(2026, 3, 14, 9, 0, 0, TimeSpan.Zero));

    private static readonly string[] Pages =
    [
        "/", "/arrive", "/fleet", "/search", "/search?q=demo", "/history", "/re-torque", "/condemned", "/sets", "/sets/new", "/registrations", "/recall", "/instruments", "/stock", "/scrap",
        "/incidents", "/procedures", "/people", "/people/rights", "/sources",
    ];

    private static Task<RunningBay> StartAsync(Func<BayOptions, BayOptions>? with = null) => RunningBay.StartAsync(Clock, with: with, fill: store => DemoWorkshop.Fill(store, Clock));

    [Fact]
    public async Task No_page_has_a_british_word_for_an_american_reader()
    {
        await using var bay = await StartAsync();
        bay.Client.DefaultRequestHeaders.Add("Accept-Language", "en-US,en;q=0.9");
        var british = new List<string>();
        foreach (var page in await AllAsync(bay))
        {
            var (status, html) = await bay.GetAsync(page);
            status.ShouldBe(HttpStatusCode.OK, page);
            html.ShouldContain("<html lang=\"en-US\">", Case.Sensitive, page);
            british.AddRange(Texts(html).Where(t => British().IsMatch(t)).Select(t => $"{page}: {t}"));
        }

        british.Distinct().Count().ShouldBeLessThanOrEqualTo(0, string.Join("\n", british));
    }

    [Fact]
    public async Task Nearly_every_text_of_every_page_comes_from_the_list()
    {
        await using var bay = await StartAsync(o => o with { TextsOf = _ => PseudoLocale.Texts });
        var data = PseudoLocale.WordsOf(bay.Store.Visits.InTheWorkshop().SelectMany(v => v.Fields.Newest.Select(e => e.Typed)).Concat(bay.Store.People.All().Select(p => p.Name)));
        var left = new List<string>();
        foreach (var page in await AllAsync(bay))
        {
            var (_, html) = await bay.GetAsync(page);
            Texts(html).Count().ShouldBeGreaterThan(10, page);
            left.AddRange(Texts(html).Where(t => PseudoLocale.Left(t, data).Any()).Select(t => $"{page}: {t}"));
        }

        
        // What is left is put together from words in a way that no form tells; it may grow less, and not more.
        var distinct = left.Select(l => l.Split(": ", 2)[1]).Distinct().ToList();
        distinct.Count.ShouldBeLessThanOrEqualTo(8, string.Join("\n", distinct));
    }

    [Fact]
    public void A_text_that_is_in_no_list_is_found()
    {
        var html = Markup.Change("<p>Next step</p><p title=\"Somebody planted this here\">1</p>", PseudoLocale.Texts.Say, "qps-ploc");
        Texts(html).Where(t => PseudoLocale.Left(t, new HashSet<string>()).Any()).ShouldBe(["Somebody planted this here"]);
    }

    [Fact]
    public async Task The_person_chooses_else_the_browser_asks_else_the_workshop_says()
    {
        await using var bay = await StartAsync(o => o with { Locale = "en-US" });
        (await bay.GetAsync("/people")).Text.ShouldContain("lang=\"en-US\"");
        bay.Client.DefaultRequestHeaders.Add("Accept-Language", "en-GB");
        (await bay.GetAsync("/people")).Text.ShouldContain("lang=\"en-GB\"");
        await bay.EnterAsAsync("T2");
        (await bay.SendFormAsync("/people", "/people/units", ("pressure", "psi"), ("depth", "32nds"), ("torque", "lbf·ft"), ("mass", "oz"), ("texts", "en-US"))).Status.ShouldBe(HttpStatusCode.Redirect);
        (await bay.GetAsync("/people")).Text.ShouldContain("lang=\"en-US\"");
        bay.Store.People.All().Single(p => p.Name == "T2").Habits.Pressure.ShouldBe("psi");
        await bay.EnterAsAsync("T4");
        (await bay.GetAsync("/people")).Text.ShouldContain("lang=\"en-GB\"", Case.Sensitive, "what one person chose is not another's");
        (await bay.GetAsync("/bay/tools")).Text.ShouldContain("lang=\"en-GB\"");
    }

    [Fact]
    public async Task What_somebody_typed_stays_as_typed_for_every_reader()
    {
        await using var bay = await RunningBay.StartAsync(Clock);
        await bay.EnterAsAsync("D1");
        var visit = Guid.NewGuid();
        // The one word is a text of the program as well, and the sentence has its form.
        (await bay.SendFormAsync("/arrive", "/arrive", ("visit", $"{visit:D}"), ("vehicle.name", "Tyre"), ("vehicle.complaint", "Replace this tyre before hand-back."))).Status.ShouldBe(HttpStatusCode.Redirect);
        bay.Client.DefaultRequestHeaders.Add("Accept-Language", "en-US");
        (await bay.GetAsync("/")).Text.ShouldContain(">Tyre<");
        var page = (await bay.GetAsync($"/visits/{visit:D}")).Text;
        page.ShouldContain(">Replace this tyre before hand-back.<");
        Texts(page).Where(t => t.Contains("this tire", StringComparison.Ordinal)).ShouldBeEmpty();
        bay.Store.Visits.Find(visit)!.Fields["vehicle.name"].ShouldBe("Tyre");
    }

    [Fact]
    public async Task A_page_that_is_not_there_says_so_to_its_reader_and_the_interface_stays_as_it_is()
    {
        await using var bay = await RunningBay.StartAsync(Clock, with: o => o with { TextsOf = _ => PseudoLocale.Texts });
        (await bay.GetAsync("/nowhere")).Text.ShouldContain("⟦");
        (await bay.GetAsync("/api/v1/visits")).Text.ShouldNotContain("⟦");
        var (_, wrong) = await bay.PostAsync("/api/v1/sidewall", "{}");
        wrong.ToJsonString().ShouldNotContain("\u27E6");
    }

    [Fact]
    public async Task The_bay_fetches_one_locale_and_not_much_of_it()
    {
        await using var bay = await StartAsync();
        var (status, text) = await bay.GetAsync("/texts/en-US.json");
        status.ShouldBe(HttpStatusCode.OK);
        var texts = Locales.Read("en-US", System.Text.Encoding.UTF8.GetBytes(text));
        texts.Say("Fit the tyre.").ShouldBe(SheetLocale.Of("en-US").Say("Fit the tyre."));
        text.Length.ShouldBeLessThan(400_000);
        (await bay.GetAsync("/texts/xx.json")).Status.ShouldBe(HttpStatusCode.NotFound);
        (await bay.GetAsync("/texts/..%2fen-US.json")).Status.ShouldBe(HttpStatusCode.NotFound);
    }

    private static async Task<IReadOnlyList<string>> AllAsync(RunningBay bay)
    {
        await bay.EnterAsAsync("T2");
        var visit = bay.Store.Visits.InTheWorkshop()[0].Heading.Id;
        return [.. Pages, $"/visits/{visit:D}"];
    }

    private static IEnumerable<string> Texts(string html)
    {
        var texts = new List<string>();
        Markup.Change(html, t =>
        {
            texts.Add(t.Trim());
            return t;
        }, Words.Texts.Source);
        return texts.Where(t => t.Length > 0);
    }

    [GeneratedRegex(@"(?<![\w./])(?:tyres?|kerb|centre[sd]?|colour|metres?|millimetres?|kilometres?|mould|anticlockwise)\b", RegexOptions.IgnoreCase)]
    private static partial Regex British();
}
