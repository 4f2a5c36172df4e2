using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Operations;

public class BalanceTrialOperationTests
{
    private static Reading<Answer> Run(string body) => BalanceTrialOperation.Operation.Run(FileNode.Parse(body, "body").Value);

    private static double Number(JsonNode? node) => node!.GetValue<double>();

    [Fact]
    public void The_worked_sample_has_its_exact_answer()
    {
        var answer = Run(File.ReadAllText("balance-trial-worked.json")).Value;
        answer.No.ShouldBeFalse();
        Mass(answer.Body["corrections"]![0]!, 1, 4, 270);
        Mass(answer.Body["corrections"]![1]!, 2, 32, 90);
        Mass(answer.Body["addToLastRun"]![0]!, 1, 14, 270);
        Mass(answer.Body["addToLastRun"]![1]!, 2, 22, 90);
        Number(answer.Body["influence"]![0]![0]!["magnitude"]).ShouldBe(0.1, 1e-12);
        Number(answer.Body["influence"]![0]![1]!["magnitude"]).ShouldBe(0.05, 1e-12);
        Number(answer.Body["influence"]![1]![0]!["magnitude"]).ShouldBe(0.05, 1e-12);
        Number(answer.Body["influence"]![1]![0]!["phaseDegrees"]).ShouldBe(180, 1e-9);
        Number(answer.Body["influence"]![1]![1]!["magnitude"]).ShouldBe(0.1, 1e-12);
        Number(answer.Body["conditionNumber"]).ShouldBe(1, 1e-9);
        Number(answer.Body["misfit"]!["rms"]).ShouldBe(0, 1e-12);
        Number(answer.Body["residualVibration"]![0]!["amplitude"]).ShouldBe(0, 1e-12);
        answer.Body["warnings"]!.AsArray().ShouldBeEmpty();

        static void Mass(JsonNode mass, int plane, double grams, double degrees)
        {
            mass["plane"]!.GetValue<int>().ShouldBe(plane);
            Number(mass["massGrams"]).ShouldBe(grams, 1e-9);
            Number(mass["angleDegrees"]).ShouldBe(degrees, 1e-9);
        }
    }

    [Fact]
    public void Runs_without_phase_that_do_not_meet_say_which_to_repeat_and_how_sure_the_answer_is()
    {
        // Made from v0 = 4, 0.5 a gram at 200 degrees, with 10 g at 0, 72, 144, 216 and 288 degrees; the fourth run is 3 too high.
        var runs = string.Join(", ", new[] { (0, 1.8472), (72, 6.5112), (144, 8.9135), (216, 7.9604 + 3), (288, 4.0464) }.Select(r =>
            FormattableString.Invariant($$"""{"trial": {"plane": 1, "mass": "10 g", "angle": {{r.Item1}}}, "vibration": [{"amplitude": {{r.Item2}}}]}""")));
        var answer = Run($$"""{"points": 1, "runs": [{"vibration": [{"amplitude": 4}]}, {{runs}}]}""").Value;
        var circles = answer.Body["circles"]!;
        circles["meet"]!.GetValue<bool>().ShouldBeFalse();
        circles["likelyFault"]!.GetValue<string>().ShouldBe("one-run");
        circles["repeatRun"]!.GetValue<int>().ShouldBe(5);
        Number(circles["standardErrorGrams"]).ShouldBeGreaterThan(0);
        circles["runs"]!.AsArray().Count.ShouldBe(5);
        answer.ForPeople.ShouldContain(l => l.Contains("repeat that run", StringComparison.Ordinal));
    }

    [Fact]
    public void Three_trial_masses_ten_degrees_apart_are_a_warning_and_a_no_though_the_circles_meet()
    {
        // Made from v0 = 4, 0.1 a gram at 60 degrees, with 10 g at 0, 5 and 10 degrees, and read to a hundredth.
        var answer = Run(Trial("0", "5", "10", "4.58", "4.52", "4.46")).Value;
        answer.No.ShouldBeTrue();
        answer.Body["circles"]!["meet"]!.GetValue<bool>().ShouldBeTrue();
        Number(answer.Body["circles"]!["spanDegrees"]).ShouldBe(10, 1e-9);
        answer.Body["warnings"]!.AsArray().ShouldHaveSingleItem()!["code"]!.GetValue<string>().ShouldBe("trial-places-crowded");
        answer.ForPeople.ShouldContain(l => l.Contains("span only 10° of the circle", StringComparison.Ordinal));
    }

    [Fact]
    public void The_digits_typed_or_the_step_told_are_a_floor_of_the_error()
    {
        // Made from v0 = 4, 0.1 a gram at 60 degrees, with 10 g at 0, 120 and 240 degrees: 4.5826, 3, 4.5826.
        var fine = Interval(Trial("0", "120", "240", "4.5826", "3.0000", "4.5826"));
        var coarse = Interval(Trial("0", "120", "240", "4.6", "3.0", "4.6"));
        var told = Interval(Trial("0", "120", "240", "4.5826", "3.0000", "4.5826").Replace("\"runs\"", "\"displayStep\": 0.5, \"runs\"", StringComparison.Ordinal));
        Number(fine["massGrams"]).ShouldBeLessThan(0.05);
        Number(coarse["massGrams"]).ShouldBeGreaterThan(1);
        told["basis"]!.GetValue<string>().ShouldBe("reading");
        Number(told["massGrams"]).ShouldBeGreaterThan(Number(fine["massGrams"]) * 100);
        fine["leftOver"]!.GetValue<int>().ShouldBe(1);
        Number(fine["percent"]).ShouldBe(90, 1e-9);

        static JsonNode Interval(string body) => Run(body).Value.Body["circles"]!["interval"]!;
    }

    /// <summary>Four runs with 10 g as typed, the initial one at 4 with as many digits as the first of the others.</summary>
    private static string Trial(string a, string b, string c, string first, string second, string third)
    {
        var initial = $"4.{new string('0', first.Length - 2)}";
        var runs = string.Join(", ", new[] { (a, first), (b, second), (c, third) }.Select(r =>
            $$"""{"trial": {"plane": 1, "mass": "10 g", "angle": {{r.Item1}}}, "vibration": [{"amplitude": {{r.Item2}}}]}"""));
        return $$"""{"runs": [{"vibration": [{"amplitude": {{initial}}}]}, {{runs}}]}""";
    }

    [Fact]
    public void Nearly_dependent_planes_are_solved_flagged_and_no()
    {
        var answer = Run("""
            {"points": 2, "runs": [
              {"vibration": [{"amplitude": 3, "phase": 0}, {"amplitude": 4, "phase": 90}]},
              {"trial": {"plane": 1, "mass": "10 g", "angle": 0}, "vibration": [{"amplitude": 4, "phase": 0}, {"amplitude": 5, "phase": 90}]},
              {"trial": {"plane": 2, "mass": "10 g", "angle": 0}, "vibration": [{"amplitude": 4, "phase": 0}, {"amplitude": 5.1, "phase": 90}]}]}
            """).Value;
        answer.No.ShouldBeTrue();
        var warning = answer.Body["warnings"]!.AsArray().ShouldHaveSingleItem()!;
        warning["code"]!.GetValue<string>().ShouldBe("planes-nearly-dependent");
        Number(warning["conditionNumber"]).ShouldBeGreaterThan(15);
        answer.Body["corrections"]!.AsArray().Count.ShouldBe(2);
        answer.ForPeople.ShouldContain(l => l.StartsWith("Warning:", StringComparison.Ordinal));
    }

    [Fact]
    public void A_trial_without_effect_is_flagged_and_its_condition_number_is_null()
    {
        var answer = Run("""
            {"runs": [
              {"vibration": [{"amplitude": 3, "phase": 0}]},
              {"trial": {"plane": 1, "mass": "10 g", "angle": 0}, "vibration": [{"amplitude": 3, "phase": 0}]}]}
            """).Value;
        answer.No.ShouldBeTrue();
        answer.Body["warnings"]![0]!["code"]!.GetValue<string>().ShouldBe("trial-without-effect");
        answer.Body["warnings"]![0]!["conditionNumber"].ShouldBeNull();
    }

    [Theory]
    [InlineData(8, 8, 8)]
    [InlineData(8.01, 8, 7.99)]
    [InlineData(8.1, 8, 7.9)]
    [InlineData(8.2, 7.9, 7.9)]
    public void Without_phase_a_trial_without_effect_is_no_correction(double first, double second, double third)
    {
        var runs = new JsonArray((JsonNode)new JsonObject { ["vibration"] = new JsonArray((JsonNode)new JsonObject { ["amplitude"] = 8 }) });
        foreach (var (amplitude, angle) in new[] { (first, 0), (second, 120), (third, 240) })
        {
            runs.Add((JsonNode)new JsonObject
            {
                ["trial"] = new JsonObject { ["plane"] = 1, ["mass"] = "20 g", ["angle"] = angle },
                ["vibration"] = new JsonArray((JsonNode)new JsonObject { ["amplitude"] = amplitude }),
            });
        }

        var answer = BalanceTrialOperation.Operation.Run(FileNode.From(new JsonObject { ["runs"] = runs })).Value;
        answer.No.ShouldBeTrue();
        answer.Body["warnings"]!.AsArray().ShouldContain(w => w!["code"]!.GetValue<string>() == "trial-without-effect");
        answer.Body["cautions"]!.AsArray().ShouldNotContain(c => c!.GetValue<string>().Contains("Fit it, run again"));
        answer.Body["corrections"]![0]!["massGrams"]!.GetValue<double>().ShouldBe(0);
        answer.ForPeople.ShouldContain(l => l.Contains("Fit nothing from these runs"));
    }

    [Fact]
    public void Four_runs_without_phase()
    {
        var answer = Run(FourRuns(0, 120, 240)).Value;
        answer.No.ShouldBeFalse();
        Number(answer.Body["corrections"]![0]!["massGrams"]).ShouldBe(6.6788, 0.00005);
        Number(answer.Body["corrections"]![0]!["angleDegrees"]).ShouldBe(101.387, 0.0005);
        answer.Body["influence"].ShouldBeNull();
        answer.Body["residualVibration"]![0]!["phaseDegrees"].ShouldBeNull();
        Number(answer.Body["misfit"]!["rms"]).ShouldBe(0.00056, 0.000005);
    }

    [Theory]
    [InlineData(0, 120, 120, "runs", "too-few-runs")]
    [InlineData(0, 360, 240, "runs", "too-few-runs")]
    public void Without_phase_three_different_angles_are_asked_for(double a, double b, double c, string where, string code)
    {
        var problem = Run(FourRuns(a, b, c)).Problem.ShouldNotBeNull();
        problem.Where.ShouldBe(where);
        problem.Code.ShouldBe(code);
    }

    [Fact]
    public void Without_phase_and_kept_on_three_masses_that_come_back_to_none_tell_too_little()
    {
        var kept = FourRuns(0, 120, 240).Replace("\"runs\"", "\"trialKeptOn\": true, \"runs\"", StringComparison.Ordinal);
        Run(kept).Problem!.Where.ShouldBe("trialKeptOn");
    }

    [Theory]
    [InlineData("""{"runs": []}""", "runs", "too-few-runs")]
    [InlineData("""{}""", "runs", "missing")]
    [InlineData("""{"runs": [{"vibration": [{"amplitude": 1, "phase": 0}]}]}""", "runs", "too-few-runs")]
    [InlineData("""{"runs": [{"trial": {"plane": 1, "mass": "5 g", "angle": 0}, "vibration": [{"amplitude": 1, "phase": 0}]}]}""", "runs[0].trial", "trial-in-initial-run")]
    [InlineData("""{"points": 2, "runs": [{"vibration": [{"amplitude": 1, "phase": 0}]}, {"trial": {"plane": 1, "mass": "5 g", "angle": 0}, "vibration": [{"amplitude": 1, "phase": 0}]}]}""", "runs[0].vibration", "points-differ")]
    [InlineData("""{"runs": [{"vibration": [{"amplitude": 1, "phase": 0}]}, {"vibration": [{"amplitude": 1, "phase": 0}]}]}""", "runs[1].trial", "missing")]
    [InlineData("""{"runs": [{"vibration": [{"amplitude": 1, "phase": 0}]}, {"trial": {"plane": 2, "mass": "5 g", "angle": 0}, "vibration": [{"amplitude": 1, "phase": 0}]}]}""", "runs", "plane-without-trial")]
    [InlineData("""{"runs": [{"vibration": [{"amplitude": 1, "phase": 0}]}, {"trial": {"plane": 0, "mass": "5 g", "angle": 0}, "vibration": [{"amplitude": 1, "phase": 0}]}]}""", "runs[1].trial.plane", "not-a-whole-number")]
    [InlineData("""{"runs": [{"vibration": [{"amplitude": 1, "phase": 0}]}, {"trial": {"plane": 1, "mass": "0 g", "angle": 0}, "vibration": [{"amplitude": 1, "phase": 0}]}]}""", "runs[1].trial.mass", "out-of-range")]
    [InlineData("""{"runs": [{"vibration": [{"amplitude": 1, "phase": 0}]}, {"trial": {"plane": 1, "mass": "5 g", "angle": 0}, "vibration": [{"amplitude": 1}]}]}""", "runs[1].vibration[0].phase", "missing")]
    [InlineData("""{"runs": [{"vibration": [{"amplitude": -1, "phase": 0}]}, {"trial": {"plane": 1, "mass": "5 g", "angle": 0}, "vibration": [{"amplitude": 1, "phase": 0}]}]}""", "runs[0].vibration[0].amplitude", "out-of-range")]
    [InlineData("""{"runs": [{"vibration": [{"amplitude": 1, "fase": 0}]}, {"trial": {"plane": 1, "mass": "5 g", "angle": 0}, "vibration": [{"amplitude": 1, "phase": 0}]}]}""", "runs[0].vibration[0].fase", "key-unknown")]
    [InlineData("""{"runs": [{"vibration": [{"amplitude": 1, "phase": 0}]}, {"trial": {"plane": 1, "mass": "5 g", "angle": 0}, "vibration": [{"amplitude": 2, "phase": 0}]}, {"trial": {"plane": 2, "mass": "5 g", "angle": 0}, "vibration": [{"amplitude": 3, "phase": 0}]}]}""", "runs[0].vibration", "too-few-points")]
    public void Each_problem_names_its_place(string body, string where, string code)
    {
        var problem = Run(body).Problem.ShouldNotBeNull();
        problem.Where.ShouldBe(where);
        problem.Code.ShouldBe(code);
    }

    private static string FourRuns(double a, double b, double c) => FormattableString.Invariant($$"""
        {"points": 1, "runs": [
          {"vibration": [{"amplitude": 0.088}]},
          {"trial": {"plane": 1, "mass": "7 g", "angle": {{a}}}, "vibration": [{"amplitude": 0.14}]},
          {"trial": {"plane": 1, "mass": "7 g", "angle": {{b}}}, "vibration": [{"amplitude": 0.03}]},
          {"trial": {"plane": 1, "mass": "7 g", "angle": {{c}}}, "vibration": [{"amplitude": 0.168}]}]}
        """);

    [Fact]
    public void A_first_trial_mass_is_told_before_the_runs_and_beside_them()
    {
        // The printed formula: 56 333 W/N² oz·in, with W in lb. One lb at 1000 r/min: 0.056333 oz·in = 0.056333 · 28.3495 · 25.4 = 40.56 g·mm. Its g is rounded: 0.05 %.
        var pound = Run("""{"rotor": {"mass": "0.45359237 kg", "speed": "1000 r/min", "radius": "10 mm"}}""").Value;
        pound.No.ShouldBeFalse();
        Number(pound.Body["suggestedTrial"]!["gramMillimetres"]).ShouldBe(56_333 / 1e6 * 28.349523125 * 25.4, 0.02);
        Number(pound.Body["suggestedTrial"]!["massGrams"]).ShouldBe(4.056, 0.002);
        pound.Body["suggestedTrial"]!["status"]!.GetValue<string>().ShouldBe("second-hand");
        string.Join('\n', pound.ForPeople).ShouldContain("Fix every mass");

        var beside = JsonNode.Parse(File.ReadAllText("balance-trial-worked.json"))!;
        Run(beside.ToJsonString()).Value.Body["suggestedTrial"].ShouldBeNull();
        beside["rotor"] = JsonNode.Parse("""{"mass": "20 kg", "speed": "850 r/min", "radius": "200 mm"}""");
        var both = Run(beside.ToJsonString()).Value;
        Number(both.Body["suggestedTrial"]!["massGrams"]).ShouldBe(12.38, 0.005);
        both.Body["corrections"]!.AsArray().Count.ShouldBe(2);
        TrialDrawing.Of(FileNode.Parse("""{"rotor": {"mass": "20 kg", "speed": "850 r/min", "radius": "200 mm"}}""", "body").Value).ShouldBeEmpty();

        Run("""{"rotor": {"mass": "20 kg", "radius": "200 mm"}}""").Problem!.Where.ShouldBe("rotor.speed");
    }

    [Fact]
    public void One_wrong_run_of_six_is_named_though_all_miss_by_less_than_is_allowed()
    {
        // Five runs of one rotor to a hundredth, and the second, at 60°, shown 40 % too high.
        string Runs(double second) => FormattableString.Invariant($$$"""
            {"points": 1, "runs": [{"vibration": [{"amplitude": 5.019}]},
             {"trial": {"plane": 1, "mass": "10 g", "angle": 0}, "vibration": [{"amplitude": 5.76}]},
             {"trial": {"plane": 1, "mass": "10 g", "angle": 60}, "vibration": [{"amplitude": {{{second}}}}]},
             {"trial": {"plane": 1, "mass": "10 g", "angle": 120}, "vibration": [{"amplitude": 3.15}]},
             {"trial": {"plane": 1, "mass": "10 g", "angle": 180}, "vibration": [{"amplitude": 4.93}]},
             {"trial": {"plane": 1, "mass": "10 g", "angle": 240}, "vibration": [{"amplitude": 6.604}]},
             {"trial": {"plane": 1, "mass": "10 g", "angle": 300}, "vibration": [{"amplitude": 6.941}]}]}
            """);
        var answer = Run(Runs(5.289)).Value;
        answer.No.ShouldBeTrue();
        Number(answer.Body["misfit"]!["relativePercent"]).ShouldBeLessThan(10);
        var warning = answer.Body["warnings"]!.AsArray().Single()!;
        warning["code"]!.GetValue<string>().ShouldBe("run-does-not-fit");
        warning["message"]!.GetValue<string>().ShouldStartWith("Run 3 does not fit the others");
        answer.Body["cautions"]!.AsArray().Select(c => c!.GetValue<string>()).ShouldContain(c => c.EndsWith("Repeat run 3 before anything is fitted.", StringComparison.Ordinal));
        var run = answer.Body["circles"]!["runThatDoesNotFit"]!;
        run["run"]!.GetValue<int>().ShouldBe(3);
        answer.Body["circles"]!["repeatRun"]!.GetValue<int>().ShouldBe(3);
        Number(run["measured"]).ShouldBe(5.289);

        // By a fit of the other five apart from the engine's: 25.353 g at 103.254°, and the chance six times that of t = 37.37 with three degrees of freedom.
        Number(run["correctionWithout"]!["massGrams"]).ShouldBe(25.3531, 1e-3);
        Number(run["correctionWithout"]!["angleDegrees"]).ShouldBe(103.254, 1e-3);
        Number(run["chance"]).ShouldBe(2.529e-4, 1e-7);

        var whole = Run(Runs(Number(run["byOthers"]))).Value;
        whole.No.ShouldBeFalse();
        whole.Body["circles"]!["runThatDoesNotFit"].ShouldBeNull();
    }
}
