using System.Globalization;
using Trundle.Engine.Reference;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Visits.Bay;

/// <summary>When the next rotation, or look over, is due: by distance, and by a day only where the vehicle's own visits tell how far it goes.</summary>
/// <param name="After">The distance from this visit.</param>
/// <param name="At">The odometer then, or null where it was not entered.</param>
/// <param name="About">About which day, or null where nothing tells it.</param>
/// <param name="Reckoned">What the day is reckoned from, in words, or null.</param>
public sealed record RotationDue(Length After, Length? At, DateOnly? About, string? Reckoned)
{
    // Less than a month between two readings says little of a year's driving; our own choice.
    private const int FewestDays = 28;

    // A day further off than this is a guess; our own choice.
    private const int MostDays = 3 * 365;

    /// <summary>From this visit's reading and the earlier ones of the same vehicle.</summary>
    /// <param name="vehicle">The vehicle as it came.</param>
    /// <param name="day">The day of this visit.</param>
    /// <param name="earlier">Days and readings of earlier visits, in any order.</param>
    public static RotationDue Of(Vehicle vehicle, DateOnly? day, IEnumerable<(DateOnly Day, Length Odometer)> earlier)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        ArgumentNullException.ThrowIfNull(earlier);
        var after = Figures.Of("rotation.interval").As<Length>();
        if (day is not { } today || vehicle.Odometer is not { } now)
        {
            return new RotationDue(after, vehicle.Odometer + after, null, null);
        }

        // The oldest reading within three years: the longer the time, the less one journey counts.
        var from = earlier.Where(e => today.DayNumber - e.Day.DayNumber is >= FewestDays and <= MostDays && e.Odometer.Metres < now.Metres).OrderBy(e => e.Day).Cast<(DateOnly Day, Length Odometer)?>().FirstOrDefault();
        if (from is not { } first)
        {
            return new RotationDue(after, now + after, null, null);
        }

        var days = today.DayNumber - first.Day.DayNumber;
        var ahead = Math.Round(after.Metres / ((now.Metres - first.Odometer.Metres) / days));
        return ahead > MostDays
            ? new RotationDue(after, now + after, null, null)
            : new RotationDue(after, now + after, today.AddDays((int)ahead), string.Create(CultureInfo.InvariantCulture, $"{(now - first.Odometer).Kilometres:0} km in {days} days before"));
    }
}
