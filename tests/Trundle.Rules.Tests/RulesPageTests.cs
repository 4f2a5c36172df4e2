using System.Text;
using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.InUse;
using Trundle.Engine.Vehicles;

namespace Trundle.Rules.Tests;

/// <summary>The page that lists every in-use rule with its source and status is made from the data, and is up to date.</summary>
public sealed class RulesPageTests
{
    private static readonly string File_ = Path.Combine(House.Root, "docs", "rules.md");

    private static readonly (RuleSet? Set, string Title)[] Sets =
    [
        (RuleSet.UnitedStates, "United States (`us`)"), (RuleSet.UnitedKingdom, "United Kingdom (`uk`)"),
        (RuleSet.EuropeanUnion, "European Union (`eu`)"), (null, "The trade (`trade`)"),
    ];

    [Fact]
    public void The_page_lists_every_rule()
    {
        var page = Page();
        if (Environment.GetEnvironmentVariable("TRUNDLE_WRITE_DOCS") == "1")
        {
            File.WriteAllText(File_, page);
        }

        File.ReadAllText(File_).ShouldBe(page, "Run this test with TRUNDLE_WRITE_DOCS=1 to write the page anew.");
        foreach (var name in InUseRules.List.Select(r => r.Id).Concat(MixingRules.List.Select(r => r.InUse.Id)).Concat(InUseLimits.List.Select(l => l.Id)))
        {
            page.ShouldContain($"`{name}`");
        }
    }

    /// <summary>What has no text was not read in any, at first or second hand: one status, on the page and in every answer.</summary>
    [Fact]
    public void Common_practice_is_from_memory_everywhere()
    {
        var sources = InUseRules.List.Select(r => (r.Id, r.Status, r.Document)).Concat(MixingRules.List.Select(r => (r.InUse.Id, r.InUse.Status, r.InUse.Document)))
            .Concat(InUseLimits.List.Select(l => (l.Id, l.Source.Status, l.Source.Text))).Where(s => s.Item3 == Source.CommonPracticeText).ToList();
        sources.Count.ShouldBeGreaterThan(80);
        sources.Where(s => s.Item2 != SourceStatus.FromMemory).Select(s => s.Item1).ShouldBeEmpty();
    }

    [Fact]
    public void Where_a_text_reads_two_ways_a_breach_is_for_a_person_to_decide()
    {
        var doubtful = InUseRules.List.Concat(MixingRules.List.Select(r => r.InUse)).Where(r => r.OtherReading is not null).ToList();
        doubtful.Count.ShouldBeGreaterThan(2);
        doubtful.Where(r => r.Category != Category.Refer || r.OtherReading == r.Text).Select(r => r.Id).ShouldBeEmpty();
    }

    private static string Page()
    {
        var text = new StringBuilder();
        text.Append("""
            # In-use rules

            Made from the data by a test; do not edit. Every rule by which what is fitted, and its condition, is judged: `in-use-rules.csv`,
            `in-use-limits.csv` and `construction-mix.csv`. A rule set's own rule wins; where it has none, the trade's stands. *From memory* means
            that nobody has checked it against the text, and every page, sheet and answer says so beside the limit. A workshop adds a stricter rule of its
            own, or puts one of these right by its name, in [a file](guide/workshop-rules.md).

            A category is common practice unless it is marked *by law*. *Common practice* as a status means a fact of the trade for which no text is held: it is from
            memory, and answers give it so.

            """);
        foreach (var (set, title) in Sets)
        {
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"\n## {title}\n\n### Rules\n\n| rule | says | vehicles, dates | a breach is | source | status |\n| --- | --- | --- | --- | --- | --- |\n");
            foreach (var rule in InUseRules.List.Concat(MixingRules.List.Select(r => r.InUse).DistinctBy(r => r.Id)).Where(r => r.Set == set).OrderBy(r => r.Rule, StringComparer.Ordinal))
            {
                var says = rule.OtherReading is null ? rule.Text : $"{rule.Text} *Another reading:* {rule.OtherReading}";
                var category = rule.Category == Category.None ? "told only" : rule.Category.Word();
                text.Append(System.Globalization.CultureInfo.InvariantCulture, $"| `{rule.Id}` | {Cell(says)} | {Cell(Join(string.Join(", ", rule.Classes), rule.Dates.ToString()))} | {category}{(rule.CategoryByLaw ? " *by law*" : "")} | {Cell(Join(rule.Document, rule.Clause, rule.Edition.Length == 0 ? "" : rule.Edition == InUseRule.EditionNotKnown ? "edition not known" : $"edition: {rule.Edition}"))} | {Status(rule.Source)} |\n");
            }

            text.Append("\n### Limits\n\n| limit | of the rule | value | vehicles, places, dates | what | source | status |\n| --- | --- | --- | --- | --- | --- | --- |\n");
            foreach (var limit in InUseLimits.List.Where(l => l.Set == set))
            {
                var where = Join(limit.Country ?? "", string.Join(", ", limit.Scope.Classes), limit.Scope.PlaceWord, limit.Dates.ToString());
                text.Append(System.Globalization.CultureInfo.InvariantCulture, $"| `{limit.Id}` | `{limit.Rule}` | {JudgedQuantities.Word(limit.Quantity)} {InUseLimits.Comparisons.Single(c => c.Value == limit.Holds).Word} {limit.Text} | {Cell(where)} | {Cell(limit.What)} | {Cell(limit.Source.Text)} | {Status(limit.Source)} |\n");
            }
        }

        return text.ToString();
    }

    /// <summary>A fact of the trade for which no text is held has no text that could be read.</summary>
    private static string Status(Source source) => source.Text == Source.CommonPracticeText ? Source.CommonPracticeText : source.StatusText;

    private static string Join(params string[] parts) => string.Join("; ", parts.Where(p => p.Length > 0));

    private static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal).Trim();
}
