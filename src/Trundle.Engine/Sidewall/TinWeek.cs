using System.Globalization;
using Trundle.Measures;

namespace Trundle.Engine.Sidewall;

/// <summary>A week of a year, as a recall names it and a TIN's date tells it.</summary>
/// <param name="Week">1 to 53.</param>
/// <param name="Year">The year in full.</param>
public sealed record TinWeek(int Week, int Year)
{
    // The date code began in 1971; four digits tell the years from 2000 on.
    private const int FirstYear = 1971;

    /// <summary>Greater for a later week.</summary>
    internal int Order => (Year * 100) + Week;

    /// <summary>As a person reads it.</summary>
    public string Text => string.Create(CultureInfo.InvariantCulture, $"week {Week} of {Year}");

    /// <summary>Reads <c>1025</c>, week and year as a TIN ends with them, or <c>10/1998</c>, which names any year.</summary>
    /// <param name="text">What was typed.</param>
    /// <returns>The week, or what is wrong. Three digits are refused: they leave the decade open, and a recall names one.</returns>
    /// <source>49 CFR 574.5 date code (FR 1999-07-08, opening read: four digits, week and year)</source>
    public static Reading<TinWeek> Read(string? text)
    {
        var typed = (text ?? "").Trim();
        var parts = typed.Split('/', ' ', '-');
        var (week, year) = parts switch
        {
            [{ Length: 4 } code] when Digits(code) => (Number(code[..2]), 2000 + Number(code[2..])),
            [{ Length: 1 or 2 } w, { Length: 4 } y] when Digits(w) && Digits(y) => (Number(w), Number(y)),
            _ => (0, 0),
        };
        if (year == 0)
        {
            return Reading<TinWeek>.Failed("week-unreadable", $"'{NumberText.Shown(typed)}' is not a week and a year; write 1025 for week 10 of 2025, or 10/1998.");
        }

        return week is < 1 or > 53 || year < FirstYear || year > 2099
            ? Reading<TinWeek>.Failed("week-unreadable", $"'{NumberText.Shown(typed)}' names no week of a TIN: weeks are 01 to 53, years from {FirstYear.ToString(CultureInfo.InvariantCulture)} on.")
            : Reading<TinWeek>.Of(new TinWeek(week, year));
    }

    private static bool Digits(string text) => text.All(char.IsAsciiDigit);

    private static int Number(string digits) => int.Parse(digits, CultureInfo.InvariantCulture);
}
