using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Visits.Procedures;
using Trundle.Visits.Tests.Bay;

namespace Trundle.Visits.Tests.Procedures;

/// <summary>What is told of a wheel from what was entered of it, and what it does to the visit.</summary>
public sealed class WheelCircumstancesTests
{
    private static JsonObject Sample() => JsonNode.Parse(VisitStandingTests.SampleText)!.AsObject();

    private static VisitState Stands(JsonObject file)
    {
        var problems = new List<Problem>();
        var state = VisitStanding.Of(FileNode.Parse(file.ToJsonString(), "sample").Value, problems);
        problems.ShouldBeEmpty();
        return state;
    }

    private static bool? Told(Circumstance circumstance, string fitted, string vehicle = "{}", string work = "{}")
    {
        var json = $$"""{"vehicle": {{vehicle}}, "fitted": [{"position": "1L", {{fitted}}}], "work": {{work}}}""";
        var problems = new List<Problem>();
        var file = VisitFileReader.Read(FileNode.Parse(json, "wheel").Value, problems);
        var read = VisitWorkReader.Read(file, problems);
        problems.ShouldBeEmpty();
        var at = Trundle.Engine.Vehicles.Position.Read("1L").Value;
        return WheelCircumstances.At(file.Subject, at, read, file.Balance.GetValueOrDefault(at))[circumstance];
    }

    [Theory]
    [InlineData(Circumstance.LowProfile, "\"tyre\":{\"marking\":\"225/50 R17 94V\"}", true)]
    [InlineData(Circumstance.LowProfile, "\"tyre\":{\"marking\":\"205/55 R16 91V\"}", false)]
    [InlineData(Circumstance.LowProfile, "\"tyre\":{}", null)]
    [InlineData(Circumstance.RunFlat, "\"tyre\":{\"marking\":\"225/45 RF17 91W\"}", true)]
    [InlineData(Circumstance.RunFlat, "\"tyre\":{\"marking\":\"225/45 R17 91W\"}", false)]
    [InlineData(Circumstance.Sensor, "\"sensor\":\"working\"", true)]
    [InlineData(Circumstance.Sensor, "\"sensor\":\"not working\"", true)]
    [InlineData(Circumstance.Sensor, "\"sensor\":\"none\"", false)]
    [InlineData(Circumstance.Sensor, "\"tyre\":{}", null)]
    [InlineData(Circumstance.TubeType, "\"tyre\":{\"marking\":\"205/55 R16 91V\",\"marks\":[\"TUBE TYPE\"]}", true)]
    [InlineData(Circumstance.TubeType, "\"tyre\":{\"marking\":\"205/55 R16 91V\"}", false)]
    [InlineData(Circumstance.TubeType, "\"tyre\":{\"marking\":\"MT90-16 74H\"}", null)]
    [InlineData(Circumstance.TubeType, "\"tyre\":{\"marking\":\"MT90-16 74H\",\"marks\":[\"TUBELESS\"]}", false)]
    [InlineData(Circumstance.ReversedRim, "\"wheel\":{\"reversed\":true}", true)]
    [InlineData(Circumstance.ReversedRim, "\"wheel\":{}", null)]
    [InlineData(Circumstance.Motorcycle, "\"tyre\":{\"marking\":\"MT90-16 74H\"}", true)]
    [InlineData(Circumstance.HeavyWheel, "\"mass\":\"26 kg\"", true)]
    [InlineData(Circumstance.HeavyWheel, "\"mass\":\"25 kg\"", false)]
    [InlineData(Circumstance.HeavyWheel, "\"balance\":{\"wheel\":{\"mass\":\"19 kg\"}}", false)]
    [InlineData(Circumstance.HeavyWheel, "\"tyre\":{}", null)]
    [InlineData(Circumstance.HeavyWheel, "\"tyre\":{\"marking\":\"295/80 R22.5 152/148M\"}", true)]
    [InlineData(Circumstance.Truck, "\"tyre\":{\"marking\":\"295/80 R22.5 152/148M\"}", true)]
    [InlineData(Circumstance.Truck, "\"tyre\":{\"marking\":\"LT245/75 R16 120/116S\"}", false)]
    [InlineData(Circumstance.MultiPiece, "\"wheel\":{\"multiPiece\":true}", true)]
    [InlineData(Circumstance.MultiPiece, "\"wheel\":{\"multiPiece\":false}", false)]
    [InlineData(Circumstance.MultiPiece, "\"tyre\":{\"marking\":\"295/80 R22.5 152/148M\"}", null)]
    [InlineData(Circumstance.MultiPiece, "\"tyre\":{\"marking\":\"205/55 R16 91V\"}", false)]
    public void A_wheel_is_told_by_what_was_entered_of_it(Circumstance circumstance, string fitted, bool? so) =>
        Told(circumstance, fitted).ShouldBe(so);

    [Theory]
    [InlineData("""{"airSuspension": true}""", true)]
    [InlineData("""{"airSuspension": false}""", false)]
    [InlineData("{}", null)]
    public void Whether_it_stands_on_air_is_said_of_the_vehicle(string vehicle, bool? so) =>
        Told(Circumstance.AirSuspension, "\"tyre\":{}", vehicle).ShouldBe(so);

    [Fact]
    public void A_repair_is_one_where_it_is_asked_for_and_none_where_it_was_taken_back()
    {
        Told(Circumstance.Repair, "\"tyre\":{}", "{}", """{"repairs": {"1L": {"asked": true}}}""").ShouldBe(true);
        Told(Circumstance.Repair, "\"tyre\":{}", "{}", """{"repairs": {"1L": {"asked": false, "size": "3 mm"}}}""").ShouldBe(false);
        Told(Circumstance.Repair, "\"tyre\":{}").ShouldBe(false);
    }

    [Fact]
    public void Air_suspension_holds_the_lift_and_the_road()
    {
        var file = Sample();
        file["vehicle"]!["airSuspension"] = true;
        var state = Stands(file);
        state.Stops.Select(s => s.What).ShouldBe(["Air suspension to lifting", "Air suspension back to the road"]);
        state.On(Leg.OffTheCar).Steps.Single(s => s.Step.Id == "lift-points").HeldBy!.Step.Id.ShouldBe("air-to-lifting");
    }

    [Fact]
    public void A_sensor_at_one_wheel_brings_the_vehicles_steps_once_and_the_wheels_own_at_that_wheel()
    {
        var file = Sample();
        file["fitted"]![0]!["sensor"] = "working";
        var steps = Stands(file).Legs.SelectMany(l => l.Steps).ToList();
        steps.Where(s => s.Step.Id == "sensors-learned").Select(s => s.At).ShouldBe(["vehicle"]);
        steps.Where(s => s.Step.Id == "sensor-serviced").Select(s => s.At).ShouldBe(["1L"]);
    }

    [Fact]
    public void A_truck_tyre_that_was_found_low_is_not_called_at_its_pressure()
    {
        var file = Sample();
        foreach (var axle in file["vehicle"]!["axles"]!.AsArray())
        {
            axle!["placard"]!["cold"] = "800 kPa";
        }

        file["fitted"]![0]!["pressure"] = new JsonObject { ["value"] = "640 kPa", ["temperature"] = "18 °C" };
        file["work"]!["renewed"]!.AsObject().Clear();
        file["fitted"]![0]!["tyre"]!["marking"] = "295/80 R22.5 152/148M";
        file["work"]!["steps"]!["1L"]!["ran-low"] = "at its pressure, nothing to be seen";
        var step = Stands(file).On(Leg.OffTheCar).Steps.Single(s => s is { At: "1L", Step.Id: "ran-low" });
        step.Standing.ShouldBe(StepStanding.Failed);
        step.Why!.ShouldContain("it counts as run low");
        file["fitted"]![0]!["pressure"]!["value"] = "641 kPa";
        Stands(file).On(Leg.OffTheCar).Steps.Single(s => s is { At: "1L", Step.Id: "ran-low" }).Standing.ShouldBe(StepStanding.Passed);
    }
}
