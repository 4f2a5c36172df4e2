using System.Globalization;
using System.Text;

namespace Trundle.Measures;

/// <summary>Reads numbers as people type them, strictly: one decimal mark, comma or point; no thousands marks; fractions such as 6/32.</summary>
public static class NumberText
{
    /// <summary>The greatest magnitude that is taken for a number typed by a person.</summary>
    public const double Greatest = 1e12;

    /// <summary>
    /// Reads a number at the start of a text.
    /// </summary>
    /// <param name="text">What was typed, without leading blanks.</param>
    /// <param name="consumed">How many characters belong to the number.</param>
    /// <returns>The number, finite and of magnitude at most 1e12, or one problem.</returns>
    /// <remarks>
    /// "2,3" and "2.3" are the same. "1,234" is refused, because half the world reads it as one thousand two hundred and thirty-four.
    /// "6/32" and "7 1/2" are fractions. The culture of the machine changes nothing.
    /// </remarks>
    public static Reading<double> ReadStart(ReadOnlySpan<char> text, out int consumed)
    {
        consumed = 0;
        var i = 0;
        var negative = false;
        if (i < text.Length && text[i] is '-' or '−' or '+')
        {
            negative = text[i] != '+';
            i++;
        }

        var whole = Digits(text, ref i);
        double value;
        if (i < text.Length && text[i] is '.' or ',')
        {
            var mark = text[i];
            i++;
            var decimals = Digits(text, ref i);
            if (whole.Length == 0 && decimals.Length == 0)
            {
                return Reading<double>.Failed("number-missing", $"'{Shown(text)}' does not begin with a number.");
            }

            if (decimals.Length == 0)
            {
                return Reading<double>.Failed("number-unfinished", $"'{Shown(text)}' ends at its decimal mark; write the decimals or leave the mark out.");
            }

            if (i < text.Length && text[i] is '.' or ',' && i + 1 < text.Length && char.IsAsciiDigit(text[i + 1]))
            {
                return Reading<double>.Failed("thousands-mark", $"'{Shown(text)}' has more than one mark; write the number without thousands marks, for example 1234.5.");
            }

            if (mark == ',' && decimals.Length == 3)
            {
                // A number that begins with 0 holds no thousands, but a comma before three digits is refused wherever it stands: only what to write differs.
                var typed = Shown(text[..i]);
                var sign = negative ? "-" : "";
                return Reading<double>.Failed("comma-ambiguous", whole.Length == 0 || whole[0] == '0'
                    ? $"'{typed}' has three digits behind a comma, as a thousands mark has; write {Shown($"{sign}{(whole.TrimStart('0') is { Length: > 0 } rest ? rest : "0")}.{decimals}")}."
                    : $"'{typed}' may be a decimal or thousands; write {Shown($"{sign}{whole}.{decimals}")} or {Shown($"{sign}{whole}{decimals}")}.");
            }

            value = double.Parse(string.Concat(whole.Length == 0 ? "0" : whole, ".", decimals), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
        }
        else
        {
            if (whole.Length == 0)
            {
                return Reading<double>.Failed("number-missing", $"'{Shown(text)}' does not begin with a number.");
            }

            value = double.Parse(whole, NumberStyles.None, CultureInfo.InvariantCulture);
            if (i < text.Length && text[i] is '\'' or '’' or '_' or ' ' or '\u00a0' or '\u202f' && i + 1 < text.Length && char.IsAsciiDigit(text[i + 1]))
            {
                // "7 1/2" is a mixed fraction; "48 200" is a thousands mark, which we refuse.
                var j = i + 1;
                var numerator = text[i] == ' ' ? Digits(text, ref j) : "";
                if (numerator.Length > 0 && j + 1 < text.Length && text[j] == '/' && char.IsAsciiLetter(text[j + 1]))
                {
                    // "300 1/min": the unit begins with the 1; left for the unit reader.
                }
                else if (numerator.Length > 0 && j < text.Length && text[j] == '/')
                {
                    j++;
                    var denominator = Digits(text, ref j);
                    var fraction = Fraction(numerator, denominator, text);
                    if (!fraction.IsRead)
                    {
                        return fraction;
                    }

                    value += fraction.Value;
                    i = j;
                }
                else if (numerator is "32" && j < text.Length && text[j..].StartsWith("nd", StringComparison.OrdinalIgnoreCase))
                {
                    // "6 32nds": the unit is the thirty-second; left for the unit reader.
                }
                else
                {
                    return Reading<double>.Failed("thousands-mark", $"'{Shown(text)}' has a thousands mark; write the number without it.");
                }
            }
            else if (text[i..].StartsWith("/32nd", StringComparison.OrdinalIgnoreCase))
            {
                // "7/32nds": the unit is the thirty-second; left for the unit reader.
            }
            else if (i < text.Length && text[i] == '/')
            {
                i++;
                var denominator = Digits(text, ref i);
                var fraction = Fraction(whole, denominator, text);
                if (!fraction.IsRead)
                {
                    return fraction;
                }

                value = fraction.Value;
            }
        }

        if (!double.IsFinite(value) || value > Greatest)
        {
            return Reading<double>.Failed("number-too-large", $"'{Shown(text)}' is larger than any measurement here.");
        }

        consumed = i;
        return Reading<double>.Of(negative ? -value : value);
    }

    /// <summary>Reads a text that is a number and nothing else.</summary>
    public static Reading<double> Read(string? text)
    {
        var trimmed = (text ?? "").Trim();
        if (trimmed.Length == 0)
        {
            return Reading<double>.Failed("empty", "Nothing was entered where a number is expected.");
        }

        var read = ReadStart(trimmed, out var consumed);
        return !read.IsRead || consumed == trimmed.Length
            ? read
            : Reading<double>.Failed("number-trailing", $"'{Shown(trimmed)}' goes on after its number with '{Shown(trimmed.AsSpan(consumed))}'.");
    }

    /// <summary>A text cut to a length that fits one line, for use inside a message.</summary>
    public static string Shown(ReadOnlySpan<char> text)
    {
        var cut = text.Length > 60 ? text[..60] : text;
        var builder = new StringBuilder(cut.Length + 1);
        foreach (var c in cut)
        {
            builder.Append(char.IsControl(c) || char.IsSurrogate(c) ? '?' : c);
        }

        return text.Length > 60 ? builder.Append('…').ToString() : builder.ToString();
    }

    private static Reading<double> Fraction(string numerator, string denominator, ReadOnlySpan<char> text)
    {
        if (denominator.Length is 0 or > 6 || numerator.Length > 6)
        {
            return Reading<double>.Failed("fraction-unreadable", $"'{Shown(text)}' is not a fraction such as 6/32.");
        }

        var below = double.Parse(denominator, NumberStyles.None, CultureInfo.InvariantCulture);
        return below == 0
            ? Reading<double>.Failed("fraction-unreadable", $"'{Shown(text)}' divides by nothing.")
            : Reading<double>.Of(double.Parse(numerator, NumberStyles.None, CultureInfo.InvariantCulture) / below);
    }

    private static string Digits(ReadOnlySpan<char> text, ref int at)
    {
        var from = at;
        while (at < text.Length && char.IsAsciiDigit(text[at]))
        {
            at++;
        }

        return text[from..at].ToString();
    }
}
