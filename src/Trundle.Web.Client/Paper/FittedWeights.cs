using Trundle.Engine.Balance;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Paper;
using Trundle.Web.Client.Balance;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Paper;

/// <summary>The balance weights that were fitted on this visit, piece of the drawer by piece, as stock that was used.</summary>
public static class FittedWeights
{
    private const string Step = "weights-on";

    /// <summary>Of every wheel at which the weights are recorded as on: each kind and mass, and how many.</summary>
    public static IReadOnlyList<StockUsed> Of(OpenVisit visit)
    {
        ArgumentNullException.ThrowIfNull(visit);
        return
        [
            .. visit.Reading.Read.Balance.Keys
                .Where(p => visit.State.Work.At(p.ToString(), Step) is not null)
                .SelectMany(p => WheelBalance.Of(visit, p).Outcome?.Weights ?? [])
                .SelectMany(w => w.Segments.Count == 0 ? [(w.Kind, w.Mass)] : w.Segments.Select(s => (w.Kind, Mass: s)))
                .GroupBy(s => StockName.Key(KindOf(s.Kind), null, s.Mass))
                .Select(g => new StockUsed(KindOf(g.First().Kind), null, g.First().Mass, g.Count()))
                .OrderBy(s => s.Kind).ThenBy(s => s.Mass!.Value.Grams),
        ];
    }

    /// <summary>The texts that make the visit's used weights these: a kind and mass that stands already gets their number, another a place of its own.</summary>
    public static (string Field, string Typed)[] Takes(OpenVisit visit, IReadOnlyList<StockUsed> fitted)
    {
        ArgumentNullException.ThrowIfNull(visit);
        ArgumentNullException.ThrowIfNull(fitted);
        var there = StockUses.Of(visit.Fields);
        var free = FieldList.Free(visit, UsedPart.Stock);
        var texts = new List<(string, string)>();
        foreach (var weight in fitted)
        {
            var key = StockName.Key(weight.Kind, null, weight.Mass);
            var at = there.FirstOrDefault(u => StockName.Key(u.Used.Kind, u.Used.Item, u.Used.Mass) == key)?.Place;
            if (at is null)
            {
                at = FormattableString.Invariant($"{UsedPart.Stock}.{free++}");
                texts.Add(($"{at}.kind", weight.Kind.Word()));
                texts.Add(($"{at}.mass", MassText(weight.Mass!.Value)));
            }

            texts.Add(($"{at}.count", FormattableString.Invariant($"{weight.Count}")));
        }

        return [.. texts];
    }

    /// <summary>A mass as a file reads it.</summary>
    internal static string MassText(Mass mass) => FormattableString.Invariant($"{Math.Round(mass.Grams, 2)} g");

    private static StockKind KindOf(WeightKind kind) => kind switch
    {
        WeightKind.Clip => StockKind.Clip,
        WeightKind.Adhesive => StockKind.Adhesive,
    };
}
