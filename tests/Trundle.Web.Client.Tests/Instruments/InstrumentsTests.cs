using System.Text.Json.Nodes;
using Bunit;
using Trundle.Engine.Instruments;
using Trundle.Engine.Vehicles;
using Trundle.Visits.Bay;
using Trundle.Visits.Instruments;
using Trundle.Web.Client.Balance;
using Trundle.Web.Client.Instruments;

namespace Trundle.Web.Client.Tests.Instruments;

public sealed class InstrumentsTests : BayContext
{
    private static readonly DateOnly Today = DateOnly.FromDateTime(TimeProvider.System.GetLocalNow().DateTime);
    private const string At = "fitted.1L.balance";

    private static Instrument Of(InstrumentKind kind, string name, string? profile = null, int due = 100) =>
        new(Guid.NewGuid(), kind, name, null, Today.AddDays(-500), null, profile is null ? null : JsonNode.Parse(profile)!.AsObject())
        {
            Checks = [new InstrumentCheck(Today.AddDays(-300), InstrumentVerdict.Passed, Today.AddDays(due))],
        };

    private void Bring(params Instrument[] instruments) => Browser.Instruments = new JsonArray([.. instruments.Select(i => (JsonNode?)InstrumentJson.Of(i))]);

    /// <summary>The sample's wheel before its balance is entered, on its first spin.</summary>
    private AngleSharp.Dom.IElement Spin()
    {
        BeforeTheSignature(Role.Technician, [.. Sample.Fields().Where(f => f.Field.StartsWith(At + ".", StringComparison.Ordinal)).Select(f => (f.Field, ""))]);
        var page = Page(Leg.OffTheCar, "1L", "first-spin");
        return page.Find("section[aria-labelledby=balancer]");
    }

    [Fact]
    public void A_balancer_chosen_by_name_brings_its_profile_as_typed_and_settings_turn_into_planes()
    {
        const string profile = """{"distanceUnit": "cm", "distanceZero": "-40", "weightPlaces": {"outerAdhesive": {"radial": "-43.2 mm", "axial": "-52.4"}}, "displayStep": "1 g"}""";
        Bring(Of(InstrumentKind.Balancer, "balancer by the window", profile), Of(InstrumentKind.TorqueWrench, "wrench 1"));
        var part = Spin();
        part.QuerySelectorAll("input[type=radio][value='balancer by the window']").Length.ShouldBe(1);
        part.TextContent.ShouldNotContain("wrench 1");
        part.QuerySelector("input[value='balancer by the window']")!.Change("balancer by the window");
        Visit[$"{At}.balancer.instrument"].ShouldBe("balancer by the window");
        Visit[$"{At}.balancer.distanceZero"].ShouldBe("-40");
        Visit[$"{At}.balancer.weightPlaces.outerAdhesive.axial"].ShouldBe("-52.4");

        // A bare rim distance is now in centimetres, and the file has its planes.
        ShopInstruments.Distance(Visit, Position.Read("1L").Value).Bare.ShouldBe("cm");
        Visit.EnterAsync(($"{At}.settings.rimDistance", "4 cm"), ($"{At}.settings.rimDiameter", "16 in"), ($"{At}.settings.rimWidth", "6 in"), ($"{At}.planes.inner.kind", "clip"), ($"{At}.planes.outer.kind", "adhesive"), ($"{At}.stock.clip.0", "5 g"), ($"{At}.stock.adhesive.0", "5 g"));
        var planes = WheelBalance.Of(Visit, Position.Read("1L").Value).File!.Planes;
        planes.Inner.Axial.Millimetres.ShouldBe(0, 1e-9);
        planes.Outer.Axial.Millimetres.ShouldBe(100, 1e-9);
        planes.Outer.Radius.Millimetres.ShouldBe(160, 1e-9);
    }

    [Fact]
    public void Another_balancer_takes_the_firsts_profile_away()
    {
        var (first, second) = (Of(InstrumentKind.Balancer, "first", """{"displayHidesBelow": "4 g", "distanceUnit": "in"}"""), Of(InstrumentKind.Balancer, "second", """{"displayStep": "1 g"}"""));
        Bring(first, second);
        Spin();
        var wheel = Position.Read("1L").Value;
        Visit.EnterAsync(ShopInstruments.Takes(Visit, wheel, first));
        ShopInstruments.IsTaken(Visit, wheel, first).ShouldBeTrue();
        Visit.EnterAsync(ShopInstruments.Takes(Visit, wheel, second));
        Visit.Fields.Under($"{At}.balancer").Select(e => $"{e.Field[(At.Length + 10)..]}={e.Typed}").ShouldBe(["displayStep=1 g", "instrument=second"], ignoreOrder: true);
        Visit.EnterAsync(ShopInstruments.Takes(Visit, wheel, null));
        Visit.Fields.Under($"{At}.balancer").ShouldBeEmpty();
    }

    [Fact]
    public void The_instruments_are_there_while_the_host_is_down()
    {
        Bring(Of(InstrumentKind.Balancer, "balancer by the window"));
        Spin();
        Browser.Mood = HostMood.Down;
        Page(Leg.OffTheCar, "1L", "first-spin").Find("section[aria-labelledby=balancer]").TextContent.ShouldContain("balancer by the window");
    }

    [Theory]
    [InlineData(-1, true)]
    [InlineData(1, false)]
    public void An_overdue_wrench_gives_a_caution_at_the_final_torque(int due, bool cautioned)
    {
        Bring(Of(InstrumentKind.TorqueWrench, "wrench 1", due: due));
        BeforeTheSignature(Role.Technician, ("work.instruments.torqueWrench", "wrench 1"));
        var page = Page(Leg.Prove, "1L", "final-torque");
        Visit.Reading.ProblemOf("work.instruments.torqueWrench").ShouldBeNull();
        page.FindAll(".caution").Any(c => c.TextContent.Contains("wrench 1 was due", StringComparison.Ordinal)).ShouldBe(cautioned);
        Visit.State.Work.TorqueWrench.ShouldBe("wrench 1");
    }

    [Fact]
    public void An_instrument_that_is_chosen_brings_its_record_and_an_overdue_one_is_a_finding_on_this_visit()
    {
        Bring(Of(InstrumentKind.TorqueWrench, "wrench 1", """{"least": "40 N·m", "most": "200 N·m"}""", due: -1), Of(InstrumentKind.TorqueWrench, "wrench 2"));
        BeforeTheSignature(Role.Technician);
        var page = Page(Leg.Prove, "1L", "final-torque");
        page.Find("input[value='wrench 1']").Change("wrench 1");
        Visit["work.instruments.torqueWrench"].ShouldBe("wrench 1");
        Visit["work.instruments.standing.torqueWrench.most"].ShouldBe("200 N·m");
        Visit.EnterAsync("date", InstrumentJson.Day(Today)!);
        Visit.State.LeavingFindings.Single(f => f.Rule == "instrument.torque-wrench").Measured.Text.ShouldBe("wrench 1: its check is overdue");

        page.Find("input[value='wrench 2']").Change("wrench 2");
        Visit["work.instruments.standing.torqueWrench.most"].ShouldBeNull();
        Visit.State.LeavingFindings.ShouldNotContain(f => f.Rule.StartsWith("instrument", StringComparison.Ordinal));
    }

    [Fact]
    public void A_lift_is_asked_for_where_the_workshop_has_one_and_not_where_it_has_none()
    {
        BeforeTheSignature(Role.Technician);
        Page(Leg.OffTheCar, "vehicle", "lift-points").Markup.ShouldNotContain("Lift under it");
        Bring(Of(InstrumentKind.Lift, "two-post lift"));
        using var other = new InstrumentsTests();
        other.Bring(Of(InstrumentKind.Lift, "two-post lift"));
        other.BeforeTheSignature(Role.Technician);
        other.Page(Leg.OffTheCar, "vehicle", "lift-points").FindAll("input[value='two-post lift']").Count.ShouldBe(1);
    }

    [Fact]
    public void The_gauge_is_asked_for_where_the_pressure_is_set()
    {
        Bring(Of(InstrumentKind.PressureGauge, "gauge of bay 2"));
        BeforeTheSignature(Role.Technician);
        var page = Page(Leg.Prove, "1L", "pressure-set");
        page.FindAll("input[value='gauge of bay 2']").Count.ShouldBe(1);
    }
}
