using Trundle.Engine.Reference;

namespace Trundle.Engine.Findings;

/// <summary>A finding as a person says it in one line: what was measured by its name, and what it should be.</summary>
public static class FindingWords
{
    private static readonly Dictionary<string, string> Names = Load();

    /// <summary>What was measured, by its name where the amount alone does not tell: "load index 97", "centre bore 108.0 mm", "crack, sidewall, 1 mm".</summary>
    /// <param name="finding">The finding.</param>
    /// <source>common practice</source>
    public static string Of(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        if (finding.Rule.StartsWith("shop.", StringComparison.Ordinal))
        {
            // A rule that the workshop made goes by the name that it gave it.
            return $"{finding.Rule}: {finding.Measured.Text}";
        }

        return NameOf(finding.Rule) is { } name && !finding.Measured.Text.StartsWith(name, StringComparison.OrdinalIgnoreCase) ? $"{name} {finding.Measured.Text}" : finding.Measured.Text;
    }

    /// <summary>What stands before a finding's limit: "limit" before an amount, "should be" before a word, "was" before the day on which an instrument was due.</summary>
    /// <param name="finding">The finding.</param>
    /// <source>common practice</source>
    public static string BeforeLimit(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return finding.Limit?.Amount.Value is not null ? "limit" : finding.Rule.StartsWith("instrument.", StringComparison.Ordinal) ? "was" : "should be";
    }

    /// <summary>The name of the rule itself, or of the family that it belongs to, or null.</summary>
    private static string? NameOf(string rule)
    {
        for (var name = rule; ; name = name[..name.LastIndexOf('.')])
        {
            if (Names.TryGetValue(name, out var words))
            {
                return words;
            }

            if (!name.Contains('.', StringComparison.Ordinal))
            {
                return null;
            }
        }
    }

    private static Dictionary<string, string> Load()
    {
        var table = CsvTable.Embedded("finding-words.csv");
        return table.Rows.ToDictionary(r => table.Cell(r, "rule"), r => table.Cell(r, "words"), StringComparer.Ordinal);
    }
}
