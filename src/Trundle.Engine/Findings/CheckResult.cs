namespace Trundle.Engine.Findings;

/// <summary>Something that nobody gave and that a check waits for. It is asked for, never invented, and is no fault of the vehicle.</summary>
/// <param name="Position">Where on the vehicle, or null where it concerns the whole vehicle.</param>
/// <param name="What">What to enter.</param>
/// <param name="Why">Which check waits for it.</param>
public sealed record Need(string? Position, string What, string Why);

/// <summary>What a check of a vehicle says: every result, the passes too, and what it could not judge for want of data.</summary>
/// <param name="Findings">The results, in the order of the positions.</param>
/// <param name="Needs">What is needed.</param>
public sealed record CheckResult(IReadOnlyList<Finding> Findings, IReadOnlyList<Need> Needs)
{
    /// <summary>The gravest category.</summary>
    public Category Worst => FindingSet.Worst(Findings);

    /// <summary>The results that are not in order.</summary>
    public IEnumerable<Finding> Faults => Findings.Where(f => f.Category != Category.None);

    /// <summary>This result with another behind it; a need that both have stands once.</summary>
    public CheckResult With(CheckResult other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return new CheckResult([.. Findings, .. other.Findings], [.. Needs.Concat(other.Needs).Distinct()]);
    }
}
