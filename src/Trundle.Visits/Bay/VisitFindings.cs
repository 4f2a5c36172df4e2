using Trundle.Engine.Findings;
using Trundle.Engine.Mounting;

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
    /// True where nobody may let it go: a condemned tyre or wheel is not fitted again on any visit, a tyre never stays on a rim of another diameter, and a
    /// wheel whose lock ring is bad or missing can kill whoever stands beside it.
    /// </summary>
    public static bool IsForGood(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return finding is { Rule: "condemned.tyre" or "condemned.wheel" or "rim.diameter" or "wheel.lock-ring", Category: Category.Dangerous };
    }

    /// <summary>
    /// True where the law forbids the tyre at its place whatever its state, as by its age: no technician decides that away. It is let go as a dangerous
    /// finding is, by an instructor or the owner with the customer's signed refusal.
    /// </summary>
    public static bool IsForbidden(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return finding is { Rule: "age.law", Category: Category.Major };
    }

    /// <summary>
    /// Why a finding still stops hand-back, or null where it does not. A refer or major finding waits for a person's decision; a dangerous one
    /// for an instructor or owner with the customer's signed refusal.
    /// </summary>
    public static string? Stops(Finding finding, VisitWork work)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(work);
        if (IsForGood(finding))
        {
            return finding.Rule.StartsWith("condemned.", StringComparison.Ordinal) ? "it is condemned and may not be fitted again, whoever decides" : "nobody lets this go: it is put right, or the vehicle does not leave on it";
        }

        if (finding.Rule == SeveralPieces.Rule)
        {
            // Where the wheel is worked on, the procedure's own step stops it until the licensed shop's record is there, and no decision lifts that.
            return null;
        }

        var decision = work.Decisions.GetValueOrDefault(DecisionKey(finding));
        return finding.Category switch
        {
            Category.None or Category.Minor => null,
            Category.Major when IsForbidden(finding) => Overruled(decision)
                ? null
                : "the law forbids it here: only an instructor or the owner can let it go, and only with the customer's signed refusal",
            Category.Refer or Category.Major => decision is { Role: { } role, By.Length: > 0 } && role.May(Right.Decide)
                ? null
                : "a technician, an instructor or the owner has to decide",
            Category.Dangerous => Overruled(decision)
                ? null
                : "only an instructor or the owner can let it go, and only with the customer's signed refusal",
        };
    }

    /// <summary>True where an instructor or the owner, by name, decided and the customer signed.</summary>
    public static bool Overruled(Decision? decision) => decision is { Role: { } role, SignedRefusal: not null, By.Length: > 0 } && role.May(Right.LetGo);
}
