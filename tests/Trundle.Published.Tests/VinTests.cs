using Trundle.Engine.Vehicles;

namespace Trundle.Published.Tests;

/// <summary>
/// 49 CFR Part 565. The sample calculation of Table V, "Calculation of a Check Digit" (edition before 2008; second-hand: read in a quotation of the
/// part): products 8+49+24+5+32+15+18+80+0+45+56+7+6+40+12+12+2 = 411, remainder 4. And the sample of the agency's outline for new manufacturers
/// (second-hand: read in a copy of the outline, p. 18): sum 314, 28 6/11, check digit 6. No tolerance: digits.
/// </summary>
public sealed class VinTests
{
    [Theory]
    [InlineData("1G4AH59H45G118341", '4')]
    [InlineData("1J9RP1A36A1644345", '6')]
    public void The_samples_of_the_part_and_of_the_agency_agree(string text, char digit)
    {
        var vin = Vin.From(text).Value;
        vin.CheckDigit.ShouldBe(digit);
        vin.Agrees.ShouldBeTrue();
        vin.Note.ShouldBeNull();
    }

    [Fact]
    public void Another_ninth_character_is_told_and_is_no_refusal()
    {
        var vin = Vin.From("1G4AH59H55G118341").Value;
        vin.Agrees.ShouldBeFalse();
        vin.Note.ShouldNotBeNull().ShouldSatisfyAllConditions(n => n.ShouldContain("would be 4"), n => n.ShouldContain("not built to that rule"));
    }

    [Fact]
    public void Remainder_ten_is_the_letter_X()
    {
        // By hand: only the first character counts, 5 × 8 = 40 = 3 × 11 + 7; with a 4 in the eighth place 40 more: 80 = 7 × 11 + 3; by a 2 in the
        // second place 14 more: 94 = 8 × 11 + 6; by a 2 in the last place 4 more: 98 = 8 × 11 + 10.
        Vin.From("52000004000000002").Value.CheckDigit.ShouldBe('X');
    }

    /// <summary>An independent reckoning: the sum taken modulo eleven digit by digit, letters by their place in A-H, J-R, S-Z.</summary>
    [Fact]
    public void Every_single_changed_character_that_changes_its_value_is_seen()
    {
        const string right = "1J9RP1A36A1644345";
        const string letters = "ABCDEFGHJKLMNPRSTUVWXYZ";
        var seen = 0;
        for (var i = 0; i < right.Length; i++)
        {
            foreach (var c in letters + "0123456789")
            {
                if (i == 8 || Value(c) == Value(right[i]))
                {
                    continue;
                }

                Vin.From(right[..i] + c + right[(i + 1)..]).Value.Agrees.ShouldBeFalse($"{c} at {i + 1}");
                seen++;
            }
        }

        seen.ShouldBeGreaterThan(400);

        static int Value(char c) => c <= '9' ? c - '0' : c <= 'H' ? c - 'A' + 1 : c <= 'R' ? c - 'J' + 1 : c - 'S' + 2;
    }

    [Theory]
    [InlineData("1J9RP1A36A164434", "16 characters")]
    [InlineData("1J9RP1A36A16443455", "18 characters")]
    [InlineData("1J9RP1A36AI644345", "the letter I")]
    [InlineData("1J9RP1A36AO644345", "is it a 0?")]
    [InlineData("1J9RP1A36A16443*5", "letters and digits only")]
    public void What_is_no_number_of_the_form_is_refused_with_what_would_be_right(string text, string words)
    {
        Vin.From(text).Problem!.Message.ShouldContain(words);
    }

    [Fact]
    public void Blanks_dashes_and_small_letters_are_passed_over() => Vin.From("1j9-rp1a36 a1644345").Value.Text.ShouldBe("1J9RP1A36A1644345");
}
