using System.Globalization;
using Trundle.Measures;

namespace Trundle.Engine.InUse;

/// <summary>Days that come again each year, both included; they may run over the end of the year.</summary>
/// <param name="First">Its first day, written in the year 2024, which has every day.</param>
/// <param name="Last">Its last day, likewise.</param>
public sealed record Season(DateOnly First, DateOnly Last)
{
    private const int EveryDaysYear = 2024;

    /// <summary>True on a day of the season.</summary>
    public bool Holds(DateOnly day)
    {
        var at = new DateOnly(EveryDaysYear, day.Month, day.Day);
        return First <= Last ? at >= First && at <= Last : at >= First || at <= Last;
    }

    /// <summary>True where the two share a day.</summary>
    public bool Meets(Season other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return Holds(other.First) || other.Holds(First);
    }

    /// <summary>As <c>11-01 to 04-15</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{First:MM-dd} to {Last:MM-dd}");

    /// <summary>Reads <c>11-01 to 04-15</c>.</summary>
    public static Reading<Season> Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Split(" to ", StringSplitOptions.TrimEntries) is [var first, var last] && Day(first) is { } a && Day(last) is { } b
            ? Reading<Season>.Of(new Season(a, b))
            : Reading<Season>.Failed("season-unreadable", $"'{NumberText.Shown(text)}' is not a season; write its first and last day as month-day, for example 11-01 to 04-15.");
    }

    private static DateOnly? Day(string text) =>
        DateOnly.TryParseExact(string.Create(CultureInfo.InvariantCulture, $"{EveryDaysYear}-{text}"), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : null;
}

/// <summary>The dates in which a rule holds.</summary>
/// <param name="From">The first day, or null.</param>
/// <param name="Until">The last day, or null.</param>
/// <param name="Season">The days of each year, or null for all.</param>
public sealed record RuleDates(DateOnly? From, DateOnly? Until, Season? Season)
{
    /// <summary>Without an end.</summary>
    public static RuleDates Always { get; } = new(null, null, null);

    /// <summary>True on a day; where the day is not known, true for what is in force today and tied to no season.</summary>
    public bool Hold(DateOnly? day) => day is { } d
        ? (From is null || d >= From) && (Until is null || d <= Until) && (Season is null || Season.Holds(d))
        : Until is null && Season is null;

    /// <summary>True where two share a day.</summary>
    public bool Meet(RuleDates other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return (From ?? DateOnly.MinValue) <= (other.Until ?? DateOnly.MaxValue)
            && (other.From ?? DateOnly.MinValue) <= (Until ?? DateOnly.MaxValue)
            && (Season is null || other.Season is null || Season.Meets(other.Season));
    }

    /// <summary>In words; empty where it always holds.</summary>
    public override string ToString() => string.Join(", ", new[]
    {
        From is { } from ? $"from {from.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}" : null,
        Until is { } until ? $"until {until.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}" : null,
        Season is { } season ? $"each year {season}" : null,
    }.OfType<string>());

    internal static DateOnly? Day(string text) => text.Length == 0 ? null : DateOnly.ParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture);
}
