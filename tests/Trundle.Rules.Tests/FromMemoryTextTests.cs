using System.Globalization;
using System.Text.RegularExpressions;
using Trundle.Engine.Findings;
using Trundle.Engine.InUse;
using Trundle.Engine.Reference;

namespace Trundle.Rules.Tests;

/// <summary>A number that is from memory is not written as certain: not in the pages, not in the procedures, not in a rule's own words.</summary>
public sealed class FromMemoryTextTests
{
    /// <summary>Numbers with their unit that are carried from memory only. One that is read or quoted elsewhere too may stand for that.</summary>
    private static IReadOnlyList<(string Name, double Value, string Unit)> Numbers { get; } = Carried();

    /// <summary>The same number with another meaning: a dial's reading or a balancer's zero in an example.</summary>
    private static readonly (string Page, string Name)[] OtherMeaning = [("docs/theory/runout-and-matching.md", "fixings.seat.outer-addition"), ("docs/guide/instruments.md", "condition.tread-beyond")];

    [Fact]
    public void The_pages_and_procedures_say_from_memory_beside_such_a_number()
    {
        Numbers.Count.ShouldBeGreaterThan(10);
        var made = new[] { "docs/rules.md", "docs/figures-from-memory.md" };
        var found = 0;
        var certain = new List<string>();
        foreach (var file in House.Files("docs", "*.md").Concat(House.Files("src/Trundle.Visits/Procedures", "*.json")).Where(f => !made.Contains(House.Short(f))))
        {
            foreach (var block in Blocks(File.ReadAllText(file)))
            {
                foreach (var (name, value, unit) in Numbers.Where(n => Stands(block, n.Value, n.Unit) && !OtherMeaning.Contains((House.Short(file), n.Name)) && !IsGeometry(block, n.Unit)))
                {
                    found++;
                    if (!block.Contains("memory", StringComparison.Ordinal))
                    {
                        certain.Add($"{House.Short(file)}: {value} {unit} ({name}) in: {block[..Math.Min(90, block.Length)]}");
                    }
                }
            }
        }

        certain.ShouldBeEmpty();
        found.ShouldBeGreaterThan(3, "the search finds what it looks for");
    }

    [Fact]
    public void The_words_of_a_rule_leave_a_number_from_memory_to_its_limit_unless_they_are_from_memory_themselves()
    {
        foreach (var limit in InUseLimits.List.Where(l => l.Source.Status == SourceStatus.FromMemory && l.Unit.Length > 0))
        {
            foreach (var rule in InUseRules.List.Where(r => r.Rule == limit.Rule && (r.Set == limit.Set || r.Set is null)))
            {
                (rule.Status == SourceStatus.FromMemory || !Stands($"{rule.Text} {rule.Action}", limit.Value, limit.Unit)).ShouldBeTrue($"{rule.Id} states {limit.Text} ({limit.Id})");
            }
        }
    }

    [Fact]
    public void The_search_knows_a_number_in_the_forms_in_which_it_is_written()
    {
        Stands("at least 2/32 in here", 0.0625, "in").ShouldBeTrue();
        Stands("within half an inch", 0.5, "in").ShouldBeTrue();
        Stands("at 1.0 mm.", 1, "mm").ShouldBeTrue();
        Stands("11 mm", 1, "mm").ShouldBeFalse();
        Stands("0.5 inch", 0.5, "in").ShouldBeFalse();
        Stands("50 km/h", 50, "km").ShouldBeFalse();
    }

    /// <summary>A right angle is geometry wherever a page does not speak of repairs, the only limits in degrees.</summary>
    private static bool IsGeometry(string block, string unit) => unit == "°" && !block.Contains("repair", StringComparison.Ordinal);

    private static List<(string, double, string)> Carried()
    {
        var all = Figures.List.Select(f => (Name: f.Key, f.Value, f.Unit, f.Source.Status)).Concat(InUseLimits.List.Select(l => (Name: l.Id, l.Value, l.Unit, l.Source.Status))).Where(n => n.Unit.Length > 0).ToList();
        var known = all.Where(n => n.Status != SourceStatus.FromMemory).Select(n => (n.Value, n.Unit)).ToHashSet();
        return [.. all.Where(n => n.Status == SourceStatus.FromMemory && !known.Contains((n.Value, n.Unit))).Select(n => (n.Name, n.Value, n.Unit))];
    }

    private static bool Stands(string text, double value, string unit)
    {
        var forms = new List<string> { value.ToString("0.#####", CultureInfo.InvariantCulture), value.ToString("0.0####", CultureInfo.InvariantCulture) };
        if (unit == "in" && value * 32 == Math.Floor(value * 32))
        {
            forms.Add(string.Create(CultureInfo.InvariantCulture, $"{value * 32:0}/32"));
        }

        return (unit == "in" && value == 0.5 && text.Contains("half an inch", StringComparison.Ordinal))
            || forms.Exists(f => Regex.IsMatch(text, $@"(?<![\d.,/]){Regex.Escape(f)}\s?{Regex.Escape(unit)}(?![\p{{L}}²/])", RegexOptions.None, TimeSpan.FromSeconds(1)));
    }

    /// <summary>Paragraphs, list items and table rows.</summary>
    private static IEnumerable<string> Blocks(string text) => Regex.Split(text, @"\n\s*\n|\n(?=\s*(?:[-|*]|\d+\.)\s?)", RegexOptions.None, TimeSpan.FromSeconds(1));
}
