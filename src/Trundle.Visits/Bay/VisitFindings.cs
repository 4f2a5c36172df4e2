using Trundle.Engine.Findings;

namespace Trundle.Visits.Bay;

/// <summary>What a finding means for hand-back.</summary>
public static class VisitFindings
{
    /// <summary>The name under which a decision about a finding is kept; it may stand in a field path.</summary>
    public static string DecisionKey(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return string.Concat(finding.Key.Select(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '@' or '_' ? c : '-'));
    }

    /// <summary>
    /// Why a finding still stops hand-back, or null where it does not. A refer or major finding waits for a person's decision; a dangerous one
    /// for an instructor or owner with the customer's signed refusal.
    /// </summary>
    public static string? Stops(Finding finding, VisitWork work)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(work);
        var decision = work.Decisions.GetValueOrDefault(DecisionKey(finding));
        return finding.Category switch
        {
            Category.None or Category.Minor => null,
            Category.Refer or Category.Major => decision?.Role is { } role && role.MayDecide()
                ? null
                : "a technician, an instructor or the owner has to decide",
            Category.Dangerous => Overruled(decision)
                ? null
                : "only an instructor or the owner can let it go, and only with the customer's signed refusal",
        };
    }

    /// <summary>True where an instructor or the owner decided and the customer signed.</summary>
    public static bool Overruled(Decision? decision) => decision is { Role: { } role, SignedRefusal: not null } && role.MayOverrule();
}
