using System.Numerics;
using Trundle.Measures;

namespace Trundle.Engine.Balance.Choice;

/// <summary>One piece that the drawer can give: a clip, or a strip made of segments.</summary>
/// <param name="MassGrams">Its mass.</param>
/// <param name="SizeMillimetres">Its length along the rim; 0 where nobody gave it.</param>
/// <param name="Use">How many of each stock item it takes.</param>
internal sealed record PieceType(double MassGrams, double SizeMillimetres, int[] Use);

/// <summary>A piece at its place.</summary>
internal readonly record struct PlacedPiece(PieceType Type, double Degrees)
{
    public double Radians => double.DegreesToRadians(Degrees);
}

/// <summary>The pieces that a plane can take, lightest first.</summary>
internal sealed class PieceTypes
{
    // More kinds of strip than this are not looked at; the choice is then not called proven.
    private const int Most = 600;

    private PieceTypes(IReadOnlyList<PieceType> types, double heaviestStripGrams) => (All, HeaviestStripGrams) = (types, heaviestStripGrams);

    public IReadOnlyList<PieceType> All { get; }

    /// <summary>Every strip up to this mass is listed; infinite where every piece is: clips, or strips under a hard limit.</summary>
    public double HeaviestStripGrams { get; }

    /// <summary>The pieces of a kind.</summary>
    /// <param name="kind">Clip or adhesive.</param>
    /// <param name="stock">The drawer's items of that kind.</param>
    /// <param name="usefulGrams">No single strip beyond this can be of use.</param>
    /// <param name="mostGrams">A hard limit on mass, or infinite.</param>
    public static PieceTypes Of(WeightKind kind, IReadOnlyList<StockItem> stock, double usefulGrams, double mostGrams)
    {
        var items = stock.Select((s, i) => (Grams: s.Mass.Grams, Size: s.Size?.Millimetres ?? 0, s.Count, Index: i)).Where(s => s.Count is not 0).ToList();
        var types = kind switch
        {
            WeightKind.Clip => items.Where(s => s.Grams <= mostGrams).Select(s => new PieceType(s.Grams, s.Size, OneOf(stock.Count, s.Index))).ToList(),
            WeightKind.Adhesive => Strips(items, stock.Count, Math.Min(usefulGrams, mostGrams)),
        };
        var kept = WithoutDominated(types, stock);
        var listed = kept.Take(Most).ToList();
        var heaviest = kept.Count > Most ? listed[^1].MassGrams
            : kind == WeightKind.Clip || mostGrams <= usefulGrams ? double.PositiveInfinity
            : usefulGrams;
        return new PieceTypes(listed, heaviest);
    }

    private static int[] OneOf(int count, int index)
    {
        var use = new int[count];
        use[index] = 1;
        return use;
    }

    /// <summary>Every strip up to a mass; of strips with the same mass and the same use of counted items, the shortest, then the one of fewest segments.</summary>
    private static List<PieceType> Strips(List<(double Grams, double Size, int? Count, int Index)> items, int stockCount, double mostGrams)
    {
        var best = new Dictionary<string, PieceType>(StringComparer.Ordinal) { [""] = new(0, 0, new int[stockCount]) };
        foreach (var item in items.OrderByDescending(i => i.Grams))
        {
            foreach (var start in best.Values.ToList())
            {
                var strip = start;
                for (var n = 1; n <= (item.Count ?? int.MaxValue) && best.Count < 20 * Most; n++)
                {
                    var use = (int[])strip.Use.Clone();
                    use[item.Index]++;
                    strip = new PieceType(strip.MassGrams + item.Grams, strip.SizeMillimetres + item.Size, use);
                    if (strip.MassGrams > mostGrams + 1e-9)
                    {
                        break;
                    }

                    var key = Key(strip, items);
                    if (!best.TryGetValue(key, out var other) || IsShorter(strip, other))
                    {
                        best[key] = strip;
                    }
                }
            }
        }

        best.Remove("");
        return [.. best.Values.OrderBy(t => t.MassGrams)];
    }

    private static bool IsShorter(PieceType a, PieceType b) =>
        a.SizeMillimetres < b.SizeMillimetres - 1e-9 || (a.SizeMillimetres <= b.SizeMillimetres + 1e-9 && a.Use.Sum() < b.Use.Sum());

    private static string Key(PieceType type, List<(double Grams, double Size, int? Count, int Index)> items) =>
        string.Join(',', items.Where(i => i.Count is not null).Select(i => type.Use[i.Index]).Append((int)Math.Round(type.MassGrams * 1e5)));

    /// <summary>Drops a piece for which another of the same mass takes no more of any counted item and is no longer.</summary>
    private static List<PieceType> WithoutDominated(List<PieceType> types, IReadOnlyList<StockItem> stock)
    {
        var counted = Enumerable.Range(0, stock.Count).Where(i => stock[i].Count is not null).ToArray();
        var kept = new List<PieceType>();
        foreach (var group in types.GroupBy(t => Math.Round(t.MassGrams, 5)).OrderBy(g => g.Key))
        {
            var among = new List<PieceType>();
            foreach (var type in group.OrderBy(t => t.SizeMillimetres).ThenBy(t => t.Use.Sum()))
            {
                if (!among.Any(o => o.SizeMillimetres <= type.SizeMillimetres && counted.All(i => o.Use[i] <= type.Use[i])))
                {
                    among.Add(type);
                }
            }

            kept.AddRange(among);
        }

        return kept;
    }
}

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

    /// <summary>Half the angle that a piece covers, in radians.</summary>
    public double HalfAngle(PieceType type) => type.SizeMillimetres / (2 * RadiusMillimetres);

    /// <summary>True where a piece is longer than the rim is round.</summary>
    public bool IsTooLong(PieceType type) => HalfAngle(type) > Math.PI;

    /// <summary>Where the middle of a piece may lie.</summary>
    public AllowedArcs Allowed(PieceType type) => Forbidden.Count == 0 ? AllowedArcs.Whole : AllowedArcs.Without(Forbidden, HalfAngle(type));

    public bool HasSizes => Types.All.Any(t => t.SizeMillimetres > 0);

    /// <summary>True where two pieces at these angles (radians) do not cover each other.</summary>
    public bool Clear(PieceType a, double angleA, PieceType b, double angleB)
    {
        var room = HalfAngle(a) + HalfAngle(b);
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
