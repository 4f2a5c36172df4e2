using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.InUse;

/// <summary>One rule of the road, of the trade or of a workshop, as data: where it stands, what it says in our words, and how grave a breach is.</summary>
/// <param name="Rule">The rule's own name, stable; the name of its finding.</param>
/// <param name="Set">Whose rule, or null for a rule of the trade or of a workshop.</param>
/// <param name="Category">The category of a breach.</param>
/// <param name="CategoryByLaw">True where the document itself has the category; false where the mapping is common practice.</param>
/// <param name="Document">The document, or <c>common practice</c>.</param>
/// <param name="Clause">The clause.</param>
/// <param name="Edition">The edition that the text was taken from.</param>
/// <param name="Status">How the text came to be here.</param>
/// <param name="Text">What the rule says.</param>
/// <param name="Action">What to do about a breach.</param>
public sealed record InUseRule(string Rule, RuleSet? Set, Category Category, bool CategoryByLaw, string Document, string Clause, string Edition, SourceStatus Status, string Text, string Action)
{
    /// <summary>Another way to read the same text, or null where it reads one way. Where there is one, a breach is for a person to decide and both are told.</summary>
    public string? OtherReading { get; init; }

    /// <summary>The vehicle classes that it holds for; empty for all.</summary>
    public IReadOnlyList<string> Classes { get; init; } = [];

    /// <summary>The dates in which it holds.</summary>
    public RuleDates Dates { get; init; } = RuleDates.Always;

    /// <summary>What a workshop adds about a correction of its own, or null.</summary>
    public string? Corrected { get; init; }

    /// <summary>The name by which a workshop's correction and the list of rules know it: the set's word and the rule's name.</summary>
    public string Id => $"{RuleSetWords.Of(Set)}.{Rule}";

    /// <summary>What stands for an edition that nobody knows; such a text is never called read.</summary>
    public const string EditionNotKnown = "not known";

    private string EditionText => Edition.Length == 0 ? "" : Edition == EditionNotKnown ? " (edition not known)" : $" (edition: {Edition})";

    /// <summary>The document, its clause and edition, and whether the category is its own.</summary>
    public Source Source => Document == Source.CommonPracticeText && Corrected is null
        ? Source.CommonPractice
        : new Source($"{Document}{(Clause.Length == 0 ? "" : $", {Clause}")}{EditionText}{(Corrected is null ? "" : $"; {Corrected}")}{(CategoryByLaw || Set is null ? "" : "; category by common practice")}", Status);
}

/// <summary>The words of the rule sets in tables, files and commands.</summary>
public static class RuleSetWords
{
    /// <summary>The word of a rule set; <c>trade</c> where there is none.</summary>
    /// <source>the contract's words</source>
    public static string Of(RuleSet? set) => set switch
    {
        RuleSet.UnitedStates => "us",
        RuleSet.UnitedKingdom => "uk",
        RuleSet.EuropeanUnion => "eu",
        null => "trade",
        _ => throw new InvalidOperationException("No such rule set."),
    };

    /// <summary>The rule set of a table's word; <c>trade</c> is null.</summary>
    internal static RuleSet? Read(string word) => word switch
    {
        "us" => RuleSet.UnitedStates,
        "uk" => RuleSet.UnitedKingdom,
        "eu" => RuleSet.EuropeanUnion,
        "trade" => null,
        _ => throw new InvalidOperationException($"'{word}' is not a rule set."),
    };
}

/// <summary>The in-use rules of the United States, the United Kingdom and the European Union, and those of the trade, as they are carried (<c>in-use-rules.csv</c>).</summary>
public static class InUseRules
{
    /// <summary>Every rule, in the order of their names.</summary>
    public static IReadOnlyList<InUseRule> List { get; } = Load();

    private static readonly Dictionary<(string Rule, RuleSet? Set), InUseRule> All = List.ToDictionary(r => (r.Rule, r.Set));

    /// <summary>The rule of a name in a rule set: the law's own, else the trade's; throws where there is neither, since that is a mistake in the code.</summary>
    /// <source>each rule names its own</source>
    public static InUseRule Of(string rule, RuleSet? set) => LawOf(rule, set) ?? All[(rule, null)];

    /// <summary>The law's own rule of a name, or null where that rule set has none.</summary>
    /// <source>each rule names its own</source>
    public static InUseRule? LawOf(string rule, RuleSet? set) => set is null ? null : All.GetValueOrDefault((rule, set));

    internal static InUseRule Read(CsvTable table, string[] row) => new(
        table.Cell(row, "rule"),
        RuleSetWords.Read(table.Cell(row, "set")),
        Enum.GetValues<Category>().Single(c => c.Word() == table.Cell(row, "category")),
        table.Cell(row, "category-by") == "law",
        table.Cell(row, "source"),
        table.Cell(row, "clause"),
        table.Cell(row, "edition"),
        Source.StatusOf(table.Cell(row, "status")) ?? throw new InvalidOperationException($"The status of rule '{table.Cell(row, "rule")}' is not a known word."),
        table.Cell(row, "text"),
        table.Cell(row, "action"))
    {
        OtherReading = table.Has("other-reading") && table.Cell(row, "other-reading") is { Length: > 0 } other ? other : null,
        Classes = table.Has("classes") ? RuleScope.ClassesOf(table.Cell(row, "classes")) : [],
        Dates = table.Has("from") ? new RuleDates(RuleDates.Day(table.Cell(row, "from")), RuleDates.Day(table.Cell(row, "until")), null) : RuleDates.Always,
    };

    private static List<InUseRule> Load()
    {
        var table = CsvTable.Embedded("in-use-rules.csv");
        return [.. table.Rows.Select(row => Read(table, row)).OrderBy(r => r.Rule, StringComparer.Ordinal).ThenBy(r => r.Set)];
    }
}
