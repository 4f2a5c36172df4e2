using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;

namespace Trundle.Visits.Tests.Bay;

/// <summary>A trainee's lifting, demounting and inflating: permitted before by an instructor, or signed off after by one, or it stops.</summary>
public sealed class TraineeTests
{
    private static readonly DateTimeOffset Noon = new(2026, 3, 14, 12, 0, 0, TimeSpan.Zero);
    private static int s_ids;

    private static JsonObject Sample() => JsonNode.Parse(VisitStandingTests.SampleText)!.AsObject();

    private static VisitState Stands(JsonObject file, List<Problem>? problems = null)
    {
        var found = problems ?? [];
        var state = VisitStanding.Of(FileNode.Parse(file.ToJsonString(), "sample").Value, found);
        if (problems is null)
        {
            found.ShouldBeEmpty();
        }

        return state;
    }

    /// <summary>The finished sample, its step recorded by a trainee at noon.</summary>
    private static JsonObject ByTrainee(string at, string step, params JsonObject[] permissions)
    {
        var file = Sample();
        file["work"]!["trainees"] = new JsonObject { [at] = new JsonObject { [step] = new JsonObject { ["by"] = "T9", ["at"] = "2026-03-14 12:00:00 UTC" } } };
        if (permissions.Length > 0)
        {
            file["work"]!["permissions"] = new JsonArray([.. permissions]);
        }

        return file;
    }

    private static JsonObject Permit(string act, string name = "T9", string role = "instructor", string at = "2026-03-14 11:50:00 UTC", string? drill = "2026-03-01", bool protection = true)
    {
        var json = new JsonObject { ["act"] = act, ["for"] = name, ["by"] = "T7", ["role"] = role, ["at"] = at, ["protection"] = protection };
        if (drill is not null)
        {
            json["drill"] = drill;
        }

        return json;
    }

    public static TheoryData<string, string, string> Acts() => new()
    {
        { "vehicle", "lift-points", "lift" },
        { "1L", "bead-breaking", "demount" },
        { "1L", "demount", "demount" },
        { "1L", "mount", "demount" },
        { "1L", "seat", "inflate" },
    };

    [Theory]
    [MemberData(nameof(Acts))]
    public void Without_permission_the_step_fails_and_with_it_it_stands(string at, string step, string act)
    {
        var without = Stands(ByTrainee(at, step));
        var failed = without.Legs.SelectMany(l => l.Steps).Single(s => s.At == at && s.Step.Id == step);
        failed.Standing.ShouldBe(StepStanding.Failed);
        failed.Why!.ShouldContain("no instructor permitted");
        Stands(ByTrainee(at, step, Permit(act))).MayLeave.ShouldBeTrue();
        foreach (var other in HazardousActWords.All.Where(a => a.Key() != act))
        {
            Stands(ByTrainee(at, step, Permit(other.Key()))).On(Leg.OffTheCar).Steps.Single(s => s.At == at && s.Step.Id == step).Standing.ShouldBe(StepStanding.Failed, other.Key());
        }
    }

    [Fact]
    public void Every_act_is_asked_for_at_some_step()
    {
        var acts = Procedure.BuiltIn.Steps.Where(s => s.Act is not null).Select(s => s.Act!.Value.Key()).Distinct();
        acts.ShouldBe(HazardousActWords.All.Select(a => a.Key()), ignoreOrder: true);
    }

    [Fact]
    public void A_permission_counts_only_whole_before_and_for_that_trainee()
    {
        Why(Permit("inflate", name: "T8")).ShouldContain("no instructor permitted the first inflation");
        Why(Permit("inflate", role: "technician")).ShouldContain("no instructor gave it");
        Why(Permit("inflate", drill: null)).ShouldContain("no passed machine-safety drill is named");
        Why(Permit("inflate", drill: "2026-04-01")).ShouldContain("lies in the future");
        Why(Permit("inflate", protection: false)).ShouldContain("protection was not confirmed");
        Why(Permit("inflate", at: "2026-03-14 12:00:01 UTC")).ShouldContain("was given after it was done");
        Stands(ByTrainee("1L", "seat", Permit("inflate", at: "2026-03-14 12:00:00 UTC"))).MayLeave.ShouldBeTrue();

        static string Why(JsonObject permission)
        {
            var state = Stands(ByTrainee("1L", "seat", permission));
            state.MayLeave.ShouldBeFalse();
            return state.Stops.Single(s => s.What == Procedure.BuiltIn.Step("seat").Title).Why;
        }
    }

    [Theory]
    [InlineData("satisfactory", "instructor", "2026-03-14 12:10:00 UTC", true)]
    [InlineData("satisfactory", "owner", "2026-03-14 12:10:00 UTC", true)]
    [InlineData("satisfactory", "technician", "2026-03-14 12:10:00 UTC", false)]
    [InlineData("satisfactory", "trainee", "2026-03-14 12:10:00 UTC", false)]
    [InlineData("satisfactory", "instructor", "2026-03-14 11:59:59 UTC", false)] // of what stood there before
    [InlineData("not yet", "instructor", "2026-03-14 12:10:00 UTC", false)]
    public void An_instructor_who_looked_at_it_signs_it_off(string result, string role, string at, bool stands)
    {
        var file = ByTrainee("1L", "seat");
        file["work"]!["signedOff"] = new JsonObject { ["1L"] = new JsonObject { ["seat"] = new JsonObject { ["result"] = result, ["by"] = "T7", ["role"] = role, ["at"] = at } } };
        Stands(file).MayLeave.ShouldBe(stands);
    }

    [Fact]
    public void Not_yet_stops_a_step_that_hurts_nobody_too_and_says_what_to_do_differently()
    {
        var file = ByTrainee("1L", "final-torque");
        Stands(file).MayLeave.ShouldBeTrue();
        file["work"]!["signedOff"] = new JsonObject { ["1L"] = new JsonObject { ["final-torque"] = new JsonObject { ["result"] = "not yet", ["note"] = "pull slowly to the click", ["by"] = "T7", ["role"] = "instructor", ["at"] = "2026-03-14 12:10:00 UTC" } } };
        var state = Stands(file);
        state.MayLeave.ShouldBeFalse();
        state.NotTightened.Select(p => p.ToString()).ShouldBe(["1L"]);
        state.Stops.ShouldContain(s => s.Why.Contains("T7, instructor, looked at it: not yet. pull slowly to the click.", StringComparison.Ordinal));
    }

    [Fact]
    public void Who_recorded_permitted_and_signed_is_who_entered()
    {
        var json = VisitFields.Of(
        [
            By("work.steps.1L.seat", "275 kPa", "T9", Role.Trainee, 3),
            By("work.steps.1L.cap-on", "done", "T2", Role.Technician, 3),
            By("work.steps.2L.final-torque.1", "120 N·m", "T2", Role.Technician, 3),
            By("work.steps.2L.final-torque.2", "120 N·m", "T9", Role.Trainee, 4),
            By("work.permissions.0.act", "inflate", "T7", Role.Instructor, 1),
            By("work.permissions.0.for", "T9", "T7", Role.Instructor, 1),
            By("work.signedOff.1L.seat.result", "satisfactory", "T7", Role.Instructor, 5),
            By("work.incidents.0.kind", "near miss", "T9", Role.Trainee, 6),
        ]).Assemble().Json["work"]!;
        json["trainees"]!.ToJsonString().ShouldBe("""{"1L":{"seat":{"by":"T9","at":"2026-03-14 12:03:00 UTC"}},"2L":{"final-torque":{"by":"T9","at":"2026-03-14 12:04:00 UTC"}}}""");
        json["permissions"]![0]!.ToJsonString().ShouldBe("""{"act":"inflate","for":"T9","by":"T7","role":"instructor","at":"2026-03-14 12:01:00 UTC"}""");
        json["signedOff"]!["1L"]!["seat"]!.ToJsonString().ShouldBe("""{"result":"satisfactory","by":"T7","role":"instructor","at":"2026-03-14 12:05:00 UTC"}""");
        json["incidents"]![0]!["by"]!.GetValue<string>().ShouldBe("T9");

        // Done anew by somebody who may: it is that person's work then.
        VisitFields.Of([By("work.steps.1L.seat", "275 kPa", "T9", Role.Trainee, 3), By("work.steps.1L.seat", "270 kPa", "T2", Role.Technician, 7)]).Assemble().Json["work"]!.AsObject().ContainsKey("trainees").ShouldBeFalse();
    }

    [Fact]
    public void An_incident_is_read_and_a_bad_one_is_told()
    {
        var file = Sample();
        file["work"]!["incidents"] = new JsonArray(new JsonObject { ["kind"] = "incident", ["where"] = "Off the car", ["words"] = "the jack sank", ["by"] = "T9", ["role"] = "trainee", ["at"] = "2026-03-14 12:00:00 UTC" }, new JsonObject { ["kind"] = "near miss" });
        var work = Stands(file).Work;
        work.Incidents.Select(i => $"{i.Kind}: {i.Words ?? "not said"}").ShouldBe(["incident: the jack sank", "near miss: not said"]);
        var problems = new List<Problem>();
        file["work"]!["incidents"]![0]!["at"] = "yesterday";
        file["work"]!["permissions"] = new JsonArray(new JsonObject { ["act"] = "weld", ["for"] = "T9" });
        Stands(file, problems);
        problems.Select(p => p.Where).ShouldBe(["work.permissions[0].act", "work.incidents[0].at"], ignoreOrder: true);
    }

    private static Entry By(string field, string typed, string by, Role role, int minute) => new(new Guid(++s_ids, 0, 0, new byte[8]), field, typed, by, role, Noon.AddMinutes(minute));
}
