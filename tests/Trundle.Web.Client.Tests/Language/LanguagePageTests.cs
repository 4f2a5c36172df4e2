using System.Text.RegularExpressions;
using AngleSharp.Dom;
using Bunit;
using Microsoft.AspNetCore.Components;
using Trundle.Tests;
using Trundle.Visits.Bay;
using Trundle.Web.Client.Glass;
using Trundle.Web.Client.Tests.Tools;
using Trundle.Words;

namespace Trundle.Web.Client.Tests.Language;

/// <summary>The bay's pages in their reader's texts.</summary>
public sealed partial class LanguagePageTests : ToolContext
{
    public static TheoryData<Leg, string?, string?> Places => new()
    {
        { Leg.Arrive, null, null }, { Leg.LookOver, null, null }, { Leg.LookOver, "1L", null }, { Leg.LookOver, "2R", null }, { Leg.Plan, null, null }, { Leg.OffTheCar, null, null },
        { Leg.OffTheCar, "1L", null }, { Leg.OffTheCar, "vehicle", null }, { Leg.OffTheCar, "seen", null }, { Leg.OffTheCar, "used", null }, { Leg.Refit, null, null }, { Leg.Refit, "1L", null },
        { Leg.Prove, null, null }, { Leg.HandBack, null, null },
    };

    public static TheoryData<string, string?> Tools => new()
    {
        { "leak", "leak-slow-valve.json" }, { "runout", "runout-twelve-places.json" }, { "match", "match-one-tyre.json" }, { "trial", "balance-trial-worked.json" },
        { "calibrate", "balance-calibrate-worked.json" }, { "why", "balance-why-worked.json" }, { "replace", "replace-teal-hatchback.json" }, { "balancer", null }, { "capture", null },
    };

    [Theory, MemberData(nameof(Places))]
    public void A_leg_comes_from_the_list_of_texts(Leg leg, string? place, string? step)
    {
        Reader.Asks(PseudoLocale.Texts);
        BeforeTheWork(Role.Technician);
        var page = Page(leg, place, step);
        page.WaitForAssertion(() => page.FindAll("nav").ShouldNotBeEmpty());
        NothingLeft(page, Sample.Fields().Select(f => f.Typed), $"{leg} {place}");
    }

    [Theory, MemberData(nameof(Tools))]
    public void A_tool_comes_from_the_list_of_texts(string key, string? sample)
    {
        Reader.Asks(PseudoLocale.Texts);
        var page = sample is null ? Tool(key) : Tool(key, sample);
        page.WaitForAssertion(() => page.FindAll("h1").ShouldNotBeEmpty());
        NothingLeft(page, sample is null ? [] : Fields(sample).Select(f => f.Typed), key);
    }

    [Theory, MemberData(nameof(Places))]
    public void A_leg_has_no_british_word_for_an_american_reader(Leg leg, string? place, string? step)
    {
        Reader.Asks(American);
        BeforeTheWork(Role.Technician);
        var page = Page(leg, place, step);
        page.WaitForAssertion(() => page.FindAll("nav").ShouldNotBeEmpty());
        NoBritish(page);
    }

    [Theory, MemberData(nameof(Tools))]
    public void A_tool_has_no_british_word_for_an_american_reader(string key, string? sample)
    {
        Reader.Asks(American);
        var page = sample is null ? Tool(key) : Tool(key, sample);
        page.WaitForAssertion(() => page.FindAll("h1").ShouldNotBeEmpty());
        NoBritish(page);
    }

    [Fact]
    public void A_text_that_is_in_no_list_is_found_on_a_page()
    {
        Reader.Asks(PseudoLocale.Texts);
        var page = Render<Planted>();
        page.Markup.ShouldContain("⟦");
        Texts(page).Where(t => PseudoLocale.Left(t, new HashSet<string>()).Any()).ShouldBe(["Somebody planted this here", "and this beside it"], ignoreOrder: true);
    }

    [Fact]
    public async Task What_a_page_does_is_the_same_behind_the_glass()
    {
        Reader.Asks(PseudoLocale.Texts);
        var page = Render<Planted>();
        await page.Find("button").ClickAsync(new());
        page.Find("button").TextContent.ShouldContain("1");
        await page.Find("input").ChangeAsync(new ChangeEventArgs { Value = "the tyre" });
        page.Find("input").GetAttribute("value").ShouldBe("the tyre");
        page.Find("output").TextContent.ShouldBe("the tyre");
        page.Find("option").GetAttribute("value").ShouldBe("Next step");
        page.Instance.Element.Id.ShouldNotBeNull();
    }

    private static readonly Texts American = ReadAmerican();

    private static Texts ReadAmerican()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            var folder = Path.Combine(at.FullName, "src", "Trundle.Words", "texts");
            if (Directory.Exists(folder))
            {
                return Locales.Read("en-US", Locales.Merged(File.ReadAllBytes(Path.Combine(folder, "en-GB.json")), File.ReadAllBytes(Path.Combine(folder, "en-US.json"))));
            }
        }

        throw new InvalidOperationException("The texts were not found above the test.");
    }

    private static void NoBritish(IRenderedComponent<IComponent> page)
    {
        var british = Texts(page).Where(t => British().IsMatch(t)).Distinct().ToList();
        british.Count.ShouldBeLessThanOrEqualTo(0, string.Join('\n', british));
    }

    private static void NothingLeft(IRenderedComponent<IComponent> page, IEnumerable<string> typed, string where)
    {
        var data = PseudoLocale.WordsOf(typed);
        var texts = Texts(page).ToList();
        texts.Count.ShouldBeGreaterThan(10, where);
        var left = texts.Where(t => PseudoLocale.Left(t, data).Any()).Distinct().ToList();
        left.Count.ShouldBeLessThanOrEqualTo(MostLeft, string.Join('\n', left));
    }

    // What is left on a page is put together from words in a way that no form tells, such as "7 in is entered"; it may grow less, and not more.
    private const int MostLeft = 9;

    private static IEnumerable<string> Texts(IRenderedComponent<IComponent> page)
    {
        var texts = new List<string>();
        Markup.Change(page.Markup, t =>
        {
            texts.Add(Blanks.Single(t));
            return t;
        }, Words.Texts.Source);
        return texts.Where(t => t.Length > 0);
    }

    [GeneratedRegex(@"(?<![\w./])(?:tyres?|kerb|centre[sd]?|colour|metres?|millimetres?|kilometres?|mould|anticlockwise)\b", RegexOptions.IgnoreCase)]
    private static partial Regex British();
}
