using Trundle.Engine.Instruments;
using Trundle.Visits.Instruments;

namespace Trundle.Visits.Tests.Instruments;

public class InstrumentTests
{
    private static readonly DateOnly Today = new(2026, 3, 14);

    private static Instrument Wrench(params InstrumentCheck[] checks) =>
        new(Guid.NewGuid(), InstrumentKind.TorqueWrench, "wrench 1", "W-1", Today.AddDays(-800), null, null) { Checks = checks };

    private static InstrumentCheck Check(int ago, InstrumentVerdict verdict, int? due = null) => new(Today.AddDays(-ago), verdict, due is { } d ? Today.AddDays(d) : null);

    public static TheoryData<InstrumentStanding, Instrument> Cases => new()
    {
        { InstrumentStanding.NeverChecked, Wrench() },
        { InstrumentStanding.NeverChecked, Wrench(Check(10, InstrumentVerdict.NotJudged)) },
        { InstrumentStanding.InOrder, Wrench(Check(10, InstrumentVerdict.Passed)) },
        { InstrumentStanding.InOrder, Wrench(Check(365, InstrumentVerdict.Passed, 0)) },
        { InstrumentStanding.Overdue, Wrench(Check(365, InstrumentVerdict.Passed, -1)) },
        { InstrumentStanding.Overdue, Wrench(Check(365, InstrumentVerdict.Passed, -1), Check(2, InstrumentVerdict.Passed)) },
        { InstrumentStanding.InOrder, Wrench(Check(365, InstrumentVerdict.Passed, -1), Check(2, InstrumentVerdict.Passed, 300)) },
        { InstrumentStanding.NotPassed, Wrench(Check(2, InstrumentVerdict.Failed, 300)) },
        { InstrumentStanding.NotPassed, Wrench(Check(9, InstrumentVerdict.Failed), Check(2, InstrumentVerdict.NotJudged)) },
        { InstrumentStanding.NotPassed, Wrench(Check(2, InstrumentVerdict.Undecided)) },
        { InstrumentStanding.InOrder, Wrench(Check(9, InstrumentVerdict.Failed), Check(2, InstrumentVerdict.Passed)) },
        { InstrumentStanding.OutOfUse, Wrench(Check(2, InstrumentVerdict.Passed)) with { OutOfUseFrom = Today } },
        { InstrumentStanding.InOrder, Wrench(Check(2, InstrumentVerdict.Passed)) with { OutOfUseFrom = Today.AddDays(1) } },
        { InstrumentStanding.OutOfUse, Wrench(Check(2, InstrumentVerdict.Passed)) with { InUseFrom = Today.AddDays(1) } },
    };

    [Theory, MemberData(nameof(Cases))]
    public void An_instrument_stands_as_its_checks_say(InstrumentStanding standing, Instrument instrument)
    {
        instrument.StandingOn(Today).ShouldBe(standing);
        (instrument.CautionOn(Today) is null).ShouldBe(standing == InstrumentStanding.InOrder);
    }

    [Fact]
    public void The_bay_reads_what_the_host_writes()
    {
        var profile = System.Text.Json.Nodes.JsonNode.Parse("""{"distanceUnit": "cm", "weightPlaces": {"innerClip": {"radial": "3 mm", "axial": "-4 mm"}}}""")!.AsObject();
        var instrument = Wrench(Check(365, InstrumentVerdict.Passed, -1), Check(2, InstrumentVerdict.NotJudged)) with { Kind = InstrumentKind.Balancer, OutOfUseFrom = Today.AddDays(9), Profile = profile };
        var read = InstrumentJson.Read(System.Text.Json.Nodes.JsonNode.Parse(InstrumentJson.Of(instrument).ToJsonString())!.AsObject())!;
        read.Checks.ShouldBe(instrument.Checks);
        read.Profile!.ToJsonString().ShouldBe(profile.ToJsonString());
        (read with { Checks = [], Profile = null }).ShouldBe(instrument with { Checks = [], Profile = null });
    }

    [Fact]
    public void A_balancers_own_tests_are_offered_only_where_this_program_reckons_them()
    {
        var reckons = Visits.Operations.OperationList.All.Any(o => o.Name == "balance machine");
        InstrumentRecords.Offered(InstrumentKind.Balancer).Contains(InstrumentRecordKind.MachineCheck).ShouldBe(reckons);
        InstrumentRecords.Offered(InstrumentKind.TorqueWrench).ShouldBe([InstrumentRecordKind.OutsideCalibration, InstrumentRecordKind.Comparison, InstrumentRecordKind.Note]);
        InstrumentRecords.Reckon(InstrumentRecordKind.MachineCheck, """{"nothing": 1}""").IsRead.ShouldBeFalse();
    }

    [Fact]
    public void A_machine_check_is_reckoned_by_the_operation_of_that_name()
    {
        var record = InstrumentRecords.Reckon(InstrumentRecordKind.MachineCheck, File.ReadAllText("balance-machine-worked.json")).Value;
        record.Operation.ShouldBe("balance machine");
        record.Verdict.ShouldBe(InstrumentVerdict.Passed);
        record.Answer!["minimumAchievableGramMillimetres"]!.GetValue<double>().ShouldBe(200, 1e-9);
        record.Figures.ShouldContain(f => f.StartsWith("passed", StringComparison.Ordinal) && f.Contains("traverse", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_word_of_a_machines_verdict_is_one_of_ours()
    {
        // Repeat spins with no limit to hold them against judge nothing.
        var record = InstrumentRecords.Reckon(InstrumentRecordKind.RepeatSpins, """
            {"planes": {"inner": {"radius": "200 mm"}, "outer": {"radius": "200 mm"}},
             "repeat": {"spins": [{"inner": {"mass": "20 g", "angle": 10}, "outer": {"mass": "5 g", "angle": 10}}, {"inner": {"mass": "21 g", "angle": 10}, "outer": {"mass": "5 g", "angle": 10}}, {"inner": {"mass": "20 g", "angle": 12}, "outer": {"mass": "6 g", "angle": 10}}]}}
            """).Value;
        InstrumentVerdictWords.Of(record.Answer!["verdict"]!.GetValue<string>()).ShouldBe(record.Verdict);
        record.Verdict.ShouldNotBe(InstrumentVerdict.Passed);
    }
}
