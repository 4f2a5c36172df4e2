using System.Text;
using Trundle.Tests;

namespace Trundle.Words.Tests;

public sealed class TextsTests
{
    private static readonly Dictionary<string, string> American = new(StringComparer.Ordinal)
    {
        ["The tyre is worn."] = "The tire is worn.",
        ["{0}: no tyre maker names {1}"] = "{0}: {1} is named by no tire maker",
        ["tyre at {0}"] = "tire at {0}",
        ["tyre"] = "tire",
        ["Set to {0} before driving"] = "",
        ["is {0}, set {1}"] = "",
        ["{0} is worn."] = "",
    };

    private static readonly Texts There = Locales.Read("en-US", Encoding.UTF8.GetBytes(System.Text.Json.JsonSerializer.Serialize(American)));

    [Theory]
    [InlineData("The tyre is worn.", "The tire is worn.")]
    [InlineData("  The tyre\n    is worn. ", "  The tire is worn. ")]
    [InlineData("the tyre is worn.", "the tire is worn.")]
    [InlineData("Tyre", "Tire")]
    [InlineData("front left: no tyre maker names 230 kPa", "front left: 230 kPa is named by no tire maker")]
    [InlineData("Set to 230 kPa before driving", "Set to 230 kPa before driving")]
    [InlineData("tyre at front left is worn.", "tire at front left is worn.")]
    [InlineData("The tyre is worn. Set to 2 bar before driving", "The tire is worn. Set to 2 bar before driving")]
    [InlineData("front; tyre at rear; spare", "front; tire at rear; spare")]
    [InlineData("230 kPa", "230 kPa")]
    [InlineData("", "")]
    public void A_sentence_is_found_by_its_form_and_so_is_what_stands_in_its_holes(string written, string said) => There.Say(written).ShouldBe(said);

    [Theory]
    [InlineData("My tyre hums on the A9")]
    [InlineData("Set to the tyre that hums before driving")]
    [InlineData("Tyreman and daughters")]
    public void What_people_typed_stays_as_typed(string typed) => There.Say(typed).ShouldBe(typed);

    [Fact]
    public void What_is_known_to_be_typed_stays_even_where_the_program_has_the_same_words()
    {
        var kept = There.Keeping(["The tyre is worn.", "tyre"]);
        kept.Say("The tyre is worn.").ShouldBe("The tyre is worn.");
        kept.Say("tyre at The tyre is worn.").ShouldBe("tire at The tyre is worn.");
        There.Say("The tyre is worn.").ShouldBe("The tire is worn.");
        Texts.British.Keeping(["x"]).ShouldBeSameAs(Texts.British);
    }

    [Theory]
    [InlineData("28 Nov 2026", "Nov 28, 2026")]
    [InlineData("1 Mar 2026 09:05", "Mar 1, 2026 09:05")]
    [InlineData("Sat 28 Nov", "Sat, Nov 28")]
    [InlineData("28 Nov 14:05:09", "Nov 28 14:05:09")]
    [InlineData("2026-11-28", "2026-11-28")]
    [InlineData("Set to 28 Nov 2026 before driving", "Set to Nov 28, 2026 before driving")]
    public void A_date_is_written_as_its_reader_writes_it(string here, string there) => There.Say(here).ShouldBe(there);

    [Theory]
    [InlineData("<p class=\"tyre\">The tyre is worn.</p>", "<p class=\"tyre\">The tire is worn.</p>")]
    [InlineData("<a title=\"tyre\" href=\"/tyre\">tyre</a>", "<a title=\"tire\" href=\"/tyre\">tire</a>")]
    [InlineData("<html lang=\"en-GB\"><b aria-label=\"a > b\">tyre</b>", "<html lang=\"en-US\"><b aria-label=\"a > b\">tire</b>")]
    [InlineData("<textarea>tyre</textarea><p translate=\"no\">tyre</p><i>tyre</i>", "<textarea>tyre</textarea><p translate=\"no\">tyre</p><i>tire</i>")]
    [InlineData("<p>a &amp; b &lt; c: tyre</p>", "<p>a &amp; b &lt; c: tire</p>")]
    public void Markup_keeps_all_but_its_texts(string markup, string said) => Markup.Change(markup, There.Say, "en-US").ShouldBe(said);

    [Theory]
    [InlineData("en-US,en;q=0.9", "en-US")]
    [InlineData("de, en-GB;q=0.8, en-US;q=0.9", "en-US")]
    [InlineData("en-us;q=0, en-gb;q=0.1", "en-GB")]
    [InlineData("de", null)]
    [InlineData("en", null)]
    [InlineData(";;,q=", null)]
    [InlineData(null, null)]
    public void The_browser_asks_in_its_order(string? header, string? locale) => Locales.Asked(header).ShouldBe(locale);

    [Fact]
    public void As_written_nothing_is_looked_up_and_the_same_text_comes_back()
    {
        var text = "The tyre " + "is worn.";
        Texts.British.Say(text).ShouldBeSameAs(text);
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 1000; i++)
        {
            Texts.British.Say(text);
        }

        (GC.GetAllocatedBytesForCurrentThread() - before).ShouldBe(0);
    }

    [Fact]
    public void A_text_said_before_costs_nothing_anew()
    {
        var text = "front left: no tyre maker names 230 kPa";
        There.Say(text).ShouldBeSameAs(There.Say(text));
    }

    [Fact]
    public void Every_form_says_itself_in_the_language_that_nobody_speaks()
    {
        // Each form of the program is found again by itself, whatever stands in its holes; another that fits as well may be taken.
        var lost = PseudoLocale.Forms.Where(f => !f.Contains('{', StringComparison.Ordinal)).Where(f => PseudoLocale.Texts.Say(f) == f).ToList();
        lost.ShouldBeEmpty();
        PseudoLocale.Left(PseudoLocale.Texts.Say("This sentence was never written down."), new HashSet<string>()).ShouldNotBeEmpty();
    }

    [Fact]
    public void A_merged_file_has_what_differs_and_what_has_holes()
    {
        var merged = Locales.Forms(Locales.Merged("""{"a tyre":"","a wheel":"","at {0}":""}"""u8.ToArray(), """{"a tyre":"a tire"}"""u8.ToArray()));
        merged.ShouldBe(["a tyre", "at {0}"]);
    }
}
