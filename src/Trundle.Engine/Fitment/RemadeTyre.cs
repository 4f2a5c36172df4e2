using Trundle.Engine.Findings;
using Trundle.Engine.InUse;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Fitment;

/// <summary>Regrooved and retreaded tyres: where they may not stand, and which may not be regrooved at all.</summary>
internal static class RemadeTyre
{
    private static readonly string[] Retreads = ["RETREAD", "RETREADED", "RECAP", "RECAPPED"];

    public static void Check(CheckBook book, Assembly assembly)
    {
        if (assembly.Tyre is not { } tyre || assembly.Position.IsSpare)
        {
            return;
        }

        var at = assembly.Position.ToString();
        var regrooved = SidewallMarks.Has(tyre, "REGROOVED");
        var remade = regrooved ? "regrooved" : Retreads.Any(word => SidewallMarks.Has(tyre, word)) || IsRetreadByTin(book, tyre) ? "retreaded" : null;
        if (remade is null)
        {
            return;
        }

        if (assembly.Position.Axle == 1 && book.InForce.LawOf("front.remade", book.Subject) is { } bus)
        {
            book.Judge(bus, at, true, Amount.Word(remade), null);
        }

        if (!regrooved)
        {
            return;
        }

        if (!SidewallMarks.Has(tyre, "REGROOVABLE"))
        {
            book.Judge("regroove.unmarked", at, true, Amount.Word("regrooved, REGROOVABLE not read"), null);
        }

        Capacity(book, assembly, at);
    }

    private static void Capacity(CheckBook book, Assembly assembly, string at)
    {
        var limit = book.LawLimit("front.regrooved", assembly.Position);
        if (SizeAndService.MayCarry(book.Subject, assembly) is { AtMost: var carries })
        {
            var measured = Amount.Of(carries, "kg", 0);
            book.ByWorkshop(JudgedQuantity.RegroovedCapacity, assembly.Position, at, carries.Kilograms, measured);
            if (limit is not null)
            {
                book.Judge("front.regrooved", at, limit.IsBrokenBy(carries.Kilograms), measured, limit.Limit);
            }
        }
        else if (limit is not null)
        {
            book.Need(at, "the load index or MAX LOAD of this regrooved tyre", $"from {limit.Text} on it does not stand on the front axle");
        }
    }

    private static bool IsRetreadByTin(CheckBook book, FittedTyre tyre) =>
        tyre.Tin is { } typed && TinReader.Read(typed, book.Subject.Date) is { IsRead: true, Value.Form: TinForm.Retread };
}
