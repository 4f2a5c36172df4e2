using System.Numerics;

namespace Trundle.Engine.Balance.Choice;

/// <summary>
/// What several pieces of one plane can make past forbidden arcs. The edge lies on circles: all pieces but one body stand at the ends of arcs, and
/// the body (a chain, or two opposite ones) turns. A vector within can be made with some pieces standing and two bodies that meet it
/// (docs/theory/balance.md), so whether it can be made is settled by trying those.
/// </summary>
internal sealed class ChainRegion
{
    private const int MostEdges = 4_000;

    private readonly ChoicePlane _plane;
    private readonly SearchBudget _budget;
    private readonly Lazy<PieceChains> _chains;

    public ChainRegion(ChoicePlane plane, IReadOnlyList<PieceType> set, SearchBudget budget)
    {
        (_plane, _budget) = (plane, budget);
        _chains = new Lazy<PieceChains>(() => new PieceChains(plane, set, budget));
    }

    /// <summary>The region with its edges inside a ring that bounds it; null where the pieces do not fit.</summary>
    public Reach? Within(Reach bound)
    {
        var edges = Edges(out var whole);
        return edges.Count == 0 && whole ? null : new Reach
        {
            Inner = bound.Inner,
            Outer = bound.Outer,
            Edges = edges,
            IsPatchy = true,
            IsPartial = !whole,
            Pieces = bound.Pieces,
            Realise = x => Made(x) ?? OnEdge(edges, x),
        };
    }

    /// <summary>Angles that make a vector inside the region; null where none were found.</summary>
    public double[]? Made(Complex x)
    {
        var chains = _chains.Value;
        for (var still = 0; still < chains.All; still++)
        {
            var moving = chains.All - still;
            var (least, most) = chains.ReachOf(moving);
            foreach (var standing in chains.Stands(still))
            {
                var left = x - standing.Sum;
                var size = left.Magnitude;
                if (!_budget.Spend(2))
                {
                    return null;
                }

                if (size >= least - 1e-9 && size <= most + 1e-9)
                {
                    foreach (var (types, angles) in Meetings(chains, _budget, standing, moving, left))
                    {
                        return chains.InOrder(types, angles);
                    }
                }
            }
        }

        return null;
    }

    /// <summary>A vector on an edge, where the ways to make it meet, so that rounding may hide it.</summary>
    private static double[]? OnEdge(List<Reach> edges, Complex x)
    {
        foreach (var edge in edges)
        {
            if (Math.Abs((x - edge.Centre).Magnitude - edge.Outer) <= 1e-9 * (1 + edge.Outer) && (edge.IsPoint || edge.Arcs.Contains((x - edge.Centre).Phase)))
            {
                return edge.Realise(x);
            }
        }

        return null;
    }

    private List<Reach> Edges(out bool whole)
    {
        var (chains, edges) = (_chains.Value, new List<Reach>());
        for (var still = 0; still < chains.All && _budget.IsLeft && edges.Count < MostEdges; still++)
        {
            foreach (var standing in chains.Stands(still))
            {
                foreach (var body in chains.Bodies(chains.All - still))
                {
                    if (!_budget.IsLeft || edges.Count >= MostEdges)
                    {
                        break;
                    }

                    if (chains.Free(body, standing) is { Arcs.Count: > 0 } arcs)
                    {
                        edges.Add(Edge(chains, body, standing, arcs));
                    }
                }
            }
        }

        whole = chains.IsWhole && _budget.IsLeft && edges.Count < MostEdges;
        return edges;
    }

    private Reach Edge(PieceChains chains, PieceBody body, StandingPieces standing, AllowedArcs arcs)
    {
        // A body whose sum is nothing makes the same wherever it stands.
        var nothing = body.Arm <= 1e-12 * _plane.RadiusMillimetres;
        var somewhere = arcs.Arcs[0].From;
        return new Reach
        {
            Centre = standing.Sum,
            Inner = nothing ? 0 : body.Arm,
            Outer = nothing ? 0 : body.Arm,
            Arcs = nothing ? AllowedArcs.Whole : arcs,
            Pieces = chains.Set,
            Realise = x =>
            {
                var direction = nothing ? somewhere : (x - standing.Sum).Phase;
                return chains.InOrder([.. standing.Types, .. body.Types], [.. standing.Angles, .. body.Ahead.Select(a => direction + a)]);
            },
        };
    }

    /// <summary>
    /// Pieces that stand, and two bodies that meet a vector: the chain that holds a piece of the first kind, and all other pieces as one body.
    /// </summary>
    public static IEnumerable<(int[] Types, double[] Angles)> Meetings(PieceChains chains, SearchBudget budget, StandingPieces standing, int moving, Complex left)
    {
        var (first, size, phase) = (chains.FirstOf(moving), left.Magnitude, left.Phase);
        for (var part = 1; part < moving; part++)
        {
            if (chains.Of(part, first) == 0 || !chains.IsIn(part, moving))
            {
                continue;
            }

            foreach (var a in chains.Chains(part))
            {
                foreach (var b in chains.Bodies(moving - part))
                {
                    if (!budget.Spend(2))
                    {
                        yield break;
                    }

                    if (size > a.Arm + b.Arm + 1e-9 || size < Math.Abs(a.Arm - b.Arm) - 1e-9 || size == 0 || a.Arm == 0)
                    {
                        continue;
                    }

                    var turn = Math.Acos(Math.Clamp(((size * size) + (a.Arm * a.Arm) - (b.Arm * b.Arm)) / (2 * size * a.Arm), -1, 1));
                    for (var side = 1; side >= -1; side -= 2)
                    {
                        var toA = phase + (side * turn);
                        var toB = (left - Complex.FromPolarCoordinates(a.Arm, toA)).Phase;
                        int[] types = [.. standing.Types, .. a.Types, .. b.Types];
                        double[] angles = [.. standing.Angles, .. a.Ahead.Select(x => toA + x), .. b.Ahead.Select(x => toB + x)];
                        if (chains.Fit(types, angles))
                        {
                            yield return (types, angles);
                        }
                    }
                }
            }
        }
    }
}
