using System.Globalization;

namespace Trundle.Engine.Rotation;

/// <summary>Why a pattern is refused.</summary>
public enum RefusalReason
{
    /// <summary>It is made for another number of axles or wheels.</summary>
    Layout,

    /// <summary>Nothing is entered at a position that it moves.</summary>
    NothingFitted,

    /// <summary>A condemned tyre or wheel would be fitted again.</summary>
    Condemned,

    /// <summary>A tyre or wheel would be moved that is to be replaced.</summary>
    ReplaceFirst,

    /// <summary>A tyre or wheel would be moved that a person must judge first.</summary>
    ReferFirst,

    /// <summary>A temporary spare would be part of it.</summary>
    TemporarySpare,

    /// <summary>The spare is not like the others, or not known to be.</summary>
    SpareNotAlike,

    /// <summary>A tyre would come to an axle with another size.</summary>
    Size,

    /// <summary>A tyre or wheel would come to an axle that asks for more than it may carry.</summary>
    Load,

    /// <summary>A wheel would come to an axle or hub that it is not for.</summary>
    Wheel,

    /// <summary>Constructions would be mixed on an axle, or radial would stand in front of diagonal or bias-belted.</summary>
    Construction,

    /// <summary>A directional tyre would turn against its arrow; turning it round on its wheel could cure that.</summary>
    Direction,

    /// <summary>A directional tyre would turn against its arrow, and turning it round cannot cure that.</summary>
    DirectionForGood,

    /// <summary>The vehicle's maker says not to rotate.</summary>
    MakerSaysNone,
}

/// <summary>One reason why a pattern is refused, in a sentence.</summary>
public sealed record Refusal(RefusalReason Reason, string Why);

/// <summary>Where one assembly goes, and whether its tyre must be turned round on its wheel for it.</summary>
public sealed record RotationMove(Vehicles.Position From, Vehicles.Position To, bool Remount);

/// <summary>A pattern held against one vehicle.</summary>
/// <param name="Pattern">The pattern.</param>
/// <param name="Moves">Its moves, with those that need the tyre remounted.</param>
/// <param name="Refusals">Every reason against it; empty where it may be done as the assemblies are.</param>
/// <param name="Cautions">What stands beside it.</param>
public sealed record RotationVerdict(RotationPattern Pattern, IReadOnlyList<RotationMove> Moves, IReadOnlyList<Refusal> Refusals, IReadOnlyList<string> Cautions)
{
    /// <summary>It may be done with the assemblies as they are.</summary>
    public bool Allowed => Refusals.Count == 0;

    /// <summary>It may be done where the tyres that would turn the wrong way are turned round on their wheels.</summary>
    public bool AllowedWithRemounting => Refusals.All(r => r.Reason == RefusalReason.Direction);

    /// <summary>Why not, in one line: the first of each kind of reason, and how many more there are of it.</summary>
    public string Why => string.Join(" ", Refusals.GroupBy(r => r.Reason).Select(g => g.Count() == 1
        ? g.First().Why
        : string.Create(CultureInfo.InvariantCulture, $"{g.First().Why} {g.Count() - 1} more likewise.")));
}
