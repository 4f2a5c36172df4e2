using System.Text.Json.Nodes;
using Trundle.Engine.Findings;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;

namespace Trundle.Visits.Tests.Bay;

/// <summary>Tyres, valves and wheels that take the place of what came in.</summary>
public sealed class RenewalsTests
{
    private static readonly Position FrontLeft = Position.Read("1L").Value;

    private static JsonObject Sample() => JsonNode.Parse(VisitStandingTests.SampleText)!.AsObject();

    private static JsonNode Fitted(JsonObject file, string at) => file["fitted"]!.AsArray().Single(f => f!["position"]!.GetValue<string>() == at)!;

    private static VisitState Stands(JsonObject file)
    {
        var problems = new List<Problem>();
        var state = VisitStanding.Of(FileNode.Parse(file.ToJsonString(), "sample").Value, problems);
        problems.ShouldBeEmpty();
        return state;
    }

    [Fact]
    public void A_new_valve_stands_in_the_wheel_as_it_leaves_also_under_a_tyre_that_stays()
    {
        var file = Sample();
        foreach (var at in new[] { "1L", "2L" })
        {
            Fitted(file, at)["valve"] = JsonNode.Parse("""{"kind": "rubber-snap-in", "state": "cracked"}""");
        }

        file["work"]!["renewed"]!["1L"]!["valve"] = JsonNode.Parse("""{"kind": "clamp-in"}""");
        file["work"]!["renewed"]!["2L"] = JsonNode.Parse("""{"valve": {"kind": "rubber-snap-in", "renewed": "2026-03-01"}}""");
        var state = Stands(file);
        state.Work.Renewed.Keys.Select(p => p.ToString()).Order().ShouldBe(["1L", "1R"]);
        state.Leaving.At(FrontLeft)!.Valve.ShouldBe(new Valve { Kind = ValveKind.ClampIn, Renewed = new DateOnly(2026, 3, 14) });
        state.Leaving.At(Position.Read("2L").Value)!.Valve!.Renewed.ShouldBe(new DateOnly(2026, 3, 1), "as somebody said");
        state.Leaving.At(Position.Read("2L").Value)!.Tyre.ShouldBe(state.Arrived.At(Position.Read("2L").Value)!.Tyre);
        state.LeavingFindings.ShouldNotContain(f => f.Rule == "valve.state" && f.Category > Category.None);
        state.Stops.ShouldContain(s => s.Position == "2L" && s.What == "Core out", "nobody renews a valve with the tyre on its rim: its steps are due");
        state.On(Leg.LookOver).Findings.Count(f => f.Rule == "valve.state" && f.Category > Category.None).ShouldBe(2, "they came in cracked");
    }

    [Fact]
    public void Another_wheel_takes_the_place_of_a_condemned_one_and_its_tyre_is_taken_off_for_it()
    {
        var file = Sample();
        Fitted(file, "2L")["wheel"]!["damage"] = JsonNode.Parse("""[{"kind": "crack"}]""");
        Fitted(file, "2L")["wheel"]!["condemned"] = true;
        Stands(file).LeavingFindings.ShouldContain(f => f.Rule == "condemned.wheel" && f.Position == "2L" && f.Category > Category.None);
        file["work"]!["renewed"]!["2L"] = new JsonObject { ["wheel"] = JsonNode.Parse("""{"id": "W-90", "rim": "6J x 15", "material": "steel", "maker": "vehicle", "bore": "57.1 mm", "boltCircle": "5 x 112 mm", "seat": "ball", "loadRating": "690 kg"}""") };
        var state = Stands(file);
        state.LeavingFindings.ShouldNotContain(f => f.Position == "2L" && f.Rule.StartsWith("wheel.crack", StringComparison.Ordinal));
        state.LeavingFindings.ShouldNotContain(f => f.Rule == "condemned.wheel" && f.Position == "2L" && f.Category > Category.None);
        state.Leaving.At(Position.Read("2L").Value)!.Wheel!.Id.ShouldBe("W-90");
        state.Leaving.At(Position.Read("2L").Value)!.Tyre!.Id.ShouldBe(state.Arrived.At(Position.Read("2L").Value)!.Tyre!.Id);
        state.On(Leg.OffTheCar).Steps.ShouldContain(s => s.At == "2L" && s.Step.Id == "demount", "planned is a balance alone");

        // The condemned one does not come back under another position's tyre.
        var name = "W-17";
        Fitted(file, "2L")["wheel"]!["id"] = name;
        file["work"]!["renewed"]!["2L"]!["wheel"]!["id"] = name;
        Stands(file).LeavingFindings.ShouldContain(f => f.Rule == "condemned.wheel" && f.Position == "2L" && f.Category > Category.None);
    }

    [Fact]
    public void A_wheel_of_one_piece_lifts_no_stop_of_the_rim_that_the_tyre_is_taken_off()
    {
        var file = Sample();
        file["work"]!["renewed"]!["1L"]!["wheel"] = JsonNode.Parse("""{"rim": "6J x 15", "multiPiece": false}""");
        Fitted(file, "1L")["wheel"]!["multiPiece"] = true;
        Stands(file).On(Leg.OffTheCar).Steps.ShouldContain(s => s.At == "1L" && s.Step.Id == "licensed-only");

        // Nobody looked at the old rim of a truck: nothing goes in or out before somebody did.
        Fitted(file, "1L")["wheel"]!.AsObject().Remove("multiPiece");
        Fitted(file, "1L")["tyre"]!["marking"] = "295/80 R22.5 152/148M";
        file["work"]!["renewed"]!["1L"]!["tyre"]!["marking"] = "295/80 R22.5 152/148M";
        Stands(file).On(Leg.OffTheCar).Steps.Single(s => s.At == "1L" && s.Step.Id == "core-out").Why!.ShouldContain("whether this rim is of one piece");
    }
}
