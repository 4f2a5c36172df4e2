using System.Text.Json.Nodes;
using Trundle.Engine.Findings;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;

namespace Trundle.Visits.Tests.Bay;

/// <summary>What stands as a vehicle leaves: what air, a mounting and a spare's chuck put right, and what they do not.</summary>
public sealed class LeavingTests
{
    private static JsonObject Sample() => JsonNode.Parse(VisitStandingTests.SampleText)!.AsObject();

    private static VisitState Stands(JsonObject file)
    {
        var problems = new List<Problem>();
        var state = VisitStanding.Of(FileNode.Parse(file.ToJsonString(), "sample").Value, problems);
        problems.ShouldBeEmpty();
        return state;
    }

    private static JsonNode Fitted(JsonObject file, string at) => file["fitted"]!.AsArray().Single(f => f!["position"]!.GetValue<string>() == at)!;

    [Fact]
    public void Air_alone_puts_no_run_low_tyre_right()
    {
        var file = Sample();
        Fitted(file, "2L")["pressure"]!["value"] = "180 kPa";
        var state = Stands(file);
        state.LeavingFindings.Single(f => f.Rule == "pressure.run-low" && f.Category > Category.None).Position.ShouldBe("2L");
        state.Stops.ShouldContain(s => s.DecisionKey == "pressure-run-low@2L" && s.What.Contains("not taken off its wheel", StringComparison.Ordinal));

        // Off its wheel it was looked into; a new tyre never was low.
        file["work"]!["steps"]!["2L"]!["demount"] = "done";
        Stands(file).LeavingFindings.ShouldNotContain(f => f.Rule == "pressure.run-low" && f.Category > Category.None);
        Fitted(file, "1L")["pressure"]!["value"] = "150 kPa";
        Stands(file).LeavingFindings.ShouldNotContain(f => f.Rule == "pressure.warning" && f.Category > Category.None);
    }

    [Fact]
    public void A_pressure_below_the_placards_for_full_load_is_referred_where_the_vehicle_will_be_laden()
    {
        var file = Sample();
        Stands(file).LeavingFindings.ShouldNotContain(f => f.Rule == "pressure.set");
        file["conditions"]!["laden"] = true;
        var found = Stands(file).LeavingFindings.Where(f => f.Rule == "pressure.set").ToList();
        found.Select(f => f.Position).ShouldBe(["1L", "1R", "2L", "2R"]);
        found.ShouldAllBe(f => f.Category == Category.Refer && f.Measured.Value == 230 && f.Limit!.Amount.Value == 250);
        file["work"]!["steps"]!["1L"]!["pressure-set"] = "250 kPa";
        Stands(file).LeavingFindings.Where(f => f.Rule == "pressure.set").Select(f => f.Position).ShouldBe(["1R", "2L", "2R"]);
    }

    [Fact]
    public void A_spare_that_was_found_low_is_set_before_hand_back()
    {
        var file = Sample();
        Fitted(file, "S")["pressure"]!["value"] = "380 kPa";
        Stands(file).Stops.ShouldContain(s => s.Leg == Leg.Prove && s.Position == "S");
        file["work"]!["steps"]!["S"] = new JsonObject { ["pressure-set"] = "420 kPa" };
        var state = Stands(file);
        state.Stops.ShouldBeEmpty();
        state.Leaving.At(Position.Spare)!.Pressure!.Value.Kilopascals.ShouldBe(420, 1e-9);
    }

    [Fact]
    public void A_tyre_mounted_with_its_direction_checked_leaves_the_way_of_its_arrow()
    {
        var file = Sample();
        Fitted(file, "2L")["tyre"]!["directional"] = true;
        Fitted(file, "2L")["tyre"]!["mountedFor"] = "right";
        Stands(file).LeavingFindings.ShouldContain(f => f.Rule == "direction.rotation" && f.Category == Category.Major && f.Position == "2L");
        file["work"]!["steps"]!["2L"]!["mount"] = "mounted, direction and outside checked";
        var state = Stands(file);
        state.Leaving.At(Position.Read("2L").Value)!.Tyre!.MountedFor.ShouldBe(MountedFor.Left);
        state.Arrived.At(Position.Read("2L").Value)!.Tyre!.MountedFor.ShouldBe(MountedFor.Right);
        state.LeavingFindings.ShouldNotContain(f => f.Rule == "direction.rotation" && f.Category > Category.None);
    }

    [Fact]
    public void A_motorcycle_has_one_wheel_on_each_axle_and_no_side_in_its_words()
    {
        var cycle = JsonNode.Parse("""{"vehicle":{"class":"motorcycle","axles":[{},{}]},"fitted":[{"position":"2R"}]}""")!.AsObject();
        var state = Stands(cycle);
        VisitNeeds.Positions(state.Arrived).Select(p => p.ToString()).ShouldBe(["1L", "2R"]);
        state.On(Leg.LookOver).Needs.Select(n => n.What).ShouldBe(["Front: marking, depths, pressure", "Rear: marking, depths, pressure"]);
    }

    [Theory]
    [InlineData("car", true)]
    [InlineData("trailer", false)]
    [InlineData("trailer over 3500 kg", false)]
    public void A_trailer_counts_no_distance(string vehicleClass, bool asked)
    {
        var state = Stands(JsonNode.Parse($$$"""{"vehicle":{"class":"{{{vehicleClass}}}","axles":[{}]}}""")!.AsObject());
        state.On(Leg.Arrive).Needs.Any(n => n.Field == "vehicle.odometer").ShouldBe(asked);
    }
}
