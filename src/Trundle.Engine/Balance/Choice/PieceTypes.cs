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

    /// <summary>The lightest piece; infinite where there is none.</summary>
    public double LightestGrams => All.Count > 0 ? All[0].MassGrams : double.PositiveInfinity;

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
