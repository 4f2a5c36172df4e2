using System.Text.Json.Nodes;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Reference;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Operations;

public class BalanceSolveOperationTests
{
    private const string Plain = """
        {
          "planes": {"inner": {"kind": "clip", "radius": "200 mm", "axial": "0 mm"}, "outer": {"kind": "adhesive", "radius": "160 mm", "axial": "150 mm"}},
          "readings": {"inner": {"mass": "33 g", "angle": 115}, "outer": {"mass": "21 g", "angle": 290}},
          "stock": {"clip": ["5 g", "10 g", "15 g", "20 g", "25 g", "30 g", "35 g"], "adhesive": ["5 g"]}
        }
        """;

    private static Reading<Answer> Run(JsonNode body) => BalanceSolveOperation.Operation.Run(FileNode.Parse(body.ToJsonString(), "body").Value);

    private static JsonNode Change(string path, JsonNode? value)
    {
        var root = JsonNode.Parse(Plain)!;
        var at = root;
        var keys = path.Split('.');
        foreach (var key in keys[..^1])
        {
            at = at[key] ??= new JsonObject();
        }

        if (value is null)
        {
            ((JsonObject)at).Remove(keys[^1]);
        }
        else
        {
            at[keys[^1]] = value;
        }

        return root;
    }

    private static double Number(JsonNode? node) => node!.GetValue<double>();

    [Fact]
    public void The_worked_sample_has_its_exact_answer()
    {
        var answer = Run(JsonNode.Parse(File.ReadAllText("balance-solve-worked.json"))!).Value;
        answer.No.ShouldBeFalse();
        var body = answer.Body;
        var weights = body["weights"]!.AsArray();
        weights.Count.ShouldBe(2);
        Weight(weights[0]!, "inner", "clip", 35, 90);
        Weight(weights[1]!, "outer", "adhesive", 40, 270);
        Number(body["residual"]!["inner"]!["massGrams"]).ShouldBe(1, 1e-9);
        Number(body["residual"]!["inner"]!["angleDegrees"]).ShouldBe(90, 1e-9);
        Number(body["residual"]!["outer"]!["massGrams"]).ShouldBe(0, 1e-9);
        Number(body["residual"]!["staticGramMillimetres"]).ShouldBe(200, 1e-6);
        Number(body["residual"]!["coupleGramSquareMillimetres"]).ShouldBe(13_500, 1e-4);
        Number(body["needed"]!["inner"]!["massGrams"]).ShouldBe(34, 1e-9);
        Number(body["needed"]!["outer"]!["massGrams"]).ShouldBe(40, 1e-9);
        body["withinTolerance"]!.GetValue<bool>().ShouldBeTrue();
        body["provenOptimal"]!.GetValue<bool>().ShouldBeTrue();
        Number(body["totalMassGrams"]).ShouldBe(75);
        body["pieces"]!.GetValue<int>().ShouldBe(2);
        Number(body["score"]).ShouldBe(0.2, 1e-9);
        body["findings"]!.AsArray().ShouldBeEmpty();

        static void Weight(JsonNode weight, string plane, string kind, double grams, double degrees)
        {
            weight["plane"]!.GetValue<string>().ShouldBe(plane);
            weight["kind"]!.GetValue<string>().ShouldBe(kind);
            Number(weight["massGrams"]).ShouldBe(grams);
            Number(weight["angleDegrees"]).ShouldBe(degrees, 1e-9);
            weight["pieces"]!.GetValue<int>().ShouldBe(1);
        }
    }

    [Fact]
    public void The_sample_behind_spokes_splits_and_says_what_that_costs()
    {
        var answer = Run(JsonNode.Parse(File.ReadAllText("balance-solve-behind-spokes.json"))!).Value;
        answer.No.ShouldBeFalse();
        var body = answer.Body;
        body["weights"]!.AsArray().Select(w => (w!["plane"]!.GetValue<string>(), Number(w["massGrams"]), Number(w["angleDegrees"]))).ShouldBe([("inner", 25, 250), ("outer", 25, 72), ("outer", 15, 144)]);
        body["provenOptimal"]!.GetValue<bool>().ShouldBeTrue();

        // 25 g and 15 g, 72° apart.
        var one = Math.Sqrt(625 + 225 + (750 * Math.Cos(72 * Math.PI / 180)));
        Number(body["splitPrice"]!["extraGrams"]).ShouldBe(40 - one, 1e-9);
        Number(body["splitPrice"]!["ratio"]).ShouldBe(40 / one, 1e-9);
        body["splitPrice"]!["inner"].ShouldBeNull();
        Number(body["splitPrice"]!["outer"]!["ratio"]).ShouldBe(40 / one, 1e-9);
        body["why"]!.GetValue<string>().ShouldContain("the split costs 7.1 g, 1.22 times one weight there");
        Run(JsonNode.Parse(File.ReadAllText("balance-solve-worked.json"))!).Value.Body["splitPrice"].ShouldBeNull();
    }

    [Fact]
    public void The_guide_shows_the_worked_sample_as_it_is()
    {
        var guide = File.ReadAllText("balance-files.md").ReplaceLineEndings("\n");
        guide.ShouldContain(File.ReadAllText("balance-solve-worked.json").ReplaceLineEndings("\n").Trim());
        guide.ShouldContain(File.ReadAllText("balance-trial-worked.json").ReplaceLineEndings("\n").Trim());
    }

    [Fact]
    public void A_technician_reads_what_to_fit_where_and_why()
    {
        var lines = Run(JsonNode.Parse(Plain)!).Value.ForPeople;
        lines.ShouldContain(l => l.StartsWith("Inner plane, clip: 33.0 g at 115° is needed", StringComparison.Ordinal));
        lines.ShouldContain(l => l.Contains("fit 35.0 g at 115°", StringComparison.Ordinal) && l.Contains("valve stands at 8:10", StringComparison.Ordinal));
        lines.ShouldContain(l => l.Contains("leaves 2.0 g at 115°", StringComparison.Ordinal));
        lines.ShouldContain(l => l.StartsWith("Why this set:", StringComparison.Ordinal) && l.Contains("2 pieces", StringComparison.Ordinal));
        lines.ShouldContain(l => l.StartsWith("Caution:", StringComparison.Ordinal) && l.Contains("guard down", StringComparison.Ordinal) && l.Contains("stones", StringComparison.Ordinal));
        lines.ShouldContain(l => l.Contains("maker's figures come first", StringComparison.Ordinal));
    }

    [Fact]
    public void No_tolerance_is_five_grams_a_plane_from_common_practice()
    {
        var tolerance = Run(JsonNode.Parse(Plain)!).Value.Body["tolerance"]!;
        Number(tolerance["perPlane"]!["value"]).ShouldBe(5, 1e-9);
        tolerance["perPlane"]!["unit"]!.GetValue<string>().ShouldBe("g");
        tolerance["perPlane"]!["source"]!.GetValue<string>().ShouldBe("common practice");
        tolerance["perPlane"]!["status"]!.GetValue<string>().ShouldBe("second-hand");
        tolerance["static"].ShouldBeNull();
    }

    [Theory]
    [InlineData("4:30", 225)]
    [InlineData("12:00", 0)]
    [InlineData("12", 0)]
    [InlineData("3:00", 270)]
    [InlineData("9:00", 90)]
    [InlineData("0:30", 345)]
    [InlineData("11:58", 1)]
    public void Valve_on_the_clock(string clock, double degrees)
    {
        var body = Run(Change("readings.inner.angle", new JsonObject { ["valveAt"] = clock })).Value.Body;
        Number(body["needed"]!["inner"]!["angleDegrees"]).ShouldBe(degrees, 1e-9);
        ClockFace.PlaceAtTwelve(clock).Value.Degrees.ShouldBe(degrees, 1e-9);
    }

    [Fact]
    public void The_clock_is_told_back_to_five_minutes()
    {
        for (var minutes = 0; minutes < 720; minutes += 5)
        {
            var text = $"{(minutes / 60 == 0 ? 12 : minutes / 60)}:{minutes % 60:00}";
            ClockFace.ValveAt(ClockFace.PlaceAtTwelve(text).Value).ShouldBe(text);
        }
    }

    [Fact]
    public void Quarter_ounces_and_a_comma_are_read()
    {
        var root = Change("readings.inner.mass", "1,75 oz");
        root["stock"]!["clip"] = new JsonArray("0.25 oz", "1/2 oz", "1 oz", "1 3/4 oz");
        var body = Run(root).Value.Body;
        Number(body["weights"]![0]!["massGrams"]).ShouldBe(1.75 * 28.349523125, 1e-6);
        Number(body["residual"]!["inner"]!["massGrams"]).ShouldBe(0, 1e-6);
    }

    [Fact]
    public void A_tolerance_that_cannot_be_met_is_no_and_leaves_the_least()
    {
        var root = Change("tolerance", new JsonObject { ["perPlane"] = "0.5 g" });
        root["maxPieces"] = 2;
        var answer = Run(root).Value;
        answer.No.ShouldBeTrue();
        answer.Body["withinTolerance"]!.GetValue<bool>().ShouldBeFalse();
        Number(answer.Body["residual"]!["inner"]!["massGrams"]).ShouldBe(2, 1e-9);
        Number(answer.Body["residual"]!["outer"]!["massGrams"]).ShouldBe(1, 1e-9);
        answer.ForPeople.ShouldContain(l => l.StartsWith("NOT within tolerance", StringComparison.Ordinal));
    }

    [Fact]
    public void A_grade_is_split_half_and_half_over_the_planes()
    {
        var root = Change("tolerance", JsonNode.Parse("""{"grade": "G 16", "speed": "120 km/h", "rollingCircumference": "1.95 m"}"""));
        root["wheel"] = JsonNode.Parse("""{"mass": "18 kg"}""");
        var body = Run(root).Value.Body;
        var omega = 120 / 3.6 / 1.95 * Math.Tau;
        foreach (var part in body["parts"]!.AsArray())
        {
            Number(part!["tolerance"]).ShouldBe(16 * 18 / omega / 2 * 1000, 1e-6);
        }

        body["tolerance"]!["perPlane"]!["status"]!.GetValue<string>().ShouldBe("from memory");
        root["tolerance"]!["speed"] = "1025.64 r/min";
        ((JsonObject)root["tolerance"]!).Remove("rollingCircumference");
        Number(Run(root).Value.Body["parts"]![0]!["tolerance"]).ShouldBe(16 * 18 / (1025.64 * Math.Tau / 60) / 2 * 1000, 1e-6);
    }

    [Fact]
    public void Settings_and_profile_make_planes()
    {
        var root = JsonNode.Parse(File.ReadAllText("balance-settings-before-spin.json"))!;
        root["settings"]!["rimDiameter"] = "15 in";
        var before = Run(root).Value;
        before.No.ShouldBeFalse();
        before.Body["weights"].ShouldBeNull();

        root["readings"] = JsonNode.Parse("""{"inner": {"mass": "20 g", "angle": 10}, "outer": {"mass": "15 g", "angle": 30}}""");
        var planes = Run(root).Value.Body["planes"]!;

        // 8.2 cm from a zero at 30 mm; half of 15 in and the places' own offsets; the outer flange 6 in further.
        Number(planes["inner"]!["axialMillimetres"]).ShouldBe(30 + 82 - 4, 1e-9);
        Number(planes["inner"]!["radiusMillimetres"]).ShouldBe(190.5 + 3, 1e-9);
        Number(planes["outer"]!["axialMillimetres"]).ShouldBe(30 + 82 + 152.4 - 45, 1e-9);
        Number(planes["outer"]!["radiusMillimetres"]).ShouldBe(190.5 - 22, 1e-9);
    }

    [Fact]
    public void A_diameter_that_contradicts_stamp_and_marking_is_said_before_the_spin()
    {
        var answer = Run(JsonNode.Parse(File.ReadAllText("balance-settings-before-spin.json"))!).Value;
        answer.No.ShouldBeTrue();
        var findings = answer.Body["findings"]!.AsArray();
        findings.Count.ShouldBe(2);
        findings.ShouldAllBe(f => f!["rule"]!.GetValue<string>() == "balance.rim-diameter");
        findings[0]!["limit"]!["source"]!.GetValue<string>().ShouldBe("the rim's stamp");
        answer.Body["worst"]!.GetValue<string>().ShouldBe("refer");
        answer.ForPeople.ShouldContain(l => l.Contains("before the spin", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("6 in", 0)]
    [InlineData("6.2 in", 0)]
    [InlineData("6.5 in", 1)]
    [InlineData("5.5 in", 1)]
    public void A_width_half_an_inch_off_is_another_rim(string width, int findings)
    {
        var root = JsonNode.Parse(File.ReadAllText("balance-settings-before-spin.json"))!;
        root["settings"]!["rimDiameter"] = "15 in";
        root["settings"]!["rimWidth"] = width;
        Run(root).Value.Body["findings"]!.AsArray().Count.ShouldBe(findings);
    }

    [Theory]
    [InlineData("195/65 R15 91H", "9 in", true)]
    [InlineData("195/65 R15 91H", "7.3 in", true)]
    [InlineData("195/65 R15 91H", "7.2 in", false)]
    [InlineData("195/65 R15 91H", "5.3 in", false)]
    [InlineData("195/65 R15 91H", "5.2 in", true)]
    [InlineData("7.00-15 LT", "9 in", false)]
    public void A_width_outside_the_tables_range_for_the_marking_is_said_before_the_spin(string marking, string width, bool said)
    {
        // The table of rims: 195/65 R15 on 5.5 to 7.0 in; half a step of a rim's width is let go. No row is held for 7.00-15 LT.
        var root = JsonNode.Parse(File.ReadAllText("balance-settings-before-spin.json"))!;
        root["settings"]!["rimDiameter"] = "15 in";
        root["settings"]!["rimWidth"] = width;
        root["wheel"]!["marking"] = marking;
        ((JsonObject)root["wheel"]!).Remove("rim");
        var answer = Run(root).Value;
        answer.No.ShouldBe(said);
        var findings = answer.Body["findings"]!.AsArray();
        findings.Count.ShouldBe(said ? 1 : 0);
        if (said)
        {
            findings[0]!["rule"]!.GetValue<string>().ShouldBe("balance.rim-width");
            findings[0]!["category"]!.GetValue<string>().ShouldBe("refer");
            findings[0]!["limit"]!["text"]!.GetValue<string>().ShouldBe("5.5 to 7.0 in");
            findings[0]!["limit"]!["source"]!.GetValue<string>().ShouldBe(RimRanges.For(MarkingReader.Read(marking).Value.Size)!.Source.Text);
        }
    }

    [Fact]
    public void A_visit_gives_marking_and_stamp_and_each_wheel_its_answer()
    {
        var balance = JsonNode.Parse(File.ReadAllText("balance-settings-before-spin.json"))!;
        balance["wheel"] = JsonNode.Parse("""{"spokes": {"count": 5, "first": 12}}""");
        var visit = JsonNode.Parse("""
            {"rules": "uk", "date": "2026-03-14", "vehicle": {"axles": [{"steered": true}, {}]},
             "fitted": [
               {"position": "1L", "tyre": {"marking": "195/65 R15 91H"}, "wheel": {"rim": "6J x 15"}},
               {"position": "1R", "tyre": {"marking": "195/65 R15 91H"}, "wheel": {"rim": "6J x 15"}}]}
            """)!;
        visit["fitted"]![0]!["balance"] = balance;
        visit["fitted"]![1]!["balance"] = JsonNode.Parse(Plain);
        var answer = Run(visit).Value;
        answer.No.ShouldBeTrue();
        var wheels = answer.Body["wheels"]!.AsArray();
        wheels.Select(w => w!["position"]!.GetValue<string>()).ShouldBe(["1L", "1R"]);
        wheels[0]!["findings"]![0]!["position"]!.GetValue<string>().ShouldBe("1L");
        wheels[1]!["withinTolerance"]!.GetValue<bool>().ShouldBeTrue();

        ((JsonObject)visit["fitted"]![0]!).Remove("balance");
        var one = Run(visit).Value.Body;
        one["withinTolerance"]!.GetValue<bool>().ShouldBeTrue();
        one["weights"]!.AsArray().Count.ShouldBe(2);
    }

    [Theory]
    [InlineData("0", "360", "arc-whole", "From 0 to 360 is the whole circle, which leaves no place for any weight in this plane.")]
    [InlineData("350", "-10", "arc-whole", "From 350 to -10 is the whole circle")]
    [InlineData("90", "90", "arc-empty", "The arc begins and ends at 90; give it a length")]
    public void An_arc_that_leaves_no_place_or_takes_none_says_which(string from, string to, string code, string words)
    {
        var root = JsonNode.Parse(File.ReadAllText("balance-solve-worked.json"))!;
        root["forbidden"] = JsonNode.Parse($$"""[{"plane": "inner", "from": {{from}}, "to": {{to}}}]""");
        var problem = Run(root).Problem.ShouldNotBeNull();
        problem.Where.ShouldBe("forbidden[0].to");
        problem.Code.ShouldBe(code);
        problem.Message.ShouldContain(words);
    }

    [Fact]
    public void Arcs_that_cover_the_circle_between_them_are_wrong_where_the_last_closes_it()
    {
        var root = JsonNode.Parse(File.ReadAllText("balance-solve-worked.json"))!;
        root["forbidden"] = JsonNode.Parse("""[{"plane": "outer", "from": 350, "to": 130}, {"plane": "inner", "from": 100, "to": 20}, {"plane": "outer", "from": 120, "to": 10}]""");
        var problem = Run(root).Problem.ShouldNotBeNull();
        problem.Where.ShouldBe("forbidden[2].to");
        problem.Code.ShouldBe("arcs-whole");
        problem.Message.ShouldContain("from 120 to 10, the arcs of the outer plane cover the whole circle");

        // In two planes, or with a place between them, they do not.
        root["forbidden"]![2]!["plane"] = "inner";
        root["forbidden"]![2]!["to"] = 15;
        root["forbidden"]![1]!["from"] = 20;
        root["forbidden"]![1]!["to"] = 110;
        Run(root).Problem.ShouldBeNull();
    }

    [Fact]
    public void Without_a_limit_on_mass_it_says_which_limit_would_prove_the_choice()
    {
        var root = JsonNode.Parse("""
            {
              "wheel": {"spokes": {"count": 5, "first": 0}},
              "planes": {"inner": {"kind": "clip", "radius": "200 mm", "axial": "0 mm"}, "outer": {"kind": "adhesive", "radius": "200 mm", "axial": "150 mm", "places": "behindSpokes"}},
              "readings": {"inner": {"mass": "0 g", "angle": 0}, "outer": {"mass": "35 g", "angle": 100}},
              "stock": {"clip": [], "adhesive": ["5 g"]},
              "tolerance": {"perPlane": "0.1 g"}
            }
            """)!;
        var body = Run(root).Value.Body;
        body["provenOptimal"]!.GetValue<bool>().ShouldBeFalse();
        body["why"]!.GetValue<string>().ShouldContain("Not proven: strips heavier than 102 g were not looked at.");
        body["why"]!.GetValue<string>().ShouldContain("with maxMass of no more than that every set is looked at");
        root["maxMass"] = "102 g";
        Run(root).Value.Body["provenOptimal"]!.GetValue<bool>().ShouldBeTrue();
        root.AsObject().Remove("maxMass");
        root["tolerance"]!["perPlane"] = "0.6 g";
        Run(root).Value.Body["provenOptimal"]!.GetValue<bool>().ShouldBeTrue();
    }

    [Fact]
    public void Counts_arcs_lengths_and_steps_are_kept()
    {
        var root = Change("stock.clip", JsonNode.Parse("""[{"mass": "35 g", "length": "40 mm", "count": 0}, {"mass": "20 g", "length": "30 mm", "count": 2}]"""));
        root["angleStep"] = 5;
        root["forbidden"] = JsonNode.Parse("""[{"plane": "inner", "from": 110, "to": 120}]""");
        root["tolerance"] = JsonNode.Parse("""{"static": "900 g·mm", "couple": "100000 g·mm²", "perPlane": "6 g"}""");
        var weights = Run(root).Value.Body["weights"]!.AsArray().Where(w => w!["plane"]!.GetValue<string>() == "inner").ToList();
        weights.Count.ShouldBe(2);
        weights.ShouldAllBe(w => Number(w!["massGrams"]) == 20 && Number(w["angleDegrees"]) % 5 == 0);
        var apart = Number(weights[1]!["angleDegrees"]) - Number(weights[0]!["angleDegrees"]);
        (apart * Math.PI / 180 * 200).ShouldBeGreaterThanOrEqualTo(30 - 1e-9);
        weights.ShouldAllBe(w => Math.Abs(Number(w!["angleDegrees"]) - 115) >= 5 + (15 / 200.0 * 180 / Math.PI) - 1e-9);
    }

    [Fact]
    public void A_long_strip_is_said_to_act_as_less()
    {
        var root = Change("stock.adhesive", JsonNode.Parse("""[{"mass": "5 g", "length": "19 mm"}]"""));
        root["readings"]!["outer"]!["mass"] = "65 g";
        var cautions = Run(root).Value.Body["cautions"]!.AsArray().Select(c => c!.GetValue<string>()).ToList();
        cautions.ShouldContain(c => c.Contains("acts as", StringComparison.Ordinal) && c.Contains("247 mm", StringComparison.Ordinal));
        cautions.ShouldContain(c => c.Contains("a lot [common practice]", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("readings.inner.mass", "48 stone", "readings.inner.mass", "unit-unknown")]
    [InlineData("readings.inner.mass", null, "readings.inner.mass", "missing")]
    [InlineData("readings.inner.angle", 400, "readings.inner.angle", "out-of-range")]
    [InlineData("readings.inner.angle", null, "readings.inner.angle", "missing")]
    [InlineData("readings.outer", null, "readings.outer", "missing")]
    [InlineData("readings", null, "readings", "missing")]
    [InlineData("planes.inner.radius", null, "planes.inner.radius", "missing")]
    [InlineData("planes.inner.radius", "200 kg", "planes.inner.radius", "unit-unknown")]
    [InlineData("planes.inner.kind", "glue", "planes.inner.kind", "word-unknown")]
    [InlineData("planes.outer.axial", "0 mm", "planes.outer.axial", "planes-not-apart")]
    [InlineData("planes.outer.axial", "-20 mm", "planes.outer.axial", "planes-not-apart")]
    [InlineData("planes.outer.places", "behindSpokes", "wheel.spokes", "missing")]
    [InlineData("planes.outer.plases", "anywhere", "planes.outer.plases", "key-unknown")]
    [InlineData("stock", null, "stock", "missing")]
    [InlineData("stock.clip", null, "stock.clip", "missing")]
    [InlineData("tolerance.static", "0 g·mm", "tolerance.static", "out-of-range")]
    [InlineData("tolerance.grade", "G 16", "tolerance.speed", "missing")]
    [InlineData("tolerance.perPlane", "5 mm", "tolerance.perPlane", "unit-unknown")]
    [InlineData("tolerance.speed", "120 km/h", "tolerance.grade", "missing")]
    [InlineData("maxPieces", 2.5, "maxPieces", "not-a-whole-number")]
    [InlineData("massPenalty", -1, "massPenalty", "out-of-range")]
    [InlineData("angleStep", 0, "angleStep", "out-of-range")]
    [InlineData("tolerence", 1, "tolerence", "key-unknown")]
    [InlineData("readings.inner.mass", "1,234 g", "readings.inner.mass", "comma-ambiguous")]
    public void Each_problem_names_its_place(string path, object? value, string where, string code)
    {
        var problem = Run(Change(path, value is null ? null : JsonNode.Parse(System.Text.Json.JsonSerializer.Serialize(value)))).Problem.ShouldNotBeNull();
        problem.Where.ShouldBe(where);
        problem.Code.ShouldBe(code);
        problem.Message.ShouldNotBeEmpty();
    }

    [Fact]
    public void An_unknown_key_suggests_the_nearest()
    {
        Run(Change("tolerence", 1)).Problem!.Message.ShouldContain("did you mean 'tolerance'");
        Run(Change("readings.inner.angel", 1)).Problem!.Message.ShouldContain("did you mean 'angle'");
    }

    [Theory]
    [InlineData("""["5 g", "much"]""", "stock.clip[1]")]
    [InlineData("""["5 g", {"mass": "5 g", "lenght": "3 mm"}]""", "stock.clip[1].lenght")]
    [InlineData("""["0 g"]""", "stock.clip[0]")]
    [InlineData("""[{"length": "3 mm"}]""", "stock.clip[0].mass")]
    public void A_bad_item_of_the_drawer_names_its_place(string clips, string where) =>
        Run(Change("stock.clip", JsonNode.Parse(clips))).Problem!.Where.ShouldBe(where);

    [Theory]
    [InlineData("""["pieces", "tolerance"]""")]
    [InlineData("""["score", "score"]""")]
    [InlineData("""["cheapest"]""")]
    [InlineData("[]")]
    public void Aims_stand_once_with_the_tolerance_first(string aims) => Run(Change("aims", JsonNode.Parse(aims))).Problem!.Where.ShouldBe("aims");

    [Fact]
    public void Other_aims_choose_otherwise()
    {
        // Needs 12 g and 2 g of 5 g a plane: no weight at all leaves 12; the score alone would rather fit more pieces than the tolerance asks for.
        var root = Change("readings", JsonNode.Parse("""{"inner": {"mass": "12 g", "angle": 0}, "outer": {"mass": "4 g", "angle": 0}}"""));
        Run(root).Value.Body["pieces"]!.GetValue<int>().ShouldBe(1);
        root["aims"] = new JsonArray("tolerance", "score");
        root["massPenalty"] = 0;
        var body = Run(root).Value.Body;
        Number(body["score"]).ShouldBe(0, 1e-6);
        body["pieces"]!.GetValue<int>().ShouldBeGreaterThan(1);
        root["aims"] = new JsonArray("tolerance", "mass");
        Number(Run(root).Value.Body["totalMassGrams"]).ShouldBe(10, 1e-9);
    }

    [Fact]
    public void Readings_of_nothing_need_no_weight_and_no_angle()
    {
        var body = Run(Change("readings", JsonNode.Parse("""{"inner": {"mass": "0 g"}, "outer": {"mass": 0}}"""))).Value.Body;
        body["weights"]!.AsArray().ShouldBeEmpty();
        body["pieces"]!.GetValue<int>().ShouldBe(0);
        body["withinTolerance"]!.GetValue<bool>().ShouldBeTrue();
        body["provenOptimal"]!.GetValue<bool>().ShouldBeTrue();
    }

    [Theory]
    [InlineData("19 mm", true)]
    [InlineData("10 mm", false)]
    public void A_strip_whose_length_breaks_the_tolerance_is_a_no_with_the_figure(string length, bool breaks)
    {
        var answer = Run(JsonNode.Parse($$"""
            {"planes": {"inner": {"kind": "clip", "radius": "200 mm", "axial": "0 mm"}, "outer": {"kind": "adhesive", "radius": "180 mm", "axial": "140 mm"} },
             "readings": {"inner": {"mass": "25 g", "angle": 250}, "outer": {"mass": "70 g", "angle": 72} },
             "stock": {"clip": ["25 g"], "adhesive": [{"mass": "5 g", "length": "{{length}}", "count": 24}]},
             "tolerance": {"perPlane": "5 g"} }
            """)!).Value;
        var body = answer.Body;
        body["withinTolerance"]!.GetValue<bool>().ShouldBeTrue();
        body["provenOptimal"]!.GetValue<bool>().ShouldBeTrue();
        Number(body["residual"]!["outer"]!["massGrams"]).ShouldBe(0, 1e-9);
        answer.No.ShouldBe(breaks);
        answer.ForPeople.Any(l => l.StartsWith("Within tolerance", StringComparison.Ordinal)).ShouldBe(!breaks);
        if (!breaks)
        {
            body["leftWithLengths"].ShouldBeNull();
            return;
        }

        // Fourteen strips of 19 mm at 180 mm reach over 266 mm: half of that is 0.7389 rad, and 70 g × sin h / h is 63.80 g.
        var half = 14 * 19 / (2.0 * 180);
        var lacks = 70 - (70 * Math.Sin(half) / half);
        lacks.ShouldBeGreaterThan(5);
        Number(body["leftWithLengths"]!["outer"]!["massGrams"]).ShouldBe(lacks, 1e-9);
        Number(body["leftWithLengths"]!["outer"]!["angleDegrees"]).ShouldBe(252, 1e-6);
        Number(body["leftWithLengths"]!["inner"]!["massGrams"]).ShouldBe(0, 1e-9);
        answer.ForPeople.ShouldContain(l => l.Contains("leaves nothing as masses at one point, 6.2 g at 252° with the strips as long as they are", StringComparison.Ordinal));
        body["cautions"]!.AsArray().Select(c => c!.GetValue<string>()).ShouldContain(c =>
            c.Contains("6.2 g at 252° on the outer plane", StringComparison.Ordinal) && c.Contains("Split the strip", StringComparison.Ordinal) && c.Contains("spin again", StringComparison.Ordinal));
    }

    private const string BehindSpokes = """
        {"wheel": {"spokes": SPOKES},
         "planes": {"inner": {"kind": "clip", "radius": "200 mm", "axial": "0 mm"}, "outer": {"kind": "adhesive", "radius": "180 mm", "axial": "140 mm", "places": "behindSpokes"}},
         "readings": {"inner": {"mass": "25 g", "angle": 250}, "outer": {"mass": "35 g", "angle": 100}},
         "stock": {"clip": CLIP, "adhesive": ["5 g"]}, "tolerance": {"perPlane": "5 g"}}
        """;

    private static Reading<Answer> Spoked(string spokes, string clip = "[\"25 g\"]") =>
        Run(JsonNode.Parse(BehindSpokes.Replace("SPOKES", spokes, StringComparison.Ordinal).Replace("CLIP", clip, StringComparison.Ordinal))!);

    [Fact]
    public void Spokes_may_be_given_each_by_its_angle()
    {
        // Even spokes told one by one are the same wheel.
        var even = Spoked("""{"count": 5, "first": 0}""").Value.Body;
        Spoked("""{"angles": [144, 0, 72, "216°", -72]}""").Value.Body.ToJsonString().ShouldBe(even.ToJsonString());

        // Twin spokes 20° apart: 35 g at 100° go behind the pair that holds 100°, and nowhere else.
        var twin = Spoked("""{"angles": [350, 10, 90, 110, 230, 250]}""").Value.Body;
        twin["withinTolerance"]!.GetValue<bool>().ShouldBeTrue();
        twin["weights"]!.AsArray().Where(w => w!["plane"]!.GetValue<string>() == "outer").Select(w => Number(w!["angleDegrees"])).ShouldBeSubsetOf([90, 110]);
    }

    [Theory]
    [InlineData("""{"angles": []}""", "wheel.spokes.angles", "out-of-range")]
    [InlineData("""{"angles": [0, 72, 359.5]}""", "wheel.spokes.angles", "spokes-at-one-place")]
    [InlineData("""{"angles": [0, 72], "count": 2}""", "wheel.spokes.count", "one-of-two")]
    [InlineData("""{"angles": [0, "here"]}""", "wheel.spokes.angles[1]", "number-missing")]
    public void Wrong_spokes_are_refused_at_their_place(string spokes, string where, string code)
    {
        var problem = Spoked(spokes).Problem.ShouldNotBeNull();
        problem.Where.ShouldBe(where);
        problem.Code.ShouldBe(code);
    }

    [Fact]
    public void Where_nothing_meets_the_tolerance_an_absurd_mass_is_advised_against()
    {
        var answer = Spoked("""{"count": 5, "first": 0}""", """[{"mass": "5 g", "count": 0}]""").Value;
        answer.No.ShouldBeTrue();
        var mass = answer.Body["totalMassGrams"]!.GetValue<double>();
        mass.ShouldBeGreaterThan(70);
        Cautions(answer).ShouldContain(c => c.StartsWith(FormattableString.Invariant($"Do not fit these weights: {mass:0.0} g on the outer plane, where 35.0 g is needed"), StringComparison.Ordinal));
        Cautions(Spoked("""{"count": 5, "first": 0}""").Value).ShouldAllBe(c => !c.StartsWith("Do not fit", StringComparison.Ordinal));

        static IEnumerable<string> Cautions(Answer of) => of.Body["cautions"]!.AsArray().Select(c => c!.GetValue<string>());
    }
}
