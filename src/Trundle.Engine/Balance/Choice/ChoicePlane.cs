using System.Numerics;
using Trundle.Measures;

namespace Trundle.Engine.Balance.Choice;

/// <summary>One plane as the choice sees it: what it needs, what it can take, and where.</summary>
internal sealed class ChoicePlane
{
    public required PlaneSide Side { get; init; }

    public required WeightKind Kind { get; init; }

    public required double RadiusMillimetres { get; init; }

    /// <summary>What has to be added, in g·mm.</summary>
    public required Complex Need { get; init; }

    public required PieceTypes Types { get; init; }

    /// <summary>The places in degrees, or null where any angle will do.</summary>
    public required double[]? Places { get; init; }

    /// <summary>Forbidden arcs, in radians.</summary>
    public required IReadOnlyList<(double From, double Length)> Forbidden { get; init; }

    /// <summary>How many of each item of this plane's kind there are; -1 for no limit; null where nothing is counted.</summary>
    public required int[]? Counts { get; init; }

    /// <summary>All that the drawer holds for this plane; infinite where an item has no count.</summary>
    public double DrawerGrams { get; init; } = double.PositiveInfinity;

    /// <summary>The most pieces that the drawer can give this plane.</summary>
    public int DrawerPieces => Types.All.Count == 0 ? 0 : Counts is null || Counts.Any(c => c < 0) ? int.MaxValue : Counts.Sum();

    /// <summary>The same where a place holds one strip and no more: two strips side by side at one place are one.</summary>
    public int MostPieces => Kind == WeightKind.Adhesive && Places is { } places ? Math.Min(DrawerPieces, places.Length) : DrawerPieces;

    /// <summary>About what the need takes here: more than its own mass where it lies between two places.</summary>
    public double UsualGrams
    {
        get
        {
            var grams = Need.Magnitude / RadiusMillimetres;
            if (Places is not { Length: > 2 } places || grams == 0)
            {
                return grams;
            }

            var from = double.RadiansToDegrees(Need.Phase);
            var nearest = places.Select(p => Math.Abs(WheelAngle.FromDegrees(p - from + 180).Degrees - 180)).Order().Take(2).ToArray();
            var cosine = Math.Cos(double.DegreesToRadians(Math.Min(nearest[0] + nearest[1], 140) / 2));
            return grams / cosine;
        }
    }

    /// <summary>The least sine of the angle between two places that neither share a line nor a place; 1 where no two are so.</summary>
    public static double LeastSine(double[] places) =>
        (from a in places
         from b in places
         let sine = Math.Abs(Math.Sin(double.DegreesToRadians(a - b)))
         where sine > 1e-9
         select sine).DefaultIfEmpty(1).Min();

    /// <summary>Half the angle that a piece covers, in radians.</summary>
    public double HalfAngle(PieceType type) => type.SizeMillimetres / (2 * RadiusMillimetres);

    /// <summary>True where a piece is longer than the rim is round.</summary>
    public bool IsTooLong(PieceType type) => HalfAngle(type) > Math.PI;

    /// <summary>Where the middle of a piece may lie.</summary>
    public AllowedArcs Allowed(PieceType type) => Forbidden.Count == 0 ? AllowedArcs.Whole : AllowedArcs.Without(Forbidden, HalfAngle(type));

    public bool HasSizes => Types.All.Any(t => t.SizeMillimetres > 0);

    /// <summary>True where two pieces at these angles (radians) do not cover each other.</summary>
    public bool Clear(PieceType a, double angleA, PieceType b, double angleB) => Clear(HalfAngle(a) + HalfAngle(b), angleA, angleB);

    /// <summary>True where two angles are so far apart, around the circle.</summary>
    public static bool Clear(double room, double angleA, double angleB)
    {
        if (room == 0)
        {
            return true;
        }

        var apart = AllowedArcs.Turn(angleA - angleB);
        return Math.Min(apart, Math.Tau - apart) >= room - 1e-9;
    }

    /// <summary>What pieces at their places add, in g·mm.</summary>
    public Complex Sum(IEnumerable<PlacedPiece> pieces) =>
        pieces.Aggregate(Complex.Zero, (sum, p) => sum + Complex.FromPolarCoordinates(p.Type.MassGrams * RadiusMillimetres, p.Radians));

    /// <summary>The pieces of a reach at the places that make a vector; null where they cannot.</summary>
    public PlacedPiece[]? Placed(Reach reach, Complex vector) =>
        reach.Realise(vector) is { } angles ? [.. reach.Pieces.Select((type, i) => new PlacedPiece(type, Degrees(angles[i])))] : null;

    /// <summary>An angle in degrees, 0 ≤ angle &lt; 360; exactly the place or the end of a forbidden arc where it is that.</summary>
    public double Degrees(double radians)
    {
        var degrees = WheelAngle.FromRadians(radians).Degrees;
        foreach (var exact in Places ?? [.. Forbidden.SelectMany(f => new[] { f.From, f.From + f.Length }).Select(r => Math.Round(WheelAngle.FromRadians(r).Degrees, 9))])
        {
            var apart = Math.Abs(degrees - exact);
            if (Math.Min(apart, 360 - apart) < 1e-8)
            {
                return WheelAngle.FromDegrees(exact).Degrees;
            }
        }

        return degrees;
    }

    /// <summary>True where the drawer holds enough for all of these pieces together.</summary>
    public static bool Enough(int[]? counts, IEnumerable<PieceType> pieces)
    {
        if (counts is null)
        {
            return true;
        }

        var used = new int[counts.Length];
        foreach (var piece in pieces)
        {
            for (var i = 0; i < used.Length; i++)
            {
                used[i] += piece.Use[i];
                if (counts[i] >= 0 && used[i] > counts[i])
                {
                    return false;
                }
            }
        }

        return true;
    }
}
