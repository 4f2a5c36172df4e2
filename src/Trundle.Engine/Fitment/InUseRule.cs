using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Fitment;

/// <summary>One rule of the road or of the trade, as data: where it stands, what it says in our words, and how grave a breach is.</summary>
/// <param name="Rule">The rule's own name, stable; the name of its finding.</param>
/// <param name="Set">Whose rule, or null for a rule of the trade.</param>
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
    /// <summary>The document, its clause and edition, and whether the category is its own.</summary>
    public Source Source => Document == Source.CommonPracticeText
        ? Source.CommonPractice
        : new Source($"{Document}{(Clause.Length == 0 ? "" : $", {Clause}")}{(Edition.Length == 0 ? "" : $" (edition: {Edition})")}{(CategoryByLaw ? "" : "; category by common practice")}", Status);
}

/// <summary>The in-use rules of the United States, the United Kingdom and the European Union, and those of the trade (<c>in-use-rules.csv</c>).</summary>
public static class InUseRules
{
    private static readonly Dictionary<(string Rule, RuleSet? Set), InUseRule> All = Load();

    /// <summary>Every rule, in the order of their names.</summary>
    public static IReadOnlyList<InUseRule> List { get; } = [.. All.Values.OrderBy(r => r.Rule, StringComparer.Ordinal).ThenBy(r => r.Set)];

    /// <summary>The rule of a name in a rule set: the law's own, else the trade's; throws where there is neither, since that is a mistake in the code.</summary>
    /// <source>each rule names its own</source>
    public static InUseRule Of(string rule, RuleSet? set) =>
        All.TryGetValue((rule, set), out var law) ? law : All[(rule, null)];

    /// <summary>The law's own rule of a name, or null where that rule set has none.</summary>
    /// <source>each rule names its own</source>
    public static InUseRule? LawOf(string rule, RuleSet? set) =>
        set is not null && All.TryGetValue((rule, set), out var law) ? law : null;

    /// <summary>The words of the tables for a rule set; <c>trade</c> is null.</summary>
    internal static RuleSet? SetOf(string word) => word switch
    {
        "us" => RuleSet.UnitedStates,
        "uk" => RuleSet.UnitedKingdom,
        "eu" => RuleSet.EuropeanUnion,
        "trade" => null,
        _ => throw new InvalidOperationException($"'{word}' is not a rule set."),
    };

    internal static InUseRule Read(CsvTable table, string[] row) => new(
        table.Cell(row, "rule"),
        SetOf(table.Cell(row, "set")),
        Enum.GetValues<Category>().Single(c => c.Word() == table.Cell(row, "category")),
        table.Cell(row, "category-by") == "law",
        table.Cell(row, "source"),
        table.Cell(row, "clause"),
        table.Cell(row, "edition"),
        Source.StatusOf(table.Cell(row, "status")) ?? throw new InvalidOperationException($"The status of rule '{table.Cell(row, "rule")}' is not a known word."),
        table.Cell(row, "text"),
        table.Cell(row, "action"));

    private static Dictionary<(string, RuleSet?), InUseRule> Load()
    {
        var table = CsvTable.Embedded("in-use-rules.csv");
        return table.Rows.Select(row => Read(table, row)).ToDictionary(r => (r.Rule, r.Set));
    }
}
