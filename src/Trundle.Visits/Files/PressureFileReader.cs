using Trundle.Engine.Pressure;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Visits.Files;

/// <summary>Reads the file of <c>pressure</c>: a visit's file, or the small form for one tyre, which has a key <c>tyre</c>.</summary>
public static class PressureFileReader
{
    /// <summary>Reads a file's root.</summary>
    /// <param name="root">The root object.</param>
    /// <param name="problems">Gathers every problem.</param>
    /// <returns>The vehicle, where it is set and used, and whether it was the form for one tyre.</returns>
    public static (FittedVehicle Subject, PressureConditions Conditions, bool OneTyre) Read(FileNode root, List<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(root);
        ArgumentNullException.ThrowIfNull(problems);
        if (root.Member("tyre") is not null && root.Member("fitted") is null && root.Member("vehicle") is null)
        {
            return ReadOneTyre(new FileObject(root, problems));
        }

        if (root.Member("fitted") is null && root.Member("vehicle") is null)
        {
            problems.Add(new Problem("fitted", "missing", "There is neither a vehicle with what is fitted ('vehicle', 'fitted') nor one tyre ('tyre')."));
        }

        var visit = VisitFileReader.Read(root, problems);
        return (visit.Subject, Conditions(visit), false);
    }

    /// <summary>Where a visit's vehicle is set and used, and by whose rules.</summary>
    public static PressureConditions Conditions(VisitFile visit)
    {
        ArgumentNullException.ThrowIfNull(visit);
        var c = visit.Conditions;
        return new PressureConditions(c.Ambient, c.Expected, c.AltitudeSet, c.AltitudeUsed, c.Laden, visit.Subject.Rules);
    }

    /// <summary>Reads one tyre with its wheel, placard, load and rules, each at the top of a file; the caller ends the reading.</summary>
    public static (Vehicle Vehicle, Assembly Assembly, RuleSet? Rules) ReadTyre(FileObject file)
    {
        ArgumentNullException.ThrowIfNull(file);
        var rules = file.Word("rules", [.. VisitFileReader.RuleWords]);
        var dual = file.Flag("dual") ?? false;
        var load = file.Quantity<Mass>("load", "kg", Mass.FromKilograms(1), Mass.FromKilograms(20_000));
        var axle = new Axle
        {
            Dual = dual,
            Placard = file.Object("placard") is { } placard ? VisitFileReader.ReadPlacard(placard) : null,
            Load = load is { } l ? l * (dual ? 4 : 2) : null,
        };
        var vehicle = new Vehicle
        {
            Axles = [axle],
            TopSpeed = file.Quantity<Speed>("topSpeed", "km/h", Speed.FromKilometresPerHour(5), Speed.FromKilometresPerHour(450)),
            VehicleClass = VisitFileReader.ReadVehicleClass(file, "vehicleClass"),
        };
        var assembly = new Assembly
        {
            Position = Position.On(1, Side.Left, dual ? DualPlace.Outer : DualPlace.Single),
            Tyre = file.Object("tyre") is { } tyre ? VisitFileReader.ReadTyre(tyre) : null,
            Wheel = file.Object("wheel") is { } wheel ? VisitFileReader.ReadWheel(wheel) : null,
        };
        return (vehicle, assembly, rules);
    }

    private static (FittedVehicle, PressureConditions, bool) ReadOneTyre(FileObject file)
    {
        var (vehicle, assembly, rules) = ReadTyre(file);
        assembly = assembly with { Pressure = file.Object("pressure") is { } pressure ? VisitFileReader.ReadPressure(pressure) : null };
        var (set, used) = Pair<Temperature>(file, "temperature", "°C", Temperature.FromDegreesCelsius(-60), Temperature.FromDegreesCelsius(70));
        var (low, high) = Pair<Length>(file, "altitude", "m", Length.FromMetres(-450), Length.FromMetres(6000));
        var laden = file.Flag("laden") ?? false;
        file.Done();
        return (new FittedVehicle(vehicle, [assembly], rules, null), new PressureConditions(set, used, low, high, laden, rules), true);
    }

    private static (T? Set, T? Used) Pair<T>(FileObject file, string key, string unit, T least, T most) where T : struct, IQuantity<T>
    {
        if (file.Object(key) is not { } pair)
        {
            return (null, null);
        }

        var read = (pair.Quantity<T>("set", unit, least, most), pair.Quantity<T>("used", unit, least, most));
        pair.Done();
        return read;
    }
}
