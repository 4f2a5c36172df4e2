using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Bay;

public class ReTorqueDueTests
{
    private static JsonObject Sample() => JsonNode.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "visit-blue-hatchback.json")))!.AsObject();

    private static VisitState Stands(JsonObject visit, List<Problem>? problems = null) => VisitStanding.Of(FileNode.From(visit), problems ?? []);

    [Fact]
    public void Wheels_that_were_off_leave_a_re_torque_due_with_distance_and_date()
    {
        var due = ReTorqueDue.Of(Stands(Sample()))!;
        due.Wheels.Count.ShouldBe(4);
        (due.From!.Value.Kilometres, due.To!.Value.Kilometres).ShouldBe((48250, 48300), "48 200 km and 50 to 100 km");
        due.AskOn.ShouldBe(new DateOnly(2026, 3, 28));
        due.IsOpen.ShouldBeTrue();
        due.Standing(new DateOnly(2026, 3, 27)).ShouldBe("due");
        due.Standing(new DateOnly(2026, 3, 28)).ShouldBe("not recorded: ask");
    }

    [Fact]
    public void Where_no_wheel_came_off_none_is_due()
    {
        var visit = Sample();
        visit.Remove("work");
        ReTorqueDue.Of(Stands(visit)).ShouldBeNull();
        VisitCheckOperation.Run(FileNode.From(visit)).Value.Body["reTorque"].ShouldBeNull();
    }

    [Fact]
    public void The_makers_own_distance_comes_first_and_of_two_axles_the_shorter_holds()
    {
        var visit = Sample();
        visit["vehicle"]!["axles"]![1]!["fixings"]!["reTorqueFrom"] = "20 km";
        visit["vehicle"]!["axles"]![1]!["fixings"]!["reTorqueTo"] = "30 km";
        var due = ReTorqueDue.Of(Stands(visit))!;
        (due.From!.Value.Kilometres, due.To!.Value.Kilometres).ShouldBe((48220, 48230));
        due.After.Source.Text.ShouldContain("maker's distance");
    }

    [Fact]
    public void A_re_torque_that_was_done_closes_it_and_one_at_which_a_fixing_turned_does_not()
    {
        var visit = Sample();
        visit["work"]!["reTorque"] = JsonNode.Parse("""{"on": "2026-03-20", "odometer": "48290 km", "result": "none turned", "wrench": "wrench 2", "by": "T1", "torques": {"1L": {"1": "118 N·m", "5": "90 lbf·ft"}}}""");
        var problems = new List<Problem>();
        var done = ReTorqueDue.Of(Stands(visit, problems))!;
        problems.ShouldBeEmpty();
        done.IsOpen.ShouldBeFalse();
        done.Standing(new DateOnly(2026, 9, 1)).ShouldBe("done on 20 Mar 2026");
        done.Done!.Torques.Single().Value[5].PoundForceFeet.ShouldBe(90, 1e-9);
        var answer = VisitCheckOperation.Run(FileNode.From(visit)).Value.Body["reTorque"]!;
        answer["open"]!.GetValue<bool>().ShouldBeFalse();
        answer["done"]!["by"]!.GetValue<string>().ShouldBe("T1");
        answer["done"]!["torquesNewtonMetres"]!["1L"]!["1"]!.GetValue<double>().ShouldBe(118, 1e-9);

        visit["work"]!["reTorque"]!["result"] = "some turned";
        var again = ReTorqueDue.Of(Stands(visit))!;
        again.IsOpen.ShouldBeTrue();
        (again.From!.Value.Kilometres, again.To!.Value.Kilometres, again.AskOn).ShouldBe((48340, 48390, new DateOnly(2026, 4, 3)));
        again.Standing(new DateOnly(2026, 3, 21)).ShouldBe("checked on 20 Mar 2026, and a fixing turned: due again");
    }

    [Theory]
    [InlineData("""{"result": "none turned"}""", "work.reTorque.on", "missing")]
    [InlineData("""{"on": "2026-03-20"}""", "work.reTorque.result", "missing")]
    [InlineData("""{"on": "2026-03-20", "result": "fine"}""", "work.reTorque.result", "word-unknown")]
    [InlineData("""{"on": "2026-03-20", "result": "none turned", "torques": {"9Z": {}}}""", "work.reTorque.torques.9Z", "key-unknown")]
    [InlineData("""{"on": "2026-03-20", "result": "none turned", "torques": {"1L": {"1": "tight"}}}""", "work.reTorque.torques.1L.1", "number-missing")]
    public void Wrong_input_is_named_where_it_stands(string record, string where, string code)
    {
        var visit = Sample();
        visit["work"]!["reTorque"] = JsonNode.Parse(record);
        var problems = new List<Problem>();
        Stands(visit, problems);
        problems.ShouldHaveSingleItem().Where.ShouldBe(where);
        problems[0].Code.ShouldBe(code);
    }

    [Fact]
    public void Who_recorded_it_is_who_entered_it()
    {
        var fields = VisitFields.Of(new[] { ("work.reTorque.on", "2026-03-20"), ("work.reTorque.result", "none turned"), ("work.reTorque.torques.1L.1", "118 N·m") }
            .Select(t => new Entry(Guid.NewGuid(), t.Item1, t.Item2, "T7", Role.Technician, DateTimeOffset.UnixEpoch)));
        var problems = new List<Problem>();
        var work = VisitStanding.Of(fields.Assemble().Root, problems).Work;
        problems.ShouldBeEmpty();
        work.ReTorque!.By.ShouldBe("T7");
        work.ReTorque.Torques.Single().Value[1].NewtonMetres.ShouldBe(118, 1e-9);
    }
}
