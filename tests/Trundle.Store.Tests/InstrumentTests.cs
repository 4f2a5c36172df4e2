using Trundle.Engine;
using Trundle.Engine.Instruments;
using Trundle.Visits.Bay;
using Trundle.Visits.Instruments;

namespace Trundle.Store.Tests;

public sealed class InstrumentTests : IDisposable
{
    private static readonly Recorder By = new("T1", Role.Technician, Workshop.Morning);
    private readonly Workshop _workshop = new();

    public void Dispose() => _workshop.Dispose();

    private InstrumentStore Store => _workshop.Store.Instruments;

    private Guid Add(InstrumentKind kind = InstrumentKind.TorqueWrench, string name = "wrench 1")
    {
        var id = Guid.NewGuid();
        Store.Add(id, kind, new InstrumentDetails(name, "W-1", Workshop.Day.AddDays(-400), null), By).IsRead.ShouldBeTrue();
        return id;
    }

    private static NewInstrumentRecord Check(string shown, int ago = 0, int? due = 365, Guid? supersedes = null) => new(
        Guid.NewGuid(), InstrumentRecordKind.Comparison, Workshop.Day.AddDays(-ago), due is { } d ? Workshop.Day.AddDays(d - ago) : null,
        $$"""{"kind": "torque wrench", "points": [{"reference": "100 N·m", "shown": "{{shown}}"}]}""", supersedes);

    [Fact]
    public void A_record_is_kept_as_typed_with_its_answer_and_who_reckoned_it()
    {
        var id = Add();
        Store.Record(id, Check("105 Nm"), Workshop.Day, By).IsRead.ShouldBeTrue();
        var record = _workshop.Reopen().Instruments.Find(id)!.Records[^1];
        record.Body.ShouldContain("105 Nm");
        record.Answer!.ShouldContain("\"verdict\":\"failed\"");
        record.Figures.ShouldContain(f => f.Contains("5.00 %", StringComparison.Ordinal));
        (record.Verdict, record.Operation, record.EngineVersion, record.TableEdition, record.By, record.Role, record.Due)
            .ShouldBe((InstrumentVerdict.Failed, "instrument check", EngineVersion.Engine, EngineVersion.Tables, "T1", Role.Technician, Workshop.Day.AddDays(365)));
        Store.Find(id)!.Instrument.StandingOn(Workshop.Day).ShouldBe(InstrumentStanding.NotPassed);
    }

    [Fact]
    public void A_record_sent_twice_is_taken_once()
    {
        var id = Add();
        var check = Check("101 N·m");
        Store.Record(id, check, Workshop.Day, By).IsRead.ShouldBeTrue();
        Store.Record(id, check, Workshop.Day, By).IsRead.ShouldBeTrue();
        Store.Find(id)!.Records.Count(r => r.Kind == InstrumentRecordKind.Comparison).ShouldBe(1);
        Store.Record(Add(name: "wrench 2"), check, Workshop.Day, By).Problem!.Code.ShouldBe("record-id-taken");
    }

    [Fact]
    public void A_record_that_stands_in_place_of_another_leaves_it_there_and_takes_its_word()
    {
        var id = Add();
        var wrong = Check("109 N·m");
        Store.Record(id, wrong, Workshop.Day, By);
        var right = Check("100.9 N·m", supersedes: wrong.Id);
        Store.Record(id, right, Workshop.Day, By).IsRead.ShouldBeTrue();
        var stored = Store.Find(id)!;
        stored.Records.Count.ShouldBe(3);
        stored.IsSuperseded(stored.Records.Single(r => r.Id == wrong.Id)).ShouldBeTrue();
        stored.Instrument.Checks.ShouldHaveSingleItem().Verdict.ShouldBe(InstrumentVerdict.Passed);
        Store.Record(id, Check("100 N·m", supersedes: wrong.Id), Workshop.Day, By).Problem!.Where.ShouldBe("supersedes");
    }

    [Fact]
    public void A_balancers_last_repeat_spin_study_that_counts_tells_its_repeatability()
    {
        var id = Add(InstrumentKind.Balancer, "balancer 1");
        Store.Find(id)!.Instrument.Repeatability.ShouldBeNull();
        Store.Record(id, Study(20, "12", "14", "13"), Workshop.Day, By).IsRead.ShouldBeTrue();
        var wrong = Study(10, "12", "40", "13");
        Store.Record(id, wrong, Workshop.Day, By).IsRead.ShouldBeTrue();
        var right = Study(10, "12", "16", "14") with { Supersedes = wrong.Id };
        Store.Record(id, right, Workshop.Day, By).IsRead.ShouldBeTrue();

        // 12, 16 and 14 g at one place: squares 4 + 4 + 0 over two components of two free spins, which is a variance of 2. The other plane shows less.
        var found = Store.Find(id)!.Instrument.Repeatability.ShouldNotBeNull();
        found.Deviation.Grams.ShouldBe(Math.Sqrt(2), 1e-9);
        (found.On, found.Spins).ShouldBe((Workshop.Day.AddDays(-10), 3));
        InstrumentJson.Read(InstrumentJson.Of(Store.Find(id)!.Instrument))!.Repeatability.ShouldBe(found);

        static NewInstrumentRecord Study(int ago, params string[] inner)
        {
            var spins = string.Join(", ", inner.Select(g => "{\"inner\": {\"mass\": \"" + g + " g\", \"angle\": 30}, \"outer\": {\"mass\": \"0 g\"}}"));
            return new NewInstrumentRecord(
                Guid.NewGuid(), InstrumentRecordKind.RepeatSpins, Workshop.Day.AddDays(-ago), null,
                "{\"planes\": {\"inner\": {\"radius\": \"200 mm\"}, \"outer\": {\"radius\": \"200 mm\"}}, \"repeat\": {\"spins\": [" + spins + "]}}", null);
        }
    }

    [Fact]
    public void A_new_name_leaves_the_old_one_in_the_history()
    {
        var id = Add();
        Store.Change(id, Guid.NewGuid(), new InstrumentDetails("wrench of bay 2", "W-1", Workshop.Day.AddDays(-400), Workshop.Day), Workshop.Day, By).IsRead.ShouldBeTrue();
        var stored = _workshop.Reopen().Instruments.Find(id)!;
        stored.Instrument.Name.ShouldBe("wrench of bay 2");
        stored.Instrument.StandingOn(Workshop.Day).ShouldBe(InstrumentStanding.OutOfUse);
        stored.Records.Select(r => r.Kind).ShouldBe([InstrumentRecordKind.Details, InstrumentRecordKind.Details]);
        stored.Records[0].Body.ShouldContain("wrench 1");
    }

    [Fact]
    public void A_balancers_profile_is_read_strictly_and_the_earlier_one_stays()
    {
        var id = Add(InstrumentKind.Balancer, "balancer");
        NewInstrumentRecord Profile(string body) => new(Guid.NewGuid(), InstrumentRecordKind.Profile, Workshop.Day, null, body, null);
        Store.Record(id, Profile("""{"displayStep": "1 g"}"""), Workshop.Day, By).IsRead.ShouldBeTrue();
        Store.Record(id, Profile("""{"displayStep": "5 g", "distanceUnit": "cm"}"""), Workshop.Day, By).IsRead.ShouldBeTrue();
        Store.Record(id, Profile("""{"displaySteps": "5 g"}"""), Workshop.Day, By).Problem!.Message.ShouldContain("displayStep");
        Store.Record(id, Profile("""{"distanceUnit": "ell"}"""), Workshop.Day, By).Problem!.Where.ShouldBe("distanceUnit");
        var stored = Store.Find(id)!;
        stored.Instrument.Profile!["displayStep"]!.GetValue<string>().ShouldBe("5 g");
        stored.Records.Count(r => r.Kind == InstrumentRecordKind.Profile).ShouldBe(2);
        Store.Record(Add(InstrumentKind.PressureGauge, "g"), Profile("""{"displayStep": "1 g"}"""), Workshop.Day, By).Problem!.Code.ShouldBe("not-offered");
    }

    [Fact]
    public void A_wrenchs_scale_is_kept_and_what_its_check_found_comes_with_it()
    {
        var id = Add();
        NewInstrumentRecord Scale(string body) => new(Guid.NewGuid(), InstrumentRecordKind.Profile, Workshop.Day, null, body, null);
        Store.Record(id, Scale("""{"least": "40 N·m", "most": 200}"""), Workshop.Day, By).IsRead.ShouldBeTrue();
        Store.Record(id, Scale("""{"least": "400 N·m", "most": 200}"""), Workshop.Day, By).Problem!.Where.ShouldBe("least");
        Store.Record(id, Scale("""{"displayStep": "1 g"}"""), Workshop.Day, By).Problem!.Code.ShouldBe("key-unknown");
        Store.Record(id, Check("103 N·m"), Workshop.Day, By).IsRead.ShouldBeTrue();
        var wrench = _workshop.Reopen().Instruments.Find(id)!.Instrument;
        wrench.Profile!["least"]!.GetValue<string>().ShouldBe("40 N·m");
        wrench.LastJudged!.Deviations.ShouldHaveSingleItem().ShouldBe(3, 1e-9);
        InstrumentJson.Read(InstrumentJson.Of(wrench))!.LastJudged!.Deviations.ShouldHaveSingleItem().ShouldBe(3, 1e-9);
    }

    [Theory]
    [InlineData(InstrumentKind.Lift)]
    [InlineData(InstrumentKind.Jack)]
    [InlineData(InstrumentKind.Stands)]
    [InlineData(InstrumentKind.MountingMachine)]
    [InlineData(InstrumentKind.InflationGear)]
    [InlineData(InstrumentKind.Cage)]
    public void What_holds_a_vehicle_or_a_tyre_is_inspected_and_falls_due(InstrumentKind kind)
    {
        var id = Add(kind, "one of its kind");
        Store.Find(id)!.Instrument.Kind.ShouldBe(kind);
        Store.Find(id)!.Instrument.StandingOn(Workshop.Day).ShouldBe(InstrumentStanding.NeverChecked);
        NewInstrumentRecord Inspection(string stated) => new(Guid.NewGuid(), InstrumentRecordKind.Inspection, Workshop.Day.AddDays(-30), Workshop.Day.AddDays(-1), $$"""{"kind": "{{kind.Word()}}", "by": "invented inspector", "stated": "{{stated}}"}""", null);
        Store.Record(id, Inspection("passed"), Workshop.Day, By).IsRead.ShouldBeTrue();
        Store.Find(id)!.Instrument.StandingOn(Workshop.Day).ShouldBe(InstrumentStanding.Overdue);
        Store.Record(id, Inspection("failed"), Workshop.Day, By).IsRead.ShouldBeTrue();
        Store.Find(id)!.Instrument.StandingOn(Workshop.Day).ShouldBe(InstrumentStanding.NotPassed);
        Store.Record(id, new NewInstrumentRecord(Guid.NewGuid(), InstrumentRecordKind.Comparison, Workshop.Day, null, "{}", null), Workshop.Day, By).Problem!.Code.ShouldBe("not-offered");
    }

    [Fact]
    public void What_cannot_be_is_refused_with_its_place_and_nothing_is_kept()
    {
        var id = Add();
        Store.Record(id, Check("100 N·m", ago: -1), Workshop.Day, By).Problem!.Where.ShouldBe("on");
        Store.Record(id, Check("100 N·m", due: 0), Workshop.Day, By).Problem!.Where.ShouldBe("due");
        Store.Record(id, Check("quite right"), Workshop.Day, By).Problem!.Where.ShouldBe("points[0].shown");
        Store.Record(Guid.NewGuid(), Check("100 N·m"), Workshop.Day, By).Problem!.Code.ShouldBe("instrument-unknown");
        Store.Add(Guid.NewGuid(), InstrumentKind.Other, new InstrumentDetails("WRENCH 1", null, Workshop.Day, null), By).Problem!.Code.ShouldBe("name-taken");
        Store.Add(Guid.NewGuid(), InstrumentKind.Other, new InstrumentDetails("", null, Workshop.Day, null), By).Problem!.Where.ShouldBe("name");
        Store.Change(id, Guid.NewGuid(), new InstrumentDetails("wrench 1", null, Workshop.Day, Workshop.Day.AddDays(-1)), Workshop.Day, By).Problem!.Where.ShouldBe("outOfUseFrom");
        Store.All().ShouldHaveSingleItem().Records.ShouldHaveSingleItem();
    }
}
