using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Bay;

namespace Trundle.Sheets;

/// <summary>Writes quantities for a sheet: the reader's unit first, and the other one in brackets where people of both will read it.</summary>
internal sealed record SheetUnits(UnitHabits Habits)
{
    public static SheetUnits Of(UnitHabits? habits, RuleSet? rules) =>
        new(habits ?? (rules == RuleSet.UnitedStates ? new UnitHabits("psi", "32nds", "lbf·ft", "oz") : UnitHabits.Metric));

    /// <summary>"230 kPa (33 psi)".</summary>
    public string Pressure(GaugePressure pressure) => Habits.Pressure == "psi"
        ? $"{pressure.Text("psi", 0)} ({pressure.Text("kPa", 0)})"
        : $"{pressure.Text(Habits.Pressure, Habits.Pressure == "bar" ? 2 : 0)} ({pressure.Text("psi", 0)})";

    /// <summary>"230 kPa".</summary>
    public string ShortPressure(GaugePressure pressure) => pressure.Text(Habits.Pressure, Habits.Pressure == "bar" ? 2 : 0);

    /// <summary>"120 N·m (89 lbf·ft)".</summary>
    public string Torque(Torque torque) => Habits.Torque == "lbf·ft"
        ? $"{torque.Text("lbf·ft", 0)} ({torque.Text("N·m", 0)})"
        : $"{torque.Text("N·m", 0)} ({torque.Text("lbf·ft", 0)})";

    /// <summary>"35 g".</summary>
    public string Mass(Mass mass) => Pictures.PolarPicture.Words(mass, Habits.Mass);

    /// <summary>A distance along the road: whole kilometres, or miles where the rules are those of a land of miles.</summary>
    public string Road(Length distance) => Habits.Pressure == "psi"
        ? $"{Thousands(distance.Miles)} mi ({Thousands(distance.Kilometres)} km)"
        : $"{Thousands(distance.Kilometres)} km";

    private static string Thousands(double value) =>
        Math.Round(value).ToString("#,0", System.Globalization.CultureInfo.InvariantCulture).Replace(',', '\u00a0');
}
