using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.Reference;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Condition;

/// <summary>A first reading of the wear: across the tyre by the means of its places, around it by how a place's depths differ.</summary>
internal static class WearPattern
{
    public static void Check(CheckBook book, Assembly assembly)
    {
        if (assembly.Tread is not { } tread)
        {
            return;
        }

        var at = assembly.Position.ToString();
        var figure = Figures.Of("condition.wear-difference");
        var threshold = figure.As<Length>().Millimetres;
        var found = false;
        if (Mean(tread.Inner) is { } inner && Mean(tread.Centre) is { } centre && Mean(tread.Outer) is { } outer)
        {
            var measured = Amount.Word(string.Create(CultureInfo.InvariantCulture, $"inner {inner:0.0}, centre {centre:0.0}, outer {outer:0.0} mm"));
            var pattern = Across(inner, centre, outer, threshold);
            found = pattern is not null;
            if (pattern is not null)
            {
                // A motorcycle has no toe, no camber and no rotation: what wears its middle or one side is another thing.
                Say(book, book.Vehicle.SingleTrack && pattern is not "both-shoulders" ? $"wear.{pattern}.motorcycle" : $"wear.{pattern}", at, measured, figure);
            }
        }

        foreach (var (place, depths) in TreadCheck.Places(tread).Where(p => p.Depths.Count >= 3))
        {
            var range = depths.Max() - depths.Min();
            if (Reaches(range.Millimetres, threshold))
            {
                var measured = new Amount(range.Millimetres, "mm", string.Create(CultureInfo.InvariantCulture, $"{range.Millimetres:0.0#} mm around the {place}"));
                Say(book, "wear.uneven-round", at, measured, figure);
                return;
            }
        }

        if (!found && tread.Inner.Count > 0 && tread.Centre.Count > 0 && tread.Outer.Count > 0)
        {
            book.Judge("wear.even", at, false, Amount.Word("even across"), Apart(figure));
        }
    }

    /// <summary>The causes compete, so all of them are named, and what to look at first.</summary>
    private static void Say(CheckBook book, string rule, string at, Amount measured, Figure figure)
    {
        var row = book.Rule(rule);
        book.Judge(row, at, true, measured, Apart(figure), $"{row.Text} {row.Action}");
    }

    /// <summary>The limit is no depth: it is how far the places may be apart.</summary>
    private static Limit Apart(Figure figure) => figure.Limit(1) switch { var limit => limit with { Amount = limit.Amount with { Text = $"{limit.Amount.Text} apart" } } };

    private static string? Across(double inner, double centre, double outer, double threshold)
    {
        if (Reaches(inner - centre, threshold) && Reaches(outer - centre, threshold))
        {
            return "centre";
        }

        if (Reaches(centre - inner, threshold) && Reaches(centre - outer, threshold) && !Reaches(Math.Abs(inner - outer), threshold))
        {
            return "both-shoulders";
        }

        return Reaches(Math.Abs(inner - outer), threshold) ? "one-shoulder" : null;
    }

    private static bool Reaches(double difference, double threshold) => difference >= threshold - CheckBook.Hair;

    private static double? Mean(IReadOnlyList<Length> depths) => depths.Count == 0 ? null : depths.Average(d => d.Millimetres);
}
