using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Operations;

public class FixingsOperationTests
{
    private static Reading<Answer> Run(string body) => FixingsOperation.Operation.Run(FileNode.Parse(body, "body").Value);

    private static JsonObject Body(string body) => Run(body).Value.Body;

    private static double Number(JsonNode? node) => node!.GetValue<double>();

    [Fact]
    public void A_wheel_with_everything_known()
    {
        var body = Body("""{"count":5,"torque":"110 N·m","stages":[50,100],"thread":"M12x1.5","propertyClass":"10.9","seat":"cone","condition":"dry"}""");
        body["sequence"]!.ToJsonString().ShouldBe("[1,3,5,2,4]");
        body.ContainsKey("makerOrder").ShouldBeFalse();
        Number(body["stages"]![0]!["percent"]).ShouldBe(50);
        Number(body["stages"]![0]!["torqueNewtonMetres"]).ShouldBe(55, 1e-9);
        Number(body["stages"]![1]!["wrenchSettingNewtonMetres"]).ShouldBe(110, 1e-9);
        Number(body["clamp"]!["nominalKilonewtons"]).ShouldBe(30.10, 0.005);
        Number(body["clamp"]!["lowKilonewtons"]).ShouldBe(30.10 * 0.65, 0.005);
        Number(body["clamp"]!["highKilonewtons"]).ShouldBe(30.10 * 1.35, 0.01);
        Number(body["clamp"]!["proofLoadKilonewtons"]).ShouldBe(73.1, 0.1);
        Number(body["reTorque"]!["fromKilometres"]).ShouldBe(50);
        Number(body["reTorque"]!["toKilometres"]).ShouldBe(100);
        body["reTorque"]!["source"]!.GetValue<string>().ShouldBe("common practice");
        body["cautions"]!.AsArray().Count.ShouldBeGreaterThan(4);
    }

    [Fact]
    public void Units_and_spellings_do_not_change_the_answer()
    {
        var metric = Body("""{"count":5,"torque":"108,4654358665 Nm","thread":"M12x1.5","wrenchLength":"45 cm","adapter":60}""");
        var imperial = Body("""{"count":"5","torque":"80 ft-lb","thread":"m12 × 1,5","wrenchLength":450,"adapter":"60 mm","adapterAngle":"0 deg"}""");
        Number(metric["stages"]![1]!["wrenchSettingNewtonMetres"]).ShouldBe(Number(imperial["stages"]![1]!["wrenchSettingNewtonMetres"]), 1e-6);
        Number(metric["clamp"]!["highKilonewtons"]).ShouldBe(Number(imperial["clamp"]!["highKilonewtons"]), 1e-6);
    }

    [Fact]
    public void The_makers_order_stands_beside_the_computed_one()
    {
        var answer = Body("""{"count":5,"torque":100,"order":[1,4,2,5,3]}""");
        answer["makerOrder"]!.ToJsonString().ShouldBe("[1,4,2,5,3]");
        answer["sequence"]!.ToJsonString().ShouldBe("[1,3,5,2,4]");
        answer["orderInUse"]!.ToJsonString().ShouldBe("[1,4,2,5,3]");
    }

    [Fact]
    public void No_torque_is_null_with_a_caution_and_no_clamp()
    {
        var answer = Run("""{"count":5,"thread":"M12x1.5","propertyClass":"10.9","torque":null}""").Value;
        answer.No.ShouldBeFalse();
        answer.Body["torqueNewtonMetres"].ShouldBeNull();
        answer.Body["clamp"].ShouldBeNull();
        answer.Body["stages"]![1]!["torqueNewtonMetres"].ShouldBeNull();
        answer.Body["stages"]![1]!["wrenchSettingNewtonMetres"].ShouldBeNull();
        Number(answer.Body["proofLoad"]!["value"]).ShouldBe(73.1, 0.1);
        answer.Body["cautions"]![0]!.GetValue<string>().ShouldContain("maker's torque was not given");
    }

    [Fact]
    public void A_clamp_past_the_proof_load_is_a_no()
    {
        var answer = Run("""{"count":5,"torque":140,"thread":"M12x1.5","propertyClass":"8.8","seat":"flat","condition":"oiled"}""").Value;
        answer.No.ShouldBeTrue();
        answer.Body["worst"]!.GetValue<string>().ShouldBe("major");
        answer.ForPeople.ShouldContain(l => l.StartsWith("major", StringComparison.Ordinal));
        answer.ForPeople.ShouldContain(l => l.Contains("Do not tighten to this torque", StringComparison.Ordinal));
        answer.ForPeople.ShouldContain(l => l.Contains("never oil a seat that is rated dry", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("""{"count":5,"torque":110,"thread":"M12x1.5","propertyClass":"10.9","seat":"cone","condition":"dry","seatState":"worn"}""", "major", "do not tighten on a worn seat")]
    [InlineData("""{"count":5,"seatState":"worn"}""", "major", "do not tighten on a worn seat")]
    [InlineData("""{"count":5,"torque":110,"thread":"M12x1.5","propertyClass":"8.8","seat":"flat","condition":"dry"}""", "refer", "high end of the clamp passes the proof load")]
    public void What_must_not_be_tightened_is_a_no_and_says_what_to_do(string json, string worst, string said)
    {
        var answer = Run(json).Value;
        answer.No.ShouldBeTrue();
        answer.Body["worst"]!.GetValue<string>().ShouldBe(worst);
        answer.ForPeople.ShouldContain(l => l.Contains(said, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("""{"torque":100}""", "count", "missing")]
    [InlineData("""{"count":0}""", "count", "not-a-whole-number")]
    [InlineData("""{"count":5.5}""", "count", "not-a-whole-number")]
    [InlineData("""{"count":21}""", "count", "not-a-whole-number")]
    [InlineData("""{"count":5,"torque":"1,100 N·m"}""", "torque", "comma-ambiguous")]
    [InlineData("""{"count":5,"torque":"33 psi"}""", "torque", "unit-unknown")]
    [InlineData("""{"count":5,"torque":-10}""", "torque", "out-of-range")]
    [InlineData("""{"count":5,"stages":[100,50]}""", "stages[1]", "stage-out-of-range")]
    [InlineData("""{"count":5,"stages":[50,90]}""", "stages", "stage-last")]
    [InlineData("""{"count":5,"stages":[]}""", "stages", "stages-none")]
    [InlineData("""{"count":5,"stages":["half"]}""", "stages[0]", "stage-unreadable")]
    [InlineData("""{"count":5,"stages":"50"}""", "stages", "not-a-list")]
    [InlineData("""{"count":5,"order":[1,2,3,4,4]}""", "order", "order-incomplete")]
    [InlineData("""{"count":5,"thread":"M12"}""", "thread", "thread-unknown")]
    [InlineData("""{"count":5,"propertyClass":"11"}""", "propertyClass", "property-class-unknown")]
    [InlineData("""{"count":5,"thread":"M12x1.5","propertyClass":"grade 8"}""", "propertyClass", "property-class-contradicts")]
    [InlineData("""{"count":5,"thread":"1/2-20","propertyClass":"10.9"}""", "propertyClass", "property-class-contradicts")]
    [InlineData("""{"count":5,"seat":"taper"}""", "seat", "word-unknown")]
    [InlineData("""{"count":5,"condition":"wet"}""", "condition", "word-unknown")]
    [InlineData("""{"count":5,"nutFactor":0}""", "nutFactor", "out-of-range")]
    [InlineData("""{"count":5,"adapter":"60 mm"}""", "wrenchLength", "missing")]
    [InlineData("""{"count":5,"wrenchLength":450,"adapterAngle":45}""", "adapter", "missing")]
    [InlineData("""{"count":5,"wrenchLength":100,"adapter":100,"adapterAngle":180}""", "adapterAngle", "adapter-leaves-no-arm")]
    [InlineData("""{"count":5,"engagement":"many"}""", "engagement", "engagement-unreadable")]
    [InlineData("""{"count":5,"engagement":"0 turns"}""", "engagement", "engagement-out-of-range")]
    [InlineData("""{"count":5,"engagement":"7 mm/s"}""", "engagement", "engagement-unreadable")]
    [InlineData("""{"count":5,"seat":"flat","seatAngle":90}""", "seatAngle", "seat-angle-without-cone")]
    [InlineData("""{"count":5,"seat":"cone","ballRadius":13}""", "ballRadius", "ball-radius-without-ball")]
    [InlineData("""{"count":5,"seat":"ball","thread":"M12x1.5","ballRadius":8}""", "ballRadius", "out-of-range")]
    [InlineData("""{"count":5,"seatState":"old"}""", "seatState", "word-unknown")]
    [InlineData("""{"count":5,"wrenchLeast":200,"wrenchMost":40}""", "wrenchLeast", "out-of-range")]
    [InlineData("""{"count":5,"wrenchDeviation":["2","much"]}""", "wrenchDeviation[1]", "deviation-unreadable")]
    [InlineData("""{"count":5,"leftHandSide":"near"}""", "leftHandSide", "word-unknown")]
    [InlineData("""{"count":5,"torqe":100}""", "torqe", "key-unknown")]
    public void Wrong_input_is_named_where_it_stands(string body, string where, string code)
    {
        var problem = Run(body).Problem.ShouldNotBeNull();
        problem.Where.ShouldBe(where);
        problem.Code.ShouldContain(code);
        problem.Message.ShouldNotBeNullOrWhiteSpace();
    }

    [Fact]
    public void An_adapter_without_an_angle_is_taken_straight_on_and_it_is_said()
    {
        var assumed = Body("""{"count":5,"torque":"120 N·m","wrenchLength":"450 mm","adapter":"50 mm" }""");
        assumed["cautions"]!.AsArray().Select(c => c!.GetValue<string>()).ShouldContain(c => c.StartsWith("The adapter's angle was not given: it is taken to stand straight on", StringComparison.Ordinal));
        var given = Body("""{"count":5,"torque":"120 N·m","wrenchLength":"450 mm","adapter":"50 mm","adapterAngle":"0°"}""");
        given["cautions"]!.AsArray().Select(c => c!.GetValue<string>()).ShouldNotContain(c => c.Contains("angle was not given", StringComparison.Ordinal));
        assumed["stages"]!.ToJsonString().ShouldBe(given["stages"]!.ToJsonString());
    }

    [Fact]
    public void A_strength_that_the_thread_cannot_bear_is_named_with_those_that_it_can()
    {
        Run("""{"count":5,"thread":"M14x1.5","propertyClass":"grade 8"}""").Problem!.Message
            .ShouldStartWith("Grade 8 (SAE J429) is that of an inch fixing, and M14x1.5 is a metric thread, which bears '8.8', '10.9' or '12.9'.");
        Run("""{"count":5,"thread":"1/2-20","propertyClass":"10.9"}""").Problem!.Message
            .ShouldStartWith("Class 10.9 (ISO 898-1) is that of a metric fixing, and 1/2-20 is an inch thread, which bears 'grade 5' or 'grade 8'.");
        Run("""{"count":5,"thread":"1/2-20","propertyClass":"grade 8","torque":"90 lbf·ft"}""").IsRead.ShouldBeTrue();

        var problems = new List<Problem>();
        VisitFileReader.Read(FileNode.Parse("""{"vehicle":{"axles":[{"fixings":{"count":5,"thread":"M12x1.5","propertyClass":"8"}}]}}""", "f").Value, problems);
        problems.ShouldHaveSingleItem().Where.ShouldBe("vehicle.axles[0].fixings.propertyClass");
    }

    [Fact]
    public void A_wrench_that_is_off_and_off_its_scale_is_told_with_its_reasons()
    {
        var answer = Run("""{"count":5,"torque":110,"thread":"M12x1.5","seat":"cone","condition":"dry","wrenchLeast":"60 N·m","wrenchMost":"300 N·m","wrenchDeviation":["-8 %",1]}""").Value;
        answer.No.ShouldBeTrue();
        answer.Body["stages"]![0]!["wrenchSettingNewtonMetres"].ShouldBeNull();
        answer.Body["stages"]![0]!["wrenchRefused"]!.GetValue<string>().ShouldContain("lowest mark");
        answer.Body["stages"]![1]!["wrenchRefused"].ShouldBeNull();
        Number(answer.Body["wrench"]!["mostNewtonMetres"]).ShouldBe(110 / 0.92, 1e-9);
        Number(answer.Body["wrench"]!["leastNewtonMetres"]).ShouldBe(110 / 1.01, 1e-9);
        answer.Body["findings"]![0]!["rule"]!.GetValue<string>().ShouldBe("fixings.wrench-off");
        Number(answer.Body["clamp"]!["highKilonewtons"]).ShouldBe(30.10 * 1.35 / 0.92, 0.02);
        answer.ForPeople.ShouldContain(l => l.Contains("not with this wrench", StringComparison.Ordinal));
    }

    [Fact]
    public void Engagement_is_told_in_turns_and_length_with_every_limit_it_is_held_against()
    {
        var answer = Run("""{"count":5,"torque":110,"thread":"M12x1.5","engagement":"6 turns","leastEngagement":"9 mm"}""").Value;
        answer.No.ShouldBeTrue();
        Number(answer.Body["engagement"]!["lengthMillimetres"]).ShouldBe(9, 1e-9);
        answer.Body["engagement"]!["least"]!.AsArray().Select(l => (l!["rule"]!.GetValue<string>(), l["breached"]!.GetValue<bool>()))
            .ShouldBe([("fixings.engagement-maker", false), ("fixings.engagement-stripping", true), ("fixings.engagement", true)]);
        answer.ForPeople.ShouldContain(l => l.Contains("TOO LITTLE", StringComparison.Ordinal) && l.Contains("from memory", StringComparison.Ordinal));
        Body("""{"count":5}""")["engagement"].ShouldBeNull();
    }

    [Fact]
    public void Left_hand_threads_are_told_with_the_way_they_turn()
    {
        var all = Run("""{"count":6,"leftHand":true}""").Value;
        all.Body["direction"]!["tightens"]!.GetValue<string>().ShouldBe("anticlockwise");
        all.Body["sequence"]!.ToJsonString().ShouldBe("[1,4,2,5,3,6]");
        all.ForPeople.ShouldContain(l => l.StartsWith("Direction", StringComparison.Ordinal) && l.Contains("tighten anticlockwise", StringComparison.Ordinal));
        var side = Run("""{"count":6,"leftHandSide":"left"}""").Value;
        side.Body["direction"]!["leftHandSide"]!.GetValue<string>().ShouldBe("left");
        side.ForPeople.ShouldContain(l => l.Contains("left-hand threads on the left side", StringComparison.Ordinal));
    }

    [Fact]
    public void A_visits_file_hands_the_same_keys_to_the_fixings_of_its_axle()
    {
        var problems = new List<Problem>();
        var file = VisitFileReader.Read(FileNode.Parse("""{"vehicle":{"axles":[{"fixings":{"count":5,"thread":"M12x1.5","torque":"110 N·m","seat":"cone","seatAngle":"90°","seatState":"worn","condition":"dry","engagement":"6.5 turns","leastEngagement":"8 turns","leftHandSide":"right"}}]},"fitted":[{"position":"1L","wheel":{"seatState":"worn","hubRing":{"material":"plastic","inner":"57.1 mm","outer":"63.4 mm"}},"fixings":[{"count":4,"kind":"bolt","seat":"cone"},{"count":1,"kind":"nut"}]}]}""", "f").Value, problems);
        problems.ShouldBeEmpty();
        var body = VisitAnswers.FixingsBody(file.Subject.Vehicle.Axles[0].Fixings, "car")!;
        (body["engagement"]!.GetValue<string>(), body["leastEngagement"]!.GetValue<string>(), body["seatAngle"]!.GetValue<string>(), body["seatState"]!.GetValue<string>(), body["leftHandSide"]!.GetValue<string>())
            .ShouldBe(("6.5 turns", "8 turns", "90°", "worn", "right"));
        FixingsOperation.Operation.Run(FileNode.From(body)).Value.Body["worst"]!.GetValue<string>().ShouldBe("major");
        var wheel = file.Subject.Fitted[0];
        wheel.Wheel!.SeatWorn.ShouldBe(true);
        wheel.Wheel.HubRing!.Outer!.Value.Millimetres.ShouldBe(63.4, 1e-9);
        wheel.Fixings.Select(f => f.Count).ShouldBe([4, 1]);

        VisitFileReader.Read(FileNode.Parse("""{"fitted":[{"position":"1L","wheel":{"hubRing":{"inner":64,"outer":63}}}]}""", "f").Value, problems);
        problems.ShouldHaveSingleItem().Code.ShouldBe("ring-inside-out");
    }
}
