using System.Text.Json.Nodes;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Operations;

/// <summary>The sample lorry: everything that a file can tell of fixings, and what each is held to.</summary>
public class FixingsSampleTests
{
    private static readonly Answer Answer = Run();

    private static string? Category(string rule, string? position) => Answer.Body["findings"]!.AsArray()
        .SingleOrDefault(f => f!["rule"]!.GetValue<string>() == rule && f["position"]?.GetValue<string>() == position)?["category"]!.GetValue<string>();

    // One nut of another seat, one missing, a worn seat, a ring 0.8 mm loose in its wheel, three turns too few, a wrench a month overdue.
    [Theory]
    [InlineData("fixings.mixed", "1L", "dangerous")]
    [InlineData("fixings.foreign", "1L", "dangerous")]
    [InlineData("fixings.missing", "1L", "none")]
    [InlineData("fixings.mixed", "1R", "none")]
    [InlineData("fixings.missing", "1R", "major")]
    [InlineData("wheel.seat-worn", "1R", "major")]
    [InlineData("wheel.seat-worn", "1L", "none")]
    [InlineData("hub.ring-on-hub", "1R", "none")]
    [InlineData("hub.ring-in-wheel", "1R", "refer")]
    [InlineData("hub.bore", "1R", null)]
    [InlineData("fixings.engagement-maker", "axle 1", "major")]
    [InlineData("fixings.engagement-stripping", "axle 1", "refer")]
    [InlineData("instrument.torque-wrench", null, "major")]
    [InlineData("instrument.jack", null, null)]
    public void Each_is_found_and_only_where_it_is(string rule, string? position, string? category) => Category(rule, position).ShouldBe(category);

    [Fact]
    public void The_re_torque_of_a_lorry_has_its_distance_and_its_time()
    {
        var due = Answer.Body["reTorque"]!;
        due["wheels"]!.ToJsonString().ShouldBe("""["1L","1R"]""");
        due["fromOdometerKilometres"]!.GetValue<double>().ShouldBe(310040, 1e-6);
        due["toOdometerKilometres"]!.GetValue<double>().ShouldBe(310080, 1e-6);
        due["standing"]!["text"]!.GetValue<string>().ShouldBe("30 min");
    }

    [Fact]
    public void What_the_maker_did_not_say_of_the_second_axle_is_asked_for_and_spans_both_cases()
    {
        var axles = Answer.Body["legs"]!["refit"]!["fixings"]!.AsArray();
        axles[0]!["clamp"]!["assumed"]!.ToJsonString().ShouldBe("[]");
        axles[1]!["clamp"]!["assumed"]!.ToJsonString().ShouldBe("""["condition"]""");
        Answer.Body["legs"]!["lookOver"]!["fitment"]!["needs"]!.AsArray().Select(n => (n!["position"]?.GetValue<string>(), n["what"]!.GetValue<string>()))
            .ShouldContain(n => n.Item1 == "axle 2" && n.Item2.StartsWith("whether the threads are dry or oiled", StringComparison.Ordinal));
        axles[0]!["direction"]!["leftHandSide"]!.GetValue<string>().ShouldBe("left");
        axles[0]!["wrench"]!["off"]!.GetValue<bool>().ShouldBeTrue("5 % where 4 % are permitted");
        Answer.Body["legs"]!["refit"]!["tightening"]![0]!["torquesNewtonMetres"]!["4"]!.GetValue<double>().ShouldBe(305, 1e-9);
    }

    private static Answer Run()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!Directory.Exists(Path.Combine(folder.FullName, "samples")))
        {
            folder = folder.Parent!;
        }

        return VisitCheckOperation.Run(FileNode.From(JsonNode.Parse(File.ReadAllText(Path.Combine(folder.FullName, "samples", "visit-copper-lorry.json")))!)).Value;
    }
}
