using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.InUse;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Condition;

/// <summary>What a country asks of tyres in its winter: the mark, and the depth that is left of a winter tyre.</summary>
internal static class WinterCheck
{
    private const string MarkRule = "winter.mark";
    private const string DepthRule = "winter.tread";

    public static void Mark(CheckBook book, Assembly assembly)
    {
        if (assembly.Position.IsSpare || assembly.Tyre is not { } tyre)
        {
            return;
        }

        var rank = Rank(tyre);
        var measured = Amount.Word(rank == 0 ? "no winter mark" : JudgedQuantities.Mark(rank));
        if (book.LawLimit(MarkRule, assembly.Position) is { } limit)
        {
            book.Judge(MarkRule, assembly.Position.ToString(), limit.IsBrokenBy(rank), measured, limit.Limit);
        }

        book.ByWorkshop(JudgedQuantity.WinterMark, assembly.Position, assembly.Position.ToString(), rank, measured);
    }

    /// <summary>A winter tyre with less tread than the country asks for counts as one no more; of other tyres the mark is missing already.</summary>
    public static void Depth(CheckBook book, Assembly assembly, double millimetres, Amount measured)
    {
        if (!assembly.Position.IsSpare && assembly.Tyre is { } tyre && Rank(tyre) > 0 && book.LawLimit(DepthRule, assembly.Position) is { } limit)
        {
            book.Judge(DepthRule, assembly.Position.ToString(), limit.IsBrokenBy(millimetres), measured, limit.Limit);
        }
    }

    /// <summary>Asks for the country in the months in which some country of the rule set has a duty; and for its rules where none are held.</summary>
    public static void Country(CheckBook book)
    {
        if (book.Rules is not { } set || book.Subject.Date is not { } day)
        {
            return;
        }

        var winter = book.InForce.Limits.Where(l => l.Set == set && l.Country is not null && l.Dates.Hold(day)).ToList();
        if (winter.Count > 0 && book.Subject.Country is null)
        {
            book.Need(null, "the country, two letters such as AT", "some countries ask for winter tyres on this date");
        }
        else if (winter.Count > 0 && book.InForce.Limits.All(l => l.Country != book.Subject.Country))
        {
            book.Need(null, $"whether {book.Subject.Country} has winter rules of its own", "none are held here for this country");
        }
    }

    private static int Rank(FittedTyre tyre) => SidewallMarks.Has(tyre, "3PMSF") ? 2 : SidewallMarks.IsWinter(tyre) ? 1 : 0;
}
