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
            Tightening = TighteningRecord.Empty with { Torques = [new StageTorques(1, new Dictionary<int, Torque> { [4] = Quantity.Read<Torque>(torque).Value }, null, null)] },
        };
        var state = StepJudge.Judge(step, "1L", record, limits);
        state.Standing.ShouldBe(standing);
        if (standing == StepStanding.Failed)
        {
            state.Why!.ShouldContain("4 at stage 2 (115 N·m)");
        }
    }
}
