using Trundle.Engine.Findings;

namespace Trundle.Engine.Practice;

/// <summary>Something that an attempt is judged by; it is shown before the attempt begins.</summary>
/// <param name="Key">Stable name.</param>
/// <param name="Words">What is asked, in a sentence.</param>
/// <param name="Points">What it is worth; the criteria of one attempt sum to 100.</param>
/// <param name="MustBeMet">Without it the attempt is not passed, whatever the points.</param>
public sealed record Criterion(string Key, string Words, int Points, bool MustBeMet);

/// <summary>A criterion as it was judged.</summary>
/// <param name="Criterion">Which.</param>
/// <param name="Met">Met or not yet.</param>
/// <param name="Found">What the attempt has, where it is a figure or a word.</param>
/// <param name="Required">What was required, with its source, where it is a figure.</param>
/// <param name="Feedback">What to do differently and why; empty where met.</param>
public sealed record JudgedCriterion(Criterion Criterion, bool Met, Amount? Found, Limit? Required, string Feedback);

/// <summary>Something done that maims in a real bay: the attempt ends there.</summary>
/// <param name="Key">Stable name.</param>
/// <param name="Why">What it was and why it ends the attempt.</param>
public sealed record SafetyStop(string Key, string Why);

/// <summary>An attempt as it was judged. It is no statement of competence: that is an assessor's act.</summary>
/// <param name="Parts">Every criterion.</param>
/// <param name="Stop">What ended it, or null.</param>
public sealed record PracticeResult(IReadOnlyList<JudgedCriterion> Parts, SafetyStop? Stop)
{
    /// <summary>Points out of 100; nothing after a safety stop.</summary>
    public int Score => Stop is null ? Parts.Where(p => p.Met).Sum(p => p.Criterion.Points) : 0;

    /// <summary>Every criterion that must be met is, and nothing stopped it.</summary>
    public bool Passed => Stop is null && Parts.All(p => p.Met || !p.Criterion.MustBeMet);
}
