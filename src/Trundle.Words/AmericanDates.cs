using System.Text.RegularExpressions;

namespace Trundle.Words;

/// <summary>Dates as they are read in the United States: <c>28 Nov 2026 14:05</c> is <c>Nov 28, 2026 14:05</c>. A date in figures, 2026-11-28, is the same everywhere and stays.</summary>
internal static partial class AmericanDates
{
    private static readonly string[] Months = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

    /// <summary>True for a month's short name.</summary>
    public static bool IsMonth(ReadOnlySpan<char> word)
    {
        foreach (var month in word.Length == 3 ? Months : [])
        {
            if (word.SequenceEqual(month))
            {
                return true;
            }
        }

        return false;
    }

    public static string? Said(string text)
    {
        if (text.Length > 26 || Day().Match(text) is not { Success: true } m)
        {
            return null;
        }

        var weekday = m.Groups["weekday"].Success ? $"{m.Groups["weekday"].Value}, " : "";
        var year = m.Groups["year"].Success ? $", {m.Groups["year"].Value}" : "";
        var time = m.Groups["time"].Success ? $" {m.Groups["time"].Value}" : "";
        return $"{weekday}{m.Groups["month"].Value} {m.Groups["day"].Value}{year}{time}";
    }

    [GeneratedRegex(@"^(?:(?<weekday>Mon|Tue|Wed|Thu|Fri|Sat|Sun) )?(?<day>\d{1,2}) (?<month>Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)(?: (?<year>\d{4}))?(?: (?<time>\d\d:\d\d(?::\d\d)?))?$", RegexOptions.CultureInvariant)]
    private static partial Regex Day();
}
