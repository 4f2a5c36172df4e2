using Bunit;
using Trundle.Engine.Rotation;
using Trundle.Visits.Bay;

namespace Trundle.Web.Client.Tests.Steps;

/// <summary>What is owed to the pressure monitor is told where the hand is: with the rotation, at the valve, and where the pressures are set.</summary>
public sealed class SensorTests : BayContext
{
    private const string Relearn = "pressure sensors relearned";
    private const string Duty = "never put out of use";

    private static readonly (string, string)[] Sensors = [.. new[] { "1L", "1R", "2L" }.Select(p => ($"fitted.{p}.sensor", "working")), ("fitted.2R.sensor", "not working")];

    private static string[] Cautions(IRenderedComponent<BayPage> page) => [.. page.FindAll(".caution").Select(c => c.TextContent)];

    [Fact]
    public void With_every_rotation_that_may_be_chosen_the_plan_tells_to_relearn_and_not_to_disable()
    {
        BeforeTheWork(Role.Technician, Sensors);
        Page(Leg.Plan, "rotation").FindAll("input[name=rotation]").ShouldNotBeEmpty();
        var names = RotationPlan.For(LeavingVehicle.WithRenewals(Visit.State.Arrived, Visit.State.Work)).Value.Verdicts.Where(v => v.Allowed).Select(v => v.Pattern.Name).ToList();
        names.Count.ShouldBeGreaterThan(1);
        foreach (var name in names)
        {
            Visit.EnterAsync("work.rotation", name).IsCompletedSuccessfully.ShouldBeTrue();
            var cautions = Cautions(Page(Leg.Plan, "rotation"));
            cautions.ShouldContain(c => c.Contains(Relearn, StringComparison.Ordinal), name);
            cautions.ShouldContain(c => c.Contains(Duty, StringComparison.Ordinal), name);
        }
    }

    [Fact]
    public void Where_the_pressure_of_a_moved_wheel_is_set_it_is_told_again_and_of_one_that_stayed_it_is_not()
    {
        BeforeTheSignature(Role.Technician, [.. Sensors, ("work.rotation", "front-to-rear"), .. new[] { "1L", "1R", "2L", "2R" }.Select(p => ($"work.jobs.{p}", "off and on"))]);
        var moved = Cautions(Page(Leg.Prove, "1R", "pressure-set"));
        moved.ShouldContain(c => c.Contains(Relearn, StringComparison.Ordinal));
        moved.ShouldContain(c => c.Contains(Duty, StringComparison.Ordinal));
        moved.ShouldContain(c => c.StartsWith("2R: the sensor did not work before this work", StringComparison.Ordinal));

        Visit.EnterAsync("work.rotation", "none").IsCompletedSuccessfully.ShouldBeTrue();
        Cautions(Page(Leg.Prove, "1R", "pressure-set")).ShouldNotContain(c => c.Contains(Relearn, StringComparison.Ordinal));
    }

    [Fact]
    public void At_the_valve_a_working_sensor_stays_and_one_of_which_nothing_is_known_is_asked_for()
    {
        BeforeTheSignature(Role.Technician, ("fitted.1L.sensor", "working"), ("fitted.1R.sensor", ""), ("work.jobs.1L", "demount"), ("work.jobs.1R", "demount"));
        Cautions(Page(Leg.OffTheCar, "1L", "valve")).ShouldContain(c => c.Contains("The sensor stays in use", StringComparison.Ordinal));
        Page(Leg.OffTheCar, "1R", "valve").FindAll(".caution a").ShouldContain(a => a.GetAttribute("href")!.EndsWith("#f-fitted-1R-sensor", StringComparison.Ordinal));
    }
}
