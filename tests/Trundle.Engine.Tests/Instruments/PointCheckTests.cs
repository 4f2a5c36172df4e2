using Trundle.Engine.Findings;
using Trundle.Engine.Instruments;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Instruments;

public class PointCheckTests
{
    private static readonly Source Given = Source.Entered("the test");

    private static ComparedPoint<Torque> Point(double reference, double shown) => new(Torque.FromNewtonMetres(reference), Torque.FromNewtonMetres(shown));

    [Theory]
    [InlineData(10, 6)]
    [InlineData(10.01, 4)]
    [InlineData(200, 4)]
    public void A_wrench_has_the_wider_limit_up_to_ten_newton_metres(double torque, double percent)
    {
        var permitted = PointCheck.OfTorqueWrench(Torque.FromNewtonMetres(torque));
        permitted.Percent.ShouldBe(percent);
        permitted.Source.Status.ShouldBe(SourceStatus.SecondHand);
    }

    [Theory]
    [InlineData(100, 104, InstrumentVerdict.Passed)]
    [InlineData(100, 96, InstrumentVerdict.Passed)]
    [InlineData(100, 104.01, InstrumentVerdict.Failed)]
    [InlineData(100, 95.99, InstrumentVerdict.Failed)]
    public void The_limit_itself_is_within_on_both_sides(double reference, double shown, InstrumentVerdict verdict) =>
        PointCheck.Verdict(PointCheck.Judge([Point(50, 50), Point(reference, shown)], PointCheck.OfTorqueWrench)).ShouldBe(verdict);

    [Fact]
    public void An_amount_is_the_same_at_every_point_and_a_percentage_is_of_the_reference()
    {
        var points = new[] { Point(50, 51), Point(200, 201) };
        PointCheck.Judge(points, _ => new PermittedDeviation<Torque>(null, Torque.FromNewtonMetres(0.9), Given)).Select(p => p.Within).ShouldBe([false, false]);
        var judged = PointCheck.Judge(points, _ => new PermittedDeviation<Torque>(1, null, Given));
        judged.Select(p => p.Permitted!.Value.NewtonMetres).ShouldBe([0.5, 2], 1e-12);
        judged.Select(p => p.Within).ShouldBe([false, true]);
        judged.Select(p => p.Percent).ShouldBe([2, 0.5], 1e-12);
        judged.Select(p => p.Deviation.NewtonMetres).ShouldBe([1, 1], 1e-12);
    }

    [Fact]
    public void Without_a_limit_nothing_is_judged_unless_another_point_fails()
    {
        PermittedDeviation<Torque>? OnlySmall(Torque t) => t.NewtonMetres < 60 ? new PermittedDeviation<Torque>(1, null, Given) : null;
        PointCheck.Verdict(PointCheck.Judge([Point(50, 50), Point(100, 130)], OnlySmall)).ShouldBe(InstrumentVerdict.NotJudged);
        PointCheck.Verdict(PointCheck.Judge([Point(50, 55), Point(100, 100)], OnlySmall)).ShouldBe(InstrumentVerdict.Failed);
        PointCheck.Verdict<Torque>([]).ShouldBe(InstrumentVerdict.NotJudged);
    }

    [Fact]
    public void Every_verdict_has_a_word_of_its_own()
    {
        InstrumentVerdictWords.All.Select(v => InstrumentVerdictWords.Of(v.Word())).ShouldBe(InstrumentVerdictWords.All.Cast<InstrumentVerdict?>());
        InstrumentVerdictWords.Of("splendid").ShouldBeNull();
    }
}
