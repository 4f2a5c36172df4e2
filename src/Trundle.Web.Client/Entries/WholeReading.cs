using System.Globalization;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Web.Client.Entries;

/// <summary>
/// Knows when what is typed of a reading is whole, so that the hand goes on to the next field by itself. Where more could follow it never is: then Enter goes on.
/// </summary>
public static class WholeReading
{
    private const int LeastKilopascals = 100;
    private const int MostBar = 15;

    /// <summary>The reading as it is recorded, once nothing more would be typed of it; else null.</summary>
    /// <param name="habit">Which quantity, and the unit of a bare number.</param>
    /// <param name="typed">What stands in the field.</param>
    public static string? Of(Habit habit, string typed)
    {
        ArgumentNullException.ThrowIfNull(habit);
        ArgumentNullException.ThrowIfNull(typed);
        var text = typed.Trim();
        var point = text.IndexOfAny(['.', ',']);
        var decimals = point < 0 ? 0 : text.Length - point - 1;
        if (text.Length == 0 || text.Where((c, i) => i != point).Any(c => !char.IsAsciiDigit(c)) || point == 0)
        {
            return null;
        }

        var digits = point < 0 ? int.Parse(text, CultureInfo.InvariantCulture) : 0;
        return (habit.Kind, habit.Bare) switch
        {
            (HabitKind.Depth, "mm") => decimals == 1 ? text : point < 0 && text.Length == 2 && digits > DeepestMillimetres ? Tenths(text) : null,
            // No tread has 40/32 of an inch, so a digit from 4 on stands alone.
            (HabitKind.Depth, "32nds") => point < 0 && (text.Length == 2 || (text.Length == 1 && digits >= 4)) ? text : null,
            (HabitKind.Pressure, "kPa") => point < 0 && digits >= LeastKilopascals ? text : null,
            // A tyre of a truck may have 100 psi and more: a 1 at the front waits for a third figure.
            (HabitKind.Pressure, "psi") => point < 0 ? (text.Length == 3 || (text.Length == 2 && digits >= 20) ? text : null) : decimals == 1 ? text : null,
            (HabitKind.Pressure, "bar") => decimals == 2 ? text : point < 0 && text.Length == 2 && digits > MostBar ? Tenths(text) : null,
            _ => null,
        };
    }

    /// <summary>The deepest tread whose reading is not doubted, of any kind of tyre: what is above it as millimetres can only be tenths.</summary>
    private static double DeepestMillimetres { get; } = Figures.Of("condition.tread-beyond-light").As<Length>().Millimetres;

    /// <summary>Two figures without a point, the second of them tenths.</summary>
    private static string Tenths(string digits) => $"{digits[0]}.{digits[1]}";
}
