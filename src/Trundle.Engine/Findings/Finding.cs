using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Findings;

/// <summary>The category of a finding, in the order in which they are ranked.</summary>
/// <remarks>None, minor, major and dangerous are those of Directive 2014/45/EU, article 7; refer is our own: a person must decide.</remarks>
public enum Category
{
    /// <summary>No deficiency.</summary>
    None,

    /// <summary>No great effect on safety.</summary>
    Minor,

    /// <summary>A person must decide before hand-back.</summary>
    Refer,

    /// <summary>May prejudice safety.</summary>
    Major,

    /// <summary>A direct and immediate risk.</summary>
    Dangerous,
}

/// <summary>One thing noticed: its category, its measurement, its limit and where the limit comes from.</summary>
/// <param name="Rule">The rule's own name, stable, lower case with points, such as <c>tread.depth</c>.</param>
/// <param name="Category">How grave it is.</param>
/// <param name="Position">Where on the vehicle, or null where it concerns the whole vehicle; an axle is written <c>axle 1</c>.</param>
/// <param name="Measured">What was measured or read.</param>
/// <param name="Limit">What it was held against, or null where nobody gave one.</param>
/// <param name="Source">Where the rule comes from.</param>
/// <param name="Action">What to do, in a sentence.</param>
public sealed record Finding(string Rule, Category Category, string? Position, Amount Measured, Limit? Limit, Source Source, string Action)
{
    /// <summary>Cautions that stand beside the finding wherever it is shown.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>A key that stays the same while the fact stays the same, for a person's decision to hold on to.</summary>
    public string Key => $"{Rule}@{Position ?? "vehicle"}";
}

/// <summary>Findings as a set.</summary>
public static class FindingSet
{
    /// <summary>The gravest category, none where there is no finding.</summary>
    /// <source>common practice: ranked none, minor, refer, major, dangerous</source>
    public static Category Worst(IEnumerable<Finding> findings)
    {
        ArgumentNullException.ThrowIfNull(findings);
        return findings.Select(f => f.Category).DefaultIfEmpty(Category.None).Max();
    }

    /// <summary>The category in the contract's words.</summary>
    /// <source>Directive 2014/45/EU, article 7, for minor, major and dangerous</source>
    public static string Word(this Category category) => category switch
    {
        Category.None => "none",
        Category.Minor => "minor",
        Category.Refer => "refer",
        Category.Major => "major",
        Category.Dangerous => "dangerous",
    };
}
