using System.Numerics;

namespace Trundle.Engine.Balance.Choice;

/// <summary>
/// The vectors that some pieces of one plane can make together, in g·mm: a point, a circle or part of one about a centre, or a region whose
/// edges are such circles.
/// </summary>
internal sealed class Reach
{
    private double? _mass;
    private Reach? _grown;
    private bool _isGrown;

    public Complex Centre { get; init; }

    /// <summary>Least distance from the centre.</summary>
    public required double Inner { get; init; }

    /// <summary>Greatest distance from the centre.</summary>
    public required double Outer { get; init; }

    /// <summary>For a circle, where on it; whole otherwise.</summary>
    public AllowedArcs Arcs { get; init; } = AllowedArcs.Whole;

    /// <summary>For a region, circles and points that hold its whole boundary; empty for a circle or a point.</summary>
    public IReadOnlyList<Reach> Edges { get; init; } = [];

    public required IReadOnlyList<PieceType> Pieces { get; init; }

    public double MassGrams => _mass ??= Pieces.Sum(p => p.MassGrams);

    /// <summary>True where the region is only a bound from outside: not every vector in it can be made.</summary>
    public bool IsOuterBound { get; init; }

    /// <summary>The places of the pieces, in radians, that make a vector; null where they cannot.</summary>
    public required Func<Complex, double[]?> Realise { get; init; }

    public bool IsPoint => Outer == 0;

    public bool IsRegion => Edges.Count > 0;

    /// <summary>No piece.</summary>
    public static Reach Nothing { get; } = new() { Inner = 0, Outer = 0, Pieces = [], Realise = _ => [] };

    /// <summary>A whole circle about nothing.</summary>
    public static Reach Circle(double radius, IReadOnlyList<PieceType> pieces, Func<Complex, double[]?> realise) =>
        new() { Inner = radius, Outer = radius, Pieces = pieces, Realise = realise };

    /// <summary>For a region: true where a vector lies in it.</summary>
    public bool Contains(Complex vector)
    {
        var d = (vector - Centre).Magnitude;
        return d >= Inner && d <= Outer && (IsOuterBound || !IsPatchy || Realise(vector) is not null);
    }

    /// <summary>True where a vector can be made.</summary>
    public bool Holds(Complex vector) => IsPoint
        ? (vector - Centre).Magnitude < 1e-9
        : IsRegion ? Contains(vector) : Math.Abs((vector - Centre).Magnitude - Outer) <= 1e-9 * (1 + Outer) && Arcs.Contains((vector - Centre).Phase);

    /// <summary>True where the region does not fill the ring between its inner and outer distance.</summary>
    public bool IsPatchy { get; init; }

    /// <summary>True where some edges of the region are not known, so that more may be made than is told.</summary>
    public bool IsPartial { get; init; }

    /// <summary>For a bound from outside: works out what can be made in truth; answers null where the pieces do not fit.</summary>
    public Func<Reach, Reach?>? Whole { get; init; }

    /// <summary>What can be made in truth, worked out once; null where the pieces do not fit.</summary>
    public Reach? Grown()
    {
        if (!_isGrown)
        {
            (_isGrown, _grown) = (true, Whole is null ? this : Whole(this));
        }

        return _grown;
    }

    /// <summary>A distance that a vector has at least from this reach: to the ring about its centre.</summary>
    public double Distance(Complex vector)
    {
        var d = (vector - Centre).Magnitude;
        return d < Inner ? Inner - d : d > Outer ? d - Outer : 0;
    }
}
