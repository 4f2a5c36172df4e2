using Trundle.Visits.Bay;
using Trundle.Web.Client.Entries;
using Trundle.Web.Client.Steps;

namespace Trundle.Web.Client.Tests.Steps;

public sealed class StepOrderTests
{
    private static VisitState State(params string[] without)
    {
        var entries = Sample.Fields(without).Select(f => new Entry(Guid.NewGuid(), f.Field, f.Typed, "T2", Role.Technician, Sample.Noon));
        return VisitReading.Of(VisitFields.Of(entries)).State;
    }

    [Fact]
    public void Every_wheel_is_slackened_before_the_vehicle_is_lifted_and_it_stands_before_anybody_works_at_a_wheel()
    {
        var order = StepOrder.Of(State("work.steps").On(Leg.OffTheCar)).Select(s => (s.At, s.Step.Id)).ToList();
        var lift = order.IndexOf(("vehicle", "lift-points"));
        var stands = order.IndexOf(("vehicle", "stands"));
        foreach (var wheel in new[] { "1L", "1R", "2L", "2R" })
        {
            order.IndexOf((wheel, "slacken")).ShouldBeInRange(0, lift);
            order.IndexOf((wheel, "feel")).ShouldBeGreaterThan(stands);
        }
    }

    [Fact]
    public void One_wheel_is_finished_before_the_next_is_begun()
    {
        var after = StepOrder.Of(State("work.steps").On(Leg.OffTheCar)).SkipWhile(s => s.Step.Id != "stands").Skip(1).Select(s => s.At).ToList();
        after.Zip(after.Skip(1)).Count(p => p.First != p.Second).ShouldBe(3);
    }

    [Fact]
    public void The_next_step_is_the_first_that_is_not_passed_and_none_where_all_are()
    {
        var leg = State("work.steps.2L.soap-test", "work.steps.1R.first-spin").On(Leg.OffTheCar);
        StepOrder.Next(leg)!.Step.Id.ShouldBe("first-spin");
        StepOrder.Next(State().On(Leg.OffTheCar)).ShouldBeNull();
    }

    [Fact]
    public void After_the_last_open_step_the_order_goes_round_to_one_left_behind()
    {
        var leg = State("work.steps.1L.soap-test").On(Leg.OffTheCar);
        var last = StepOrder.Of(leg)[^1];
        StepOrder.After(leg, last)!.Step.Id.ShouldBe("soap-test");
    }
}
