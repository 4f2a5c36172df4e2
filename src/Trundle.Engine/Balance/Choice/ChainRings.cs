using System.Numerics;

namespace Trundle.Engine.Balance.Choice;

/// <summary>
/// What several pieces with lengths can make on a rim without forbidden arcs: whole circles about nothing. In one order around the rim every
/// arrangement can be moved into every other, so each order makes a ring, from its least sum to its greatest; both lie where the pieces touch in one
/// chain, or in two opposite ones, or at nothing (docs/theory/balance.md).
/// </summary>
internal sealed class ChainRings
{
    private readonly Lazy<PieceChains> _made;
    private readonly SearchBudget _budget;
    private readonly Dictionary<string, (Arranged Least, Arranged Most)> _rings = new(StringComparer.Ordinal);
    private bool _closed;

    public ChainRings(ChoicePlane plane, IReadOnlyList<PieceType> set, SearchBudget budget)
    {
        _budget = budget;
        _made = new Lazy<PieceChains>(() => new PieceChains(plane, set, budget));
    }

    /// <summary>Pieces around the rim in a fixed beginning of their order, with the gap after each.</summary>
    private sealed record Arranged(int[] Types, double[] Gaps, double Sum);

    private PieceChains Chains => _made.Value;

    /// <summary>The region with its edges inside a ring that bounds it; null where the pieces do not fit.</summary>
    public Reach? Within(Reach bound)
    {
        var radii = new List<double>();
        foreach (var body in Bodies())
        {
            if (!radii.Exists(r => Math.Abs(r - body.Arm) < 1e-9))
            {
                radii.Add(body.Arm);
            }
        }

        return radii.Count == 0 && Chains.IsWhole ? null : new Reach
        {
            Inner = bound.Inner,
            Outer = bound.Outer,
            Edges = [.. radii.Select(r => Reach.Circle(r, bound.Pieces, x => Made(Complex.FromPolarCoordinates(r, x.Phase))))],
            IsPatchy = true,
            IsPartial = !Chains.IsWhole || !_budget.IsLeft,
            Pieces = bound.Pieces,
            Realise = Made,
        };
    }

    private List<PieceBody> Bodies()
    {
        var bodies = Chains.Bodies(Chains.All);
        if (_rings.Count == 0)
        {
            foreach (var body in bodies)
            {
                Add(body.Types, body.Ahead);
            }
        }

        return bodies;
    }

    /// <summary>Angles that make a vector; null where none were found.</summary>
    public double[]? Made(Complex x)
    {
        const double Slack = 1e-9;
        var (radius, direction) = (x.Magnitude, x.Phase);
        Bodies();
        if (Between(radius, Slack) is not { } ring)
        {
            // Below every chain: only an order that can make nothing reaches there.
            if (_closed)
            {
                return null;
            }

            _closed = true;
            Close();
            if (Between(radius, Slack) is not { } below)
            {
                return null;
            }

            ring = below;
        }

        // From the one arrangement to the other the sum changes without a jump.
        var (low, high) = (0.0, 1.0);
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = SumOf(Part(ring, middle)).Sum.Magnitude < radius ? (middle, high) : (low, middle);
        }

        var (angles, sum) = SumOf(Part(ring, high));
        _budget.Spend(120 * angles.Length);
        var turn = direction - sum.Phase;
        return Chains.InOrder(ring.Least.Types, [.. angles.Select(a => a + turn)]);
    }

    private (Arranged Least, Arranged Most)? Between(double radius, double slack)
    {
        foreach (var ring in _rings.Values)
        {
            if (radius >= ring.Least.Sum - slack && radius <= ring.Most.Sum + slack)
            {
                return ring;
            }
        }

        return null;
    }

    private static Arranged Part((Arranged Least, Arranged Most) ring, double part) =>
        ring.Least with { Gaps = [.. ring.Least.Gaps.Select((g, i) => ((1 - part) * g) + (part * ring.Most.Gaps[i]))] };

    private (double[] Angles, Complex Sum) SumOf(Arranged arranged)
    {
        var angles = new double[arranged.Types.Length];
        for (var i = 1; i < angles.Length; i++)
        {
            angles[i] = angles[i - 1] + arranged.Gaps[i - 1];
        }

        return (angles, Chains.Sum(arranged.Types, angles));
    }

    /// <summary>Takes an arrangement into the ring of its order.</summary>
    private void Add(int[] types, double[] angles)
    {
        _budget.Spend(10 * types.Length);
        int[] around = [.. Enumerable.Range(0, types.Length).OrderBy(i => Math.Round(AllowedArcs.Turn(angles[i] + 1e-10), 9)).ThenBy(i => types[i])];
        var (first, key) = Enumerable.Range(0, around.Length)
            .Select(start => (start, string.Join(',', Enumerable.Range(0, around.Length).Select(i => types[around[(start + i) % around.Length]]))))
            .MinBy(k => k.Item2, StringComparer.Ordinal);
        int[] order = [.. Enumerable.Range(0, around.Length).Select(i => around[(first + i) % around.Length])];
        var gaps = new double[order.Length];
        for (var i = 0; i < order.Length; i++)
        {
            gaps[i] = AllowedArcs.Turn(angles[order[(i + 1) % order.Length]] - angles[order[i]] + 1e-10) - 1e-10;
        }

        // A single gap that closes the whole circle was turned to nothing.
        gaps[^1] += Math.Tau - gaps.Sum();
        var arranged = new Arranged([.. order.Select(i => types[i])], gaps, Chains.Sum(types, angles).Magnitude);
        _rings[key] = _rings.TryGetValue(key, out var ring)
            ? (arranged.Sum < ring.Least.Sum ? arranged : ring.Least, arranged.Sum > ring.Most.Sum ? arranged : ring.Most)
            : (arranged, arranged);
    }

    /// <summary>Every arrangement whose pieces make nothing together: one chain stands, two bodies meet its opposite.</summary>
    private void Close()
    {
        var first = Chains.FirstOf(Chains.All);
        for (var part = 1; part < Chains.All && _budget.IsLeft; part++)
        {
            if (Chains.Of(part, first) == 0)
            {
                continue;
            }

            foreach (var still in Chains.Chains(part))
            {
                var standing = new StandingPieces(still.Types, still.Ahead, still.Arm);
                foreach (var (types, angles) in ChainRegion.Meetings(Chains, _budget, standing, Chains.All - part, -still.Arm))
                {
                    Add(types, angles);
                }
            }
        }
    }
}
