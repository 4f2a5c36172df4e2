using System.Globalization;
using System.Text;
using Trundle.Engine.Tests.Balance.Oracle.Why;
using Trundle.Engine.Wear;

namespace Trundle.Engine.Tests.Wear;

/// <summary>
/// How well worn treads are named over drawn tyres. The whole study is run and written into docs/theory/wear.md where TRUNDLE_WRITE_DOCS is 1; every run
/// does a part of it, and checks that the page was made from the inputs of today.
/// </summary>
public sealed class WearStudyTests
{
    private const int Whole = 10_000;
    private const int Part = 1_500;
    private static readonly StudyPage Page = new("wear.md");
    private static readonly WearPlan Usual = new(3, false, false);
    private static readonly WearPlan Edged = new(6, true, true);

    [Theory]
    [InlineData(3, false, false, 0.6)]
    [InlineData(6, true, true, 0.75)]
    public void Probabilities_mean_what_they_say(int places, bool edges, bool context, double least)
    {
        var study = WearStudy.Of(Part, new WearPlan(places, edges, context));
        var right = (double)study.Right / Part;
        right.ShouldBe(study.Expected / Part, 0.05);
        right.ShouldBeGreaterThan(least);
        study.ReliabilityError.ShouldBeLessThan(0.02);
        ((double)study.CauseRight / Part).ShouldBe(study.CauseExpected / Part, 0.06);
    }

    [Fact]
    public void One_depth_a_groove_leaves_the_probabilities_wide_and_more_readings_narrow_them()
    {
        var few = WearStudy.Of(Part, new WearPlan(1, false, false));
        var many = WearStudy.Of(Part, Edged);
        (few.Bits / Part).ShouldBeGreaterThan((WearStudy.Of(Part, Usual).Bits / Part) + 0.2);
        (few.Bits / Part).ShouldBeGreaterThan((many.Bits / Part) + 0.8);
        ((double)few.Right / Part).ShouldBe(few.Expected / Part, 0.05);
    }

    [Fact]
    public void The_page_was_made_from_these_inputs() => Page.ShouldBeMadeFrom(Fingerprint(), Study);

    /// <summary>The tables, and the first tyres as drawn and as named.</summary>
    private static string Fingerprint() => StudyPage.Fingerprint(WearData.AllText, seed =>
    {
        var drawn = WearCase.Draw(seed, Edged);
        return $"{drawn.Pattern} {drawn.Cause} {WearReading.Of(drawn.Subject)[0].Likeliest.Pattern.Word()}";
    });

    private static string Study()
    {
        var text = new StringBuilder();
        var usual = WearStudy.Of(Whole, Usual);
        var edged = WearStudy.Of(Whole, Edged);
        Line($"Seeds 1 to {Whole}, inputs {Fingerprint()}.");
        Line("");
        Line("| measured | first pattern right | among the first two | expected right | bits | reliability error | first cause right | expected |");
        Line("| --- | --- | --- | --- | --- | --- | --- | --- |");
        Row("one depth a groove", WearStudy.Of(Whole, new WearPlan(1, false, false)));
        Row("three places around", usual);
        Row("six places around", WearStudy.Of(Whole, new WearPlan(6, false, false)));
        Row("three places, ribs and blocks at their edges", WearStudy.Of(Whole, new WearPlan(3, true, false)));
        Row("six places, edges, axle, pressure and the other tyre", edged);
        Row("the same, every pattern equally often", WearStudy.Of(Whole, Edged, allAlikeOften: true));
        Reliability("three places around", usual);
        Confusion("three places around", usual);
        Confusion("six places, edges, axle, pressure and the other tyre", edged);
        return text.ToString();

        void Reliability(string name, WearStudy study)
        {
            Line("");
            Line($"Reliability, {name}: of all probabilities given in a tenth, how often the pattern was true.");
            Line("");
            Line("| probabilities | mean given | true |");
            Line("| --- | --- | --- |");
            foreach (var (count, mean, part) in study.Reliability)
            {
                Line(string.Create(CultureInfo.InvariantCulture, $"| {count} | {mean:0.000} | {part:0.000} |"));
            }
        }

        void Confusion(string name, WearStudy study)
        {
            var words = WearPatternWords.All.Select(p => p.Word()).ToList();
            Line("");
            Line($"Confusion, {name}: rows are true, columns are named first.");
            Line("");
            Line($"| true | {string.Join(" | ", words)} |");
            Line($"| --- |{string.Concat(words.Select(_ => " --- |"))}");
            foreach (var pattern in words)
            {
                Line($"| {pattern} | {string.Join(" | ", words.Select(w => study.Confused(pattern, w).ToString(CultureInfo.InvariantCulture)))} |");
            }
        }

        void Row(string name, WearStudy s) => Line(string.Create(CultureInfo.InvariantCulture,
            $"| {name} | {100.0 * s.Right / s.Cases:0.0} % | {100.0 * s.AmongTwo / s.Cases:0.0} % | {100.0 * s.Expected / s.Cases:0.0} % | {s.Bits / s.Cases:0.00} | {s.ReliabilityError:0.0000} | {100.0 * s.CauseRight / s.Cases:0.0} % | {100.0 * s.CauseExpected / s.Cases:0.0} % |"));

        void Line(string line) => text.Append(line).Append('\n');
    }
}
