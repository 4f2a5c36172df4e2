using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Operations;

/// <summary>What a display rounds and hides in <c>balance solve</c>; the figures of the sample are reckoned by hand in docs/guide/instruments.md.</summary>
public class BalanceDisplayTests
{
    private static JsonNode Sample() => JsonNode.Parse(File.ReadAllText("balance-hidden-small-value.json"))!;

    private static Answer Solve(JsonNode body) => BalanceSolveOperation.Operation.Run(FileNode.Parse(body.ToJsonString(), "body").Value).Value;

    private static double Number(JsonNode? node) => node!.GetValue<double>();

    private static List<string> Cautions(Answer answer) => [.. answer.Body["cautions"]!.AsArray().Select(c => c!.GetValue<string>())];

    [Fact]
    public void A_hidden_small_value_is_not_zero_in_the_reckoning()
    {
        var answer = Solve(Sample());
        var body = answer.Body;

        // The residual stays that of the shown values: 25 g of 26 g, and nothing outside.
        Number(body["residual"]!["inner"]!["massGrams"]).ShouldBe(1, 1e-9);
        Number(body["residual"]!["outer"]!["massGrams"]).ShouldBe(0, 1e-9);
        body["withinTolerance"]!.GetValue<bool>().ShouldBeTrue();

        var open = body["displayUncertainty"]!;
        Number(open["perPlaneGrams"]!["inner"]).ShouldBe(0.5, 1e-9);
        Number(open["perPlaneGrams"]!["outer"]).ShouldBe(4, 1e-9);
        Number(open["worstPerPlaneGrams"]!["inner"]).ShouldBe(1.5, 1e-9);
        Number(open["worstPerPlaneGrams"]!["outer"]).ShouldBe(4, 1e-9);

        // Radii 203.2 mm and 160 mm, planes 100 mm apart.
        Number(open["worstStaticGramMillimetres"]).ShouldBe((1.5 * 203.2) + (4 * 160), 1e-6);
        Number(open["worstCoupleGramSquareMillimetres"]).ShouldBe(((1.5 * 203.2) + (4 * 160)) * 50, 1e-4);
        open["withinToleranceAtWorst"]!.GetValue<bool>().ShouldBeFalse();
        open["toleranceFinerThanDisplay"]!.GetValue<bool>().ShouldBeTrue();
        Number(open["readings"]!["outer"]!["mostGrams"]).ShouldBe(4, 1e-9);
        open["readings"]!["outer"]!["anyAngle"]!.GetValue<bool>().ShouldBeTrue();
        Cautions(answer).ShouldContain(c => c.StartsWith("The tolerance is finer than this display can show", StringComparison.Ordinal) && c.Contains("813 of 610 g·mm", StringComparison.Ordinal));
        Cautions(answer).ShouldContain(c => c.StartsWith("The outer plane shows nothing", StringComparison.Ordinal) && c.Contains("4.0 g", StringComparison.Ordinal));
        answer.ForPeople.ShouldContain(l => l.StartsWith("At the worst that the display leaves open: 1.5 g inner and 4.0 g outer", StringComparison.Ordinal) && l.Contains("NOT within tolerance", StringComparison.Ordinal));
    }

    [Fact]
    public void A_tolerance_that_the_display_can_show_gives_no_such_caution()
    {
        var body = Sample();
        body["tolerance"] = new JsonObject { ["perPlane"] = "5 g" };
        var answer = Solve(body);
        answer.Body["displayUncertainty"]!["withinToleranceAtWorst"]!.GetValue<bool>().ShouldBeTrue();
        answer.Body["displayUncertainty"]!["toleranceFinerThanDisplay"]!.GetValue<bool>().ShouldBeFalse();
        Cautions(answer).ShouldNotContain(c => c.Contains("finer than this display", StringComparison.Ordinal));
    }

    [Fact]
    public void What_is_within_tolerance_by_the_display_only_says_so()
    {
        // 28 g shown, 25 g fitted: 3 g left of 3.3 g, and half a step of 1 g may be there besides.
        var body = Sample();
        body["readings"]!["inner"]!["mass"] = "28 g";
        body["stock"]!["clip"] = new JsonArray("25 g");
        body["balancer"]!["displayHidesBelow"] = "1 g";
        body["tolerance"] = new JsonObject { ["perPlane"] = "3.3 g" };
        var answer = Solve(body);
        answer.Body["withinTolerance"]!.GetValue<bool>().ShouldBeTrue();
        answer.Body["displayUncertainty"]!["withinToleranceAtWorst"]!.GetValue<bool>().ShouldBeFalse();
        Cautions(answer).ShouldContain(c => c.StartsWith("Within tolerance by what is shown only", StringComparison.Ordinal));
    }

    [Fact]
    public void A_rounded_angle_moves_a_large_reading_further_than_a_rounded_mass()
    {
        var body = Sample();
        body["balancer"]!["displayAngleStep"] = 6;
        var open = Solve(body).Body["displayUncertainty"]!;

        // From 26 g at 90° to 26.5 g at 93°, by the cosine rule; the reckoned bound closes the arc in and may be up to 0.04 g more.
        var far = Math.Sqrt((26 * 26) + (26.5 * 26.5) - (2 * 26 * 26.5 * Math.Cos(3 * Math.PI / 180)));
        Number(open["perPlaneGrams"]!["inner"]).ShouldBe(far, 0.04);
        Number(open["perPlaneGrams"]!["inner"]).ShouldBeGreaterThanOrEqualTo(far - 1e-9);
    }

    [Fact]
    public void A_reading_below_what_the_display_hides_is_questioned()
    {
        var body = Sample();
        body["readings"]!["outer"] = new JsonObject { ["mass"] = "3 g", ["angle"] = 10 };
        Cautions(Solve(body)).ShouldContain(c => c.Contains("read the display again, or put the profile right", StringComparison.Ordinal));
    }

    [Fact]
    public void Settings_without_a_profile_say_what_was_assumed_and_with_one_do_not()
    {
        var body = Sample();
        Cautions(Solve(body)).ShouldNotContain(c => c.Contains("No profile", StringComparison.Ordinal));
        ((JsonObject)body).Remove("balancer");
        body["planes"]!["outer"]!["kind"] = "clip";
        body["stock"]!["adhesive"] = new JsonArray();
        var answer = Solve(body);
        Cautions(answer).ShouldContain(c => c.StartsWith("No profile of this balancer was given", StringComparison.Ordinal) && c.Contains("millimetres", StringComparison.Ordinal));
        answer.Body["displayUncertainty"].ShouldBeNull();
        Number(answer.Body["planes"]!["inner"]!["axialMillimetres"]).ShouldBe(4, 1e-9);

        // Planes that were measured themselves owe the settings nothing.
        foreach (var (side, axial) in new[] { ("inner", "0 mm"), ("outer", "150 mm") })
        {
            body["planes"]![side]!["radius"] = "200 mm";
            body["planes"]![side]!["axial"] = axial;
        }

        Cautions(Solve(body)).ShouldNotContain(c => c.Contains("No profile", StringComparison.Ordinal));
    }

    [Fact]
    public void The_guide_shows_the_sample_as_it_is() =>
        File.ReadAllText("instruments.md").ReplaceLineEndings("\n").ShouldContain(File.ReadAllText("balance-hidden-small-value.json").ReplaceLineEndings("\n").Trim());
}
