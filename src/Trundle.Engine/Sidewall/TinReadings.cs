using Trundle.Measures;

namespace Trundle.Engine.Sidewall;

/// <summary>One way in which a typed TIN can be read.</summary>
/// <param name="Tin">The number.</param>
/// <param name="Why">Why it is one of several ways, or null for the way in which the number is read by itself.</param>
public sealed record TinReading(Tin Tin, string? Why);

/// <summary>
/// Every way in which a typed TIN can be read. <see cref="TinReader"/> takes the one that its blanks and digits speak for; a recall must not miss the
/// others.
/// </summary>
public static class TinReadings
{
    /// <summary>All readings, the reader's own first; none where the text is no TIN in any way.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="today">Today, against which dates in the future are refused, or null.</param>
    /// <source>49 CFR 574.5 in the texts of FR 1998-10-19, FR 1999-07-08 and 80 FR 19553 (openings read): 13 symbols, or two plant symbols with up to six more and a date of three or four digits; partial numbers by 571.139 S5.5.1 (from memory)</source>
    public static IReadOnlyList<TinReading> Of(string? text, DateOnly? today = null)
    {
        var typed = (text ?? "").Trim();
        var readings = new List<TinReading>();
        var own = TinReader.Read(typed, today);
        if (own.IsRead)
        {
            readings.Add(new TinReading(own.Value, null));
        }
        else if (own.Problem!.Code == "tin-symbol-unknown" && typed.Any(char.IsAsciiDigit) && TinReader.Suggested(typed) is { } meant && !string.Equals(meant, typed, StringComparison.OrdinalIgnoreCase))
        {
            readings.AddRange(Of(meant, today).Select(r => r with { Why = "it was typed with a symbol that no TIN is written with" }));
            return readings;
        }

        else if (own.Problem.Code is "tin-symbol-unknown" or "tin-too-long" or "empty")
        {
            return readings;
        }

        var groups = TinReader.GroupsOf(typed);
        var symbols = string.Concat(groups);
        if (own is { IsRead: true, Value.Form: TinForm.ThirteenSymbols or TinForm.Retread or TinForm.DateOnly or TinForm.Partial } || symbols.Length is < 5 or > 12)
        {
            return readings;
        }

        if (groups.Count == 1 || groups[^1].Length > 4)
        {
            // Only a blank before the date would tell how many of the last digits belong to it.
            foreach (var digits in (int[])[3, 4])
            {
                Add($"{symbols[..^digits]} {symbols[^digits..]}", "it was typed without a blank before its date");
            }
        }

        if (symbols.Length is 8 or 9)
        {
            // As long as a number without its date can be, in the older form and in the newer one.
            readings.AddRange(((int[])[2, 3]).Where(plant => symbols.Length - plant <= 6).Select(plant => new TinReading(
                new Tin { Typed = typed, Symbols = symbols, Form = TinForm.Partial, Plant = symbols[..plant], MakerCode = symbols[plant..] },
                "it may be the part of a number that one side bears, without its date")));
        }

        return readings;

        void Add(string spaced, string why)
        {
            if (TinReader.Read(spaced, today) is { IsRead: true } read && readings.All(r => !Same(r.Tin, read.Value)))
            {
                readings.Add(new TinReading(read.Value, why));
            }
        }
    }

    private static bool Same(Tin a, Tin b) => a.Form == b.Form && a.Plant == b.Plant && a.MakerCode == b.MakerCode && a.Week == b.Week && a.CandidateYears.SequenceEqual(b.CandidateYears);
}
