namespace Trundle.Engine.Balance.Choice;

/// <summary>The part of a plane's circle where the middle of a piece may lie: a few arcs, their ends included. Angles in radians.</summary>
internal sealed class AllowedArcs
{
    private const double Slack = 1e-12;

    private AllowedArcs(bool whole, IReadOnlyList<(double From, double Length)> arcs) => (IsWhole, Arcs) = (whole, arcs);

    /// <summary>The whole circle.</summary>
    public static AllowedArcs Whole { get; } = new(true, [(0, Math.Tau)]);

    public bool IsWhole { get; }

    /// <summary>Arcs from an angle in [0, 2π) over a length; none where nothing is allowed.</summary>
    public IReadOnlyList<(double From, double Length)> Arcs { get; }

    public IEnumerable<double> Ends => IsWhole ? [] : Arcs.SelectMany(a => new[] { a.From, a.From + a.Length }).Distinct();

    /// <summary>What is left of the circle when arcs are taken out, each widened at both ends by half a piece.</summary>
    public static AllowedArcs Without(IEnumerable<(double From, double Length)> forbidden, double half)
    {
        var taken = new List<(double From, double To)>();
        foreach (var (from, length) in forbidden)
        {
            var wide = length + (2 * half);
            if (wide >= Math.Tau)
            {
                return new AllowedArcs(false, []);
            }

            var start = Turn(from - half);
            if (start + wide <= Math.Tau)
            {
                taken.Add((start, start + wide));
            }
            else
            {
                taken.Add((start, Math.Tau));
                taken.Add((0, start + wide - Math.Tau));
            }
        }

        if (taken.Count == 0)
        {
            return Whole;
        }

        taken.Sort();
        var free = new List<(double From, double Length)>();
        var at = 0.0;
        foreach (var (from, to) in taken)
        {
            // Two forbidden arcs that touch leave the place between them free; a whole turn that is crossed leaves none at nothing.
            if (from > at || (from == at && at > 0))
            {
                free.Add((at, from - at));
            }

            at = Math.Max(at, to);
        }

        if (at < Math.Tau)
        {
            free.Add((at, Math.Tau - at));
        }

        // An arc that ends at a whole turn and one that begins at nothing are one.
        if (free.Count > 1 && free[0].From == 0 && Math.Abs(free[^1].From + free[^1].Length - Math.Tau) < Slack)
        {
            free[^1] = (free[^1].From, free[^1].Length + free[0].Length);
            free.RemoveAt(0);
        }

        return new AllowedArcs(false, free);
    }

    public bool Contains(double angle)
    {
        if (IsWhole)
        {
            return true;
        }

        foreach (var (from, length) in Arcs)
        {
            var along = Turn(angle - from);
            if (along <= length + Slack || along >= Math.Tau - Slack)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The arcs common to both.</summary>
    public AllowedArcs And(AllowedArcs other) =>
        IsWhole ? other : other.IsWhole ? this : Without(Gaps().Concat(other.Gaps()), 0);

    /// <summary>The same arcs, turned.</summary>
    public AllowedArcs Turned(double by) => IsWhole ? this : new AllowedArcs(false, [.. Arcs.Select(a => (Turn(a.From + by), a.Length))]);

    public static double Turn(double angle)
    {
        var turned = angle % Math.Tau;
        return turned < 0 ? turned + Math.Tau : turned;
    }

    private IEnumerable<(double From, double Length)> Gaps()
    {
        if (Arcs.Count == 0)
        {
            return [(0, Math.Tau)];
        }

        if (Arcs.Count == 1)
        {
            return [(Turn(Arcs[0].From + Arcs[0].Length), Math.Tau - Arcs[0].Length)];
        }

        var sorted = Arcs.OrderBy(a => a.From).ToList();
        return sorted.Select((a, i) =>
        {
            var end = a.From + a.Length;
            return (Turn(end), Turn(sorted[(i + 1) % sorted.Count].From - end));
        });
    }
}
