using System.Text.RegularExpressions;

namespace Trundle.Rules.Tests.Texts;

/// <summary>The list of every text, and the other locale's, held against the sources. With TRUNDLE_WRITE_DOCS=1 they are written anew; then read what is new.</summary>
public sealed partial class TextListTests
{
    private static readonly bool Anew = Environment.GetEnvironmentVariable("TRUNDLE_WRITE_DOCS") == "1";

    [Fact]
    public void The_list_has_every_text_of_the_sources_and_no_other()
    {
        var forms = TextsOfSource.All();
        if (Anew)
        {
            File.WriteAllText(TextFile.PathOf("en-GB"), TextFile.Written(forms.Select(f => KeyValuePair.Create(f, ""))));
        }

        var listed = TextFile.Read("en-GB").Keys.ToHashSet(StringComparer.Ordinal);
        None(forms.Where(f => !listed.Contains(f)));
        None(listed.Except(forms, StringComparer.Ordinal));
        listed.Count.ShouldBeGreaterThan(4000);
    }

    [Fact]
    public void The_american_texts_are_those_that_differ_and_none_keeps_a_british_word()
    {
        var forms = TextsOfSource.All();
        var said = TextFile.Read("en-US");
        if (Anew)
        {
            var kept = said;
            said = new(forms.Select(f => (Form: f, Said: kept.TryGetValue(f, out var own) && AmericanWords.British(own).Count == 0 ? own : AmericanWords.Of(f)))
                .Where(f => f.Said != f.Form).ToDictionary(f => f.Form, f => f.Said, StringComparer.Ordinal), StringComparer.Ordinal);
            File.WriteAllText(TextFile.PathOf("en-US"), TextFile.Written(said));
        }

        None(said.Keys.Except(forms, StringComparer.Ordinal));
        None(forms.Where(f => AmericanWords.British(f).Count > 0 && !said.ContainsKey(f)));
        said.Values.SelectMany(AmericanWords.British).ShouldBeEmpty();
        foreach (var (form, text) in said)
        {
            Holes(text).ShouldBe(Holes(form), form);
        }
    }

    [Fact]
    public void No_british_text_has_an_american_spelling()
    {
        TextsOfSource.All().SelectMany(f => AmericanWords.American(f).Select(w => $"{w}: {f}")).ShouldBeEmpty();
    }

    [Theory]
    [InlineData("""var a = $"Set to {x} before driving";""", "Set to {0} before driving")]
    [InlineData("""var a = "The tyre " + name + " is worn.";""", "The tyre {0} is worn.")]
    [InlineData("""__builder.AddMarkupContent(1, "<p class=\"lead\">Fit the tyre.</p>");""", "Fit the tyre.")]
    [InlineData("""__builder.AddAttribute(2, "aria-label", "Next step");""", "Next step")]
    [InlineData("""var a = $"<text x=\"{x}\" y=\"{y}\">Tread {n}</text>";""", "Tread {0}")]
    public void A_text_is_found_in_code(string code, string form)
    {
        var found = new HashSet<string>(StringComparer.Ordinal);
        TextsOfSource.OfCode(code, found);
        found.ShouldBe([form]);
    }

    private static void None(IEnumerable<string> texts)
    {
        var all = texts.ToList();
        all.ShouldBeEmpty($"Run this test with TRUNDLE_WRITE_DOCS=1 to write the list anew, and read what is new:\n{string.Join('\n', all.Take(20))}");
    }

    private static IReadOnlyList<string> Holes(string form) => [.. Hole().Matches(form).Select(m => m.Value).Order(StringComparer.Ordinal)];

    [GeneratedRegex(@"\{\d+\}")]
    private static partial Regex Hole();
}
