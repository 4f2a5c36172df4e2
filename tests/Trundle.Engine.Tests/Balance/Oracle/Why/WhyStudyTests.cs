using System.Globalization;
using System.Text;
using Trundle.Engine.Balance.Why;

namespace Trundle.Engine.Tests.Balance.Oracle.Why;

/// <summary>
/// How well causes are named over drawn cases. The whole study (ten thousand cases) is run and written into docs/theory/why.md where
/// TRUNDLE_WRITE_DOCS is 1; every run does a part of it, and checks that the page was made from the inputs of today.
/// </summary>
public sealed class WhyStudyTests
{
    private const int Whole = 10_000;
    private const int Part = 600;
    private const int WithOracle = 1_000;
    private static readonly StudyPage Page = new("why.md");

    [Fact]
    public void Probabilities_mean_what_they_say()
    {
        var study = WhyStudy.Of(1, Part, Departure.None);
        var right = (double)study.Right / Part;

        // The program expects to be right as often as the mean of its first probabilities; three standard errors are 6 %.
        right.ShouldBe(study.Expected / Part, 0.06);
        right.ShouldBeGreaterThan(0.5);
        study.CalibrationError.ShouldBeLessThan(0.01);
        ((double)study.SizesInside / study.Sizes).ShouldBe(0.9, 0.05);
        foreach (var (count, mean, part) in study.Reliability.Where(r => r.Count >= 50))
        {
            part.ShouldBe(mean, 4 * Math.Sqrt(mean * (1 - mean) / count) + 0.01, $"{count} probabilities of about {mean:0.00}");
        }
    }

    [Fact]
    public void The_page_was_made_from_these_inputs() => Page.ShouldBeMadeFrom(Fingerprint(), Study);

    /// <summary>The tables of priors, and the first cases as drawn and as answered, to digits that no machine differs in.</summary>
    private static string Fingerprint() => StudyPage.Fingerprint(WhyPriors.AllText, seed =>
    {
        var drawn = WhyCase.Draw(seed, Departure.None);
        var first = BalanceWhy.Run(drawn.Problem).Explanations[0];
        return string.Create(CultureInfo.InvariantCulture, $"{drawn.Cause} {drawn.Weights.Count} {drawn.Displays[^1].Inner.Magnitude:0.000} {first.Cause.Word()}");
    });

    private static string Study()
    {
        var text = new StringBuilder();
        var study = WhyStudy.Of(1, Whole, Departure.None);
        var best = new WhyStudy();
        var engine = new WhyStudy();
        var apart = 0.0;
        for (var seed = 1; seed <= WithOracle; seed++)
        {
            var drawn = WhyCase.Draw(seed, Departure.None);
            var oracle = WhyOracle.Of(drawn);
            var ours = BalanceWhy.Run(drawn.Problem).Explanations.Select(e => (Cause: e.Cause.Word(), e.Probability)).ToList();
            best.Add(drawn, oracle);
            engine.Add(drawn, ours);
            apart = Math.Max(apart, oracle.Max(o => Math.Abs(o.Probability - ours.First(e => e.Cause == o.Cause).Probability)));
        }

        Line($"Seeds 1 to {Whole}, inputs {Fingerprint()}.");
        Line("");
        Line("| cases | first cause right | right among the first two | expected right | bits | reliability error | size in its interval |");
        Line("| --- | --- | --- | --- | --- | --- | --- |");
        Row("as in the tables", study);
        Row("every cause equally often", WhyStudy.Of(1, Whole, Departure.EvenCauses));
        Row("display rounded to 1 g and 1°, and not told", WhyStudy.Of(1, Whole, Departure.RoundedDisplay));
        Row("each weight fitted within 1.5° and 2 %", WhyStudy.Of(1, Whole, Departure.FittedLoosely));
        Row("repeatability twice what is told", WhyStudy.Of(1, Whole, Departure.WorseRepeatability));
        Row("two causes at once (either counts)", WhyStudy.Of(1, Whole, Departure.TwoCauses));
        Line("");
        Line(string.Create(CultureInfo.InvariantCulture, $"The best that the model allows, by the oracle on the first {WithOracle} cases: {100.0 * best.Right / WithOracle:0.0} % right, {best.Bits / WithOracle:0.000} bits; the engine on the same cases: {100.0 * engine.Right / WithOracle:0.0} %, {engine.Bits / WithOracle:0.000} bits. No probability differs by more than {Math.Ceiling(1e4 * apart) / 1e4:0.0000}."));
        Line("");
        Line("Reliability, cases as in the tables: of all probabilities given in a tenth, how often the cause was true.");
        Line("");
        Line("| probabilities | mean given | true |");
        Line("| --- | --- | --- |");
        foreach (var (count, mean, part) in study.Reliability)
        {
            Line(string.Create(CultureInfo.InvariantCulture, $"| {count} | {mean:0.000} | {part:0.000} |"));
        }

        Line("");
        Line("Confusion, cases as in the tables: rows are true, columns are named first.");
        Line("");
        Line($"| true | {string.Join(" | ", WhyStudy.Words)} |");
        Line($"| --- |{string.Concat(WhyStudy.Words.Select(_ => " --- |"))}");
        foreach (var cause in WhyStudy.Words)
        {
            Line($"| {cause} | {string.Join(" | ", WhyStudy.Words.Select(w => study.Confused(cause, w).ToString(CultureInfo.InvariantCulture)))} |");
        }

        Line("");
        Line("By how large the misfit is (root mean square over what repeatability leaves), cases as in the tables:");
        Line("");
        Line("| misfit | cases | first cause right |");
        Line("| --- | --- | --- |");
        foreach (var (words, count, right) in study.ByMisfit)
        {
            Line(string.Create(CultureInfo.InvariantCulture, $"| {words} | {count} | {100.0 * right / count:0} % |"));
        }

        return text.ToString();

        void Row(string name, WhyStudy s) => Line(string.Create(CultureInfo.InvariantCulture,
            $"| {name} | {100.0 * s.Right / s.Cases:0.0} % | {100.0 * s.AmongTwo / s.Cases:0.0} % | {100.0 * s.Expected / s.Cases:0.0} % | {s.Bits / s.Cases:0.00} | {s.CalibrationError:0.0000} | {100.0 * s.SizesInside / s.Sizes:0.0} % |"));

        void Line(string line) => text.Append(line).Append('\n');
    }
}
