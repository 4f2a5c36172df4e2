using Trundle.Engine.Fixings;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Bay;

public class StageTorquesTests
{
    private static readonly Position At = Position.Read("1L").Value;

    private static VisitFields Fields(params (string Field, string Typed, string By)[] entries) => VisitFields.Of(entries.Select((e, i) =>
        new Entry(Guid.NewGuid(), e.Field, e.Typed, e.By, Role.Technician, DateTimeOffset.UnixEpoch.AddSeconds(i))));

    [Fact]
    public void Each_fixing_at_each_stage_is_read_with_its_wrench_and_those_who_entered_it()
    {
        var problems = new List<Problem>();
        var fields = Fields(
            ("work.tightening.1L.stage-1", "1, 3 at 50 %", "T1"),
            (TighteningRecord.TorqueAt("1L", 0, 1), "55 N·m", "T1"), (TighteningRecord.TorqueAt("1L", 0, 3), "40 lbf·ft", "T2"), (TighteningRecord.WrenchAt("1L", 0), "wrench 1", "T1"),
            (TighteningRecord.TorqueAt("1L", 1, 1), "110 N·m", "T2"));
        var state = VisitStanding.Of(fields.Assemble().Root, problems);
        problems.ShouldBeEmpty();
        var stages = state.Work.Tightening[At].Torques;
        stages.Select(s => (s.Stage, s.Wrench, s.By)).ShouldBe([(0, "wrench 1", "T1, T2"), (1, null, "T2")]);
        stages[0].Torques[1].NewtonMetres.ShouldBe(55, 1e-9);
        stages[0].Torques[3].PoundForceFeet.ShouldBe(40, 1e-9);

        var answer = VisitCheckOperation.Run(fields.Assemble().Root).Value.Body["legs"]!["refit"]!["tightening"]!;
        answer.AsArray().Count.ShouldBe(2);
        answer[0]!["percent"]!.GetValue<double>().ShouldBe(50);
        answer[0]!["torquesNewtonMetres"]!["1"]!.GetValue<double>().ShouldBe(55, 1e-9);
        answer[0]!["by"]!.GetValue<string>().ShouldBe("T1, T2");
    }

    [Theory]
    [InlineData("0", "key-unknown")]
    [InlineData("21", "key-unknown")]
    [InlineData("wrenches", "key-unknown")]
    public void A_fixing_that_cannot_be_is_named(string key, string code)
    {
        var problems = new List<Problem>();
        VisitStanding.Of(FileNode.Parse($$$"""{"work": {"tightening": {"1L": {"torques": {"stage-1": {"{{{key}}}": "55 N·m"} } } } } }""", "f").Value, problems);
        problems.ShouldHaveSingleItem().Code.ShouldBe(code);
        problems[0].Where.ShouldBe($"work.tightening.1L.torques.stage-1.{key}");
    }

    private static RecordedStage Round(double percent, params int[] fixings) => new(percent, fixings.Length == 0 ? [1, 3, 5, 2, 4] : fixings);

    private static StepState Stages(TighteningRecord? record) => StepJudge.Judge(
        Procedure.BuiltIn.Step("stages"), "1L", new StepRecord("all stages in sequence", null, new Dictionary<int, Torque>(), null, null),
        new StepLimits(5, Torque.FromNewtonMetres(120), null, null) { Tightening = record });

    private static StageTorques Last(params double[] newtonMetres) => new(1, newtonMetres.Select((t, i) => (t, i)).ToDictionary(p => p.i + 1, p => Torque.FromNewtonMetres(p.t)), null, null);

    [Fact]
    public void A_word_alone_that_all_stages_were_done_does_not_pass_them()
    {
        Stages(null).Standing.ShouldBe(StepStanding.Open);
        Stages(null).Why!.ShouldContain("No stage of this wheel is recorded");
        Stages(TighteningRecord.Empty with { Stages = [Round(50), Round(100)] }).Standing.ShouldBe(StepStanding.Passed);
    }

    [Fact]
    public void A_fixing_missing_from_a_stage_or_a_last_stage_short_of_the_torque_fails_them()
    {
        var missing = Stages(TighteningRecord.Empty with { Stages = [Round(50), Round(100, 1, 3, 5, 2)] });
        missing.Standing.ShouldBe(StepStanding.Failed);
        missing.Why!.ShouldContain("Fixing 4 is missing from stage 2, the last one. Slacken all");
        Stages(TighteningRecord.Empty with { Stages = [Round(50, 1, 3, 5, 4), Round(100)] }).Why!.ShouldContain("Fixing 2 is missing from stage 1.");
        Stages(TighteningRecord.Empty with { Stages = [Round(50)] }).Why!.ShouldContain("The last stage recorded is 50 % of the torque");
    }

    // The maker's 120 N·m less the 4 % of a hand torque wrench: 115.2 N·m.
    [Theory]
    [InlineData(60, StepStanding.Failed)]
    [InlineData(115.1, StepStanding.Failed)]
    [InlineData(115.2, StepStanding.Passed)]
    public void A_fixing_that_got_too_little_at_the_last_stage_fails_them(double torque, StepStanding standing)
    {
        var state = Stages(TighteningRecord.Empty with { Stages = [Round(50), Round(100)], Torques = [Last(120, 120, torque, 120, 120)] });
        state.Standing.ShouldBe(standing);
        if (standing == StepStanding.Failed)
        {
            state.Why!.ShouldContain("less than the maker's 120 N·m at the last stage");
        }
    }

    [Fact]
    public void A_torque_left_out_beside_others_at_the_last_stage_is_asked_for()
    {
        var state = Stages(TighteningRecord.Empty with { Stages = [Round(50), Round(100)], Torques = [Last(120, 120, 120, 120)] });
        (state.Standing, state.Why!.Contains("torque of fixing 5", StringComparison.Ordinal)).ShouldBe((StepStanding.Open, true));
    }

    // The maker's 110 N·m with the 4 % of a hand torque wrench: 114.4 N·m.
    [Theory]
    [InlineData("114.4 N·m", StepStanding.Passed)]
    [InlineData("114.5 N·m", StepStanding.Failed)]
    [InlineData("40 N·m", StepStanding.Passed)]
    public void A_fixing_that_got_more_than_the_makers_torque_at_a_stage_stops_the_stages(string torque, StepStanding standing)
    {
        var step = Procedure.BuiltIn.Step("stages");
        var record = new StepRecord("all stages in sequence", null, new Dictionary<int, Torque>(), null, null);
        var limits = new StepLimits(5, Torque.FromNewtonMetres(110), null, null)
        {
            Tightening = TighteningRecord.Empty with { Stages = [Round(50), Round(75), Round(100)], Torques = [new StageTorques(1, new Dictionary<int, Torque> { [4] = Quantity.Read<Torque>(torque).Value }, null, null)] },
        };
        var state = StepJudge.Judge(step, "1L", record, limits);
        state.Standing.ShouldBe(standing);
        if (standing == StepStanding.Failed)
        {
            state.Why!.ShouldContain("4 at stage 2 (115 N·m)");
        }
    }
}
