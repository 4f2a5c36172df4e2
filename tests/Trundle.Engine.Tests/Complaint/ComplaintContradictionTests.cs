using Trundle.Engine.Complaint;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Complaint;

/// <summary>What cannot be so together is found, and what can be is let be.</summary>
public sealed class ComplaintContradictionTests
{
    [Theory]
    [InlineData(100, "low", true)]
    [InlineData(61, "low", true)]
    [InlineData(58, "low", false)]
    [InlineData(30, "middle", true)]
    [InlineData(65, "middle", false)]
    [InlineData(120, "middle", true)]
    [InlineData(50, "band", true)]
    [InlineData(75, "rising", false)]
    [InlineData(60, "rising", true)]
    [InlineData(180, "rising", false)]
    [InlineData(180, "all", false)]
    [InlineData(40, "standing", false)]
    public void The_speed_at_which_it_is_worst_lies_in_the_range_that_was_answered(double at, string range, bool contradicts)
    {
        var found = ComplaintContradiction.In(new ComplaintDetail(ComplaintData.Said($"speed={range}").Given, Speed.FromKilometresPerHour(at)));
        (found is not null).ShouldBe(contradicts);
        (found?.Key).ShouldBe(contradicts ? "at" : null);
    }

    [Theory]
    [InlineData("felt", "kind=shake", "felt=heard")]
    [InlineData("pull", "kind=pull", "pull=none")]
    [InlineData("noise", "kind=noise", "noise=none")]
    [InlineData("noise", "felt=heard", "noise=none")]
    [InlineData("speed", "kind=waddle", "speed=rising")]
    [InlineData("speed", "speed=standing", "follows=road-speed")]
    [InlineData("when", "felt=pedal", "when=accelerating")]
    [InlineData(null, "kind=noise", "felt=heard", "noise=hum")]
    [InlineData(null, "kind=shake", "pull=none", "noise=none")]
    [InlineData(null, "kind=shake", "speed=standing", "follows=engine-speed", "neutral=stays")]
    public void Answers_that_go_against_each_other_are_found(string? key, params string[] said) =>
        (ComplaintContradiction.In(ComplaintData.Said(said))?.Key).ShouldBe(key);

    [Fact]
    public void Every_row_names_answers_that_there_are_and_none_of_them_goes_against_itself()
    {
        var rows = File.ReadAllLines(Path.Combine(Balance.Oracle.Why.WhyPriors.Root, "src", "Trundle.Engine", "Complaint", "complaint_contradictions.csv"));
        rows.Length.ShouldBeGreaterThan(8);
        foreach (var cells in rows.Skip(1).Select(r => r.Split(',')))
        {
            ComplaintData.Answers(cells[0]).ShouldContain(cells[1]);
            cells[0].ShouldNotBe(cells[2]);
            foreach (var other in cells[3].Split(' '))
            {
                ComplaintData.Answers(cells[2]).ShouldContain(other);
                ComplaintContradiction.In(ComplaintData.Said($"{cells[0]}={cells[1]}", $"{cells[2]}={other}")).ShouldNotBeNull();
            }
        }
    }
}
