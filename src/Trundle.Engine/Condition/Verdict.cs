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

    /// <summary>Sound perhaps, but not as it stands: it does not run before the finding that holds it is put right.</summary>
    PutRight,

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

/// <summary>
/// What the breach of each rule means for the parts that it is about (<c>verdicts.csv</c>). A row names a rule or a family of them, for every rule set or for one.
/// However mild its row, no verdict is milder than the finding's category: refer is referred (or repaired, where a repair is what is decided), major and
/// dangerous do not run as they stand.
/// </summary>
public static class Verdicts
{
    private static readonly ILookup<(string Rule, string Set), (InspectedPart Part, Verdict Verdict)> Rules = Load();

    /// <summary>The rules and families that bear on a part, in the order of the table.</summary>
    public static IEnumerable<string> RuleNames => Rules.Select(r => r.Key.Rule).Distinct();

    /// <summary>True where a rule, or a family that it belongs to, has a row.</summary>
    /// <source>verdicts.csv</source>
    public static bool Has(string rule) => Families(rule).Any(name => RuleNames.Contains(name));

    /// <summary>The word of a verdict.</summary>
    /// <source>the project's own words</source>
    public static string Word(this Verdict verdict) => verdict switch
    {
        Verdict.MayRun => "may run",
        Verdict.Repair => "repair",
        Verdict.Refer => "refer",
        Verdict.PutRight => "put right",
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
    /// <param name="set">Whose rules were applied, or null.</param>
    /// <source>verdicts.csv: common practice, from the text that the rule itself names; never milder than the category; a workshop's own rule that is broken is for a person to decide unless it is minor</source>
    public static Verdict? Of(Finding finding, InspectedPart part, RuleSet? set)
    {
        ArgumentNullException.ThrowIfNull(finding);
        if (finding.Rule.StartsWith(ShopRule.Prefix, StringComparison.Ordinal))
        {
            return part == InspectedPart.Tyre && finding.Category > Category.Minor ? Verdict.Refer : null;
        }

        var word = RuleSetWords.Of(set);
        var rows = Families(finding.Rule).SelectMany(name => new[] { Rules[(name, word)], Rules[(name, "")] }).FirstOrDefault(r => r.Any()) ?? [];
        foreach (var row in rows.Where(r => r.Part == part))
        {
            var least = finding.Category == Category.Refer && row.Verdict == Verdict.Repair ? Verdict.Repair : LeastFor(finding.Category);
            return finding.Category == Category.None ? Verdict.MayRun : row.Verdict > least ? row.Verdict : least;
        }

        return null;
    }

    /// <summary>The mildest verdict that may stand beside a category.</summary>
    private static Verdict LeastFor(Category category) => category switch
    {
        Category.None or Category.Minor => Verdict.MayRun,
        Category.Refer => Verdict.Refer,
        Category.Major or Category.Dangerous => Verdict.PutRight,
    };

    /// <summary>The rule's own name, then the families that it belongs to: <c>load.axle</c>, <c>load</c>.</summary>
    private static IEnumerable<string> Families(string rule)
    {
        for (var name = rule; ;)
        {
            yield return name;
            var point = name.LastIndexOf('.');
            if (point < 0)
            {
                yield break;
            }

            name = name[..point];
        }
    }

    private static ILookup<(string, string), (InspectedPart, Verdict)> Load()
    {
        var table = CsvTable.Embedded("verdicts.csv");
        return table.Rows.ToLookup(
            row => (table.Cell(row, "rule"), table.Cell(row, "set")),
            row => (Enum.GetValues<InspectedPart>().Single(p => p.Word() == table.Cell(row, "part")), Enum.GetValues<Verdict>().Single(v => v.Word() == table.Cell(row, "verdict"))));
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
/// <param name="Rules">Whose rules were applied, or null.</param>
public sealed record PartVerdict(Position Position, InspectedPart Part, Verdict Verdict, IReadOnlyList<Finding> Reasons, IReadOnlyList<DamageVerdict> Damage, IReadOnlyList<Need> Asked, RuleSet? Rules)
{
    /// <summary>The finding that holds the part back most, or null where it may run.</summary>
    public Finding? HeldBy => Verdict == Verdict.MayRun || Reasons.Count == 0 ? null : Reasons[0];

    /// <summary>The cautions of all reasons, each once.</summary>
    public IReadOnlyList<string> Cautions => [.. Reasons.Concat(Damage.SelectMany(d => d.Reasons)).SelectMany(f => f.Cautions).Distinct()];
}
