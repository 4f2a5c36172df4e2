using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Operations;

public class BalanceCalibrateOperationTests
{
    private static Reading<Answer> Run(string body) => BalanceCalibrateOperation.Operation.Run(FileNode.Parse(body, "body").Value);

    private static double Number(JsonNode? node) => node!.GetValue<double>();

    [Fact]
    public void The_worked_sample_gives_the_machine_that_it_was_made_from()
    {
        var answer = Run(File.ReadAllText("balance-calibrate-worked.json")).Value;
        answer.No.ShouldBeFalse();
        var speeds = answer.Body["calibration"]!["speeds"]!.AsArray();
        speeds.Select(s => Number(s!["speedRevolutionsPerMinute"])).ShouldBe([120, 180, 240], 1e-9);
        foreach (var speed in speeds)
        {
            // Made with supports at −80 and −260 mm, 20 N a unit, planes at 0 and 180 mm, a little soft: ω²·(z − z_B)/(z_A − z_B)/20 N, over 1 − ω²/1.2·10⁵.
            var omega = Number(speed!["speedRevolutionsPerMinute"]) * Math.PI / 30;
            var one = omega * omega * 1e-6 / 20 / (1 - (omega * omega / 1.2e5));
            Coefficient("inner", 0, 260 / 180.0, 25);
            Coefficient("inner", 1, 80 / 180.0, 205);
            Coefficient("outer", 0, 440 / 180.0, 25);
            Coefficient("outer", 1, 260 / 180.0, 205);

            void Coefficient(string plane, int point, double share, double degrees)
            {
                var c = speed["influence"]![plane]![point]!;
                Number(c["magnitudePerGramMillimetre"]).ShouldBe(one * share, 0.002 * one * share);

                // The softness adds up to 2.2° of lag at 240 r/min.
                Number(c["phaseDegrees"]).ShouldBe(degrees + (Math.Atan(0.0015 * omega) * 180 / Math.PI), 0.1);
            }
        }

        var fits = answer.Body["speeds"]!.AsArray();
        fits.All(f => f!["spareSpins"]!.GetValue<int>() == 1).ShouldBeTrue();
        fits.SelectMany(f => f!["residuals"]!.AsArray()).Select(r => r!["spin"]!.GetValue<int>()).ShouldBe(Enumerable.Range(0, 12));
        fits.SelectMany(f => f!["residuals"]!.AsArray()).Max(r => Number(r!["innerGrams"])).ShouldBeInRange(1e-4, 0.05);
        answer.ForPeople.ShouldContain(l => l.Contains("spin 4 is off by"));
        answer.ForPeople.ShouldContain(l => l.Contains("guard down"));
    }

    [Fact]
    public void The_calibration_file_beside_is_what_the_command_writes()
    {
        var written = Run(File.ReadAllText("balance-calibrate-worked.json")).Value.Body["calibration"]!;
        var kept = JsonNode.Parse(File.ReadAllText("machine-calibration.json"))!;
        foreach (var (a, b) in written["speeds"]!.AsArray().Zip(kept["speeds"]!.AsArray()))
        {
            Number(a!["influence"]!["inner"]![1]!["magnitudePerGramMillimetre"]).ShouldBe(Number(b!["influence"]!["inner"]![1]!["magnitudePerGramMillimetre"]), 1e-12);
            Number(a["misfit"]!["second"]).ShouldBe(Number(b["misfit"]!["second"]), 1e-12);
            Number(a["influence"]!["outer"]![0]!["phaseDegrees"]).ShouldBe(Number(b["influence"]!["outer"]![0]!["phaseDegrees"]), 1e-9);
        }
    }

    [Fact]
    public void An_empty_list_says_that_nothing_was_added()
    {
        var sample = JsonNode.Parse(File.ReadAllText("balance-calibrate-worked.json"))!;
        var without = Run(sample.ToJsonString()).Value.Body["calibration"]!.ToJsonString();
        foreach (var spin in sample["spins"]!.AsArray().Where(s => s!["added"] is null))
        {
            spin!["added"] = new JsonArray();
        }

        sample.ToJsonString().ShouldContain("\"added\":[]");
        Run(sample.ToJsonString()).Value.Body["calibration"]!.ToJsonString().ShouldBe(without);
    }

    [Fact]
    public void A_number_out_of_range_says_what_would_be_right()
    {
        var sample = JsonNode.Parse(File.ReadAllText("balance-calibrate-worked.json"))!;
        sample["spins"]![0]!["points"]![0]!["amplitude"] = -8;
        var problem = Run(sample.ToJsonString()).Problem.ShouldNotBeNull();
        problem.Where.ShouldBe("spins[0].points[0].amplitude");
        problem.Message.ShouldBe("-8 is outside what can stand here: write a number of 0 or more.");
    }

    [Theory]
    [InlineData("rotation", "anticlockwise")]
    [InlineData("mass", "90 g")]
    [InlineData("angle", "90")]
    [InlineData("plane", "outer")]
    public void Spins_that_do_not_fit_each_other_are_flagged_and_count_in_what_is_told_with_them(string key, string wrong)
    {
        var sample = JsonNode.Parse(File.ReadAllText("balance-calibrate-worked.json"))!;
        var good = Run(sample.ToJsonString()).Value;
        good.No.ShouldBeFalse();
        good.Body["speeds"]!.AsArray().ShouldAllBe(s => Number(s!["misfit"]!["chiSquared"]) < Number(s["misfit"]!["limit"]));
        if (key == "rotation")
        {
            sample[key] = wrong;
        }
        else
        {
            // The fourth spin at 180 r/min: its first mass is entered wrongly.
            sample["spins"]![7]!["added"]![0]![key] = key == "angle" ? 90 : wrong;
        }

        var answer = Run(sample.ToJsonString()).Value;
        answer.No.ShouldBeTrue();
        var warning = answer.Body["warnings"]!.AsArray().First(w => Number(w!["speedRevolutionsPerMinute"]) is > 179 and < 181)!;
        warning["code"]!.GetValue<string>().ShouldBe("spins-do-not-fit");
        warning["action"]!.GetValue<string>().ShouldContain("sense of rotation");
        answer.ForPeople.ShouldContain(l => l.StartsWith("Warning: 180.0", StringComparison.Ordinal) && l.Contains("spins-do-not-fit", StringComparison.Ordinal));

        Error(answer, answer.Body["calibration"]!["rotation"]!.GetValue<string>()).ShouldBeGreaterThan(50 * Error(good, "clockwise"));

        static double Error(Answer calibrated, string rotation)
        {
            var body = new JsonObject
            {
                ["rotation"] = rotation, ["phases"] = "lag",
                ["recording"] = new JsonObject { ["csv"] = File.ReadAllText("balance-capture-spin.csv").Replace("rotation: clockwise", $"rotation: {rotation}", StringComparison.Ordinal) },
                ["calibration"] = calibrated.Body["calibration"]!.DeepClone(),
            };
            return Number(BalanceCaptureOperation.Operation.Run(FileNode.Parse(body.ToJsonString(), "body").Value).Value.Body["planes"]!["inner"]!["massStandardErrorGrams"]);
        }
    }

    [Fact]
    public void Three_spins_check_no_mass_and_a_caution_says_so()
    {
        var sample = JsonNode.Parse(File.ReadAllText("balance-calibrate-worked.json"))!;
        Run(sample.ToJsonString()).Value.Body["speeds"]!.AsArray().ShouldAllBe(s => s!["planesUnchecked"]!.AsArray().Count == 0);
        sample["spins"] = new JsonArray([.. sample["spins"]!.AsArray().Take(3).Select(s => s!.DeepClone())]);
        var answer = Run(sample.ToJsonString()).Value;
        answer.No.ShouldBeFalse();
        answer.Body["speeds"]![0]!["planesUnchecked"]!.AsArray().Select(p => p!.GetValue<string>()).ShouldBe(["inner", "outer"]);
        answer.Body["cautions"]!.AsArray().ShouldContain(c => c!.GetValue<string>().Contains("no second spin checks the known mass in the inner and the outer plane"));
        answer.ForPeople.ShouldContain(l => l.StartsWith("Caution: At 120", StringComparison.Ordinal) && l.Contains("one more spin with another mass or another angle"));
    }

    [Fact]
    public void Recordings_calibrate_as_readings_do()
    {
        var sample = JsonNode.Parse(File.ReadAllText("balance-calibrate-worked.json"))!;
        var plain = File.ReadAllText("balance-capture-spin.csv");
        var spins = sample["spins"]!.AsArray().Skip(4).Take(4).Select(s => s!.DeepClone()).ToList();

        // The sample's spin is that of a wheel with 35 g at 210° and 22 g at 60° more than nothing, less the calibration wheel's own 3 g and 2 g: as an added pair.
        var recorded = new JsonObject
        {
            ["added"] = JsonNode.Parse("""[{"plane": "inner", "mass": "35 g", "angle": 210}, {"plane": "outer", "mass": "22 g", "angle": 60}, {"plane": "inner", "mass": "3 g", "angle": 320}, {"plane": "outer", "mass": "2 g", "angle": 190}]"""),
            ["recording"] = new JsonObject { ["csv"] = plain },
        };
        sample["spins"] = new JsonArray([.. spins, recorded]);
        var answer = Run(sample.ToJsonString()).Value;
        var residuals = answer.Body["speeds"]![0]!["residuals"]!.AsArray();
        residuals.Count.ShouldBe(5);
        residuals.Max(r => Number(r!["innerGrams"])).ShouldBeLessThan(0.5);
        answer.Body["speeds"]![0]!["spareSpins"]!.GetValue<int>().ShouldBe(2);
    }

    [Theory]
    [InlineData("spins", "[]", "spins", "too-few-spins")]
    [InlineData("planes", "null", "planes", "missing")]
    [InlineData("rotation", "null", "rotation", "missing")]
    [InlineData("spins", """[{"speed": "180 r/min", "points": [{"amplitude": 1, "phase": 2}]}]""", "spins[0].points", "points-differ")]
    [InlineData("spins", """[{"points": [{"amplitude": 1, "phase": 2}, {"amplitude": 1, "phase": 2}]}]""", "spins[0].speed", "missing")]
    [InlineData("spins", """[{"speed": "180 r/min", "points": [{"amplitude": 1, "phase": 2}, {"amplitude": 1, "phase": 2}]}]""", "spins", "too-few-spins")]
    [InlineData("spins", """[{"speed": "180 r/min"}]""", "spins[0].recording", "missing")]
    [InlineData("planes", """{"inner": {"radius": 200, "axial": 0}, "outer": {"radius": 200, "axial": 0}}""", "planes.outer", "planes-not-apart")]
    public void Each_problem_names_its_place(string key, string value, string where, string code)
    {
        var body = JsonNode.Parse(File.ReadAllText("balance-calibrate-worked.json"))!;
        body[key] = JsonNode.Parse(value);
        var problem = Run(body.ToJsonString()).Problem.ShouldNotBeNull();
        problem.Where.ShouldBe(where, problem.Message);
        problem.Code.ShouldBe(code, problem.Message);
    }

    [Fact]
    public void Supports_calibrate_by_their_places_alone()
    {
        var body = new JsonObject
        {
            ["recording"] = new JsonObject { ["csv"] = File.ReadAllText("balance-capture-spin.csv") },
            ["calibration"] = JsonNode.Parse("""
                {"rotation": "clockwise", "phases": "lag",
                 "planes": {"inner": {"radius": "200 mm", "axial": "0 mm"}, "outer": {"radius": "200 mm", "axial": "180 mm"}},
                 "supports": {"first": {"axial": "-80 mm", "forcePerUnit": "20 N"}, "second": {"axial": "-260 mm", "forcePerUnit": "20 N"}, "placeAtMark": 25}}
                """),
        };
        var planes = BalanceCaptureOperation.Operation.Run(FileNode.Parse(body.ToJsonString(), "body").Value).Value.Body["planes"]!;

        // The invented machine is a little soft, which the places alone do not know: under 1 % and 2°.
        Number(planes["inner"]!["massGrams"]).ShouldBe(35, 0.6);
        Number(planes["inner"]!["angleDegrees"]).ShouldBe(30, 2.5);
        Number(planes["outer"]!["massGrams"]).ShouldBe(22, 0.4);
        Number(planes["outer"]!["angleDegrees"]).ShouldBe(240, 2.5);
    }
}
