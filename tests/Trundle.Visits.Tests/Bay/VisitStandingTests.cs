using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Bay;

/// <summary>How the invented visit of the samples stands, and what one missing or bad entry does to it.</summary>
public sealed class VisitStandingTests
{
    internal static string SampleText { get; } = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "visit-blue-hatchback.json"));

    private static JsonObject Sample() => JsonNode.Parse(SampleText)!.AsObject();

    private static VisitState Stands(JsonObject file)
    {
        var problems = new List<Problem>();
        var state = VisitStanding.Of(FileNode.Parse(file.ToJsonString(), "sample").Value, problems);
        problems.ShouldBeEmpty();
        return state;
    }

    private static JsonObject StepsOf(JsonObject file, string at) => file["work"]!["steps"]![at]!.AsObject();

    [Fact]
    public void The_finished_sample_may_leave()
    {
        var state = Stands(Sample());
        state.Stops.Select(s => $"{s.Leg} {s.Position} {s.What}: {s.Why}").ShouldBeEmpty();
        state.MayLeave.ShouldBeTrue();
        state.NotTightened.ShouldBeEmpty();
        state.HandedBack.ShouldBeTrue();
    }

    [Fact]
    public void Where_nothing_is_planned_no_leg_of_hand_work_is_done()
    {
        var file = Sample();
        file.Remove("work").ShouldBeTrue();
        var state = Stands(file);
        foreach (var leg in new[] { Leg.OffTheCar, Leg.Refit, Leg.Prove })
        {
            state.On(leg).Done.ShouldBeFalse(leg.ToString());
            var need = state.On(leg).Needs.ShouldHaveSingleItem();
            need.ShouldSatisfyAllConditions(n => n.Leg.ShouldBe(Leg.Plan), n => n.Field.ShouldBe("work.jobs.1L"), n => n.What.ShouldBe("What is done to each wheel"));
        }

        // What the plan still needs is said as a stop once, on the plan.
        state.Stops.Where(s => s.Leg != Leg.Plan).ShouldNotContain(s => s.What.StartsWith("What is done", StringComparison.Ordinal));
    }

    [Fact]
    public void A_wheel_that_the_plan_forgot_keeps_the_hand_work_open_though_every_step_at_the_others_is_recorded()
    {
        var file = Sample();
        file["work"]!["jobs"]!.AsObject().Remove("2R").ShouldBeTrue();
        var state = Stands(file);
        state.On(Leg.OffTheCar).Steps.ShouldAllBe(s => s.Standing == StepStanding.Passed);
        state.On(Leg.OffTheCar).Done.ShouldBeFalse();
        state.On(Leg.OffTheCar).Needs.ShouldHaveSingleItem().What.ShouldBe("What is done to rear right");
    }

    [Fact]
    public void Where_every_wheel_stays_on_by_plan_the_hand_work_is_done()
    {
        var file = Sample();
        file["work"] = new JsonObject
        {
            ["rotation"] = "none",
            ["jobs"] = new JsonObject(new[] { "1L", "1R", "2L", "2R" }.Select(p => KeyValuePair.Create<string, JsonNode?>(p, "stays on"))),
        };
        Stands(file).Legs.Where(l => l.Leg is Leg.OffTheCar or Leg.Refit or Leg.Prove).ShouldAllBe(l => l.Done);
    }

    [Fact]
    public void What_was_wrong_on_arrival_is_still_told_though_it_was_put_right()
    {
        var state = Stands(Sample());
        state.On(Leg.LookOver).Findings.ShouldContain(f => f.Position == "1L" && f.Category >= Engine.Findings.Category.Major);
        state.LeavingFindings.ShouldNotContain(f => f.Position == "1L" && f.Category >= Engine.Findings.Category.Major);
    }

    [Fact]
    public void Each_hold_point_alone_stops_hand_back()
    {
        var held = 0;
        foreach (var step in Procedure.BuiltIn.Steps.Where(s => s.HoldPoint && s.When.Count == 0))
        {
            var file = Sample();
            StepsOf(file, step.PerWheel ? "1L" : "vehicle").Remove(step.Id).ShouldBeTrue(step.Id);
            var state = Stands(file);
            state.MayLeave.ShouldBeFalse(step.Id);
            state.Stops.ShouldContain(s => s.What == step.Title);
            held++;
        }

        held.ShouldBeGreaterThan(12);
    }

    [Fact]
    public void A_word_that_is_none_of_a_steps_is_refused_and_each_that_could_stand_there_is_in_quotes()
    {
        var file = Sample();
        StepsOf(file, "1L")["mount"] = "mounted";
        var problems = new List<Problem>();
        VisitStanding.Of(FileNode.Parse(file.ToJsonString(), "sample").Value, problems);
        var problem = problems.ShouldHaveSingleItem();
        problem.Where.ShouldBe("work.steps.1L.mount");
        problem.Message.ShouldStartWith("'mounted' is not a word here; write 'mounted, direction and outside checked' or ");
    }

    [Fact]
    public void Final_torque_is_never_overruled_by_anybody()
    {
        var file = Sample();
        StepsOf(file, "1R")["final-torque"] = new JsonArray("120 N·m", "120 N·m", "120 N·m", "120 N·m");
        file["work"]!["decisions"] = new JsonObject
        {
            ["final-torque@1R"] = new JsonObject { ["decision"] = "let it go", ["by"] = "T1", ["role"] = "owner", ["signedRefusal"] = "the customer" },
        };
        var state = Stands(file);
        state.MayLeave.ShouldBeFalse();
        state.NotTightened.Select(p => p.ToString()).ShouldBe(["1R"]);
        state.Loose.Select(p => p.ToString()).ShouldBe(["1R"]);
        state.Stops.Single().DecisionKey.ShouldBeNull();
    }

    [Theory]
    [InlineData("technician", "the customer", false)]
    [InlineData("trainee", "the customer", false)]
    [InlineData("desk", "the customer", false)]
    [InlineData("instructor", null, false)]
    [InlineData("instructor", "the customer", true)]
    [InlineData("owner", "the customer", true)]
    public void A_leak_goes_only_by_an_instructor_or_owner_with_the_customers_signature(string role, string? signed, bool mayLeave)
    {
        var file = Sample();
        StepsOf(file, "1L")["soap-test"] = "bubbles";
        Stands(file).MayLeave.ShouldBeFalse();
        file["work"]!["decisions"] = new JsonObject
        {
            ["leak@1L"] = new JsonObject { ["decision"] = "goes on the spare's account", ["by"] = "T1", ["role"] = role, ["signedRefusal"] = signed },
        };
        Stands(file).MayLeave.ShouldBe(mayLeave);
    }

    [Fact]
    public void A_decision_on_no_standing_finding_is_a_note_that_names_the_nearest()
    {
        static JsonArray Notes(JsonObject file) => VisitCheckOperation.Run(FileNode.From(file)).Value.Body["decisionsWithoutFinding"]!.AsArray();
        var file = Sample();
        Notes(file).ShouldBeEmpty();

        StepsOf(file, "1L")["soap-test"] = "bubbles";
        JsonObject Decides(string key) => new() { [key] = new JsonObject { ["decision"] = "go", ["by"] = "T1", ["role"] = "owner", ["signedRefusal"] = "C" } };
        file["work"]!["decisions"] = Decides("leak@1L");
        Notes(file).ShouldBeEmpty();

        foreach (var (key, nearest) in new[] { ("leek@1L", "leak@1L"), ("foo@1L", "leak@1L"), ("foo-of-no-such-name@2L", null) })
        {
            file["work"]!["decisions"] = Decides(key);
            var note = Notes(file).ShouldHaveSingleItem()!;
            note["key"]!.GetValue<string>().ShouldBe(key);
            note["nearest"]?.GetValue<string>().ShouldBe(nearest);
            note["note"]!.GetValue<string>().ShouldContain(nearest is null ? "may have been put right since." : $"did you mean '{nearest}'?");
            var answer = VisitCheckOperation.Run(FileNode.From(file)).Value;
            answer.No.ShouldBeTrue();
            answer.ForPeople.ShouldContain(l => l.StartsWith($"Note: The decision '{key}' belongs to no finding of this visit", StringComparison.Ordinal));
        }

        // A finding put right leaves its decision behind, and that keeps no vehicle.
        StepsOf(file, "1L")["soap-test"] = Sample()["work"]!["steps"]!["1L"]!["soap-test"]!.DeepClone();
        file["work"]!["decisions"] = Decides("leak@1L");
        Notes(file).ShouldHaveSingleItem()!["nearest"].ShouldBeNull();
        Stands(file).MayLeave.ShouldBeTrue();
    }

    [Fact]
    public void A_dangerous_finding_is_let_go_by_somebody_with_a_name()
    {
        var file = Sample();
        file["fitted"]!.AsArray().First(a => a!["position"]!.GetValue<string>() == "2L")!["damage"] = new JsonArray(new JsonObject { ["kind"] = "bulge", ["place"] = "sidewall" });
        var key = Stands(file).Stops.First(s => s.DecisionKey?.StartsWith("damage", StringComparison.Ordinal) == true).DecisionKey!;
        var decision = new JsonObject { ["decision"] = "go", ["role"] = "owner", ["signedRefusal"] = "C" };
        file["work"]!["decisions"] = new JsonObject { [key] = decision };
        Stands(file).MayLeave.ShouldBeFalse();
        decision["by"] = "O1";
        Stands(file).MayLeave.ShouldBeTrue();
    }

    [Fact]
    public void A_torque_for_a_fixing_that_the_wheel_does_not_have_is_no_final_torque()
    {
        var file = Sample();
        StepsOf(file, "1L")["final-torque"] = new JsonArray("120 N·m", "120 N·m", "120 N·m", "120 N·m", "120 N·m", "20 N·m");
        var state = Stands(file);
        state.MayLeave.ShouldBeFalse();
        state.NotTightened.Select(p => p.ToString()).ShouldBe(["1L"]);
        state.Stops.ShouldContain(s => s.Why.Contains("6 (20 N·m)", StringComparison.Ordinal) && s.Why.Contains("count the fixings", StringComparison.Ordinal));
        state.On(Leg.HandBack).Needs.ShouldNotBeEmpty("a signature does not lift a stop");
    }

    [Fact]
    public void A_tyre_condemned_on_this_visit_is_not_fitted_again_as_a_new_one()
    {
        var file = Sample();
        var fitted = file["fitted"]!.AsArray().First(a => a!["position"]!.GetValue<string>() == "1L")!["tyre"]!;
        fitted["condemned"] = true;
        file["work"]!["renewed"]!["1L"]!["tyre"]!["id"] = fitted["id"]!.GetValue<string>().ToLowerInvariant();
        var state = Stands(file);
        state.MayLeave.ShouldBeFalse();
        state.LeavingFindings.ShouldContain(f => f.Rule == "condemned.tyre" && f.Position == "1L");
    }

    [Theory]
    [InlineData("195/65 R15 91H", "diagonal")]
    [InlineData("195/65 D15 91H", "radial")]
    public void A_construction_that_the_marking_denies_is_refused_at_its_place(string marking, string construction)
    {
        var file = Sample();
        var tyre = file["fitted"]![0]!["tyre"]!;
        tyre["marking"] = marking;
        tyre["construction"] = construction;
        var problems = new List<Problem>();
        VisitStanding.Of(FileNode.Parse(file.ToJsonString(), "sample").Value, problems);
        problems.ShouldHaveSingleItem().Where.ShouldBe("fitted[0].tyre.construction");
    }

    [Fact]
    public void A_major_finding_left_on_the_vehicle_waits_for_a_decision()
    {
        var file = Sample();
        file["work"]!["renewed"]!.AsObject().Remove("1L");
        var state = Stands(file);
        state.MayLeave.ShouldBeFalse();
        var stop = state.Stops.First(s => s.Position == "1L" && s.DecisionKey is not null);
        stop.DecisionKey!.ShouldEndWith("@1L");
    }

    [Fact]
    public void A_wheel_that_is_off_is_loose_until_its_final_torque()
    {
        var file = Sample();
        foreach (var step in Procedure.BuiltIn.Steps.Where(s => s.PerWheel && s.When.Count == 0 && s.Leg >= Leg.Refit))
        {
            StepsOf(file, "2L").Remove(step.Id);
        }

        Stands(file).Loose.Select(p => p.ToString()).ShouldBe(["2L"]);
    }

    [Fact]
    public void An_empty_visit_is_all_needs_and_nobody_is_let_go()
    {
        var state = Stands([]);
        state.Current.ShouldBe(Leg.Arrive);
        state.On(Leg.Arrive).Needs.ShouldNotBeEmpty();
        state.On(Leg.HandBack).Needs.ShouldNotBeEmpty();
    }

    [Fact]
    public void The_operation_answers_by_leg_and_says_no_where_something_stops()
    {
        var body = FileNode.Parse(SampleText, "sample").Value;
        var answer = VisitCheckOperation.Run(body);
        answer.IsRead.ShouldBeTrue(answer.Problem?.ToString());
        var legs = answer.Value.Body["legs"]!;
        legs["lookOver"]!["fitment"]!["findings"]!.AsArray().Count.ShouldBeGreaterThan(0);
        legs["lookOver"]!["inspect"]!["worst"]!.GetValue<string>().ShouldBe("dangerous");
        legs["plan"]!["pressure"].ShouldNotBeNull();
        legs["plan"]!["rotate"].ShouldNotBeNull();
        legs["offTheCar"]!["balance"]!["1L"]!["weights"]!.AsArray().Count.ShouldBeGreaterThan(0);
        legs["refit"]!["fixings"]![0]!["sequence"]!.AsArray().Count.ShouldBe(5);
        answer.Value.Body["handBack"]!["mayLeave"]!.GetValue<bool>().ShouldBeTrue();
    }

    [Theory]
    [InlineData("technician", true)]
    [InlineData("owner", true)]
    [InlineData("trainee", false)]
    [InlineData("desk", false)]
    public void Only_who_may_release_hands_back_by_signing(string role, bool handedBack)
    {
        var file = JsonNode.Parse(SampleText)!.AsObject();
        file["work"]!["handBack"] = new JsonObject { ["by"] = "T9", ["role"] = role };
        var answer = VisitCheckOperation.Run(FileNode.From(file)).Value;
        answer.Body["handBack"]!["handedBack"]!.GetValue<bool>().ShouldBe(handedBack);
        answer.ForPeople.Any(l => l.Contains("The signature of T9 does not hand the vehicle back", StringComparison.Ordinal)).ShouldBe(!handedBack);
    }

    [Fact]
    public void Each_answer_of_a_visit_is_the_answer_of_the_single_command()
    {
        var body = FileNode.Parse(SampleText, "sample").Value;
        var legs = VisitCheckOperation.Run(body).Value.Body["legs"]!;
        foreach (var (leg, name) in new[] { ("lookOver", "fitment"), ("lookOver", "inspect"), ("plan", "pressure"), ("plan", "rotate") })
        {
            legs[leg]![name]!.ToJsonString().ShouldBe(OperationList.Of(name).Run(body).Value.Body.ToJsonString());
        }
    }

    [Theory]
    [InlineData("""{"1R":{"stage-1":"1, 4, 2, 5, 3 at 50 %","stage-2":"1, 4 at 100 %","begunAgain":1}}""", "Begun and not recorded as done: stage 1 done, stage 2 at 2 of 5 fixings.")]
    [InlineData("""{"1R":{"begunAgain":2}}""", null)]
    [InlineData("{}", null)]
    public void Stages_that_are_begun_and_not_recorded_say_how_far_they_came(string tightening, string? why)
    {
        var file = Sample();
        StepsOf(file, "1R").Remove("stages");
        file["work"]!["tightening"] = JsonNode.Parse(tightening);
        var step = Stands(file).On(Leg.Refit).Steps.Single(s => s.At == "1R" && s.Step.Id == "stages");
        step.Standing.ShouldBe(StepStanding.Open);
        step.Why.ShouldBe(why);
    }

    [Theory]
    [InlineData("1, 4, 2")]
    [InlineData("1, 1 at 50 %")]
    [InlineData("0 at 50 %")]
    [InlineData("1, 21 at 50 %")]
    [InlineData("1, 4 at 0 %")]
    [InlineData("1, 4 at 50")]
    public void A_stage_that_cannot_be_read_is_said_at_its_place(string text)
    {
        var file = Sample();
        file["work"]!["tightening"] = new JsonObject { ["1R"] = new JsonObject { ["stage-1"] = text } };
        var problems = new List<Problem>();
        VisitStanding.Of(FileNode.Parse(file.ToJsonString(), "sample").Value, problems);
        problems.ShouldHaveSingleItem().Where.ShouldBe("work.tightening.1R.stage-1");
        problems[0].Code.ShouldBe("stage-unreadable");
    }
}
