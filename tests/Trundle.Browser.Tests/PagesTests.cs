namespace Trundle.Browser.Tests;

/// <summary>Every office page at two sizes, in light and dark.</summary>
public sealed class OfficePagesTests(Bay bay, Device device) : IClassFixture<Device>
{
    public static TheoryData<string> Pages => ["/", "/arrive", "/search?q=DEMO", "/scan", "/history", "/people", "/people/rights", "/condemned", "/re-torque", "/instruments", "/sources", "/visits/(visit)", "/visits/(visit)/arrival"];

    [Theory, MemberData(nameof(Pages))]
    public async Task An_office_page_has_no_fault(string address) =>
        await device.CheckAsync(
            address.Replace("(visit)", await bay.VisitAsync("Blue hatchback"), StringComparison.Ordinal),
            "office" + address.Replace("(visit)", "visit", StringComparison.Ordinal).Replace('/', '-').Replace('?', '-').Replace('=', '-'));

    [Theory]
    [InlineData("balancer")]
    [InlineData("torque wrench")]
    [InlineData("stands")]
    public async Task The_page_of_an_instrument_has_no_fault_with_its_forms_unfolded(string kind)
    {
        var visit = await bay.VisitAsync("Blue hatchback");
        device.Whole = true;
        var id = (await bay.JsonAsync($"/api/v1/visits/{visit}"))["instruments"]!.AsArray().First(i => i!["kind"]!.GetValue<string>() == kind)!["id"]!.GetValue<string>();
        await device.CheckAsync($"/instruments/{id}", $"office-instrument-{kind.Replace(' ', '-')}", unfolded: true);
    }
}

/// <summary>Every page of the bay at two sizes, in light and dark.</summary>
public sealed class BayPagesTests(Bay bay, Device device) : IClassFixture<Device>
{
    public static TheoryData<string> Pages =>
    [
        "arrive", "arrive/axle-1", "lookOver", "lookOver/1L", "plan", "plan/rotation", "plan/jobs", "offTheCar", "offTheCar/1L/seat",
        "wheel/1L/why", "wheel/1L/runout", "refit", "refit/1L/stages", "prove", "prove/1L/final-torque", "handBack", "who",
    ];

    [Theory, MemberData(nameof(Pages))]
    public async Task A_bay_page_has_no_fault(string place)
    {
        // Of the demo's vehicles: the one whose wheels are off for the work on them, the one that is back on its wheels for the rest.
        var off = new[] { "offTheCar", "plan", "lookOver", "wheel" }.Any(leg => place.StartsWith(leg, StringComparison.Ordinal));
        var visit = await bay.VisitAsync(off ? "Blue hatchback" : "Grey saloon");
        device.Whole = place.Contains("first-spin", StringComparison.Ordinal) || place.StartsWith("wheel", StringComparison.Ordinal);
        await device.CheckAsync($"/bay/{visit}/{place}", "bay-" + place.Replace('/', '-').Replace('?', '-').Replace('=', '-'));
    }

    /// <summary>A step that an earlier hold point holds shows nothing of its own: these are looked at where nothing holds them, with all of it unfolded.</summary>
    [Theory]
    [InlineData("Blue hatchback", "offTheCar/1R/seat", "Limits considered")]
    [InlineData("Grey saloon", "offTheCar/1L/first-spin", "Where the weights go")]
    [InlineData("Grey saloon", "offTheCar/1L/weights-on", "After this")]
    [InlineData("Grey saloon", "offTheCar/1L/check-spin", "Before you spin")]
    public async Task A_step_has_no_fault_with_all_that_belongs_to_it(string vehicle, string place, string part) =>
        await device.CheckAsync($"/bay/{await bay.VisitAsync(vehicle)}/{place}", "bay-" + place.Replace('/', '-') + "-open", unfolded: true, part);
}

/// <summary>A wheel of the look over with damage of its tyre, its wheel, its valve and its sensor entered.</summary>
public sealed class InspectionPageTests(Bay bay, Device device) : IClassFixture<Device>
{
    [Fact]
    public async Task A_wheel_with_all_that_can_be_wrong_with_it_has_no_fault()
    {
        const string at = "fitted.2R";
        var visit = await bay.VisitAsync("Blue hatchback");
        await device.SendAsync(
            visit,
            ($"{at}.damage.0.kind", "puncture"), ($"{at}.damage.0.place", "tread"), ($"{at}.damage.0.size", "4 mm"), ($"{at}.damage.0.fromMiddle", "30 mm"),
            ($"{at}.damage.1.kind", "crack"), ($"{at}.damage.1.place", "sidewall"), ($"{at}.damage.1.depth", "1 mm"),
            ($"{at}.tyre.repairPolicy", "permitted"), ($"{at}.tyre.repaired", "true"), ($"{at}.tyre.repairs.0.place", "tread"), ($"{at}.tyre.repairs.0.method", "stem and patch"), ($"{at}.tyre.ranLow", "true"),
            ($"{at}.wheel.damage.0.kind", "bent-flange"), ($"{at}.wheel.damage.0.size", "4 mm"),
            ($"{at}.valve.kind", "rubber-snap-in"), ($"{at}.valve.state", "cracked"), ($"{at}.sensor", "working"), ($"{at}.sensorParts.battery", "low"));
        device.Whole = true;
        await device.CheckAsync($"/bay/{visit}/lookOver/2R", "bay-inspection", part: "What becomes of it");
    }
}

/// <summary>The balance of a wheel with its weights, on the vehicle of the demo that has them.</summary>
public sealed class BalancePageTests(Bay bay, Device device) : IClassFixture<Device>
{
    [Fact]
    public async Task The_balance_of_a_wheel_and_why_it_may_not_come_to_zero_have_no_fault()
    {
        const string at = "fitted.1R.balance";
        var visit = await bay.VisitAsync("Grey saloon");
        await device.SendAsync(
            visit,
            ($"{at}.settings.rimDistance", "64 mm"), ($"{at}.settings.rimDiameter", "17 in"), ($"{at}.settings.rimWidth", "7.5 in"),
            ($"{at}.balancer.displayStep", "1 g"), ($"{at}.balancer.displayHidesBelow", "4 g"),
            ($"{at}.balancer.weightPlaces.outerAdhesive.radial", "-22 mm"), ($"{at}.balancer.weightPlaces.outerAdhesive.axial", "-45 mm"),
            ($"{at}.planes.inner.kind", "clip"), ($"{at}.planes.outer.kind", "adhesive"), ($"{at}.planes.outer.places", "behindSpokes"),
            ($"{at}.wheel.spokes.count", "5"), ($"{at}.wheel.spokes.first", "36"),
            ($"{at}.stock.clip.0", "5 g"), ($"{at}.stock.clip.1", "10 g"), ($"{at}.stock.clip.2", "15 g"), ($"{at}.stock.clip.3", "20 g"), ($"{at}.stock.clip.4", "35 g"),
            ($"{at}.stock.adhesive.0", "5 g"),
            ($"{at}.readings.inner.mass", "35 g"), ($"{at}.readings.inner.angle", "115"), ($"{at}.readings.outer.mass", "22 g"), ($"{at}.readings.outer.angle", "250"));
        device.Whole = true;
        foreach (var step in new[] { "first-spin", "weights-on", "check-spin" })
        {
            await device.CheckAsync($"/bay/{visit}/offTheCar/1R/{step}", $"bay-balance-{step}");
        }

        await device.CheckAsync($"/bay/{visit}/wheel/1R/why", "bay-balance-why");
    }
}

/// <summary>Loss of air at a wheel and the stand-in size on the plan of a visit, at two sizes, in light and dark.</summary>
public sealed class VisitToolPagesTests(Bay bay, Device device) : IClassFixture<Device>
{
    [Theory]
    [InlineData("wheel/1R/leak", "leak")]
    [InlineData("plan/replace", "replace")]
    public async Task A_page_has_no_fault(string place, string name)
    {
        device.Whole = true;
        await device.CheckAsync($"/bay/{await bay.VisitAsync("Blue hatchback")}/{place}", $"bay-{name}");
    }
}

/// <summary>Every tool's page, blank and filled with a sample of the command, at two sizes, in light and dark.</summary>
public sealed class ToolPagesTests(Bay bay, Device device) : IClassFixture<Device>
{
    public static TheoryData<string, string> Samples => new()
    {
        { "why", "balance-why-worked.json" },
        { "runout", "runout-twelve-places.json" },
        { "runout", "runout-three-mountings.json" },
        { "trial", "balance-trial-worked.json" },
        { "trial", "balance-trial-without-phase.json" },
        { "calibrate", "balance-calibrate-worked.json" },
        { "match", "match-two-mountings.json" },
        { "match", "match-one-tyre.json" },
        { "match", "match-set-unbalance.json" },
        { "match", "match-four-sizes-only.json" },
        { "leak", "leak-slow-valve.json" },
        { "leak", "leak-cold-snap.json" },
        { "replace", "replace-teal-hatchback.json" },
        { "replace", "replace-ochre-estate.json" },
    };

    [Fact]
    public async Task The_list_of_tools_has_no_fault()
    {
        bay.Address.ShouldNotBeNull();
        await device.CheckAsync("/bay/tools", "tools");
    }

    [Theory]
    [InlineData("why")]
    [InlineData("runout")]
    [InlineData("trial")]
    [InlineData("match")]
    [InlineData("leak")]
    [InlineData("replace")]
    [InlineData("calibrate")]
    [InlineData("capture")]
    [InlineData("balancer")]
    public async Task A_blank_tool_has_no_fault(string key)
    {
        await device.KeepFormAsync(key, "{}");
        await device.CheckAsync($"/bay/tools/{key}", $"tool-{key}-blank");
    }

    [Theory, MemberData(nameof(Samples))]
    public async Task A_tool_with_its_answer_has_no_fault(string key, string sample)
    {
        await device.KeepFormAsync(key, Bay.Sample(sample));
        device.Whole = true;
        await device.CheckAsync($"/bay/tools/{key}", $"tool-{Path.GetFileNameWithoutExtension(sample)}");
    }

    [Theory]
    [InlineData("wheel-shop")]
    [InlineData("reduction")]
    [InlineData("traverse-inner")]
    [InlineData("index")]
    [InlineData("repeat")]
    public async Task A_test_of_the_balancer_with_its_answer_has_no_fault(string test)
    {
        await device.KeepFormAsync("balancer", Bay.Sample("balance-machine-worked.json"));
        device.Whole = true;
        await device.CheckAsync($"/bay/tools/balancer?test={test}", $"tool-balancer-{test}");
    }

    [Fact]
    public async Task A_recorded_spin_with_its_answer_has_no_fault()
    {
        var calibration = System.Text.Json.Nodes.JsonNode.Parse(Bay.Sample("machine-calibration.json"))!;
        await device.KeepFormAsync("capture", new System.Text.Json.Nodes.JsonObject
        {
            ["recording"] = new System.Text.Json.Nodes.JsonObject { ["csv"] = Bay.Sample("balance-capture-spin.csv"), ["name"] = "balance-capture-spin.csv" },
            ["calibration"] = (calibration["calibration"] ?? calibration).DeepClone(),
        }.ToJsonString());
        device.Whole = true;
        await device.CheckAsync("/bay/tools/capture", "tool-balance-capture");
    }
}
