using Trundle.Measures;

namespace Trundle.Engine.Vehicles;

/// <summary>Where across a tread.</summary>
public enum TreadPlace
{
    /// <summary>Towards the vehicle.</summary>
    Inner,

    /// <summary>In the middle.</summary>
    Centre,

    /// <summary>Away from the vehicle.</summary>
    Outer,
}

/// <summary>The height of one rib over the groove bottom at its two edges, for feathering.</summary>
/// <param name="Place">Which rib.</param>
/// <param name="InnerEdge">At the edge towards the vehicle.</param>
/// <param name="OuterEdge">At the edge away from it.</param>
public readonly record struct RibEdges(TreadPlace Place, Length InnerEdge, Length OuterEdge);

/// <summary>The height of one block over the groove bottom at its two edges, for heel and toe.</summary>
/// <param name="Place">In which row.</param>
/// <param name="Leading">At the edge that meets the road first.</param>
/// <param name="Trailing">At the other.</param>
public readonly record struct BlockEdges(TreadPlace Place, Length Leading, Length Trailing);

/// <summary>Tread depths across the tyre at several places around it. Each list may be empty; places of one index belong together.</summary>
public sealed record TreadDepths(IReadOnlyList<Length> Inner, IReadOnlyList<Length> Centre, IReadOnlyList<Length> Outer)
{
    /// <summary>Where around the places of each index stand, from the valve; empty where they are spread equally.</summary>
    public IReadOnlyList<WheelAngle> Angles { get; init; } = [];

    /// <summary>Ribs measured at both edges.</summary>
    public IReadOnlyList<RibEdges> Ribs { get; init; } = [];

    /// <summary>Blocks measured at both edges.</summary>
    public IReadOnlyList<BlockEdges> Blocks { get; init; } = [];

    /// <summary>Every groove depth with the name of its place.</summary>
    public IEnumerable<(string Place, Length Depth)> All =>
        Inner.Select(d => ("inner", d)).Concat(Centre.Select(d => ("centre", d))).Concat(Outer.Select(d => ("outer", d)));

    /// <summary>The same tread seen with its other face outwards: inner and outer change places, and it turns the other way.</summary>
    public TreadDepths Turned() => new(Outer, Centre, Inner)
    {
        Angles = [.. Angles.Select(a => WheelAngle.FromDegrees(-a.Degrees))],
        Ribs = [.. Ribs.Select(r => new RibEdges(Turned(r.Place), r.OuterEdge, r.InnerEdge))],
        Blocks = [.. Blocks.Select(b => b with { Place = Turned(b.Place) })],
    };

    private static TreadPlace Turned(TreadPlace place) => place switch
    {
        TreadPlace.Inner => TreadPlace.Outer,
        TreadPlace.Centre => TreadPlace.Centre,
        TreadPlace.Outer => TreadPlace.Inner,
    };
}
