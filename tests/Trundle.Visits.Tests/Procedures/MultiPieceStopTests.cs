using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Visits.Tests.Bay;

namespace Trundle.Visits.Tests.Procedures;

/// <summary>A rim of several pieces is not worked on here, and nobody overrules that.</summary>
public sealed class MultiPieceStopTests
{
    private static JsonObject Sample()
    {
        var file = JsonNode.Parse(VisitStandingTests.SampleText)!.AsObject();
        file["fitted"]![0]!["wheel"]!["multiPiece"] = true;
        return file;
    }

    private static VisitState Stands(JsonObject file)
    {
        var problems = new List<Problem>();
        var state = VisitStanding.Of(FileNode.Parse(file.ToJsonString(), "sample").Value, problems);
        problems.ShouldBeEmpty();
        return state;
    }

    public static TheoryData<string> Roles => [.. RoleWords.All.Select(r => r.Word())];

    [Theory, MemberData(nameof(Roles))]
    public void No_role_lets_it_go_with_whatever_decision_and_signature(string role)
    {
        var file = Sample();
        JsonObject Decides() => new() { ["decision"] = "let it go", ["by"] = "T1", ["role"] = role, ["signedRefusal"] = "the customer" };
        var stop = Stands(file).Stops.ShouldHaveSingleItem();
        stop.DecisionKey.ShouldBeNull("there is no decision that lifts it");
        file["work"]!["decisions"] = new JsonObject
        {
            ["licensed-only@1L"] = Decides(), ["multiPiece@1L"] = Decides(), ["seat@1L"] = Decides(), ["1L"] = Decides(),
        };
        file["work"]!["handBack"] = new JsonObject { ["by"] = "T1", ["role"] = role };
        var state = Stands(file);
        state.MayLeave.ShouldBeFalse();
        state.HandedBack.ShouldBeFalse();
        state.Stops.ShouldHaveSingleItem().Why.ShouldContain("nothing is demounted, mounted or inflated here");
    }

    [Fact]
    public void Nothing_is_recorded_at_the_stop_and_every_step_of_the_tyre_waits_for_it()
    {
        var file = Sample();
        var held = Stands(file).On(Leg.OffTheCar).Steps.Where(s => s is { At: "1L", Step.Job: WheelJob.Demount, Step.Id: not "licensed-only" }).ToList();
        held.Select(s => s.Step.Id).ShouldContain("seat");
        held.ShouldAllBe(s => s.HeldBy!.Step.Id == "licensed-only");
        file["work"]!["steps"]!["1L"]!["licensed-only"] = "done";
        var problems = new List<Problem>();
        VisitStanding.Of(FileNode.Parse(file.ToJsonString(), "sample").Value, problems);
        problems.ShouldHaveSingleItem().Code.ShouldBe("not-entered-here");
    }

    [Theory]
    [InlineData(null, null, false)]
    [InlineData("Wheelwrights of the harbour, R. Pell", null, false)]
    [InlineData(null, "H 2207", false)]
    [InlineData(" ", "H 2207", false)]
    [InlineData("Wheelwrights of the harbour, R. Pell", "H 2207", true)]
    public void The_licensed_shops_record_accounts_for_it_with_name_and_paper_only(string? by, string? paper, bool mayLeave)
    {
        var file = Sample();
        file["work"]!["licensed"] = new JsonObject { ["1L"] = new JsonObject { ["by"] = by, ["paper"] = paper } };
        var state = Stands(file);
        state.MayLeave.ShouldBe(mayLeave);
        if (mayLeave)
        {
            state.On(Leg.OffTheCar).Steps.ShouldNotContain(s => s.At == "1L" && s.Step.Id == "seat", "the tyre was not done here");
            state.On(Leg.Prove).Steps.ShouldContain(s => s.At == "1L" && s.Step.Id == "final-torque");
        }
    }

    [Fact]
    public void Untouched_it_may_leave_and_a_new_tyre_on_it_is_no_way_round()
    {
        var file = Sample();
        file["work"]!["jobs"]!["1L"] = "stays on";
        file["work"]!["steps"]!.AsObject().Remove("1L");
        Stands(file).Stops.ShouldContain(s => s.What == "Rim of several pieces: stop", "a new tyre is entered on it");
        file["work"]!["renewed"]!.AsObject().Remove("1L");
        Stands(file).Stops.ShouldNotContain(s => s.What == "Rim of several pieces: stop");
    }

    [Fact]
    public void A_new_word_in_the_plan_does_not_take_away_that_work_was_begun()
    {
        var file = Sample();
        file["work"]!["jobs"]!["1L"] = "stays on";
        file["work"]!["renewed"]!.AsObject().Remove("1L");
        Stands(file).Stops.ShouldContain(s => s.What == "Rim of several pieces: stop");
    }

    [Fact]
    public void Where_nobody_said_whether_a_trucks_rim_is_of_one_piece_no_air_goes_in_or_out()
    {
        var file = Sample();
        file["fitted"]![0]!["wheel"]!.AsObject().Remove("multiPiece");
        file["work"]!["renewed"]!["1L"]!["tyre"]!["marking"] = "295/80 R22.5 152/148M";
        file["fitted"]![0]!["tyre"]!["marking"] = "295/80 R22.5 152/148M";
        var state = Stands(file);
        state.On(Leg.LookOver).Needs.ShouldContain(n => n.Parts.Any(p => p.Field == "fitted.1L.wheel.multiPiece"));
        foreach (var id in new[] { "core-out", "mount", "seat" })
        {
            var step = state.On(Leg.OffTheCar).Steps.Single(s => s.At == "1L" && s.Step.Id == id);
            step.Standing.ShouldBe(StepStanding.Failed, id);
            step.Why!.ShouldContain("whether this rim is of one piece");
        }
    }

    [Fact]
    public void Low_at_arrival_it_gets_no_air_here_though_its_tyre_was_not_touched()
    {
        var file = Sample();
        file["work"]!["jobs"]!["1L"] = "off and on";
        file["work"]!["renewed"]!.AsObject().Remove("1L");
        foreach (var id in Procedure.BuiltIn.Steps.Where(s => s.Job > WheelJob.OffAndOn).Select(s => s.Id))
        {
            file["work"]!["steps"]!["1L"]!.AsObject().Remove(id);
        }

        file["vehicle"]!["axles"]![0]!["placard"]!["cold"] = "230 kPa";
        file["fitted"]![0]!["pressure"] = new JsonObject { ["value"] = "184 kPa" };
        VisitState Now() => Stands(file);
        Now().On(Leg.Prove).Steps.Single(s => s.At == "1L" && s.Step.Id == "pressure-set").Why!.ShouldContain("no air goes in here");
        file["fitted"]![0]!["pressure"]!["value"] = "190 kPa";
        Now().On(Leg.Prove).Steps.Single(s => s.At == "1L" && s.Step.Id == "pressure-set").Standing.ShouldBe(StepStanding.Passed);
    }
}
