using Trundle.Engine.Findings;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Fitment;

/// <summary>Tyres and wheels that may not be fitted at all: condemned ones, and those not made for this road use.</summary>
internal static class RoadUse
{
    public static void Check(CheckBook book, Assembly assembly)
    {
        var at = assembly.Position.ToString();
        var name = assembly.Tyre?.Id ?? "tyre";
        if (assembly.Tyre is { } tyre)
        {
            book.Judge("condemned.tyre", at, tyre.Condemned, Amount.Word(tyre.Condemned ? $"{name}: condemned" : "not condemned"), null);
            if (SidewallMarks.Restriction(tyre) is { } word)
            {
                book.Judge("use.restricted", at, true, Amount.Word(word), null);
            }

            if (tyre.Marking is { } marking)
            {
                Class(book, assembly.Position, at, tyre, marking);
            }
        }

        if (assembly.Wheel is { } wheel)
        {
            book.Judge("condemned.wheel", at, wheel.Condemned, Amount.Word(wheel.Condemned ? $"{wheel.Id ?? "wheel"}: condemned" : "not condemned"), null);
        }
    }

    private static void Class(CheckBook book, Position position, string at, FittedTyre tyre, Marking marking)
    {
        var vehicle = book.Vehicle.VehicleClass;
        var madeForMotorcycles = SidewallMarks.Has(tyre, "M/C") || marking.Size.Family == MarkingFamily.MotorcycleLetter;
        if ((marking.Size.TyreClass == TyreClass.SpecialTrailer && !VehicleClasses.IsTrailer(vehicle)) || (madeForMotorcycles && vehicle != "motorcycle"))
        {
            book.Judge("use.class", at, true, Amount.Word(marking.Size.Text), new Limit(Amount.Word(vehicle), Source.Entered("the vehicle's class, as entered")));
        }

        if (SidewallMarks.Has(tyre, "FRT") && book.Vehicle.AxleAt(position) is { } axle && (axle.Steered || Drivetrain.DrivenAxles(book.Vehicle).Contains(position.Axle)))
        {
            book.Judge("use.free-rolling", at, true, Amount.Word("FRT"), new Limit(Amount.Word("a free-rolling axle"), Source.Entered("the axle, as entered")));
        }
    }
}
