using System.Globalization;
using Trundle.Measures;

namespace Trundle.Engine.Sidewall;

/// <summary>Reads tyre identification numbers in the forms of their eras.</summary>
public static class TinReader
{
    /// <summary>The symbols that a TIN is written with: no G, I, O, Q, S, Z, which are mistaken for digits (49 CFR 574.5, from memory; their count, 30, agrees with the 27 000 plant codes that the authority names).</summary>
    public const string Alphabet = "ABCDEFHJKLMNPRTUVWXY0123456789";

    private const string Mistaken = "GIOQSZ";
    private const string MeantInstead = "610052";
    private const int Longest = 60;
    private const string ReadOtherSide = "read the other side of the tyre, which carries the whole number";

    /// <summary>
    /// Reads a TIN such as <c>DOT 1AB CDEFHJ 2218</c>, with or without DOT and blanks.
    /// </summary>
    /// <param name="text">What was typed.</param>
    /// <param name="today">Today, against which dates in the future are refused (with a week's slack), or null.</param>
    /// <returns>The number with what it tells, or one problem that names the character. A partial number is read, without a date.</returns>
    /// <source>49 CFR 574.5 in the texts of FR 1998-10-19, FR 1999-07-08 and 80 FR 19553 (openings read; alphabet and week rule from memory)</source>
    public static Reading<Tin> Read(string? text, DateOnly? today = null)
    {
        var typed = (text ?? "").Trim();
        if (typed.Length == 0)
        {
            return Reading<Tin>.Failed("empty", "Nothing was entered where a TIN is expected, for example DOT 1AB CDEFHJ 2218.");
        }

        if (typed.Length > Longest)
        {
            return Reading<Tin>.Failed("tin-too-long", $"'{NumberText.Shown(typed)}' is longer than a TIN, which has at most 13 symbols behind DOT.");
        }

        var groups = Groups(typed, out var retread, out var triangle, out var problem);
        return problem is not null ? Reading<Tin>.Failed(problem) : new TinParse(typed, groups, retread, triangle, today).Read();
    }

    /// <summary>The groups of symbols that blanks and dashes part, without DOT; as far as they are symbols of a TIN.</summary>
    internal static IReadOnlyList<string> GroupsOf(string typed) => Groups(typed, out _, out _, out _);

    /// <summary>Splits into groups at blanks and dashes; strips DOT and a retread's R; refuses symbols outside the alphabet with a suggestion.</summary>
    private static List<string> Groups(string typed, out bool retread, out bool triangle, out Problem? problem)
    {
        retread = false;
        triangle = false;
        problem = null;
        var groups = new List<string>();
        var group = "";
        var at = typed.StartsWith("DOT", StringComparison.OrdinalIgnoreCase) ? 3 : 0;
        for (; at < typed.Length; at++)
        {
            var c = char.ToUpperInvariant(typed[at]);
            if (char.IsWhiteSpace(c) || c is '-' or '–' or '·' or '.' or ':')
            {
                Close();
            }
            else if (c is '◁' or '◀' or '◄' or '△' or '▲' or '▵' or '<')
            {
                // A triangle behind the date: the 1990s, with some makers.
                triangle = true;
                Close();
            }
            else if (Alphabet.Contains(c, StringComparison.Ordinal))
            {
                group += c;
            }
            else
            {
                var index = Mistaken.IndexOf(c, StringComparison.Ordinal);
                problem = new Problem("", "tin-symbol-unknown", string.Create(CultureInfo.InvariantCulture,
                    $"At character {at + 1} of the TIN stands '{NumberText.Shown(c.ToString())}', which no TIN is written with{(index < 0 ? "" : $"; did you mean '{MeantInstead[index]}', as in {Suggested(typed)}")}."));
                return groups;
            }
        }

        Close();
        if (groups.Count > 1 && groups[0] == "R")
        {
            retread = true;
            groups.RemoveAt(0);
        }

        return groups;

        void Close()
        {
            if (group.Length > 0)
            {
                groups.Add(group);
                group = "";
            }
        }
    }

    /// <summary>The whole text with each mistaken letter as the digit that it was taken for; a suggestion, never a correction.</summary>
    internal static string Suggested(string typed)
    {
        var from = typed.StartsWith("DOT", StringComparison.OrdinalIgnoreCase) ? 3 : 0;
        return NumberText.Shown(string.Concat(typed.ToUpperInvariant().Select((c, i) =>
            i >= from && Mistaken.IndexOf(c, StringComparison.Ordinal) is >= 0 and var index ? MeantInstead[index] : c)));
    }

    /// <summary>One TIN's groups and what they can be.</summary>
    private sealed class TinParse(string typed, List<string> groups, bool retread, bool triangle, DateOnly? today)
    {
        private readonly string _symbols = string.Concat(groups);

        public Reading<Tin> Read()
        {
            var n = _symbols.Length;
            if (n > 13)
            {
                return Failed("tin-length", $"has {Number(n)} symbols, but a TIN has at most 13");
            }

            if (retread)
            {
                return n is 7 or 6 ? Dated(TinForm.Retread, n - 4, 4) : Failed("tin-length", $"is marked R as a retread and has {Number(n)} symbols behind it, but a retread's number has 7");
            }

            if (n == 4 && TrailingDigits() == 4)
            {
                return Dated(TinForm.DateOnly, 0, 4);
            }

            if (n == 3 && TrailingDigits() == 3)
            {
                return ThreeDigits(TinForm.DateOnly);
            }

            if (n < 5 || (n == 5 && TrailingDigits() < 3))
            {
                return Failed("tin-length", $"has {Number(n)} symbols, which is too short for a TIN; {ReadOtherSide}");
            }

            return n switch
            {
                13 => TrailingDigits() >= 4
                    ? Dated(TinForm.ThirteenSymbols, 3, 4)
                    : Failed("tin-date-missing", $"has 13 symbols, but its last four, {_symbols[^4..]}, are not a week and a year"),
                7 when groups.Count > 1 && groups[0].Length == 3 && groups[^1].Length == 4 && TrailingDigits() >= 4 => Dated(TinForm.Retread, 3, 4),
                _ => Older(n),
            };
        }

        /// <summary>The forms before 13 symbols, which blanks tell apart where they were typed.</summary>
        private Reading<Tin> Older(int n)
        {
            var digits = TrailingDigits();
            var lastGroup = groups.Count > 1 ? groups[^1].Length : 0;
            if (n == 9 && groups.Count == 2 && groups[0].Length == 3)
            {
                return Partial(3);
            }

            if (digits >= 4 && n is 6 or >= 8 && lastGroup != 3)
            {
                // Glued digits may be the option code's last and three of a date; only blanks could tell, so both readings are told.
                var four = Dated(TinForm.FourDigitDate, 2, 4);

                // Where four digits are no date, ten or eleven symbols can only be the older form; eight or nine may as well be a partial number.
                return !four.IsRead && n is 10 or 11 && DateGlued && ThreeDigits(TinForm.ThreeDigitDate) is { IsRead: true } three
                    ? Reading<Tin>.Of(three.Value with { Cautions = [.. three.Value.Cautions, $"Read with a date of three digits, as its last four, {_symbols[^4..]}, can be no date on this day: look whether the last three stand apart on the tyre."] })
                    : four;
            }

            if (digits >= 3 && n <= 11 && lastGroup is 0 or 3)
            {
                return ThreeDigits(TinForm.ThreeDigitDate);
            }

            return n switch
            {
                <= 8 => Partial(groups.Count > 1 && groups[0].Length == 3 ? 3 : 2),
                9 => Partial(groups.Count > 1 && groups[0].Length == 2 ? 2 : 3),
                _ => Failed("tin-date-missing", $"has {Number(n)} symbols and does not end in the three or four digits of a date; {ReadOtherSide}"),
            };
        }

        private Reading<Tin> Dated(TinForm form, int plant, int digits)
        {
            var date = _symbols[^digits..];
            if (!date.All(char.IsAsciiDigit))
            {
                return Failed("tin-date-missing", $"should end in four digits, week and year, but ends in {date}");
            }

            var week = int.Parse(date[..2], CultureInfo.InvariantCulture);
            var year = 2000 + int.Parse(date[2..], CultureInfo.InvariantCulture);
            var partial = form == TinForm.FourDigitDate ? $"; it may be a partial number: {ReadOtherSide}{(groups.Count == 1 ? ", and type it with its blanks" : "")}" : "";
            if (week is < 1 or > 53)
            {
                return Failed("tin-week", $"ends in {date}, but there is no week {date[..2]} (01 to 53){partial}");
            }

            if (today is { } day && Tin.StartOf(week, year) > (day.DayNumber > DateOnly.MaxValue.DayNumber - 7 ? day : day.AddDays(7)))
            {
                return Failed("tin-date-future", $"ends in {date}, which would be week {Number(week)} of {Number(year)}, after today{partial}");
            }

            var cautions = new List<string>();
            switch (form)
            {
                case TinForm.Retread:
                    cautions.Add(retread
                        ? "Retread (R): the date is that of the retreading; the casing is older."
                        : "Seven symbols in groups of three and four are a retread's number: look for the R, and count the date as that of the retreading.");
                    break;
                case TinForm.DateOnly:
                    cautions.Add("Only the date code was given: the whole number is needed for a recall or a registration.");
                    break;
                case TinForm.FourDigitDate when DateGlued && _symbols.Length <= 11 && (groups.Count == 1 || OlderDate() is not null):
                    cautions.Add($"{(groups.Count == 1 ? "Typed without blanks" : "Typed without a blank before the date")}: if only the last three digits stand apart on the tyre, it was made before 2000{(OlderDate() is { } older ? $" ({older})" : "")}; type the number with its blanks.");
                    break;
                case TinForm.ThirteenSymbols or TinForm.FourDigitDate or TinForm.ThreeDigitDate or TinForm.Partial:
                    break;
            }

            var behind = _symbols[plant..^digits];
            return Reading<Tin>.Of(new Tin
            {
                Typed = typed,
                Symbols = _symbols,
                Form = form,
                Plant = plant == 0 ? null : _symbols[..plant],
                MakerCode = behind.Length == 0 ? null : behind,
                Week = week,
                Year = year,
                CandidateYears = [year],
                Cautions = cautions,
            });
        }

        private Reading<Tin> ThreeDigits(TinForm form)
        {
            var date = _symbols[^3..];
            var week = int.Parse(date[..2], CultureInfo.InvariantCulture);
            var digit = date[2] - '0';
            if (week is < 1 or > 53)
            {
                return Failed("tin-week", $"ends in {date}, but there is no week {date[..2]} (01 to 53); {ReadOtherSide}");
            }

            // The code began in 1971 and was in use until the middle of 2000.
            var candidates = new List<int>();
            foreach (var decade in new[] { 1970, 1980, 1990, 2000 })
            {
                var year = decade + digit;
                if (year >= 1971 && (year < 2000 || (year == 2000 && week <= 26)) && (today is not { } day || Tin.StartOf(week, year) <= day))
                {
                    candidates.Add(year);
                }
            }

            if (candidates.Count == 0)
            {
                return Failed("tin-date-future", $"ends in {date}, which no year before today fits; {ReadOtherSide}");
            }

            var cautions = new List<string> { $"Three digits leave the decade open ({string.Join(", ", candidates.Select(Number))}): the form was given up in 2000." };
            if (triangle)
            {
                cautions.Add("A triangle behind the date means the 1990s with some makers (from memory, not checked against a text).");
            }

            if (today is { } on && (on.DayNumber - Tin.StartOf(week, candidates.Max()).DayNumber) / 365.25 > 25)
            {
                cautions.Add("Over 25 years old by any reading: advise to take it off the road.");
            }

            var behind = form == TinForm.DateOnly ? "" : _symbols[2..^3];
            return Reading<Tin>.Of(new Tin
            {
                Typed = typed,
                Symbols = _symbols,
                Form = form,
                Plant = form == TinForm.DateOnly ? null : _symbols[..2],
                MakerCode = behind.Length == 0 ? null : behind,
                Week = week,
                CandidateYears = candidates,
                Year = candidates.Count == 1 ? candidates[0] : null,
                Cautions = cautions,
            });
        }

        private Reading<Tin> Partial(int plant) => Reading<Tin>.Of(new Tin
        {
            Typed = typed,
            Symbols = _symbols,
            Form = TinForm.Partial,
            Plant = _symbols[..plant],
            MakerCode = _symbols[plant..],
            Cautions = [$"A partial number without its date: {ReadOtherSide}."],
        });

        /// <summary>True where no blank was typed before the date.</summary>
        private bool DateGlued => groups.Count == 1 || groups[^1].Length > 4;

        /// <summary>The other date that glued digits can be, in words, or null.</summary>
        private string? OlderDate() => ThreeDigits(TinForm.ThreeDigitDate) is { IsRead: true } older
            ? $"week {Number(older.Value.Week!.Value)} of {string.Join(" or ", older.Value.CandidateYears.Select(Number))}"
            : null;

        private int TrailingDigits() => _symbols.Length - _symbols.TrimEnd("0123456789".ToCharArray()).Length;

        private Reading<Tin> Failed(string code, string what) => Reading<Tin>.Failed(code, $"The TIN '{NumberText.Shown(typed)}' {what}.");

        private static string Number(int n) => n.ToString(CultureInfo.InvariantCulture);
    }
}
