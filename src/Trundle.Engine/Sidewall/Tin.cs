namespace Trundle.Engine.Sidewall;

/// <summary>The form of a tyre identification number.</summary>
public enum TinForm
{
    /// <summary>13 symbols: plant 3, maker's code 6, date 4 (from 2015).</summary>
    ThirteenSymbols,

    /// <summary>Plant 2, size 0 to 2, option 0 to 4, date 4 (from 2000).</summary>
    FourDigitDate,

    /// <summary>Plant 2, size 0 to 2, option 0 to 4, date 3 (to mid-2000): the decade is not known.</summary>
    ThreeDigitDate,

    /// <summary>Retread: retreader 3, date 4.</summary>
    Retread,

    /// <summary>Everything but the date, as the side that faces in may carry it.</summary>
    Partial,

    /// <summary>The date code alone, as people often note it.</summary>
    DateOnly,
}

/// <summary>A tyre identification number as read. What it does not tell is null.</summary>
public sealed record Tin
{
    /// <summary>As typed.</summary>
    public required string Typed { get; init; }

    /// <summary>The symbols alone, upper case, without DOT, blanks and dashes.</summary>
    public required string Symbols { get; init; }

    /// <summary>Its form.</summary>
    public required TinForm Form { get; init; }

    /// <summary>The plant's or retreader's code, or null.</summary>
    public string? Plant { get; init; }

    /// <summary>The maker's code (13 symbols), or size and option code (older forms), or null.</summary>
    public string? MakerCode { get; init; }

    /// <summary>Week 1 to 53, or null.</summary>
    public int? Week { get; init; }

    /// <summary>The year, or null where the decade is not known.</summary>
    public int? Year { get; init; }

    /// <summary>Every year that it can be: one, or one a decade where three digits leave it open, or none.</summary>
    public IReadOnlyList<int> CandidateYears { get; init; } = [];

    /// <summary>Three digits: the decade is not known.</summary>
    public bool AmbiguousDecade => CandidateYears.Count > 1;

    /// <summary>What a person should know about this reading.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>The first day of the week in which it was made, or null where the date is not known.</summary>
    /// <source>49 CFR 574.5; week 01 is the year's first full week from Sunday to Saturday (from memory)</source>
    public DateOnly? WeekStart => Week is { } week && Year is { } year ? StartOf(week, year) : null;

    /// <summary>The first day (a Sunday) of a week of a year.</summary>
    /// <param name="week">1 to 53.</param>
    /// <param name="year">The year.</param>
    /// <source>49 CFR 574.5; week 01 is the year's first full week from Sunday to Saturday (from memory)</source>
    public static DateOnly StartOf(int week, int year)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(week, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(week, 53);
        var first = new DateOnly(year, 1, 1);
        var toSunday = (7 - (int)first.DayOfWeek) % 7;
        return first.AddDays(toSunday + (7 * (week - 1)));
    }

    /// <summary>The age on a day.</summary>
    /// <param name="day">The day.</param>
    /// <returns>The age, give or take a week; the range over all candidate years where the decade is not known; null where there is no date.</returns>
    /// <source>49 CFR 574.5 date code; the week's first day from memory, so the age is told give or take one week</source>
    public TinAge? AgeOn(DateOnly day)
    {
        if (Week is not { } week || CandidateYears.Count == 0)
        {
            return null;
        }

        var youngest = Years(StartOf(week, CandidateYears.Max()), day);
        var oldest = Years(StartOf(week, CandidateYears.Min()), day);
        const double weekInYears = 7 / 365.25;
        return new TinAge(Year is null ? null : youngest, Math.Max(0, youngest - weekInYears), Math.Max(0, oldest + weekInYears));
    }

    private static double Years(DateOnly from, DateOnly to) => Math.Max(0, (to.DayNumber - from.DayNumber) / 365.25);
}

/// <summary>A tyre's age in years of 365.25 days.</summary>
/// <param name="Years">From the first day of its week, or null where the decade is not known.</param>
/// <param name="LeastYears">The least that it can be.</param>
/// <param name="MostYears">The most that it can be.</param>
public sealed record TinAge(double? Years, double LeastYears, double MostYears);
