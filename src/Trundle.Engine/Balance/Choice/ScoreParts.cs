using System.Numerics;

namespace Trundle.Engine.Balance.Choice;

/// <summary>One toleranced part of what is left: |OnInner·r1 + OnOuter·r2| over its tolerance, with r1 and r2 in g·mm.</summary>
/// <param name="Name">static, couple, inner or outer.</param>
/// <param name="OnInner">Factor of the inner plane's residual.</param>
/// <param name="OnOuter">Factor of the outer plane's residual.</param>
/// <param name="PerUnit">One over the tolerance, in the part's own unit.</param>
internal readonly record struct ScorePart(string Name, double OnInner, double OnOuter, double PerUnit)
{
    public double Factor(PlaneSide side) => side == PlaneSide.Inner ? OnInner : OnOuter;

    public double Of(Complex inner, Complex outer) => ((OnInner * inner) + (OnOuter * outer)).Magnitude * PerUnit;
}

/// <summary>The score of a residual: the greatest of its parts over their tolerances.</summary>
internal sealed class ScoreParts
{
    private readonly double[] _reach;

    private ScoreParts(ScorePart[] parts)
    {
        Parts = parts;
        Separate = parts.All(p => p.OnInner == 0 || p.OnOuter == 0);
        _reach = [Reach(PlaneSide.Inner), Reach(PlaneSide.Outer)];
    }

    public ScorePart[] Parts { get; }

    /// <summary>True where no part joins the two planes, so that each can be judged alone.</summary>
    public bool Separate { get; }

    public static ScoreParts Of(BalanceTolerance tolerance, PlanePair planes, PlanePair? readingPlanes)
    {
        var parts = new List<ScorePart>();
        if (tolerance.Static is { } s)
        {
            parts.Add(new ScorePart("static", 1, 1, 1 / s.GramMillimetres));
        }

        if (tolerance.Couple is { } c)
        {
            var half = planes.Apart.Millimetres / 2;
            parts.Add(new ScorePart("couple", -half, half, 1 / c.GramSquareMillimetres));
        }

        var judged = readingPlanes ?? planes;
        var (z1, z2) = (planes.Inner.Axial.Millimetres, planes.Outer.Axial.Millimetres);
        var (t1, t2) = (judged.Inner.Axial.Millimetres, judged.Outer.Axial.Millimetres);
        if (tolerance.Inner is { } inner)
        {
            parts.Add(new ScorePart("inner", (t2 - z1) / (t2 - t1), (t2 - z2) / (t2 - t1), 1 / inner.At(judged.Inner.Radius).GramMillimetres));
        }

        if (tolerance.Outer is { } outer)
        {
            parts.Add(new ScorePart("outer", (z1 - t1) / (t2 - t1), (z2 - t1) / (t2 - t1), 1 / outer.At(judged.Outer.Radius).GramMillimetres));
        }

        return parts.Count > 0 ? new ScoreParts([.. parts]) : throw new ArgumentException("A tolerance has at least one part.", nameof(tolerance));
    }

    /// <summary>The greatest residual in g·mm that a side can keep at score 1, whatever the other side does; infinite where the parts do not bound it.</summary>
    public double Bound(PlaneSide side) => _reach[(int)side];

    /// <summary>The score, and the sum of the squares of all parts that parts ties.</summary>
    public double Of(Complex inner, Complex outer, out double squares)
    {
        var most = 0.0;
        squares = 0;
        foreach (var part in Parts)
        {
            var value = part.Of(inner, outer);
            most = Math.Max(most, value);
            squares += value * value;
        }

        return most;
    }

    /// <summary>Where the other side's vector must lie, by the part that says most.</summary>
    public (Complex Centre, double Within) Disc(PlaneSide given, Complex residual, Complex otherNeed, double beat)
    {
        var (centre, within) = (otherNeed, double.PositiveInfinity);
        foreach (var part in Parts)
        {
            var (own, other) = given == PlaneSide.Inner ? (part.OnInner, part.OnOuter) : (part.OnOuter, part.OnInner);
            var reach = (beat / (Math.Abs(other) * part.PerUnit) * (1 + 1e-9)) + 1e-9;
            if (other != 0 && reach < within)
            {
                (centre, within) = (otherNeed - (own / other * residual), reach);
            }
        }

        return (centre, within);
    }

    private double Reach(PlaneSide side)
    {
        var least = double.PositiveInfinity;
        foreach (var p in Parts)
        {
            var (own, other) = side == PlaneSide.Inner ? (p.OnInner, p.OnOuter) : (p.OnOuter, p.OnInner);
            if (other == 0 && own != 0)
            {
                least = Math.Min(least, 1 / (Math.Abs(own) * p.PerUnit));
            }

            foreach (var q in Parts)
            {
                // Two parts together bound the side: eliminate the other side from them.
                var (own2, other2) = side == PlaneSide.Inner ? (q.OnInner, q.OnOuter) : (q.OnOuter, q.OnInner);
                var determinant = (own * other2) - (own2 * other);
                if (Math.Abs(determinant) > 1e-12 * ((Math.Abs(own) + Math.Abs(other)) * (Math.Abs(own2) + Math.Abs(other2))))
                {
                    least = Math.Min(least, ((Math.Abs(other2) / p.PerUnit) + (Math.Abs(other) / q.PerUnit)) / Math.Abs(determinant));
                }
            }
        }

        return least;
    }
}
