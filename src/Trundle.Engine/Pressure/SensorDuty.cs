using Trundle.Engine.Findings;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Pressure;

/// <summary>What is owed to a vehicle's pressure monitor when wheels are moved or changed: it is left working, and it learns where its sensors are.</summary>
public static class SensorDuty
{
    private static readonly Source NotDisabled = new("49 USC 30122(b), and NHTSA's letter of 22 November 2011 on pressure monitors", SourceStatus.SecondHand);
    private static readonly Source Inspection = new("Directive 2014/45/EU Annex I 5.2.3", SourceStatus.FromMemory);
    private static readonly Source MotManual = new("UK MOT inspection manual, pressure monitoring systems of vehicles first used from 1 January 2012", SourceStatus.FromMemory);

    /// <summary>What follows a move of assemblies from one place to another.</summary>
    /// <param name="vehicle">The vehicle before.</param>
    /// <param name="moved">The places from which an assembly is moved.</param>
    /// <returns>Lines for the paper; one that says that there is nothing to relearn where every moved wheel is known to hold no sensor.</returns>
    /// <source>common practice; 49 USC 30122(b) (second-hand)</source>
    public static IReadOnlyList<string> AfterMoving(FittedVehicle vehicle, IReadOnlyCollection<Position> moved)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        ArgumentNullException.ThrowIfNull(moved);
        var touched = vehicle.Fitted.Where(a => moved.Contains(a.Position)).ToList();
        if (touched.Count > 0 && touched.TrueForAll(a => a.Sensor == SensorState.Absent))
        {
            return ["No wheel that was moved holds a pressure sensor. Where the vehicle watches its pressures by how its wheels turn, reset that once the pressures are set."];
        }

        var lines = new List<string>
        {
            "Have the pressure sensors relearned or their positions written as the vehicle's maker says.",
            $"The pressure monitor is never put out of use: what worked before the work works after it, and its lamp is left as it is{(vehicle.Rules == RuleSet.UnitedStates ? $" ({NotDisabled.ForPeople})" : "")}.",
        };
        var dead = touched.Where(a => a.Sensor == SensorState.NotWorking).Select(a => a.Position.ToString()).ToList();
        if (dead.Count > 0)
        {
            lines.Add($"{string.Join(", ", dead)}: the sensor did not work before this work. Have that recorded and the customer told; never put the lamp out of use.");
        }

        return lines;
    }

    /// <summary>What is owed where tyres or wheels at some places are changed.</summary>
    /// <param name="vehicle">The vehicle before.</param>
    /// <param name="places">The places where a tyre or wheel is changed.</param>
    /// <param name="otherWheels">Other wheels are fitted, not only other tyres.</param>
    /// <source>49 USC 30122(b) and NHTSA's letter of 22 November 2011 (second-hand); Directive 2014/45/EU Annex I 5.2.3 (from memory)</source>
    public static CheckResult OnChange(FittedVehicle vehicle, IReadOnlyCollection<Position> places, bool otherWheels)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        ArgumentNullException.ThrowIfNull(places);
        var findings = new List<Finding>();
        var needs = new List<Need>();
        foreach (var assembly in vehicle.Fitted.Where(a => places.Contains(a.Position) && !a.Position.IsSpare))
        {
            var at = assembly.Position.ToString();
            switch (assembly.Sensor)
            {
                case SensorState.Working:
                    findings.Add(new Finding("sensor.kept", otherWheels ? Category.Refer : Category.None, at, Amount.Word("a working sensor"), null,
                        vehicle.Rules == RuleSet.UnitedStates ? NotDisabled : Source.CommonPractice,
                        otherWheels
                            ? "The other wheels get working sensors of the vehicle's kind before they go on: to fit wheels without them where the monitor worked puts it out of use."
                            : "The sensor stays in use: new core, seal, washer and nut at its maker's torque, and the monitor is made to learn it again."));
                    break;
                case SensorState.NotWorking:
                    var (category, source) = vehicle.Rules switch
                    {
                        RuleSet.EuropeanUnion => (Category.Major, Inspection),
                        RuleSet.UnitedKingdom => (Category.Refer, MotManual),
                        RuleSet.UnitedStates => (Category.Minor, NotDisabled),
                        null => (Category.Minor, Source.CommonPractice),
                    };
                    findings.Add(new Finding("sensor.inoperative", category, at, Amount.Word("a sensor that does not work"), null, source,
                        "Record it before any work and tell the customer; offer a new sensor while the tyre is off. A plain valve may take its place; the monitor's lamp is never put out of use."));
                    break;
                case SensorState.Absent:
                    break;
                case null:
                    needs.Add(new Need(at, "whether this wheel holds a pressure sensor, and whether it works (sensor: working, not working, none)", "the monitor is left as it was found, or better"));
                    break;
            }
        }

        return new CheckResult(findings, needs);
    }
}
