using Trundle.Engine.Findings;
using Trundle.Engine.Instruments;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Visits.Instruments;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Bay;

public class InstrumentFindingsTests
{
    private static VisitState Visit(string instruments, List<Problem>? problems = null) =>
        VisitStanding.Of(FileNode.Parse($$$"""{"date": "2026-03-14", "work": {"instruments": {{{instruments}}}}}""", "f").Value, problems ?? []);

    [Theory]
    [InlineData("""{"torqueWrench": "wrench 1", "standing": {"torqueWrench": {"verdict": "passed", "checked": "2025-03-13", "due": "2026-03-13"}}}""", "instrument.torque-wrench", Category.Major)]
    [InlineData("""{"torqueWrench": "wrench 1", "standing": {"torqueWrench": {"verdict": "passed", "due": "2026-03-14"}}}""", null, Category.None)]
    [InlineData("""{"torqueWrench": "wrench 1", "standing": {"torqueWrench": {"verdict": "failed", "due": "2027-03-14"}}}""", "instrument.torque-wrench", Category.Major)]
    [InlineData("""{"lift": "lift 1", "standing": {"lift": {"verdict": "undecided"}}}""", "instrument.lift", Category.Major)]
    [InlineData("""{"stands": "stands A", "standing": {"stands": {"verdict": "not-judged"}}}""", "instrument.stands", Category.Refer)]
    [InlineData("""{"cage": "cage", "standing": {"cage": {"verdict": "passed", "due": "2026-03-13"}}}""", "instrument.inflation-cage", Category.Major)]
    [InlineData("""{"torqueWrench": "wrench 1"}""", null, Category.None)]
    public void An_instrument_that_is_not_in_order_is_a_finding_on_the_visit_that_used_it(string instruments, string? rule, Category category)
    {
        var finding = Visit(instruments).LeavingFindings.SingleOrDefault(f => f.Rule.StartsWith("instrument.", StringComparison.Ordinal));
        finding?.Rule.ShouldBe(rule);
        (finding?.Category ?? Category.None).ShouldBe(category);
        (finding is null).ShouldBe(rule is null);
    }

    [Fact]
    public void It_stops_hand_back_until_a_person_decides_and_the_check_answers_no()
    {
        const string used = """{"torqueWrench": "wrench 1", "standing": {"torqueWrench": {"verdict": "passed", "due": "2026-01-01"}}}""";
        var stop = Visit(used).Stops.Single(s => s.DecisionKey == "instrument-torque-wrench@vehicle");
        stop.What.ShouldContain("overdue");
        var answer = VisitCheckOperation.Run(FileNode.Parse($$$"""{"date": "2026-03-14", "work": {"instruments": {{{used}}} } }""", "f").Value).Value;
        answer.No.ShouldBeTrue();
        answer.Body["instruments"]![0]!["due"]!.GetValue<string>().ShouldBe("2026-01-01");
        answer.ForPeople.ShouldContain(l => l.Contains("overdue", StringComparison.Ordinal));
        var decided = FileNode.Parse($$$"""{"date": "2026-03-14", "work": {"instruments": {{{used}}}, "decisions": {"instrument-torque-wrench@vehicle": {"decision": "set again with wrench 2", "by": "T3", "role": "instructor"} } } }""", "f").Value;
        VisitStanding.Of(decided, []).Stops.ShouldNotContain(s => s.DecisionKey == stop.DecisionKey);
    }

    [Theory]
    [InlineData("""{"spanner": "x"}""", "work.instruments.spanner", "key-unknown")]
    [InlineData("""{"lift": "x", "standing": {"lift": {"due": "soon"}}}""", "work.instruments.standing.lift.due", "date-unreadable")]
    [InlineData("""{"torqueWrench": "x", "standing": {"torqueWrench": {"deviation": ["much"]}}}""", "work.instruments.standing.torqueWrench.deviation[0]", "deviation-unreadable")]
    public void Wrong_input_is_named_where_it_stands(string instruments, string where, string code)
    {
        var problems = new List<Problem>();
        Visit(instruments, problems);
        problems.ShouldHaveSingleItem().Where.ShouldBe(where);
        problems[0].Code.ShouldBe(code);
    }

    [Fact]
    public void What_is_taken_over_is_read_back_and_a_wrench_that_is_off_widens_the_clamp_of_the_visit()
    {
        var wrench = new Instrument(Guid.NewGuid(), InstrumentKind.TorqueWrench, "wrench 1", null, new DateOnly(2024, 1, 1), null, System.Text.Json.Nodes.JsonNode.Parse("""{"least": "40 N·m", "most": "200"}""")!.AsObject())
        {
            Checks = [new InstrumentCheck(new DateOnly(2025, 12, 1), InstrumentVerdict.Passed, new DateOnly(2026, 12, 1)) { Deviations = [2.5, -8] }],
        };
        var at = DateTimeOffset.UnixEpoch;
        var fields = VisitFields.Of(InstrumentUse.Of("torqueWrench").Taken(wrench).Append(("date", "2026-03-14"))
            .Append(("vehicle.axles.0.fixings.count", "5")).Append(("vehicle.axles.0.fixings.torque", "110 N·m")).Append(("vehicle.axles.0.fixings.thread", "M12x1.5"))
            .Append(("vehicle.axles.0.fixings.seat", "cone")).Append(("vehicle.axles.0.fixings.condition", "dry"))
            .Select(t => new Entry(Guid.NewGuid(), t.Item1, t.Item2, "T2", Role.Technician, at)));
        var problems = new List<Problem>();
        var state = VisitStanding.Of(fields.Assemble().Root, problems);
        problems.ShouldBeEmpty();
        var used = state.Work.Used("torqueWrench")!;
        (used.Name, used.Checked, used.Due, used.Verdict).ShouldBe(("wrench 1", new DateOnly(2025, 12, 1), new DateOnly(2026, 12, 1), InstrumentVerdict.Passed));
        (used.Wrench!.Least!.Value.NewtonMetres, used.Wrench.Most!.Value.NewtonMetres, used.Wrench.WorstPercent).ShouldBe((40, 200, -8));
        var fixings = new VisitAnswers(fields.Assemble().Root, state).Of(Leg.Refit, "fixings")![0]!;
        fixings["wrench"]!["off"]!.GetValue<bool>().ShouldBeTrue();
        fixings["clamp"]!["highKilonewtons"]!.GetValue<double>().ShouldBe(30.10 * 1.35 / 0.92, 0.02);
    }

    [Fact]
    public void Every_use_reads_its_own_key_and_no_two_uses_share_one()
    {
        InstrumentUse.All.Select(u => u.Key).ShouldBeUnique();
        foreach (var use in InstrumentUse.All)
        {
            Visit($$"""{"{{use.Key}}": "one"}""").Work.Used(use.Key)!.Name.ShouldBe("one");
            use.Steps.ShouldAllBe(s => Procedure.BuiltIn.Step(s).Id == s);
        }
    }
}
