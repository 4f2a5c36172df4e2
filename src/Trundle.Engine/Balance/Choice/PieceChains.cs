using System.Numerics;

namespace Trundle.Engine.Balance.Choice;

/// <summary>Pieces that turn as one: kinds by number, each ahead of the direction of their sum by a fixed angle, and the size of that sum in g·mm.</summary>
internal readonly record struct PieceBody(int[] Types, double[] Ahead, double Arm);

/// <summary>Pieces that stand still: kinds by number, their angles in radians, and their sum in g·mm.</summary>
internal readonly record struct StandingPieces(int[] Types, double[] Angles, Complex Sum);

/// <summary>
/// The ways in which some pieces of one plane can touch: in chains that turn freely, two chains in line, and chains that stand at the end of a
/// forbidden arc. Between them these hold every arrangement at which what the pieces make can be at its edge (docs/theory/balance.md). A subset of
/// the pieces is a whole number: how many of each kind, in a mixed base.
/// </summary>
internal sealed class PieceChains
{
    // Orders of one chain and stands that are listed at most; beyond, the region is known in part only.
    private const int MostOrders = 800;
    private const int MostStands = 20_000;

    private readonly ChoicePlane _plane;
    private readonly SearchBudget _budget;
    private readonly double[] _halves;
    private readonly double[] _arms;
    private readonly AllowedArcs[] _arcs;
    private readonly int[] _base;
    private readonly int[] _counts;
    private readonly (double Angle, int Direction)[] _ends;
    private readonly List<PieceBody>?[] _chains;
    private readonly List<PieceBody>?[] _bodies;
    private readonly List<StandingPieces>?[] _stands;

    public PieceChains(ChoicePlane plane, IReadOnlyList<PieceType> set, SearchBudget budget)
    {
        (_plane, _budget, Set) = (plane, budget, set);
        Types = [.. set.Distinct()];
        _counts = [.. Types.Select(t => set.Count(s => ReferenceEquals(s, t)))];
        _halves = [.. Types.Select(plane.HalfAngle)];
        _arms = [.. Types.Select(t => t.MassGrams * plane.RadiusMillimetres)];
        _arcs = [.. Types.Select(plane.Allowed)];
        _base = new int[Types.Length];
        var subsets = 1;
        for (var t = 0; t < Types.Length; t++)
        {
            _base[t] = subsets;
            subsets *= _counts[t] + 1;
        }

        All = subsets - 1;
        (_chains, _bodies, _stands) = (new List<PieceBody>[subsets], new List<PieceBody>[subsets], new List<StandingPieces>[subsets]);
        _ends = [.. plane.Forbidden.SelectMany(f => new[] { (f.From, -1), (f.From + f.Length, 1) })];

        // Two chains that turn freely can only point the same way where one of them reaches half round the rim.
        var sizes = set.Select(plane.HalfAngle).Order().ToArray();
        IsWhole = (2 * sizes.Sum()) - (4 * sizes[0]) < Math.PI;
    }

    /// <summary>The pieces, equal ones side by side.</summary>
    public IReadOnlyList<PieceType> Set { get; }

    /// <summary>Their kinds.</summary>
    public PieceType[] Types { get; }

    /// <summary>The subset of all pieces; every number from nothing up to this is a subset.</summary>
    public int All { get; }

    /// <summary>False from the moment when something had to be left out.</summary>
    public bool IsWhole { get; private set; }

    /// <summary>How many of a kind a subset holds.</summary>
    public int Of(int subset, int type) => subset / _base[type] % (_counts[type] + 1);

    /// <summary>How many pieces a subset holds.</summary>
    public int Size(int subset)
    {
        var size = 0;
        for (var t = 0; t < Types.Length; t++)
        {
            size += Of(subset, t);
        }

        return size;
    }

    /// <summary>True where every piece of one subset is in another; then their difference is the subset of the others.</summary>
    public bool IsIn(int part, int subset)
    {
        for (var t = 0; t < Types.Length; t++)
        {
            if (Of(part, t) > Of(subset, t))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The first kind that a subset holds.</summary>
    public int FirstOf(int subset)
    {
        var t = 0;
        while (Of(subset, t) == 0)
        {
            t++;
        }

        return t;
    }

    /// <summary>The least and the greatest sum that the pieces of a subset could make anywhere.</summary>
    public (double Least, double Most) ReachOf(int subset)
    {
        var (heaviest, most) = (0.0, 0.0);
        for (var t = 0; t < Types.Length; t++)
        {
            if (Of(subset, t) is > 0 and var n)
            {
                heaviest = Math.Max(heaviest, _arms[t]);
                most += n * _arms[t];
            }
        }

        return (Math.Max(0, (2 * heaviest) - most), most);
    }

    /// <summary>All pieces of a subset in one chain, in every order. Pieces without length stand at one place; their order is nothing.</summary>
    public List<PieceBody> Chains(int subset)
    {
        if (_chains[subset] is { } known)
        {
            return known;
        }

        var list = _chains[subset] = [];
        var size = Size(subset);
        var (order, at) = (new int[size], new double[size]);
        if (Orders(subset, size) <= MostOrders)
        {
            Extend(0, subset);
        }
        else
        {
            IsWhole = false;
            Piped(subset, order);
            for (var i = 1; i < size; i++)
            {
                at[i] = at[i - 1] + _halves[order[i - 1]] + _halves[order[i]];
            }

            Add();
        }

        return list;

        void Extend(int i, int rest)
        {
            if (i == size)
            {
                Add();
                return;
            }

            for (var t = 0; t < Types.Length; t++)
            {
                if (Of(rest, t) == 0 || (i > 0 && _halves[t] == 0 && _halves[order[i - 1]] == 0 && t < order[i - 1]))
                {
                    continue;
                }

                order[i] = t;
                at[i] = i == 0 ? 0 : at[i - 1] + _halves[order[i - 1]] + _halves[t];
                Extend(i + 1, rest - _base[t]);
            }
        }

        void Add()
        {
            if (Spend(4 * size) && (size == 1 || at[^1] + _halves[order[0]] + _halves[order[^1]] <= Math.Tau + 1e-9))
            {
                list.Add(Body([.. order], [.. at]));
            }
        }
    }

    /// <summary>The pieces of a subset as one body: one chain, or two whose sums lie opposite each other.</summary>
    public List<PieceBody> Bodies(int subset)
    {
        if (_bodies[subset] is { } known)
        {
            return known;
        }

        var list = _bodies[subset] = [.. Chains(subset)];
        for (var part = 1; part <= subset - part; part++)
        {
            if (!IsIn(part, subset))
            {
                continue;
            }

            foreach (var a in Chains(part))
            {
                foreach (var b in Chains(subset - part))
                {
                    if (!Spend(8 * (a.Types.Length + b.Types.Length)))
                    {
                        return list;
                    }

                    var turn = a.Arm >= b.Arm ? 0 : Math.PI;
                    double[] ahead = [.. a.Ahead.Select(x => x + turn), .. b.Ahead.Select(x => x + Math.PI - turn)];
                    int[] types = [.. a.Types, .. b.Types];
                    if (AreClear(types, ahead, a.Types.Length))
                    {
                        list.Add(new PieceBody(types, ahead, Math.Abs(a.Arm - b.Arm)));
                    }
                }
            }
        }

        return list;
    }

    /// <summary>Every way in which all pieces of a subset stand in chains that end at forbidden arcs.</summary>
    public List<StandingPieces> Stands(int subset)
    {
        if (_stands[subset] is { } known)
        {
            return known;
        }

        var list = _stands[subset] = [];
        var size = Size(subset);
        var (types, angles) = (new int[size], new double[size]);
        Next(0, subset, 0, -1);
        return list;

        // A piece without length leaves the end to the next; any other takes it.
        void Next(int at, int rest, int end, int lengthless)
        {
            if (rest == 0)
            {
                if (list.Count == MostStands)
                {
                    IsWhole = false;
                }
                else
                {
                    list.Add(new StandingPieces([.. types], [.. angles], Sum(types, angles)));
                }

                return;
            }

            for (var e = end; e < _ends.Length; e++)
            {
                var before = e == end ? lengthless : -1;
                for (var part = 1; part <= rest; part++)
                {
                    if (!IsIn(part, rest))
                    {
                        continue;
                    }

                    foreach (var chain in Chains(part))
                    {
                        var first = chain.Types[0];
                        var hasNoLength = _halves[first] == 0;
                        if ((hasNoLength && (chain.Types.Length > 1 || first < before)) || list.Count == MostStands)
                        {
                            continue;
                        }

                        if (!Spend(8 * chain.Types.Length))
                        {
                            return;
                        }

                        for (var i = 0; i < chain.Types.Length; i++)
                        {
                            types[at + i] = chain.Types[i];
                            angles[at + i] = _ends[e].Angle + (_ends[e].Direction * (_halves[first] + chain.Ahead[i] - chain.Ahead[0]));
                        }

                        if (AreAllowed(types, angles, at, at + chain.Types.Length) && AreClear(types, angles, at, at + chain.Types.Length))
                        {
                            Next(at + chain.Types.Length, rest - part, hasNoLength ? e : e + 1, hasNoLength ? first : -1);
                        }
                    }
                }
            }
        }
    }

    /// <summary>Where the sum of a body may point while other pieces stand still.</summary>
    public AllowedArcs Free(PieceBody body, StandingPieces standing)
    {
        const double Slack = 1e-12;
        var taken = new List<(double From, double Length)>();
        for (var i = 0; i < body.Types.Length; i++)
        {
            var half = _halves[body.Types[i]];
            if (half > Math.PI)
            {
                return AllowedArcs.Without([(0, Math.Tau)], 0);
            }

            foreach (var (from, length) in _plane.Forbidden)
            {
                taken.Add((from - half - body.Ahead[i] + Slack, length + (2 * half) - (2 * Slack)));
            }

            for (var j = 0; j < standing.Types.Length; j++)
            {
                if (half + _halves[standing.Types[j]] is > 0 and var room)
                {
                    taken.Add((standing.Angles[j] - room - body.Ahead[i] + Slack, 2 * (room - Slack)));
                }
            }
        }

        _budget.Spend(6 * (taken.Count + 1));
        return AllowedArcs.Without(taken, 0);
    }

    /// <summary>True where all pieces lie on their arcs and clear of each other.</summary>
    public bool Fit(int[] types, double[] angles)
    {
        _budget.Spend(2 * types.Length);
        return AreAllowed(types, angles, 0, types.Length) && AreClear(types, angles, 0, types.Length);
    }

    /// <summary>Angles of the pieces in the order of <see cref="Set"/>.</summary>
    public double[] InOrder(int[] types, double[] angles)
    {
        var next = new int[Types.Length];
        for (var t = 1; t < next.Length; t++)
        {
            next[t] = next[t - 1] + _counts[t - 1];
        }

        var ordered = new double[Set.Count];
        for (var i = 0; i < types.Length; i++)
        {
            ordered[next[types[i]]++] = angles[i];
        }

        return ordered;
    }

    /// <summary>What pieces at their angles add.</summary>
    public Complex Sum(int[] types, double[] angles)
    {
        var sum = Complex.Zero;
        for (var i = 0; i < types.Length; i++)
        {
            sum += Complex.FromPolarCoordinates(_arms[types[i]], angles[i]);
        }

        return sum;
    }

    /// <summary>Half the angle that a kind covers.</summary>
    public double Half(int type) => _halves[type];

    /// <summary>Takes work for what is kept; where none is left, something is missing from then on.</summary>
    private bool Spend(int work)
    {
        if (_budget.Spend(work))
        {
            return true;
        }

        IsWhole = false;
        return false;
    }

    private PieceBody Body(int[] order, double[] at)
    {
        var sum = Sum(order, at);
        var lead = sum.Magnitude > 1e-12 * _arms[order[0]] ? sum.Phase : 0;
        for (var i = 0; i < at.Length; i++)
        {
            at[i] -= lead;
        }

        return new PieceBody(order, at, sum.Magnitude);
    }

    private bool AreAllowed(int[] types, double[] angles, int from, int to)
    {
        for (var i = from; i < to; i++)
        {
            if (!_arcs[types[i]].Contains(angles[i]))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>True where the pieces from one on are clear of all that come before them.</summary>
    private bool AreClear(int[] types, double[] angles, int from, int to = -1)
    {
        for (var i = Math.Max(1, from); i < (to < 0 ? types.Length : to); i++)
        {
            for (var j = 0; j < i; j++)
            {
                if (!ChoicePlane.Clear(_halves[types[i]] + _halves[types[j]], angles[i], angles[j]))
                {
                    return false;
                }
            }
        }

        return true;
    }

    /// <summary>How many orders the pieces of a subset have.</summary>
    private double Orders(int subset, int size)
    {
        var orders = 1.0;
        for (var t = 0; t < Types.Length; t++)
        {
            for (var n = 1; n <= Of(subset, t); n++)
            {
                orders *= (double)size-- / n;
            }
        }

        return orders;
    }

    /// <summary>The heaviest in the middle, lighter ones outwards to both sides in turn.</summary>
    private void Piped(int subset, int[] order)
    {
        var (low, high) = (0, order.Length - 1);
        for (var t = 0; t < Types.Length; t++)
        {
            for (var n = 0; n < Of(subset, t); n++)
            {
                order[low <= order.Length - 1 - high ? low++ : high--] = t;
            }
        }
    }
}
