using Trundle.Engine.Findings;
using Trundle.Engine.InUse;
using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Fitment;

/// <summary>Which tyres a construction rule holds between.</summary>
public enum MixingScope
{
    /// <summary>The tyres of one axle.</summary>
    Axle,

    /// <summary>Front and rear axle of a two-axle vehicle with single wheels only.</summary>
    TwoAxleSingle,

    /// <summary>Any axle and one behind it on a vehicle that the two-axle rule does not plainly name, or with wide tyres.</summary>
    OtherVehicle,

    /// <summary>Any axle and one behind it, on any vehicle.</summary>
    InFront,

    /// <summary>Two steered axles.</summary>
    Steered,

    /// <summary>Two driven axles that are not steered.</summary>
    DrivenNotSteered,

    /// <summary>Any two axles with all wheels driven.</summary>
    AllWheelDrive,

    /// <summary>Any two axles, whatever stands in front.</summary>
    AnyTwoAxles,
}

/// <summary>One construction rule as data.</summary>
/// <param name="Scope">Which tyres it holds between.</param>
/// <param name="First">The construction of the front one, or null where any two that differ are meant.</param>
/// <param name="Second">The construction of the rear one, or null likewise.</param>
/// <param name="InUse">Where it stands, what it says, how grave a breach is.</param>
public sealed record MixingRule(MixingScope Scope, Construction? First, Construction? Second, InUseRule InUse)
{
    /// <summary>The rule's own name.</summary>
    public string Rule => InUse.Rule;

    /// <summary>The category of a breach.</summary>
    public Category Category => InUse.Category;

    /// <summary>What the rule says.</summary>
    public string Text => InUse.Text;

    /// <summary>True where the rule forbids the first in front of the second (or beside it).</summary>
    public bool Forbids(Construction first, Construction second) => First is null ? Differs(first, second) : First == first && Second == second;

    internal static bool Differs(Construction first, Construction second) => first != second;
}

/// <summary>The construction rules (<c>construction-mix.csv</c>): the law's and the trade's.</summary>
public static class MixingRules
{
    private static readonly IReadOnlyList<MixingRule> Rows = Load();

    /// <summary>Every rule.</summary>
    public static IReadOnlyList<MixingRule> List => Rows;

    /// <summary>The rules of a scope in a rule set: the law's own where it has any, else the trade's.</summary>
    /// <source>each rule names its own</source>
    public static IReadOnlyList<MixingRule> Of(RuleSet? set, MixingScope scope)
    {
        var law = Rows.Where(r => r.Scope == scope && r.InUse.Set is not null && r.InUse.Set == set).ToList();
        return law.Count > 0 ? law : [.. Rows.Where(r => r.Scope == scope && r.InUse.Set is null)];
    }

    /// <summary>The rules from axle to axle: the law's first, then the trade's, so that the same rule is said with the law's source where there is one.</summary>
    /// <source>each rule names its own</source>
    public static IReadOnlyList<MixingRule> AcrossAxles(RuleSet? set) =>
        [.. Rows.Where(r => r.Scope != MixingScope.Axle && r.InUse.Set is not null && r.InUse.Set == set), .. Rows.Where(r => r.Scope != MixingScope.Axle && r.InUse.Set is null)];

    /// <summary>A construction in the contract's words.</summary>
    /// <source>UN R30 section 2 (from memory)</source>
    public static string Word(Construction construction) => construction switch
    {
        Construction.Radial => "radial",
        Construction.Diagonal => "diagonal",
        Construction.BiasBelted => "bias-belted",
    };

    private static List<MixingRule> Load()
    {
        var table = CsvTable.Embedded("construction-mix.csv");
        return [.. table.Rows.Select(row => new MixingRule(ScopeOf(table.Cell(row, "scope")), ConstructionOf(table.Cell(row, "first")), ConstructionOf(table.Cell(row, "second")), InUseRules.Read(table, row)))];
    }

    private static MixingScope ScopeOf(string word) => word switch
    {
        "axle" => MixingScope.Axle,
        "two-axle-single" => MixingScope.TwoAxleSingle,
        "other-vehicle" => MixingScope.OtherVehicle,
        "in-front" => MixingScope.InFront,
        "steered" => MixingScope.Steered,
        "driven-not-steered" => MixingScope.DrivenNotSteered,
        "all-wheel-drive" => MixingScope.AllWheelDrive,
        "any-two-axles" => MixingScope.AnyTwoAxles,
        _ => throw new InvalidOperationException($"'{word}' is not a scope of a construction rule."),
    };

    private static Construction? ConstructionOf(string word) => word == "differs" ? null : Enum.GetValues<Construction>().Single(c => Word(c) == word);
}
