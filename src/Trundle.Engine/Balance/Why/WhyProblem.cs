using Trundle.Measures;

namespace Trundle.Engine.Balance.Why;

/// <summary>A weight that was fitted after a spin, as it was read: it stays on for all later spins.</summary>
/// <param name="Plane">The side that it was meant for.</param>
/// <param name="Mass">The mass read on it.</param>
/// <param name="Place">The place that it was meant for.</param>
/// <param name="Kind">What it is, where that was told; null where not.</param>
public sealed record WeightFitted(PlaneSide Plane, Mass Mass, WheelAngle Place, WeightKind? Kind);

/// <summary>One spin.</summary>
/// <param name="Display">What the balancer showed: what to add in each plane that it reckons with, and where.</param>
/// <param name="FittedAfter">What was fitted after it.</param>
public sealed record WhySpin(UnbalancePair Display, IReadOnlyList<WeightFitted> FittedAfter);

/// <summary>Settings that were measured again after the spins; null where one was not.</summary>
public sealed record MeasuredAgain(Length? RimDistance, Length? RimDiameter, Length? RimWidth)
{
    /// <summary>Nothing was.</summary>
    public static MeasuredAgain Nothing { get; } = new(null, null, null);
}

/// <summary>Where the display's step comes from.</summary>
public enum DisplayStepFrom
{
    /// <summary>The profile tells it.</summary>
    Told,

    /// <summary>The last digit that was typed.</summary>
    Digits,

    /// <summary>Every value shown is a whole multiple of it.</summary>
    Values,
}

/// <summary>What is known of a wheel that will not come to zero.</summary>
public sealed record WhyProblem
{
    /// <summary>The settings entered.</summary>
    public required BalancerSettings Entered { get; init; }

    /// <summary>The balancer's profile.</summary>
    public BalancerProfile Profile { get; init; } = new();

    /// <summary>Where the step of the profile's display comes from.</summary>
    public DisplayStepFrom DisplayStepFrom { get; init; }

    /// <summary>What kind of weight was entered for the inner side.</summary>
    public WeightKind InnerKind { get; init; } = WeightKind.Clip;

    /// <summary>What kind of weight was entered for the outer side.</summary>
    public WeightKind OuterKind { get; init; } = WeightKind.Clip;

    /// <summary>Where the two transducers stand along the shaft, on the axis of the rim distance; null where not told.</summary>
    public (Length First, Length Second)? Transducers { get; init; }

    /// <summary>One standard deviation of a displayed component of one plane, above nothing.</summary>
    public required Mass Repeatability { get; init; }

    /// <summary>The step that displayed angles are known to, or null where they are exact.</summary>
    public Angle? AngleStep { get; init; }

    /// <summary>The whole assembly's mass, or null.</summary>
    public Mass? WheelMass { get; init; }

    /// <summary>The spins in order, at least one.</summary>
    public required IReadOnlyList<WhySpin> Spins { get; init; }

    /// <summary>Settings measured again.</summary>
    public MeasuredAgain MeasuredAgain { get; init; } = MeasuredAgain.Nothing;

    /// <summary>The units that estimates of rim distance, rim diameter and rim width are told in: those in which they were entered.</summary>
    public (string Distance, string Diameter, string Width) Units { get; init; } = ("mm", "in", "in");

    /// <summary>The planes that the balancer reckons with; null where an adhesive weight was entered whose place the profile does not tell, or the planes do not lie apart.</summary>
    public static PlanePair? Planes(BalancerSettings entered, BalancerProfile profile, WeightKind innerKind, WeightKind outerKind)
    {
        ArgumentNullException.ThrowIfNull(entered);
        ArgumentNullException.ThrowIfNull(profile);
        var inner = profile.PlaceOf(entered, PlaneSide.Inner, innerKind);
        var outer = profile.PlaceOf(entered, PlaneSide.Outer, outerKind);
        return inner is not null && outer is not null && PlanePair.LieApart(inner, outer) ? new PlanePair(inner, outer) : null;
    }

    /// <summary>The kind entered for a side.</summary>
    public WeightKind KindAt(PlaneSide side) => side switch
    {
        PlaneSide.Inner => InnerKind,
        PlaneSide.Outer => OuterKind,
    };
}
