using Trundle.Engine.Findings;
using Trundle.Engine.InUse;
using Trundle.Engine.Reference;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Condition;

/// <summary>What becomes of a part, from the lightest to the gravest.</summary>
public enum Verdict
{
    /// <summary>Nothing that was entered speaks against it.</summary>
    MayRun,

    /// <summary>May be repaired, as far as anything entered tells.</summary>
    Repair,

    /// <summary>A person must look, measure or ask before anything else.</summary>
    Refer,

    /// <summary>Another one takes its place.</summary>
    Renew,

    /// <summary>It is never used again.</summary>
    Discard,
}

/// <summary>The part that a verdict is of.</summary>
public enum InspectedPart
{
    Tyre,
    Wheel,
    Valve,
    Sensor,
}

/// <summary>What the breach of each rule means for the part that it is about (<c>verdicts.csv</c>).</summary>
public static class Verdicts
{
    private static readonly Dictionary<string, (InspectedPart Part, Verdict Verdict)> Rules = Load();

    /// <summary>The rules that bear on a part, in the order of the table.</summary>
    public static IEnumerable<string> RuleNames => Rules.Keys;

    /// <summary>The word of a verdict.</summary>
    /// <source>the project's own words</source>
    public static string Word(this Verdict verdict) => verdict switch
    {
        Verdict.MayRun => "may run",
        Verdict.Repair => "repair",
        Verdict.Refer => "refer",
        Verdict.Renew => "renew",
        Verdict.Discard => "discard",
    };

    /// <summary>The word of a part.</summary>
    /// <source>the contract's words</source>
    public static string Word(this InspectedPart part) => part switch
    {
        InspectedPart.Tyre => "tyre",
        InspectedPart.Wheel => "wheel",
        InspectedPart.Valve => "valve",
        InspectedPart.Sensor => "sensor",
    };

    /// <summary>What a finding means for a part, or null where it is about another, or about none.</summary>
    /// <param name="finding">The finding. One that is in order means that the part may run.</param>
    /// <param name="part">The part.</param>
    /// <source>verdicts.csv: common practice, from the text that the rule itself names; a workshop's own rule that is broken is for a person to decide unless it is minor</source>
    public static Verdict? Of(Finding finding, InspectedPart part)
    {
        ArgumentNullException.ThrowIfNull(finding);
        if (finding.Rule.StartsWith(ShopRule.Prefix, StringComparison.Ordinal))
        {
            return part == InspectedPart.Tyre && finding.Category > Category.Minor ? Verdict.Refer : null;
        }

        return Rules.TryGetValue(finding.Rule, out var row) && row.Part == part
            ? finding.Category == Category.None ? Verdict.MayRun : row.Verdict
            : null;
    }

    private static Dictionary<string, (InspectedPart Part, Verdict Verdict)> Load()
    {
        var table = CsvTable.Embedded("verdicts.csv");
        return table.Rows.ToDictionary(
            row => table.Cell(row, "rule"),
            row => (Enum.GetValues<InspectedPart>().Single(p => p.Word() == table.Cell(row, "part")), Enum.GetValues<Verdict>().Single(v => v.Word() == table.Cell(row, "verdict"))),
            StringComparer.Ordinal);
    }
}

/// <summary>One damage and what becomes of the part for its sake.</summary>
/// <param name="Index">Its place in the list that was entered, from 0.</param>
/// <param name="What">What it is, in words.</param>
/// <param name="Verdict">What becomes of the part.</param>
/// <param name="Reasons">What speaks for that verdict, gravest first.</param>
/// <param name="Asked">What nobody entered and what could change it.</param>
public sealed record DamageVerdict(int Index, string What, Verdict Verdict, IReadOnlyList<Finding> Reasons, IReadOnlyList<Need> Asked);

/// <summary>What becomes of one part of an assembly.</summary>
/// <param name="Position">Where.</param>
/// <param name="Part">Which part.</param>
/// <param name="Verdict">What becomes of it.</param>
/// <param name="Reasons">What speaks for that verdict, gravest first; empty where nothing was found.</param>
/// <param name="Damage">Each of its damages by itself.</param>
/// <param name="Asked">What nobody entered and what could change it.</param>
public sealed record PartVerdict(Position Position, InspectedPart Part, Verdict Verdict, IReadOnlyList<Finding> Reasons, IReadOnlyList<DamageVerdict> Damage, IReadOnlyList<Need> Asked)
{
    /// <summary>The cautions of all reasons, each once.</summary>
    public IReadOnlyList<string> Cautions => [.. Reasons.Concat(Damage.SelectMany(d => d.Reasons)).SelectMany(f => f.Cautions).Distinct()];
}
