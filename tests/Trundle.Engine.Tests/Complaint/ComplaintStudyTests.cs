using System.Globalization;
using System.Text;
using Trundle.Engine.Complaint;
using Trundle.Engine.Tests.Balance.Oracle.Why;

namespace Trundle.Engine.Tests.Complaint;

/// <summary>
/// How well causes are named over drawn interviews. The whole study is run and written into docs/theory/complaint.md where TRUNDLE_WRITE_DOCS is 1; every
/// run does a part of it, and checks that the page was made from the inputs of today.
/// </summary>
public sealed class ComplaintStudyTests
{
    private const int Whole = 10_000;
    private const int Part = 2_000;
    private static readonly StudyPage Page = new("complaint.md");
    private static readonly ComplaintPlan Three = new(["kind", "speed", "felt"], 3);
    private static readonly ComplaintPlan Led = new([], 5);
    private static readonly ComplaintPlan All = new(ComplaintData.Questions, ComplaintData.Questions.Count);

    [Theory]
    [InlineData(3, false, 0.25)]
    [InlineData(5, true, 0.35)]
    [InlineData(10, false, 0.5)]
    public void Probabilities_mean_what_they_say(int asked, bool led, double least)
    {
        var study = ComplaintStudy.Of(Part, led ? Led : asked == 3 ? Three : All);
        var right = (double)study.Right / Part;
        right.ShouldBe(study.Expected / Part, 0.04, "the share that was right is the share that the model expects");
        right.ShouldBeGreaterThan(least);
        study.ReliabilityError.ShouldBeLessThan(0.01);
    }

    [Fact]
    public void The_next_question_tells_more_than_the_first_of_the_list_and_every_answer_tells_something()
    {
        var listed = ComplaintStudy.Of(Part, All with { Asked = 5 });
        var led = ComplaintStudy.Of(Part, Led);
        led.Bits.ShouldBeLessThan(listed.Bits);
        ComplaintStudy.Of(Part, All).Bits.ShouldBeLessThan(led.Bits);
        led.Bits.ShouldBeLessThan(ComplaintStudy.Of(Part, Three).Bits);
    }

    [Fact]
    public void A_danger_that_is_true_is_seldom_passed_over()
    {
        foreach (var plan in new[] { Three, Led, All, All with { Misheard = 0.2 } })
        {
            var (truly, named) = ComplaintStudy.Of(Part, plan).Dangers;
            truly.ShouldBeGreaterThan(300);
            ((double)named / truly).ShouldBeGreaterThan(0.93);
        }
    }

    [Fact]
    public void The_page_was_made_from_these_inputs() => Page.ShouldBeMadeFrom(Fingerprint(), Study);

    /// <summary>The tables, and the first interviews as drawn and as named.</summary>
    private static string Fingerprint() => StudyPage.Fingerprint(ComplaintData.AllText, seed =>
    {
        var (cause, detail) = ComplaintStudy.Draw(seed, All);
        return $"{cause} {string.Join(' ', detail.Given.Values)} {ComplaintTriage.Of(detail).Causes[0].Cause}";
    });

    private static string Study()
    {
        var text = new StringBuilder();
        var all = ComplaintStudy.Of(Whole, All);
        Line($"Seeds 1 to {Whole}, inputs {Fingerprint()}.");
        Line("");
        Line("| answered | first right | expected right | among the first three | bits | reliability error | a true danger is named | not to be driven | contradicts itself |");
        Line("| --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        Row("kind, speed and where it is felt", ComplaintStudy.Of(Whole, Three));
        Row("five questions, each the program's next", ComplaintStudy.Of(Whole, Led));
        Row("all ten", all);
        Row("all ten, asked again where it contradicts itself", ComplaintStudy.Of(Whole, All with { AskedAgain = true }));
        Row("all ten, one answer in five misheard", ComplaintStudy.Of(Whole, All with { Misheard = 0.2 }));
        Row("all ten, every cause equally often", ComplaintStudy.Of(Whole, All with { AllAlikeOften = true }));
        Line("");
        Line("Reliability, all ten: of all probabilities given in a tenth, how often the cause was true.");
        Line("");
        Line("| probabilities | mean given | true |");
        Line("| --- | --- | --- |");
        foreach (var (count, mean, part) in all.Reliability)
        {
            Line(string.Create(CultureInfo.InvariantCulture, $"| {count} | {mean:0.000} | {part:0.000} |"));
        }

        return text.ToString();

        void Row(string name, ComplaintStudy s) => Line(string.Create(CultureInfo.InvariantCulture,
            $"| {name} | {Share(s.Right, s.Cases)} | {Share(s.Expected, s.Cases)} | {Share(s.AmongThree, s.Cases)} | {s.Bits / s.Cases:0.00} | {s.ReliabilityError:0.0000} | {Share(s.Dangers.Named, s.Dangers.True)} | {Share(s.NotToBeDriven, s.Cases)} | {Share(s.Contradictory, s.Cases)} |"));

        static string Share(double part, double whole) => string.Create(CultureInfo.InvariantCulture, $"{100 * part / whole:0.0} %");

        void Line(string line) => text.Append(line).Append('\n');
    }
}
