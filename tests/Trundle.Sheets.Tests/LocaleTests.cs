using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Trundle.Sheets;
using Trundle.Tests;
using Trundle.Words;
using UglyToad.PdfPig;

namespace Trundle.Sheets.Tests;

/// <summary>Paper in the reader's texts.</summary>
public sealed partial class LocaleTests
{
    public static TheoryData<string, SheetReader> Sheets => new()
    {
        { "hatchback", SheetReader.Customer }, { "hatchback", SheetReader.File }, { "finished", SheetReader.Customer }, { "finished", SheetReader.File },
        { "lorry", SheetReader.Customer }, { "lorry", SheetReader.File }, { "saloon", SheetReader.Customer }, { "saloon", SheetReader.File },
    };

    [Theory, MemberData(nameof(Sheets))]
    public void No_british_word_is_left_for_an_american_reader(string name, SheetReader reader)
    {
        var visit = Visit(name);
        var american = Read(TestVisits.Write(visit, new SheetOrder(reader, PaperSize.Letter) { Texts = SheetLocale.Of("en-US") }).Pdf);
        var typed = Typed(visit).ToList();
        British().Matches(american).Select(m => m.Value).Where(w => !typed.Any(t => t.Contains(w, StringComparison.OrdinalIgnoreCase))).ShouldBeEmpty(string.Join("\n", British().Matches(american).Select(m => american[Math.Max(0, m.Index - 80)..Math.Min(american.Length, m.Index + 80)])));
        american.ShouldContain("tire", Case.Insensitive);
        British().Matches(Read(TestVisits.Write(visit, reader).Pdf)).ShouldNotBeEmpty();
    }

    /// <summary>
    /// In the language that nobody speaks nearly all of a sheet is said. What is left plain is put together from words in a way that no form tells, such as
    /// "5 bolts"; it may grow less, and not more.
    /// </summary>
    [Theory, MemberData(nameof(Sheets))]
    public void What_is_on_the_paper_comes_from_the_texts_or_was_typed(string name, SheetReader reader)
    {
        var visit = Visit(name);
        var text = Read(TestVisits.Write(visit, new SheetOrder(reader, PaperSize.A4) { Texts = PseudoLocale.Texts }).Pdf);
        var left = PseudoLocale.Left(text, PseudoLocale.WordsOf(Typed(visit))).ToList();
        var said = text.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries).Count(w => w.Count(char.IsLetter) > 2);
        (100.0 * left.Count / said).ShouldBeLessThan(MostLeft, string.Join(' ', left.Distinct()));
        var written = Read(TestVisits.Write(visit, reader).Pdf);
        (100.0 * PseudoLocale.Left(written, PseudoLocale.WordsOf(Typed(visit))).Count() / said).ShouldBeGreaterThan(30);
    }

    private const double MostLeft = 5;

    [Fact]
    public void The_drivers_own_words_stay_on_an_american_sheet()
    {
        var visit = TestVisits.Finished();
        visit["vehicle"]!["complaint"] = "Replace this tyre before hand-back.";
        var sheet = TestVisits.Text(TestVisits.Write(visit, new SheetOrder(SheetReader.Customer, PaperSize.Letter) { Texts = SheetLocale.Of("en-US") }).Pdf);
        sheet.ShouldHold("You told us: Replace this tyre before hand-back.");
        sheet.ShouldHold("tire");
    }

    [Fact]
    public void The_paper_of_a_locale_is_that_of_its_printers()
    {
        SheetLocale.Paper("en-US").ShouldBe(PaperSize.Letter);
        SheetLocale.Paper("en-GB").ShouldBe(PaperSize.A4);
        SheetLocale.Of("xx").ShouldBeSameAs(Texts.British);
    }

    private static JsonObject Visit(string name) => name switch
    {
        "hatchback" => TestVisits.Hatchback(),
        "finished" => TestVisits.Finished(),
        "lorry" => TestVisits.Lorry(),
        _ => TestVisits.Saloon(),
    };

    private static IEnumerable<string> Typed(JsonNode? node) => node switch
    {
        JsonObject o => o.SelectMany(m => Typed(m.Value)),
        JsonArray a => a.SelectMany(Typed),
        JsonValue v when v.TryGetValue<string>(out var text) => [text],
        _ => [],
    };

    private static string Read(byte[] pdf)
    {
        using var document = PdfDocument.Open(pdf);
        return string.Join('\n', document.GetPages().Select(p => string.Join(' ', p.GetWords().Select(w => w.Text))));
    }

    [GeneratedRegex(@"(?<![\w.])(?:tyres?|kerb|centre[sd]?|colour|metres?|millimetres?|kilometres?|grey|mould|anticlockwise)\b", RegexOptions.IgnoreCase)]
    private static partial Regex British();
}
