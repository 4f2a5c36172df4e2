namespace Trundle.Web.Client.Entries;

/// <summary>Which digits make a whole reading, so that the hand goes on to the next field by itself. Common practice: gauges are read to a tenth of a millimetre, whole kilopascals and whole psi.</summary>
public static class WholeReading
{
    /// <summary>The pattern that is whole as typed; empty where a reading could still grow, so that only Enter goes on.</summary>
    public static string Of(Habit habit)
    {
        ArgumentNullException.ThrowIfNull(habit);
        return (habit.Kind, habit.Bare) switch
        {
            (HabitKind.Depth, "mm") => "[0-9]{1,2}[.,][0-9]",
            (HabitKind.Depth, "32nds") => "[0-9]{2}",
            // What begins with 1 may be a hundred or a thousand.
            (HabitKind.Pressure, "kPa") => "[2-9][0-9]{2}",
            (HabitKind.Pressure, "psi") => "[2-9][0-9]",
            _ => "",
        };
    }
}
