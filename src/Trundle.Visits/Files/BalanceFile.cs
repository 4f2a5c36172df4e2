using Trundle.Engine.Balance;
using Trundle.Engine.Findings;
using Trundle.Measures;

namespace Trundle.Visits.Files;

/// <summary>One wheel's balance part as read.</summary>
/// <param name="Problem">What the weights are chosen from; null where the readings are still to come and only the settings are there.</param>
/// <param name="Planes">The planes that carry the weights.</param>
/// <param name="Findings">Settings that contradict the marking, the stamp or the wheel.</param>
/// <param name="PerPlane">What each plane may keep, as given: grams, or unbalance; null where the tolerance has no such part.</param>
/// <param name="Profile">The balancer's profile.</param>
public sealed record BalanceFile(BalanceProblem? Problem, PlanePair Planes, IReadOnlyList<Finding> Findings, Amount? PerPlane, BalancerProfile Profile)
{
    /// <summary>Settings were turned into planes although nobody gave the balancer's profile.</summary>
    public bool ProfileAssumed { get; init; }
}

/// <summary>An angle as a technician tells it: degrees from the valve, or where the valve stands when the place is at twelve.</summary>
public static class ClockFace
{
    /// <summary>
    /// The place at twelve, from where the valve stands on the clock seen from outside: with the valve at 4:30 it is 225°.
    /// </summary>
    /// <returns>The place, or one problem where the text is no time such as 4:30 or 12.</returns>
    public static Reading<WheelAngle> PlaceAtTwelve(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var parts = text.Trim().Split(':');
        var minute = 0;
        var read = parts.Length is 1 or 2
            && Digits(parts[0], 1, 2, out var hour) && hour <= 12
            && (parts.Length == 1 || (Digits(parts[1], 2, 2, out minute) && minute < 60))
            && (hour < 12 || minute < 60);
        return read && Digits(parts[0], 1, 2, out var h)
            ? Reading<WheelAngle>.Of(WheelAngle.FromDegrees(-(((h % 12) * 30) + (minute / 2.0))))
            : Reading<WheelAngle>.Failed("clock-unreadable", $"'{NumberText.Shown(text)}' is not a place on the clock; write hours and minutes, for example \"4:30\".");
    }

    /// <summary>Where the valve stands on the clock, to five minutes, when a place is at twelve: "4:30" for 225°.</summary>
    public static string ValveAt(WheelAngle place)
    {
        var minutes = (int)Math.Round(WheelAngle.FromDegrees(-place.Degrees).Degrees * 2 / 5, MidpointRounding.AwayFromZero) * 5 % 720;
        var hour = minutes / 60 == 0 ? 12 : minutes / 60;
        return $"{Quantity.Number(hour, 0)}:{minutes % 60:00}";
    }

    private static bool Digits(string text, int least, int most, out int number)
    {
        number = 0;
        var t = text.Trim();
        if (t.Length < least || t.Length > most || !t.All(char.IsAsciiDigit))
        {
            return false;
        }

        number = t.Aggregate(0, (n, c) => (n * 10) + (c - '0'));
        return true;
    }
}
