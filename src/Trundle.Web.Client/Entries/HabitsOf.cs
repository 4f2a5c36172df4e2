using Trundle.Visits.Bay;

namespace Trundle.Web.Client.Entries;

/// <summary>The habits of the person who enters, kind by kind. What the four remembered units do not tell follows from them and from the rules of the place.</summary>
public static class HabitsOf
{
    /// <summary>Pressures.</summary>
    public static Habit Pressure(this IFields visit) => new(HabitKind.Pressure, visit.Units.Pressure);

    /// <summary>Tread depths.</summary>
    public static Habit Depth(this IFields visit) => new(HabitKind.Depth, visit.Units.Depth);

    /// <summary>Torques.</summary>
    public static Habit Torque(this OpenVisit visit) => new(HabitKind.Torque, visit.Units.Torque);

    /// <summary>Weights for balancing.</summary>
    public static Habit Weight(this IFields visit) => new(HabitKind.Weight, visit.Units.Mass);

    /// <summary>Distances run: an odometer counts miles where the law of the place does.</summary>
    public static Habit Distance(this OpenVisit visit) => new(HabitKind.Distance, visit["rules"] == "us" ? "mi" : "km");

    /// <summary>Loads on wheels and axles.</summary>
    public static Habit Load(this IFields visit) => new(HabitKind.Load, visit.Units.Mass == "oz" ? "lb" : "kg");

    /// <summary>Temperatures.</summary>
    public static Habit Temperature(this IFields visit) => new(HabitKind.Temperature, visit["rules"] == "us" ? "°F" : "°C");

    /// <summary>Speeds on the road.</summary>
    public static Habit RoadSpeed(this IFields visit) => new(HabitKind.RoadSpeed, visit["rules"] is "us" or "uk" ? "mph" : "km/h");

    /// <summary>Dimensions of wheels, which everybody stamps in millimetres.</summary>
    public static Habit Millimetres { get; } = new(HabitKind.Millimetres, "mm");

    /// <summary>Heights above the sea.</summary>
    public static Habit Metres { get; } = new(HabitKind.Metres, "m");
}
