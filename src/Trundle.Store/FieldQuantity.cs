using Trundle.Engine.Findings;
using Trundle.Measures;
using Trundle.Visits.Bay;

namespace Trundle.Store;

/// <summary>Which fields hold a quantity, and of which kind: so that an entry is kept as an SI value beside what was typed.</summary>
public static class FieldQuantity
{
    private delegate Amount? Understand(string typed);

    // '*' stands for any one name.
    private static readonly (string[] Path, Understand Understand)[] Kinds =
    [
        Of<Length>("vehicle.odometer", "km", "m"),
        Of<Speed>("vehicle.topSpeed", "km/h", "m/s"),
        Of<Speed>("vehicle.complaintDetail.at", "km/h", "m/s"),
        Of<GaugePressure>("vehicle.axles.*.placard.cold", "kPa", "Pa"),
        Of<GaugePressure>("vehicle.axles.*.placard.laden", "kPa", "Pa"),
        Of<GaugePressure>("vehicle.spare.placard.cold", "kPa", "Pa"),
        Of<GaugePressure>("vehicle.spare.placard.laden", "kPa", "Pa"),
        Of<Torque>("vehicle.axles.*.fixings.torque", "N·m", "N·m"),
        Of<Length>("vehicle.axles.*.hub.bore", "mm", "m"),
        Of<Length>("vehicle.axles.*.fixings.ballRadius", "mm", "m"),
        Of<Length>("fitted.*.wheel.hubRing.inner", "mm", "m"),
        Of<Length>("fitted.*.wheel.hubRing.outer", "mm", "m"),
        Of<Mass>("vehicle.axleLoads.*", "kg", "kg"),
        Of<GaugePressure>("fitted.*.tyre.maximumPressure", "kPa", "Pa"),
        Of<GaugePressure>("fitted.*.tyre.seatingLimit", "kPa", "Pa"),
        Of<GaugePressure>("fitted.*.wheel.maximumPressure", "kPa", "Pa"),
        Of<GaugePressure>("fitted.*.wheel.seatingLimit", "kPa", "Pa"),
        Of<Length>("fitted.*.wheel.offset", "mm", "m"),
        Of<Length>("fitted.*.wheel.bore", "mm", "m"),
        Of<Mass>("fitted.*.wheel.loadRating", "kg", "kg"),
        Of<Length>("fitted.*.tread.inner.*", "mm", "m"),
        Of<Length>("fitted.*.tread.centre.*", "mm", "m"),
        Of<Length>("fitted.*.tread.outer.*", "mm", "m"),
        Of<Length>("fitted.*.tread.ribs.*.*", "mm", "m"),
        Of<Length>("fitted.*.tread.blocks.*.*", "mm", "m"),
        Of<GaugePressure>("fitted.*.pressure.value", "kPa", "Pa"),
        Of<Temperature>("fitted.*.pressure.temperature", "°C", "K"),
        Of<Mass>("fitted.*.mass", "kg", "kg"),
        Of<Length>("work.repairs.*.size", "mm", "m"),
        Of<Length>("work.repairs.*.fromMiddle", "mm", "m"),
        Of<Length>("work.repairs.*.fromRepair", "mm", "m"),
        Of<Angle>("work.repairs.*.roundFromRepair", "°", "rad"),
        Of<Angle>("work.repairs.*.lean", "°", "rad"),
        Of<Angle>("work.repairs.*.around", "°", "rad"),
        Of<Length>("fitted.*.damage.*.size", "mm", "m"),
        Of<Length>("fitted.*.damage.*.depth", "mm", "m"),
        Of<Angle>("fitted.*.damage.*.lean", "°", "rad"),
        Of<Length>("fitted.*.damage.*.fromMiddle", "mm", "m"),
        Of<Length>("fitted.*.damage.*.fromRepair", "mm", "m"),
        Of<Angle>("fitted.*.damage.*.roundFromRepair", "°", "rad"),
        Of<Angle>("fitted.*.damage.*.around", "°", "rad"),
        Of<Length>("fitted.*.tyre.repairs.*.size", "mm", "m"),
        Of<Angle>("fitted.*.tyre.repairs.*.around", "°", "rad"),
        Of<Length>("fitted.*.tyre.ranLowDistance", "km", "m"),
        Of<Length>("fitted.*.wheel.damage.*.size", "mm", "m"),
        Of<GaugePressure>("fitted.*.valve.rating", "kPa", "Pa"),
        Of<Mass>("fitted.*.balance.readings.*.mass", "g", "kg"),
        Of<Mass>("fitted.*.balance.wheel.mass", "kg", "kg"),
        Of<Length>("fitted.*.balance.planes.*.radius", "mm", "m"),
        Of<Length>("fitted.*.balance.planes.*.axial", "mm", "m"),
        Of<Length>("fitted.*.balance.readingPlanes.*.radius", "mm", "m"),
        Of<Length>("fitted.*.balance.readingPlanes.*.axial", "mm", "m"),
        Of<Mass>("fitted.*.balance.stock.*.*", "g", "kg"),
        Of<Mass>("fitted.*.balance.stock.*.*.mass", "g", "kg"),
        Of<Length>("fitted.*.balance.stock.*.*.length", "mm", "m"),
        Of<Length>("fitted.*.balance.balancer.distanceZero", "mm", "m"),
        Of<Length>("fitted.*.balance.balancer.weightPlaces.*.*", "mm", "m"),
        Of<Mass>("fitted.*.balance.balancer.displayStep", "g", "kg"),
        Of<Mass>("fitted.*.balance.balancer.displayHidesBelow", "g", "kg"),
        Of<Mass>("fitted.*.why.machine.repeatability", "g", "kg"),
        Of<Mass>("fitted.*.why.spins.*.display.*.mass", "g", "kg"),
        Of<Mass>("fitted.*.why.spins.*.fittedAfter.*.mass", "g", "kg"),
        Of<Mass>("fitted.*.trial.runs.*.trial.mass", "g", "kg"),
        Of<Length>("fitted.*.runout.readings.*", "mm", "m"),
        Of<Length>("fitted.*.runout.readings.*.value", "mm", "m"),
        Of<Temperature>("conditions.ambient", "°C", "K"),
        Of<Temperature>("conditions.expected", "°C", "K"),
        Of<Length>("conditions.altitudeSet", "m", "m"),
        Of<Length>("conditions.altitudeUsed", "m", "m"),
        Of<Length>("work.renewed.*.tread.inner.*", "mm", "m"),
        Of<Length>("work.renewed.*.tread.centre.*", "mm", "m"),
        Of<Length>("work.renewed.*.tread.outer.*", "mm", "m"),
        Of<Length>("work.renewed.*.tread.ribs.*.*", "mm", "m"),
        Of<Length>("work.renewed.*.tread.blocks.*.*", "mm", "m"),
        Of<GaugePressure>("work.renewed.*.tyre.maximumPressure", "kPa", "Pa"),
        Of<GaugePressure>("work.renewed.*.tyre.seatingLimit", "kPa", "Pa"),
        Of<GaugePressure>("work.renewed.*.valve.rating", "kPa", "Pa"),
        Of<GaugePressure>("work.renewed.*.wheel.maximumPressure", "kPa", "Pa"),
        Of<GaugePressure>("work.renewed.*.wheel.seatingLimit", "kPa", "Pa"),
        Of<Length>("work.renewed.*.wheel.offset", "mm", "m"),
        Of<Length>("work.renewed.*.wheel.bore", "mm", "m"),
        Of<Mass>("work.renewed.*.wheel.loadRating", "kg", "kg"),
        Of<Length>("work.seen.*.thickness", "mm", "m"),
        Of<Length>("work.seen.*.makerLimit", "mm", "m"),
        Of<Mass>("work.stock.*.mass", "g", "kg"),
        Of<Mass>("work.scrap.leadWeights", "g", "kg"),
        .. Procedure.BuiltIn.Steps.Where(s => s.Entry == StepEntry.Pressure).Select(s => Of<GaugePressure>($"work.steps.*.{s.Id}", "kPa", "Pa")),
        Of<Length>("vehicle.axles.*.fixings.reTorqueFrom", "km", "m"),
        Of<Length>("vehicle.axles.*.fixings.reTorqueTo", "km", "m"),
        Of<Length>("work.reTorque.odometer", "km", "m"),
        Of<Torque>("work.reTorque.torques.*.*", "N·m", "N·m"),
        Of<Torque>("work.tightening.*.torques.*.*", "N·m", "N·m"),
        Of<Torque>("work.instruments.standing.*.least", "N·m", "N·m"),
        Of<Torque>("work.instruments.standing.*.most", "N·m", "N·m"),
        .. Procedure.BuiltIn.Steps.Where(s => s.Entry == StepEntry.Torques).Select(s => Of<Torque>($"work.steps.*.{s.Id}.*", "N·m", "N·m")),
        .. Procedure.BuiltIn.Steps.Where(s => s.Entry == StepEntry.Spin).Select(s => Of<Mass>($"work.steps.*.{s.Id}.*.mass", "g", "kg")),
    ];

    /// <summary>The SI amount of what was typed in a field, or null where the field holds no quantity or it was not read.</summary>
    public static Amount? Read(string field, string typed)
    {
        ArgumentNullException.ThrowIfNull(field);
        var names = field.Split('.');
        foreach (var (path, understand) in Kinds)
        {
            if (path.Length == names.Length && path.Zip(names).All(pair => pair.First == "*" || pair.First == pair.Second))
            {
                return understand(typed);
            }
        }

        return null;
    }

    private static (string[], Understand) Of<T>(string path, string bareUnit, string si) where T : struct, IQuantity<T> =>
        (path.Split('.'), typed => Quantity.Read<T>(typed, bareUnit) is { IsRead: true } read ? new Amount(read.Value.Si, si, typed) : null);
}
