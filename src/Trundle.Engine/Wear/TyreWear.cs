using Trundle.Engine.Findings;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Wear;

/// <summary>A cause that a pattern may have.</summary>
/// <param name="Cause">Its word.</param>
/// <param name="Text">In words.</param>
/// <param name="Probability">How likely it is, given the pattern and what else is known of the vehicle.</param>
/// <param name="Check">What to check.</param>
/// <param name="BeforeDriving">True where it can cost a wheel or a tyre: it is looked at before the vehicle is driven again.</param>
/// <param name="Source">Where the pairing of pattern and cause is from.</param>
public sealed record WearCause(string Cause, string Text, double Probability, string Check, bool BeforeDriving, Source Source);

/// <summary>A form of a pattern: which shoulder, which edges.</summary>
public sealed record WearFormReading(string Form, string Text, double Probability);

/// <summary>A further measurement that parts two patterns.</summary>
/// <param name="Step">Its word.</param>
/// <param name="Text">What to do.</param>
/// <param name="Shows">What it shows where the pattern is the first of the two.</param>
/// <param name="Between">The other pattern.</param>
/// <param name="SpeaksForThis">True where what it shows speaks for this pattern; else it speaks for the other.</param>
public sealed record WearStep(string Step, string Text, string Shows, WearPattern Between, bool SpeaksForThis);

/// <summary>One pattern with what speaks for it.</summary>
/// <param name="Pattern">The pattern.</param>
/// <param name="Probability">How likely it is.</param>
/// <param name="Prior">How likely it was held before anything was measured.</param>
/// <param name="Forms">Its forms, likeliest first; empty where it has one only.</param>
/// <param name="EvidenceLogRatio">The logarithm to ten of how many times likelier the depths are under it than under even wear.</param>
/// <param name="Evidence">The evidence in words and numbers.</param>
/// <param name="Causes">Likely causes, likeliest first.</param>
/// <param name="NextStep">What to measure to part it from the likeliest other, or null where nothing of the list is left to measure.</param>
public sealed record PatternReading(
    WearPattern Pattern,
    double Probability,
    double Prior,
    IReadOnlyList<WearFormReading> Forms,
    double EvidenceLogRatio,
    string Evidence,
    IReadOnlyList<WearCause> Causes,
    WearStep? NextStep);

/// <summary>How the tread of one tyre is worn.</summary>
/// <param name="Position">Where it sits.</param>
/// <param name="Patterns">Every pattern, likeliest first.</param>
/// <param name="Context">What else is known and was weighed, in words.</param>
/// <param name="Cautions">What stands beside it wherever it is shown.</param>
public sealed record TyreWear(Position Position, IReadOnlyList<PatternReading> Patterns, IReadOnlyList<string> Context, IReadOnlyList<string> Cautions)
{
    /// <summary>The likeliest pattern.</summary>
    public PatternReading Likeliest => Patterns[0];

    /// <summary>The reading of a pattern.</summary>
    public PatternReading Of(WearPattern pattern) => Patterns.First(p => p.Pattern == pattern);
}
