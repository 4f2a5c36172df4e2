using Trundle.Engine.Findings;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Fixings;

/// <summary>What is asked about the fixings of one wheel.</summary>
/// <param name="Fixings">What is known of them; the count must be known.</param>
public sealed record FixingQuestion(FixingSet Fixings)
{
    /// <summary>Stages as shares of the torque in percent, not falling, the last 100; empty for the customary two.</summary>
    public IReadOnlyList<double> StagePercents { get; init; } = [];

    /// <summary>K where it was measured or given.</summary>
    public double? NutFactor { get; init; }

    /// <summary>What lengthens the wrench, or null.</summary>
    public WrenchAdapter? Adapter { get; init; }

    /// <summary>The wrench in the hand, or null where nothing is known of it.</summary>
    public TorqueWrench? Wrench { get; init; }

    /// <summary>A goods vehicle over 3 500 kg, a bus or its trailer.</summary>
    public bool Heavy { get; init; }
}

/// <summary>One stage of the tightening.</summary>
/// <param name="Percent">Share of the torque.</param>
/// <param name="Torque">At the fixing, or null where the maker's torque is not known.</param>
/// <param name="WrenchSetting">
/// On the wrench, or null where the torque is not known or this wrench's scale does not hold it; the torque itself where nothing lengthens the wrench.
/// </param>
public sealed record TighteningStage(double Percent, Torque? Torque, Torque? WrenchSetting)
{
    /// <summary>Why this wrench is refused for the stage, or null.</summary>
    public string? Refused { get; init; }
}

/// <summary>What may reach a fixing at the last stage, by what the wrench's last check found.</summary>
/// <param name="Least">The least torque at the fixing.</param>
/// <param name="Most">The greatest.</param>
/// <param name="WorstPercent">The deviation that is farthest off, shown less reference.</param>
/// <param name="Off">Farther off than a hand torque wrench may be.</param>
public sealed record WrenchReach(Torque Least, Torque Most, double WorstPercent, bool Off);

/// <summary>How the fixings of one wheel are tightened, what clamp that gives, and what to mind.</summary>
public sealed record FixingPlan
{
    /// <summary>What it was made for.</summary>
    public required FixingQuestion Question { get; init; }

    /// <summary>The least-imbalance order.</summary>
    public required IReadOnlyList<int> Sequence { get; init; }

    /// <summary>The maker's own order, or null. It comes first.</summary>
    public IReadOnlyList<int>? MakerOrder { get; init; }

    /// <summary>The order to use: the maker's own where it was given.</summary>
    public IReadOnlyList<int> OrderInUse => MakerOrder ?? Sequence;

    /// <summary>The stages.</summary>
    public required IReadOnlyList<TighteningStage> Stages { get; init; }

    /// <summary>What the wrench's last check makes of the last stage, or null where torque or check is not known.</summary>
    public WrenchReach? Reach { get; init; }

    /// <summary>Which way the fixings turn.</summary>
    public TurnDirection Direction => new(Question.Fixings.LeftHand);

    /// <summary>The clamp, or null where torque or thread is not known.</summary>
    public ClampRange? Clamp { get; init; }

    /// <summary>The proof load of one fixing and where it comes from, or null where thread or class is not known.</summary>
    public Limit? ProofLoad { get; init; }

    /// <summary>The re-torque check.</summary>
    public required ReTorque ReTorque { get; init; }

    /// <summary>What was found.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>Cautions that stand with the numbers.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }

    /// <summary>The wheel before its first fixing is tightened.</summary>
    public TighteningProgress Begin() => TighteningProgress.Start(OrderInUse, [.. Stages.Select(s => s.Percent)]);

    /// <summary>The wheel as it was recorded by this plan, see <see cref="TighteningProgress.TakenUp"/>.</summary>
    public Measures.Reading<TighteningProgress> TakeUp(IReadOnlyList<RecordedStage> recorded, int interruptions) =>
        TighteningProgress.TakenUp(OrderInUse, [.. Stages.Select(s => s.Percent)], recorded, interruptions);
}

/// <summary>Which way a fixing is turned, as seen from outside the wheel.</summary>
/// <param name="LeftHand">Left-hand thread.</param>
public readonly record struct TurnDirection(bool LeftHand)
{
    /// <summary>To tighten.</summary>
    public string Tightens => LeftHand ? "anticlockwise" : "clockwise";

    /// <summary>To loosen.</summary>
    public string Loosens => LeftHand ? "clockwise" : "anticlockwise";
}
