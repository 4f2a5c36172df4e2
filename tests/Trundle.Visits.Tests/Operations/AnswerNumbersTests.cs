using System.Text.RegularExpressions;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Operations;

public sealed partial class AnswerNumbersTests
{
    [Theory]
    [InlineData(5.999999999999999, 6)]
    [InlineData(304.7999999999993, 304.8)]
    [InlineData(0.5000000000000018, 0.5)]
    [InlineData(-47239.999999999956, -47240)]
    [InlineData(0.30000000000000004, 0.3)]
    [InlineData(1.9999999999999998e-5, 2e-5)]
    public void What_binary_arithmetic_left_behind_a_short_decimal_is_taken_off(double computed, double plain) =>
        AnswerNumbers.Plain(computed).ShouldBe(plain, 0);

    [Theory]
    [InlineData(0)]
    [InlineData(136000)]
    [InlineData(1.0 / 3)]
    [InlineData(3.141592653589793)]
    [InlineData(2.5000000001)]
    [InlineData(0.99999999)]
    [InlineData(12345.678901234)]
    public void Every_other_number_keeps_all_its_figures(double number) => AnswerNumbers.Plain(number).ShouldBe(number, 0);

    [Fact]
    public void No_answer_to_any_sample_shows_float_noise_in_its_numbers_or_its_words()
    {
        var answered = 0;
        foreach (var sample in Directory.GetFiles(AppContext.BaseDirectory, "*.json").Where(f => !Path.GetFileName(f).StartsWith("Trundle.", StringComparison.Ordinal)))
        {
            var body = FileNode.Parse(File.ReadAllText(sample), Path.GetFileName(sample)).Value;
            foreach (var operation in OperationList.All.Where(o => o.TakesFile))
            {
                var answer = operation.Run(body);
                if (answer.IsRead)
                {
                    answered++;
                    string[] texts = [answer.Value.Body.ToJsonString(), .. answer.Value.ForPeople];
                    texts.SelectMany(t => Noise().Matches(t)).Select(m => m.Value).ShouldBeEmpty($"{operation.Name} {Path.GetFileName(sample)}");
                }
            }
        }

        answered.ShouldBeGreaterThan(20);
    }

    [GeneratedRegex(@"\d*\.\d*(9{7}|0{7})\d*")]
    private static partial Regex Noise();
}
