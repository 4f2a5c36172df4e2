using System.Globalization;
using Trundle.Measures;
using Trundle.Visits.Bay;

namespace Trundle.Web.Client.Entries;

/// <summary>Quantities as a person reads them: the own unit first, the other system's beside it.</summary>
public static class Shown
{
    /// <summary>"230 kPa (33.4 psi)".</summary>
    public static string Both(this UnitHabits units, GaugePressure pressure) => units.Pressure switch
    {
        "psi" => $"{pressure.Text("psi", 1)} ({pressure.Text("kPa", 0)})",
        "bar" => $"{pressure.Text("bar", 2)} ({pressure.Text("psi", 1)})",
        _ => $"{pressure.Text("kPa", 0)} ({pressure.Text("psi", 1)})",
    };

    /// <summary>"230 kPa".</summary>
    public static string One(this UnitHabits units, GaugePressure pressure) => pressure.Text(units.Pressure, units.Pressure switch { "psi" => 1, "bar" => 2, _ => 0 });

    /// <summary>The number alone.</summary>
    public static string Number(this UnitHabits units, GaugePressure pressure) => Quantity.Number(pressure.In(units.Pressure), units.Pressure switch { "psi" => 1, "bar" => 2, _ => 0 });

    /// <summary>"110 N·m (81 lbf·ft)".</summary>
    public static string Both(this UnitHabits units, Torque torque) => units.Torque == "lbf·ft"
        ? $"{torque.Text("lbf·ft", 0)} ({torque.Text("N·m", 0)})"
        : $"{torque.Text("N·m", 0)} ({torque.Text("lbf·ft", 0)})";

    /// <summary>"110 N·m".</summary>
    public static string One(this UnitHabits units, Torque torque) => torque.Text(units.Torque, 0);

    /// <summary>A depth's number alone.</summary>
    public static string Number(this UnitHabits units, Length depth) => Quantity.Number(depth.In(units.Depth), 1);

    /// <summary>"1.6 mm", "2/32 in".</summary>
    public static string One(this UnitHabits units, Length depth) => units.Depth == "32nds"
        ? $"{Quantity.Number(depth.In("32nds"), 1)}/32 in"
        : depth.Text("mm", 1);

    /// <summary>"35 g (1.23 oz)".</summary>
    public static string Both(this UnitHabits units, Mass mass) => units.Mass == "oz"
        ? $"{mass.Text("oz", 2)} ({mass.Text("g", 0)})"
        : $"{Grams(mass)} ({mass.Text("oz", 2)})";

    /// <summary>"35 g".</summary>
    public static string One(this UnitHabits units, Mass mass) => units.Mass == "oz" ? mass.Text("oz", 2) : Grams(mass);

    /// <summary>"48 200 km".</summary>
    public static string Odometer(Length distance, string unit) => $"{Spaced(distance.In(unit))} {unit}";

    /// <summary>A whole number with narrow no-break spaces between thousands.</summary>
    public static string Spaced(double value) => Math.Round(value, MidpointRounding.AwayFromZero).ToString("#,0", CultureInfo.InvariantCulture).Replace(',', '\u202f');

    /// <summary>The first letter made great.</summary>
    public static string Capital(this string text) => text.Length == 0 ? text : string.Concat(text[..1].ToUpperInvariant(), text.AsSpan(1));

    /// <summary>"12 minutes ago".</summary>
    public static string Ago(TimeSpan since) => since switch
    {
        { TotalMinutes: < 1 } => "less than a minute ago",
        { TotalMinutes: < 2 } => "a minute ago",
        { TotalHours: < 1 } => $"{(int)since.TotalMinutes} minutes ago",
        { TotalHours: < 2 } => "an hour ago",
        { TotalDays: < 1 } => $"{(int)since.TotalHours} hours ago",
        { TotalDays: < 2 } => "a day ago",
        _ => $"{(int)since.TotalDays} days ago",
    };

    private static string Grams(Mass mass) => mass.Text("g", Math.Abs(mass.Grams - Math.Round(mass.Grams)) < 0.005 ? 0 : 1);
}
