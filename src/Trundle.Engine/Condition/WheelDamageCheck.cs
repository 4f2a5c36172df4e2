using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.InUse;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Condition;

/// <summary>Damages of a wheel: it may run, is renewed, or is for a person to decide; it is never repaired by welding or heat.</summary>
internal static class WheelDamageCheck
{
    public static void Check(CheckBook book, Assembly assembly)
    {
        if (assembly.Wheel is not { } wheel)
        {
            return;
        }

        if (wheel.MultiPiece == true)
        {
            book.Judge("wheel.multi-piece", assembly.Position.ToString(), false, Amount.Word("a wheel of several pieces"), null, book.Rule("wheel.multi-piece").Action,
                "Let all air out by taking out the valve core before anything is loosened; inflate in a restraining device only; stay out of the trajectory; no hammering on a ring under pressure.");
        }

        foreach (var damage in wheel.Damage)
        {
            // Worn seats are said once, where the entry beside the seat says them too.
            if (damage.Kind != WheelDamageKind.SeatWear || wheel.SeatWorn != true)
            {
                One(book, assembly, damage);
            }
        }
    }

    public static void One(CheckBook book, Assembly assembly, WheelDamage damage)
    {
        switch (damage.Kind)
        {
            case WheelDamageKind.Crack:
                Say("wheel.crack");
                break;
            case WheelDamageKind.BentFlange:
                Bent(book, assembly, damage);
                break;
            case WheelDamageKind.Corrosion:
                Say("wheel.corrosion");
                break;
            case WheelDamageKind.BoreWear:
                Say("wheel.bore");
                break;
            case WheelDamageKind.SeatWear:
                Say("wheel.seat-worn");
                break;
            case WheelDamageKind.ElongatedHole:
                Say("wheel.hole");
                break;
            case WheelDamageKind.Weld:
                Say("wheel.weld");
                break;
            case WheelDamageKind.LockRing:
                Say("wheel.lock-ring");
                break;
            case WheelDamageKind.Other:
                Say("wheel.other");
                break;
        }

        void Say(string rule) => book.Judge(rule, assembly.Position.ToString(), true, Measured(damage), null);
    }

    private static void Bent(CheckBook book, Assembly assembly, WheelDamage damage)
    {
        var at = assembly.Position.ToString();
        if (assembly.Wheel?.MultiPiece == true || assembly.Tyre?.Marking?.Size.TyreClass == TyreClass.Truck)
        {
            book.Judge("wheel.bent.heavy", at, true, Measured(damage), null);
            return;
        }

        var limit = book.Limit("wheel.bent", assembly.Position);
        if (damage.Size is not { } size)
        {
            book.Need(at, "how far the bent flange runs out in one turn", $"it is held against {limit.Text}");
            book.Judge("wheel.bent.small", at, true, Measured(damage), limit.Limit);
            return;
        }

        book.ByWorkshop(JudgedQuantity.FlangeBend, assembly.Position, at, size.Millimetres, Measured(damage));
        book.Judge(limit.IsBrokenBy(size.Millimetres) ? "wheel.bent" : "wheel.bent.small", at, true, Measured(damage), limit.Limit);
    }

    private static Amount Measured(WheelDamage damage) => damage.Size is { } size
        ? new Amount(size.Millimetres, "mm", string.Create(CultureInfo.InvariantCulture, $"{Word(damage.Kind)}, {size.Millimetres:0.##} mm"))
        : Amount.Word(Word(damage.Kind));

    public static string Word(WheelDamageKind kind) => kind switch
    {
        WheelDamageKind.Crack => "crack in the wheel",
        WheelDamageKind.BentFlange => "bent flange",
        WheelDamageKind.Corrosion => "corrosion at the bead seat",
        WheelDamageKind.BoreWear => "worn centre bore",
        WheelDamageKind.SeatWear => "worn seats",
        WheelDamageKind.ElongatedHole => "elongated holes",
        WheelDamageKind.Weld => "welded",
        WheelDamageKind.LockRing => "lock ring missing or damaged",
        WheelDamageKind.Other => "damage of the wheel",
    };
}
