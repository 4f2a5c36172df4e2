using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Fitment;

/// <summary>What the tyres of one axle have in common: size, service description, winter marks; and whether all of them were entered.</summary>
internal static class AxleMatch
{
    public static void Check(CheckBook book)
    {
        if (book.Vehicle.Axles.Count == 0)
        {
            book.Need(null, "the vehicle's axles from the front, each with placard, fixings and hub", "what is fitted is held against them");
        }

        for (var axle = 1; axle <= Drivetrain.AxleCount(book.Subject); axle++)
        {
            var all = book.Subject.OnAxle(axle);
            MissingWheels.Check(book, axle);
            var marked = all.Where(a => a.Tyre?.Marking is { } m && m.Size.TyreClass != TyreClass.TemporarySpare).ToList();
            if (marked.Count > 1)
            {
                Axle(book, CheckBook.AxleName(axle), marked);
            }
        }
    }

    private static void Axle(CheckBook book, string at, IReadOnlyList<Assembly> marked)
    {
        var sizes = marked.Select(a => a.Tyre!.Marking!.Size).ToList();
        var relation = sizes.Skip(1).Select(s => SizeMatch.Relation(sizes[0], s)).Max(Rank);
        var measured = Said(marked, m => m.Size.Text);
        book.Judge("axle.size", at, relation == Rank(SizeRelation.Different), measured, null);
        if (relation == Rank(SizeRelation.SameButEightyAndEightyTwo))
        {
            book.Judge("axle.aspect", at, true, measured, null);
        }
        else if (relation == Rank(SizeRelation.SameNumbersOtherStandard))
        {
            book.Judge("size.standard", at, true, measured, null);
        }

        var services = marked.Select(a => a.Tyre!.Marking!.Service).ToList();
        var differs = services.Any(s => s.LoadIndexSingle != services[0].LoadIndexSingle || s.SpeedSymbol != services[0].SpeedSymbol || s.LoadRange != services[0].LoadRange);
        book.Judge("axle.service", at, differs, Said(marked, Service), null);
        if (marked.Select(a => SidewallMarks.IsWinter(a.Tyre!)).Distinct().Count() > 1)
        {
            book.Judge("axle.season", at, true, Amount.Word(string.Join(", ", marked.Select(a => $"{a.Position} {(SidewallMarks.IsWinter(a.Tyre!) ? "winter-marked" : "not winter-marked")}"))), null);
        }
    }

    private static int Rank(SizeRelation relation) => relation switch
    {
        SizeRelation.Same => 0,
        SizeRelation.SameButEightyAndEightyTwo => 1,
        SizeRelation.SameNumbersOtherStandard => 2,
        SizeRelation.Different => 3,
    };

    private static string Service(Marking marking)
    {
        var s = marking.Service;
        var words = string.Create(CultureInfo.InvariantCulture, $"{s.LoadIndexSingle}{s.SpeedSymbol}{(s.LoadRange is { } range ? $" LR{range}" : "")}").Trim();
        return words.Length == 0 ? "no service description" : words;
    }

    /// <summary>One text where all say the same, else each with its position.</summary>
    private static Amount Said(IReadOnlyList<Assembly> marked, Func<Marking, string> text)
    {
        var texts = marked.Select(a => text(a.Tyre!.Marking!)).ToList();
        return Amount.Word(texts.Distinct().Count() == 1 ? texts[0] : string.Join(", ", marked.Select((a, i) => $"{a.Position} {texts[i]}")));
    }
}
