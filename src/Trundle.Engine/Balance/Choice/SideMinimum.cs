using System.Numerics;

namespace Trundle.Engine.Balance.Choice;

/// <summary>
/// The best vector of one side while the other side stands still: the least of the greatest of a few weighted distances, over a point, a
/// circle or a region. All places where that least can lie are known in closed form (one distance at its own least; two or three equal; an end
/// of an arc), so each is tried.
/// </summary>
internal ref struct SideMinimum
{
    private const int MostParts = 4;

    // A difference below this counts as none when scores are compared, so that the sum of squares can part them.
    private const double Tie = 1e-11;

    private readonly Span<Complex> _target;
    private readonly Span<double> _weight;
    private readonly double _squaresOfRest;
    private int _count;

    /// <summary>Sets up the distances of one side for what the other side leaves.</summary>
    /// <param name="parts">The parts of the score.</param>
    /// <param name="side">The side that is free.</param>
    /// <param name="need">What the free side needs.</param>
    /// <param name="otherResidual">What is placed less what is needed on the other side.</param>
    /// <param name="targets">Room for four.</param>
    /// <param name="weights">Room for four.</param>
    public SideMinimum(ScorePart[] parts, PlaneSide side, Complex need, Complex otherResidual, Span<Complex> targets, Span<double> weights)
    {
        _target = targets;
        _weight = weights;
        foreach (var part in parts)
        {
            var own = part.Factor(side);
            var other = part.Factor(side == PlaneSide.Inner ? PlaneSide.Outer : PlaneSide.Inner);
            if (own == 0)
            {
                var rest = Math.Abs(other) * otherResidual.Magnitude * part.PerUnit;
                Floor = Math.Max(Floor, rest);
                _squaresOfRest += rest * rest;
            }
            else
            {
                _target[_count] = need - (other / own * otherResidual);
                _weight[_count++] = Math.Abs(own) * part.PerUnit;
            }
        }
    }

    /// <summary>The score that the other side makes alone: nothing here can go below it.</summary>
    public double Floor { get; set; }

    /// <summary>The best vector found.</summary>
    public Complex Vector { get; private set; }

    /// <summary>Its score.</summary>
    public double Score { get; private set; } = double.PositiveInfinity;

    /// <summary>Its sum of squares, that parts ties.</summary>
    public double Squares { get; private set; } = double.PositiveInfinity;

    /// <summary>Vectors looked at.</summary>
    public int Work { get; private set; }

    /// <summary>Finds the best vector of a reach.</summary>
    public void Over(Reach reach)
    {
        if (reach.IsPoint)
        {
            Try(reach.Centre);
            return;
        }

        var mean = Mean();
        if (!reach.IsRegion)
        {
            OnCircle(reach, mean);
            return;
        }

        foreach (var edge in reach.Edges)
        {
            Work += 2;
            if (IsFar(edge))
            {
                continue;
            }

            if (edge.IsPoint)
            {
                Try(edge.Centre);
            }
            else
            {
                OnCircle(edge, mean);
            }
        }

        Inside(reach, mean);
    }

    /// <summary>True where no vector of a circle or point can be better than the best so far.</summary>
    private readonly bool IsFar(Reach edge)
    {
        for (var j = 0; j < _count; j++)
        {
            if (_weight[j] * edge.Distance(_target[j]) > Score + Tie)
            {
                return true;
            }
        }

        return false;
    }

    private void Try(Complex x)
    {
        Work++;
        var score = Floor;
        var squares = _squaresOfRest;
        for (var j = 0; j < _count; j++)
        {
            var value = _weight[j] * (x - _target[j]).Magnitude;
            score = Math.Max(score, value);
            squares += value * value;
        }

        if (score < Score - Tie || (score <= Score + Tie && squares < Squares))
        {
            (Vector, Score, Squares) = (x, score, squares);
        }
    }

    private readonly Complex Mean()
    {
        var (sum, weights) = (Complex.Zero, 0.0);
        for (var j = 0; j < _count; j++)
        {
            sum += _weight[j] * _weight[j] * _target[j];
            weights += _weight[j] * _weight[j];
        }

        return weights > 0 ? sum / weights : Complex.Zero;
    }

    private void OnCircle(Reach reach, Complex mean)
    {
        var radius = reach.Outer;
        TryAt(reach, radius, (mean - reach.Centre).Phase);
        for (var j = 0; j < _count; j++)
        {
            var e = _target[j] - reach.Centre;
            var w2 = _weight[j] * _weight[j];
            TryAt(reach, radius, e.Phase);
            if (Floor > 0)
            {
                // Where this distance is as great as the other side's score: beyond, it would rule.
                Where(reach, radius, -2 * radius * e, (Floor * Floor / w2) - (radius * radius) - Square(e));
            }

            for (var k = 0; k < j; k++)
            {
                var f = _target[k] - reach.Centre;
                var v2 = _weight[k] * _weight[k];
                Where(reach, radius, -2 * radius * ((w2 * e) - (v2 * f)), (v2 * ((radius * radius) + Square(f))) - (w2 * ((radius * radius) + Square(e))));
            }
        }

        if (!reach.Arcs.IsWhole)
        {
            foreach (var (from, length) in reach.Arcs.Arcs)
            {
                Try(reach.Centre + Complex.FromPolarCoordinates(radius, from));
                Try(reach.Centre + Complex.FromPolarCoordinates(radius, from + length));
            }
        }
    }

    /// <summary>Tries the two places of a circle where Re(conj(c)·e^{iθ}) is so much.</summary>
    private void Where(Reach reach, double radius, Complex c, double value)
    {
        var size = c.Magnitude;
        if (size > 0 && Math.Abs(value) <= size)
        {
            var half = Math.Acos(value / size);
            TryAt(reach, radius, c.Phase + half);
            TryAt(reach, radius, c.Phase - half);
        }
    }

    private void TryAt(Reach reach, double radius, double angle)
    {
        if (reach.Arcs.Contains(angle))
        {
            Try(reach.Centre + Complex.FromPolarCoordinates(radius, angle));
        }
    }

    private void Inside(Reach reach, Complex mean)
    {
        // Whether a vector of a region with gaps can be made takes work. The score has one least with no reach at all: where that cannot be made, no
        // other vector inside is better than all edges.
        if (reach.IsPatchy)
        {
            var free = this;
            free.Score = free.Squares = double.PositiveInfinity;
            free.Candidates(null, mean);
            if ((free.Score < Score - Tie || (free.Score <= Score + Tie && free.Squares < Squares)) && reach.Contains(free.Vector))
            {
                Try(free.Vector);
            }

            return;
        }

        Candidates(reach, mean);
    }

    private void Candidates(Reach? reach, Complex mean)
    {
        TryInside(reach, mean);
        for (var i = 0; i < _count; i++)
        {
            TryInside(reach, _target[i]);
            for (var j = 0; j < i; j++)
            {
                TryInside(reach, ((_weight[i] * _target[i]) + (_weight[j] * _target[j])) / (_weight[i] + _weight[j]));
                for (var k = 0; k < j; k++)
                {
                    Equal(reach, i, j, k);
                }
            }
        }
    }

    /// <summary>Tries the two points where three weighted distances are equal.</summary>
    private void Equal(Reach? reach, int i, int j, int k)
    {
        // w²|x − d|² equal for i and j, and for i and k: each is α·s − 2·p·x + c = 0 with s = |x|². Measured from d_i, which is then nothing.
        var (wi, wj, wk) = (_weight[i] * _weight[i], _weight[j] * _weight[j], _weight[k] * _weight[k]);
        var (dj, dk) = (_target[j] - _target[i], _target[k] - _target[i]);
        var (pj, pk) = (wj * dj, wk * dk);
        var determinant = 2 * ((pj.Real * pk.Imaginary) - (pj.Imaginary * pk.Real));
        if (Math.Abs(determinant) < 1e-12 * pj.Magnitude * pk.Magnitude || determinant == 0)
        {
            return;
        }

        // 2·p_j·x = (wj − wi)·s + cj, and the same for k: x = x0 + x1·s.
        var (cj, ck) = (wj * Square(dj), wk * Square(dk));
        var x0 = new Complex(((cj * pk.Imaginary) - (ck * pj.Imaginary)) / determinant, ((pj.Real * ck) - (pk.Real * cj)) / determinant);
        var (sj, sk) = (wj - wi, wk - wi);
        var x1 = new Complex(((sj * pk.Imaginary) - (sk * pj.Imaginary)) / determinant, ((pj.Real * sk) - (pk.Real * sj)) / determinant);
        var a = Square(x1);
        var b = (2 * ((x0.Real * x1.Real) + (x0.Imaginary * x1.Imaginary))) - 1;
        var c = Square(x0);
        if (a < 1e-300)
        {
            TryInside(reach, _target[i] + x0 + (x1 * (-c / b)));
            return;
        }

        var discriminant = (b * b) - (4 * a * c);
        if (discriminant < 0)
        {
            return;
        }

        var q = -0.5 * (b + (Math.Sign(b) * Math.Sqrt(discriminant)));
        if (q != 0)
        {
            TryInside(reach, _target[i] + x0 + (x1 * (q / a)));
            TryInside(reach, _target[i] + x0 + (x1 * (c / q)));
        }
    }

    private void TryInside(Reach? reach, Complex x)
    {
        if (reach is null || reach.Contains(x))
        {
            Try(x);
        }
    }

    private static double Square(Complex value) => (value.Real * value.Real) + (value.Imaginary * value.Imaginary);

    /// <summary>Room that a caller has to give.</summary>
    public static int Room => MostParts;
}
