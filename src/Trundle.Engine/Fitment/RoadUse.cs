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
        if (BreachedBy(book, position, tyre, marking) is { } rule)
        {
            book.Judge(rule, at, true, Amount.Word(marking.Size.Text), new Limit(Amount.Word(vehicle), Source.Entered("the vehicle's class, as entered")));
        }

        if (SidewallMarks.Has(tyre, "FRT") && book.Vehicle.AxleAt(position) is { } axle && (axle.Steered || Drivetrain.DrivenAxles(book.Vehicle).Contains(position.Axle)))
        {
            book.Judge("use.free-rolling", at, true, Amount.Word("FRT"), new Limit(Amount.Word("a free-rolling axle"), Source.Entered("the axle, as entered")));
        }
    }

    /// <summary>The rule on classes that a tyre breaks, or null. Where the class of the tyre is only guessed from its numbers, a person reads the sidewall.</summary>
    private static string? BreachedBy(CheckBook book, Position position, FittedTyre tyre, Marking marking)
    {
        var vehicle = book.Vehicle.VehicleClass;
        var size = marking.Size;
        var marked = SidewallMarks.Has(tyre, "M/C") || size.Family == MarkingFamily.MotorcycleLetter;
        var named = book.Vehicle.PlacardAt(position)?.Size is { } placard && placard.Size.TyreClass == size.TyreClass;
        if (vehicle == VehicleClasses.Motorcycle)
        {
            // 5.00-16 or 240/40 R18 is a motorcycle's as well as a car's; 195/65 R15 is a car's only.
            var either = size.Family is MarkingFamily.Inch or MarkingFamily.Alphanumeric or MarkingFamily.MetricWithoutAspect || size.SectionWidth is { } w && Math.Round(w.Millimetres) % 10 == 0;
            return marked || size.TyreClass == TyreClass.Motorcycle || named ? null : either && size.TyreClass == TyreClass.Passenger ? "use.class-doubt" : "use.class";
        }

        return size.TyreClass switch
        {
            TyreClass.SpecialTrailer when !VehicleClasses.IsTrailer(vehicle) => "use.class",
            _ when marked => "use.class",
            TyreClass.Motorcycle when !named => "use.class-doubt",
            TyreClass.Passenger when !named && !position.IsSpare && vehicle is "goods over 3500 kg" or "bus" or "trailer over 3500 kg" => "use.class-heavy",
            TyreClass.Truck when !named && vehicle == VehicleClasses.Car => "use.class-doubt",
            _ => null,
        };
    }
}
