using Trundle.Engine.Findings;

namespace Trundle.Engine.Complaint;

/// <summary>What one answer says of a cause.</summary>
/// <param name="Question">The question.</param>
/// <param name="Text">The answer as a person reads it.</param>
/// <param name="Times">How many times likelier the answer is with this cause than with any complaint.</param>
public sealed record ComplaintEvidence(string Question, string Text, double Times);

/// <summary>One cause with what speaks for and against it.</summary>
/// <param name="Cause">Its word.</param>
/// <param name="Text">In words.</param>
/// <param name="Probability">How likely it is after the answers.</param>
/// <param name="Prior">How likely it was held before any.</param>
/// <param name="Evidence">What each answer says, strongest first.</param>
/// <param name="Check">What to look at.</param>
/// <param name="Caution">Why the vehicle is not driven while this is not excluded, or null where it may be.</param>
/// <param name="Source">Where the cause and its signs are from.</param>
public sealed record ComplaintCause(string Cause, string Text, double Probability, double Prior, IReadOnlyList<ComplaintEvidence> Evidence, string Check, string? Caution, Source Source);

/// <summary>The question to ask next.</summary>
/// <param name="Question">The question.</param>
/// <param name="Bits">What its answer is expected to tell of the cause, in bits.</param>
public sealed record NextQuestion(ComplaintQuestion Question, double Bits);

/// <summary>What a complaint may come of.</summary>
/// <param name="Causes">Every cause, likeliest first.</param>
/// <param name="NotExcluded">The causes that can cost a wheel, a tyre or a brake and are not excluded, likeliest first. While there is one, the vehicle is not driven.</param>
/// <param name="Next">The question that parts the causes best, or null where every one was answered.</param>
public sealed record ComplaintOutcome(IReadOnlyList<ComplaintCause> Causes, IReadOnlyList<ComplaintCause> NotExcluded, NextQuestion? Next)
{
    /// <summary>What to look at, in order: first what may not be driven with, then the likeliest.</summary>
    public IReadOnlyList<ComplaintCause> Look => [.. NotExcluded.Concat(Causes.Where(c => c.Caution is null).Take(2))];
}
