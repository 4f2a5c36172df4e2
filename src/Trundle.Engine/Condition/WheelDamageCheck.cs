using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.InUse;
using Trundle.Engine.Mounting;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Condition;

/// <summary>Damages of a wheel: it may run, is renewed, or is for a person to decide; it is never repaired by welding or heat.</summary>
internal static class WheelDamageCheck
{
    public static void Check(CheckBook book, Assembly assembly)
    {
        Pieces(book, assembly);
        if (assembly.Wheel is not { } wheel)
        {
            return;
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

    /// <summary>A rim of several pieces is a stop; where nobody looked it is one too, or a question.</summary>
    private static void Pieces(CheckBook book, Assembly assembly)
    {
        if (SeveralPieces.Finding(book.Subject, assembly) is { } stop)
        {
            book.Add(stop);
        }
        else if (WheelKind.Pieces(assembly.Wheel, assembly.Tyre, book.Vehicle.VehicleClass) == RimPieces.NotKnown)
        {
            book.Need(assembly.Position.ToString(), "whether the rim is of one piece (wheel.multiPiece)", "a rim of several pieces is for people licensed for it, in a restraining device");
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
