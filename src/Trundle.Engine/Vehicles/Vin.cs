using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Vehicles;

/// <summary>A vehicle identification number as it was read, with the check digit that one rule computes for it.</summary>
/// <param name="Text">The seventeen characters, in capitals.</param>
/// <param name="CheckDigit">What 49 CFR 565.15 puts in the ninth place: a digit, or X for ten.</param>
public sealed record Vin(string Text, char CheckDigit)
{
    private const int Characters = 17;
    private const int CheckPlace = 9;
    private const int Divisor = 11;

    private static readonly (Dictionary<char, int> Letters, int[] Weights) Table = Load();

    /// <summary>Where the characters and the check digit come from.</summary>
    public static Source Source { get; } = new("49 CFR 565.15, check digit; the form is that of ISO 3779", SourceStatus.SecondHand);

    /// <summary>What stands in the ninth place.</summary>
    public char Read => Text[CheckPlace - 1];

    /// <summary>True where the ninth character is the one that the rule computes.</summary>
    public bool Agrees => Read == CheckDigit;

    /// <summary>What a person should know where the check digit does not agree, or null. It is no fault of a vehicle that was not built to that rule.</summary>
    public string? Note => Agrees ? null
        : $"The ninth character is {Read}; the check digit of 49 CFR 565.15 would be {CheckDigit}. Read the plate again. A vehicle that was not built to that rule need not bear a check digit.";

    /// <summary>
    /// Reads a number off the plate: seventeen letters and digits without I, O and Q; blanks and dashes between them are passed over, small letters count
    /// as capitals. The check digit is computed and never demanded.
    /// </summary>
    /// <source>49 CFR 565.15 Tables III and IV and the remainder by eleven (second-hand, read in a quotation of the part); form as ISO 3779</source>
    public static Reading<Vin> From(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var plain = string.Concat(text.Where(c => !char.IsWhiteSpace(c) && c != '-')).ToUpperInvariant();
        if (plain.FirstOrDefault(c => !char.IsAsciiDigit(c) && !Table.Letters.ContainsKey(c)) is var wrong and not '\0')
        {
            return Reading<Vin>.Failed("vin-character", wrong is 'I' or 'O' or 'Q'
                ? $"'{NumberText.Shown(text)}' holds the letter {wrong}, which no vehicle identification number has; is it a {(wrong == 'I' ? "1" : "0")}?"
                : $"'{NumberText.Shown(text)}' holds '{wrong}'; a vehicle identification number has letters and digits only.");
        }

        return plain.Length == Characters
            ? Reading<Vin>.Of(new Vin(plain, CheckDigitOf(plain)))
            : Reading<Vin>.Failed("vin-length", string.Create(CultureInfo.InvariantCulture, $"'{NumberText.Shown(text)}' has {plain.Length} characters; a vehicle identification number has {Characters}."));
    }

    /// <summary>The weighted sum's remainder by eleven; the check place itself counts nothing.</summary>
    private static char CheckDigitOf(string plain)
    {
        var sum = 0;
        for (var i = 0; i < Characters; i++)
        {
            sum += Table.Weights[i] * (char.IsAsciiDigit(plain[i]) ? plain[i] - '0' : Table.Letters[plain[i]]);
        }

        var rest = sum % Divisor;
        return rest == 10 ? 'X' : (char)('0' + rest);
    }

    private static (Dictionary<char, int> Letters, int[] Weights) Load()
    {
        var table = CsvTable.Embedded("vin_check.csv");
        var letters = new Dictionary<char, int>();
        var weights = new int[Characters];
        foreach (var row in table.Rows)
        {
            var (key, value) = (table.Cell(row, "key"), int.Parse(table.Cell(row, "value"), NumberStyles.None, CultureInfo.InvariantCulture));
            if (table.Cell(row, "kind") == "letter")
            {
                letters.Add(key[0], value);
            }
            else
            {
                weights[int.Parse(key, NumberStyles.None, CultureInfo.InvariantCulture) - 1] = value;
            }
        }

        return (letters, weights);
    }
}
