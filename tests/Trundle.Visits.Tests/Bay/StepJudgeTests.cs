using Trundle.Engine.Findings;
using Trundle.Measures;
using Trundle.Visits.Bay;

namespace Trundle.Visits.Tests.Bay;

public sealed class StepJudgeTests
{
    private static readonly StepLimits Limits = new(
        5, Torque.FromNewtonMetres(120),
        new Limit(Amount.Of(GaugePressure.FromKilopascals(275), "kPa", 0), new Source("published guidance", SourceStatus.SecondHand)),
        null);

    private static StepState Judged(string step, StepRecord? record, StepLimits? limits = null) =>
        StepJudge.Judge(Procedure.BuiltIn.Step(step), "1L", record, limits ?? Limits);

    private static StepRecord Torques(params double[] newtonMetres) =>
        new(null, null, newtonMetres.Select((t, i) => (t, i)).ToDictionary(t => t.i + 1, t => Torque.FromNewtonMetres(t.t)), null, null);

    [Fact]
    public void Final_torque_stands_open_until_every_fixing_is_recorded()
    {
        Judged("final-torque", Torques(120, 120, 120, 120)).Standing.ShouldBe(StepStanding.Open);
        Judged("final-torque", Torques(120, 120, 120, 120, 120)).Standing.ShouldBe(StepStanding.Passed);
    }

    // ISO 6789:2003 Type II Class A: 4 % above 10 N·m (second-hand): 120 N·m may be 115.2 to 124.8.
    [Theory]
    [InlineData(115.2, StepStanding.Passed)]
    [InlineData(115.1, StepStanding.Failed)]
    [InlineData(124.8, StepStanding.Passed)]
    [InlineData(124.9, StepStanding.Failed)]
    public void A_fixing_off_the_makers_torque_by_more_than_the_wrenchs_tolerance_fails(double newtonMetres, StepStanding standing) =>
        Judged("final-torque", Torques(120, 120, newtonMetres, 120, 120)).Standing.ShouldBe(standing);

    [Fact]
    public void Without_the_makers_torque_nothing_is_called_tight()
    {
        var state = Judged("final-torque", Torques(120, 120, 120, 120, 120), Limits with { Torque = null });
        state.Standing.ShouldBe(StepStanding.Failed);
        state.Why!.ShouldContain("not given");
    }

    [Theory]
    [InlineData(275, StepStanding.Passed)]
    [InlineData(276, StepStanding.Passed)]
    [InlineData(276.1, StepStanding.Failed)]
    public void Seating_above_the_ruling_limit_fails(double kilopascals, StepStanding standing) =>
        Judged("seat", new StepRecord(null, GaugePressure.FromKilopascals(kilopascals), new Dictionary<int, Torque>(), null, null)).Standing.ShouldBe(standing);

    [Theory]
    [InlineData(5, StepStanding.Passed)]
    [InlineData(6, StepStanding.Failed)]
    public void A_check_spin_above_the_tolerance_fails(double grams, StepStanding standing) =>
        Judged("check-spin", new StepRecord(null, null, new Dictionary<int, Torque>(), new PlaneDisplay(Mass.FromGrams(grams), 10), new PlaneDisplay(Mass.FromGrams(0), 0))).Standing.ShouldBe(standing);

    [Fact]
    public void A_choice_that_does_not_pass_says_what_to_do()
    {
        var state = Judged("cone", new StepRecord("does not run freely", null, new Dictionary<int, Torque>(), null, null));
        state.Standing.ShouldBe(StepStanding.Failed);
        state.Why!.ShouldContain("Stop");
    }

    [Fact]
    public void Every_step_that_can_hurt_carries_its_caution()
    {
        foreach (var id in new[] { "slacken", "chocks", "lift-points", "stands", "feel", "core-out", "bead-breaking", "clamp", "demount", "rim-check", "mount", "clamps-released", "seat", "bead-line", "cone", "first-spin", "check-spin", "by-hand", "stages", "final-torque" })
        {
            Procedure.BuiltIn.Step(id).Cautions.Where(c => c.When.Count == 0).ShouldNotBeEmpty(id);
        }
    }

    [Fact]
    public void Every_passing_word_is_a_choice_and_every_choice_step_has_one_that_passes()
    {
        foreach (var step in Procedure.BuiltIn.Steps.Where(s => s.Entry == StepEntry.Choice))
        {
            step.Passing.ShouldNotBeEmpty(step.Id);
            step.Passing.Except(step.Choices).ShouldBeEmpty(step.Id);
        }
    }
}
