using Trundle.Engine.Findings;
using Trundle.Measures;

namespace Trundle.Engine.Balance.Why;

/// <summary>Why a wheel does not come to zero.</summary>
public enum WhyCause
{
    /// <summary>The rim distance entered is not the wheel's.</summary>
    RimDistance,

    /// <summary>The rim diameter entered is not the wheel's.</summary>
    RimDiameter,

    /// <summary>The rim width entered is not the wheel's.</summary>
    RimWidth,

    /// <summary>A weight, or all, sit at another angle.</summary>
    WeightAngle,

    /// <summary>A weight has another mass.</summary>
    WeightMass,

    /// <summary>Inner and outer weight are exchanged.</summary>
    WeightsSwapped,

    /// <summary>A clip sits where adhesive was entered, or the other way round.</summary>
    WeightPlace,

    /// <summary>A weight came off.</summary>
    WeightLost,

    /// <summary>The wheel was moved on its seat between spins.</summary>
    ReSeated,

    /// <summary>Something loose moves in the tyre.</summary>
    LooseObject,

    /// <summary>The balancer is off its calibration.</summary>
    Calibration,

    /// <summary>Nothing but the balancer's repeatability.</summary>
    Noise,
}

/// <summary>What one cause is about: which weights, between which spins, which transducer.</summary>
/// <param name="Weights">The weights, each with the number of the spin after which it was fitted, from 1; empty where it is about none.</param>
/// <param name="AfterSpin">It happened after this spin, from 1; null where that says nothing.</param>
/// <param name="Transducer">1 or 2, or null for both.</param>
public sealed record WhySubject(IReadOnlyList<(int AfterSpin, WeightFitted Weight)> Weights, int? AfterSpin, int? Transducer)
{
    /// <summary>About the whole.</summary>
    public static WhySubject Whole { get; } = new([], null, null);
}

/// <summary>How large a cause is, by the displays alone: the value that meets them best, and the interval that holds nine tenths of what can be.</summary>
public sealed record WhyEstimate(Amount Value, Amount Low, Amount High);

/// <summary>One cause with what speaks for it.</summary>
public sealed record WhyExplanation
{
    /// <summary>The cause.</summary>
    public required WhyCause Cause { get; init; }

    /// <summary>Its probability among the causes, if exactly one of them is at work.</summary>
    public required double Probability { get; init; }

    /// <summary>What was held likely before the spins.</summary>
    public required double Prior { get; init; }

    /// <summary>Its size where it has one.</summary>
    public required WhyEstimate? Estimate { get; init; }

    /// <summary>What it is about, in its likeliest form.</summary>
    public required WhySubject Subject { get; init; }

    /// <summary>The angle that goes with an estimate that has a direction: of a calibration the error of angle, of a re-seating the heavy place; else null.</summary>
    public required Angle? Direction { get; init; }

    /// <summary>How many times better (as its logarithm to ten) this cause foretells the displays than repeatability alone; below nothing where worse.</summary>
    public required double EvidenceLogRatio { get; init; }

    /// <summary>What the displays miss by, root mean square of a component, with this cause at its likeliest size.</summary>
    public required Mass Misfit { get; init; }

    /// <summary>The step that parts it best from the likeliest other cause.</summary>
    public required WhyStep NextStep { get; init; }

    /// <summary>True where what the step shows speaks for this cause, false where it speaks for the other.</summary>
    public required bool NextStepSpeaksForThis { get; init; }

    /// <summary>The cause that the step parts it from.</summary>
    public required WhyCause PartedFrom { get; init; }
}

/// <summary>Something to do that parts causes.</summary>
/// <param name="Key">Its name in the table.</param>
/// <param name="Text">What to do.</param>
/// <param name="Shows">What is seen where it speaks.</param>
/// <param name="Cause">The setting's cause that it measures again, or null.</param>
public sealed record WhyStep(string Key, string Text, string Shows, WhyCause? Cause);

/// <summary>All causes, the likeliest first.</summary>
public sealed record WhyOutcome
{
    /// <summary>Every cause once.</summary>
    public required IReadOnlyList<WhyExplanation> Explanations { get; init; }

    /// <summary>What the displays miss by if the fitted weights did just what they should, root mean square of a component.</summary>
    public required Mass MisfitWithoutCause { get; init; }

    /// <summary>What repeatability (with the display's rounding) leaves of it on the average.</summary>
    public required Mass MisfitExpected { get; init; }

    /// <summary>True where there are at least two spins: one alone tells nothing of what a weight did.</summary>
    public required bool CanTell { get; init; }

    /// <summary>True where a weight was fitted before the last spin.</summary>
    public required bool WeightsSeen { get; init; }

    /// <summary>True where even the best cause leaves more than repeatability would once in a thousand: more than one thing is wrong, or something that is not weighed here.</summary>
    public required bool NothingFits { get; init; }

    /// <summary>True where the displays do not part the first two causes: what is said of them is what was held likely before.</summary>
    public required bool FirstTwoAlike { get; init; }
}
