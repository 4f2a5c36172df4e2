using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Rotation;

/// <summary>Invented vehicles for the tests of rotation and pressure.</summary>
internal static class Invented
{
    public static Position At(string text) => Position.Read(text).Value;

    public static Marking Marked(string text) => MarkingReader.Read(text).Value;

    public static FittedTyre Tyre(string id, string marking) => new() { Id = id, Marking = Marked(marking) };

    /// <summary>Two axles; each tyre is named after the position where it begins.</summary>
    public static FittedVehicle Car(Drive? drive, string front = "205/55 R16 91V", string rear = "205/55 R16 91V", string? spare = null, Func<FittedTyre, FittedTyre>? each = null)
    {
        each ??= t => t;
        var fitted = new List<Assembly>
        {
            new() { Position = At("1L"), Tyre = each(Tyre("1L", front)) },
            new() { Position = At("1R"), Tyre = each(Tyre("1R", front)) },
            new() { Position = At("2L"), Tyre = each(Tyre("2L", rear)) },
            new() { Position = At("2R"), Tyre = each(Tyre("2R", rear)) },
        };
        if (spare is not null)
        {
            fitted.Add(new Assembly { Position = Position.Spare, Tyre = each(Tyre("S", spare)) });
        }

        var vehicle = new Vehicle
        {
            Drive = drive,
            Axles = [new Axle { Steered = true, Driven = drive is Drive.Front or Drive.All }, new Axle { Driven = drive is Drive.Rear or Drive.All }],
        };
        return new FittedVehicle(vehicle, fitted, RuleSet.UnitedKingdom, null);
    }

    /// <summary>Single front wheels, dual rear wheels.</summary>
    public static FittedVehicle Pickup(Func<FittedTyre, FittedTyre>? each = null)
    {
        each ??= t => t;
        var vehicle = new Vehicle
        {
            Drive = Drive.Rear,
            VehicleClass = "van",
            Axles = [new Axle { Steered = true }, new Axle { Driven = true, Dual = true }],
        };
        return new FittedVehicle(
            vehicle,
            [.. new[] { "1L", "1R", "2Li", "2Lo", "2Ri", "2Ro" }.Select(p => new Assembly { Position = At(p), Tyre = each(Tyre(p, "LT235/85 R16 120/116Q LRE")) })],
            RuleSet.UnitedStates,
            null);
    }

    public static FittedVehicle With(this FittedVehicle vehicle, string position, Func<Assembly, Assembly> change) =>
        vehicle with { Fitted = [.. vehicle.Fitted.Select(a => a.Position == At(position) ? change(a) : a)] };

    public static GaugePressure Kilopascals(double value) => GaugePressure.FromKilopascals(value);
}
