using Trundle.Measures;

namespace Trundle.Web.Client.Entries;

/// <summary>The units of one kind of entry: the one that a bare number is taken in, and those shown beside it.</summary>
/// <param name="Kind">Which quantity.</param>
/// <param name="Bare">The unit of a bare number: the person's own.</param>
public sealed record Habit(HabitKind Kind, string Bare);

/// <summary>The kinds of quantity that people enter.</summary>
public enum HabitKind
{
    Pressure,
    Depth,
    Torque,
    Weight,
    Distance,
    Load,
    Temperature,
    Millimetres,
    Dial,
    Force,
    Unbalance,
    Stiffness,
    Metres,
    RoadSpeed,
}

/// <summary>Writes what a person typed with the unit it was meant in, and shows a quantity in the other units.</summary>
public static class HabitWords
{
    /// <summary>The text to record: as typed, and with the unit where only a number was typed.</summary>
    public static string Record(Habit habit, string typed)
    {
        ArgumentNullException.ThrowIfNull(habit);
        var text = typed.Trim();
        if (text.Length == 0 || !NumberText.Read(text).IsRead)
        {
            return text;
        }

        // A bare fraction of a tread depth is of an inch, whatever the habit: 6/32.
        return habit.Kind == HabitKind.Depth && text.Contains('/', StringComparison.Ordinal) ? $"{text} in" : $"{text} {habit.Bare}";
    }

    /// <summary>A recorded text parted for the page: what stands in the field and the unit beside it.</summary>
    public static (string Number, string Unit) Part(Habit habit, string? recorded)
    {
        ArgumentNullException.ThrowIfNull(habit);
        if (recorded is null)
        {
            return ("", habit.Bare);
        }

        var cut = recorded.LastIndexOf(' ');
        if (cut > 0 && Symbols(habit.Kind).Contains(recorded[(cut + 1)..]) && NumberText.Read(recorded[..cut]).IsRead)
        {
            return (recorded[..cut], recorded[(cut + 1)..]);
        }

        return (recorded, habit.Bare);
    }

    /// <summary>The same quantity in the other units, or empty where it cannot be read.</summary>
    public static string Also(Habit habit, string? recorded)
    {
        ArgumentNullException.ThrowIfNull(habit);
        if (recorded is null)
        {
            return "";
        }

        return habit.Kind switch
        {
            HabitKind.Pressure => Others<GaugePressure>(habit, recorded, ("kPa", 0), ("psi", 1), ("bar", 2)),
            HabitKind.Depth => Others<Length>(habit, recorded, ("mm", 1), ("32nds", 1)),
            HabitKind.Torque => Others<Torque>(habit, recorded, ("N·m", 0), ("lbf·ft", 0)),
            HabitKind.Weight => Others<Mass>(habit, recorded, ("g", 0), ("oz", 2)),
            HabitKind.Distance => Others<Length>(habit, recorded, ("km", 0), ("mi", 0)),
            HabitKind.Load => Others<Mass>(habit, recorded, ("kg", 0), ("lb", 0)),
            HabitKind.Temperature => Others<Temperature>(habit, recorded, ("°C", 0), ("°F", 0)),
            HabitKind.Millimetres => Others<Length>(habit, recorded, ("mm", 1), ("in", 2)),
            HabitKind.Force => Others<Force>(habit, recorded, ("N", 1), ("lbf", 1)),
            HabitKind.Unbalance => Others<Unbalance>(habit, recorded, ("g·mm", 0), ("oz·in", 2)),
            HabitKind.Stiffness => Others<Stiffness>(habit, recorded, ("N/mm", 0), ("lbf/in", 0)),
            HabitKind.Dial => Others<Length>(habit, recorded, ("mm", 3), ("in", 4)),
            HabitKind.Metres => Others<Length>(habit, recorded, ("m", 0), ("ft", 0)),
            HabitKind.RoadSpeed => Others<Speed>(habit, recorded, ("km/h", 0), ("mph", 0)),
        };
    }

    /// <summary>Every unit in which one kind is shown.</summary>
    public static IReadOnlyList<string> Symbols(HabitKind kind) => kind switch
    {
        HabitKind.Pressure => ["kPa", "psi", "bar"],
        HabitKind.Depth => ["mm", "32nds", "in"],
        HabitKind.Torque => ["N·m", "lbf·ft"],
        HabitKind.Weight => ["g", "oz"],
        HabitKind.Distance => ["km", "mi"],
        HabitKind.Load => ["kg", "lb"],
        HabitKind.Temperature => ["°C", "°F"],
        HabitKind.Millimetres => ["mm", "cm", "in"],
        HabitKind.Force => ["N", "lbf"],
        HabitKind.Unbalance => ["g·mm", "oz·in"],
        HabitKind.Stiffness => ["N/mm", "lbf/in"],
        HabitKind.Dial => ["mm", "in"],
        HabitKind.Metres => ["m", "ft"],
        HabitKind.RoadSpeed => ["km/h", "mph"],
    };

    private static string Others<T>(Habit habit, string recorded, params (string Symbol, int Decimals)[] units) where T : struct, IQuantity<T>
    {
        var read = Quantity.Read<T>(recorded, habit.Bare);
        if (!read.IsRead)
        {
            return "";
        }

        var own = Part(habit, recorded).Unit;
        return string.Join(" · ", units.Where(u => u.Symbol != own).Select(u => read.Value.Text(u.Symbol, u.Decimals)));
    }
}
