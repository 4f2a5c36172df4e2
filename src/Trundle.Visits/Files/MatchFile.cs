using Trundle.Engine.Uniformity;
using Trundle.Engine.Uniformity.Matching;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Visits.Files;

/// <summary>What is matched on.</summary>
public enum MatchQuantity
{
    /// <summary>Radial force variation.</summary>
    ForceVariation,

    /// <summary>Runout.</summary>
    Runout,

    /// <summary>Unbalance.</summary>
    Unbalance,
}

/// <summary>One quantity of one part: a vector, or two of an unbalance in two planes.</summary>
/// <param name="Planes">The vectors.</param>
/// <param name="PlaceKnown">False where only sizes were given.</param>
public sealed record MeasuredPart<T>(IReadOnlyList<HarmonicVector<T>> Planes, bool PlaceKnown) where T : struct, IQuantity<T>;

/// <summary>One tyre or wheel as read.</summary>
public sealed record MatchItem(string Name, string Path)
{
    /// <summary>First harmonic of radial force, or null.</summary>
    public MeasuredPart<Force>? Force { get; init; }

    /// <summary>First harmonic of runout, or null.</summary>
    public MeasuredPart<Length>? Runout { get; init; }

    /// <summary>Unbalance, or null.</summary>
    public MeasuredPart<Unbalance>? Unbalance { get; init; }

    /// <summary>Of a tyre: the name of the wheel that it sits on, or null.</summary>
    public string? SitsOn { get; init; }

    /// <summary>Of a tyre: the names of the wheels that it may go on, or null for any.</summary>
    public IReadOnlyList<string>? MayGoOn { get; init; }

    /// <summary>Of a tyre: conicity and ply steer, or null.</summary>
    public LateralForceParts? Lateral { get; init; }

    /// <summary>What is known of the tyre, or null.</summary>
    public FittedTyre? Tyre { get; init; }

    /// <summary>What is known of the wheel, or null.</summary>
    public Wheel? Wheel { get; init; }
}

/// <summary>A file for matching, apart from its quantity.</summary>
public sealed record MatchFile
{
    /// <summary>What is matched on.</summary>
    public required MatchQuantity On { get; init; }

    /// <summary>The aim.</summary>
    public required MatchAim Aim { get; init; }

    /// <summary>Amplitudes are peak-to-peak throughout; else zero to peak.</summary>
    public required bool PeakToPeak { get; init; }

    /// <summary>Step of turns, or null.</summary>
    public required Angle? TurnStep { get; init; }

    /// <summary>Studs, where a wheel is turned on a hub and 'tyres' are assemblies, 'wheels' hubs; else null.</summary>
    public required int? Studs { get; init; }

    /// <summary>Radial stiffness that turned runout into force, or null.</summary>
    public required SourcedStiffness? Stiffness { get; init; }

    /// <summary>The tyres.</summary>
    public required IReadOnlyList<MatchItem> Tyres { get; init; }

    /// <summary>The wheels.</summary>
    public required IReadOnlyList<MatchItem> Wheels { get; init; }

    /// <summary>The file itself, for what depends on the quantity.</summary>
    public required FileObject Root { get; init; }

    /// <summary>It holds mountings of one assembly in place of tyres and wheels.</summary>
    public bool FromMountings => Tyres.Count == 0;
}
