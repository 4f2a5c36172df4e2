using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.InUse;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Condition;

/// <summary>The valve and the pressure sensor of a wheel.</summary>
internal static class ValveCheck
{
    public static void Check(CheckBook book, Assembly assembly)
    {
        var at = assembly.Position.ToString();
        if (assembly.Valve is { } valve)
        {
            State(book, at, valve);
            Pressure(book, assembly, at, valve);
            Age(book, assembly, at, valve);
        }

        Sensor(book, assembly, at);
    }

    private static void State(CheckBook book, string at, Valve valve)
    {
        if (valve.State is { } state)
        {
            var word = state switch
            {
                ValveState.Sound => "sound",
                ValveState.Cracked => "cracked",
                ValveState.Leaking => "leaking",
                ValveState.Corroded => "corroded",
            };
            book.Judge("valve.state", at, state != ValveState.Sound, Amount.Word($"valve {word}"), null);
        }

        if (valve.Cap is { } cap)
        {
            book.Judge("valve.cap", at, !cap, Amount.Word(cap ? "with a cap" : "no cap"), null);
        }
    }

    /// <summary>The greatest cold pressure that is asked of the valve, against its maker's figure or, where nobody gave that, its kind's.</summary>
    private static void Pressure(CheckBook book, Assembly assembly, string at, Valve valve)
    {
        var placard = book.Vehicle.PlacardOf(assembly);
        var asked = new[] { placard?.Cold, placard?.Laden, assembly.Pressure is { Hot: false } found ? found.Value : null }.OfType<GaugePressure>().DefaultIfEmpty().Max();
        if (asked.Pascals <= 0)
        {
            return;
        }

        var measured = new Amount(asked.Kilopascals, "kPa", $"{asked.Text("kPa", 0)} asked of the valve");
        if (valve.Kind is not null)
        {
            book.ByWorkshop(JudgedQuantity.ValvePressure, assembly.Position, at, asked.Kilopascals, measured);
        }

        if (valve.Rating is { } rating)
        {
            book.Judge("valve.pressure", at, asked > rating, measured, new Limit(Amount.Of(rating, "kPa", 0), Source.Entered("the valve maker's figure, as entered")));
        }
        else if (book.LimitOrNone("valve.pressure", assembly.Position) is { } limit)
        {
            book.Judge("valve.pressure", at, limit.IsBrokenBy(asked.Kilopascals), measured, limit.Limit);
        }
        else
        {
            book.Need(at, valve.Kind is null ? "the kind of the valve, or its maker's greatest pressure" : "the valve maker's greatest pressure", "the pressure asked of it is held against that");
        }
    }

    private static void Age(CheckBook book, Assembly assembly, string at, Valve valve)
    {
        if (valve is { Renewed: { } renewed, Kind: not ValveKind.ClampIn }
            && assembly.Tyre?.Tin is { } typed && TinReader.Read(typed, book.Subject.Date) is { IsRead: true } tin && tin.Value.WeekStart is { } made)
        {
            book.Judge("valve.age", at, renewed < made, Amount.Word(FormattableString.Invariant($"valve of {renewed:yyyy-MM-dd}, tyre of week {tin.Value.Week} of {tin.Value.Year}")), null);
        }
    }

    private static void Sensor(CheckBook book, Assembly assembly, string at)
    {
        if (assembly.Sensor == SensorState.NotWorking)
        {
            book.Judge("sensor.not-working", at, true, Amount.Word("a sensor that does not work"), null);
        }

        if (assembly.SensorParts is not { } parts)
        {
            return;
        }

        if (parts.Battery is { } battery)
        {
            book.Judge("sensor.battery", at, battery == SensorBattery.Low, Amount.Word(battery == SensorBattery.Low ? "battery low" : "battery good"), null);
        }

        if (parts is { SealWorn: not null } or { NutCorroded: not null })
        {
            var worn = new[] { parts.SealWorn == true ? "seal worn" : null, parts.NutCorroded == true ? "nut or stem corroded" : null }.OfType<string>().ToList();
            book.Judge("sensor.parts", at, worn.Count > 0, Amount.Word(worn.Count > 0 ? string.Join(", ", worn) : "seal and nut sound"), null);
        }
    }
}
