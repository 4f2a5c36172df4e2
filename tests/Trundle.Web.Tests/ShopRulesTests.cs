using System.Net;
using System.Text.Json.Nodes;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Web.Tests;

/// <summary>A visit takes the workshop's own rules along when it is opened; the tablet, the host and the command judge it by them alike.</summary>
public sealed class ShopRulesTests : IAsyncLifetime
{
    private const string Rules = """{"rules":[{"id":"tread","quantity":"tread depth","holds":"at least","limit":"3 mm","ruleSets":["uk"],"category":"refer","text":"Three millimetres.","action":"Offer a tyre.","source":"Workshop rule"}]}""";

    private RunningBay _bay = null!;

    public async ValueTask InitializeAsync() => _bay = await RunningBay.StartAsync(null, WorkshopRules.Read(FileNode.Parse(Rules, "rules").Value).Value);

    public ValueTask DisposeAsync() => _bay.DisposeAsync();

    [Fact]
    public async Task Every_visit_is_judged_by_the_rules_that_it_was_opened_with()
    {
        var (status, opened) = await _bay.PostAsync("/api/v1/visits", $$"""{"by":"T4","entries":[{{Entry("rules", "uk")}},{{Entry("fitted.1L.tread.centre.0", "2.9 mm")}}]}""");
        status.ShouldBe(HttpStatusCode.Created);
        var visit = (string)opened["id"]!;
        ((string)opened["fields"]!["shopRules.rules.0.limit"]!).ShouldBe("3 mm");

        var file = (await _bay.JsonAsync($"/api/v1/visits/{visit}/file.json")).Body;
        var asked = await _bay.PostAsync("/api/v1/inspect", file.ToJsonString());
        var commanded = OperationList.Of("inspect").Run(FileNode.From(file)).Value.Body;
        foreach (var answer in new[] { asked.Body, commanded })
        {
            var own = answer["findings"]!.AsArray().Single(f => (string)f!["rule"]! == "shop.tread")!;
            ((string)own["category"]!, (string)own["limit"]!["text"]!).ShouldBe(("refer", "3.0 mm"));
        }
    }

    [Fact]
    public async Task Nobody_enters_other_rules_later_and_only_an_instructor_takes_one_away()
    {
        var (_, opened) = await _bay.PostAsync("/api/v1/visits", $$"""{"by":"T4","entries":[{{Entry("vehicle.name", "Blue hatchback")}}]}""");
        var visit = (string)opened["id"]!;
        foreach (var (field, typed, by, taken) in new[]
        {
            ("shopRules.rules.0.limit", "1.7 mm", "T1", false), ("shopRules.rules.0.limit", "1.7 mm", "I2", false),
            ("shopRules.rules.0.limit", "", "T1", false), ("shopRules.corrections.0.rule", "uk.tread.depth", "I2", false),
            ("shopRules.rules.0.limit", "", "I2", true),
        })
        {
            var (_, answer) = await _bay.PostAsync($"/api/v1/visits/{visit}/entries", $$"""{"entries":[{{Entry(field, typed, by)}}]}""");
            answer["taken"]!.AsArray().Count.ShouldBe(taken ? 1 : 0, $"{field} '{typed}' by {by}");
            if (!taken)
            {
                ((string)answer["refused"]![0]!["error"]!["code"]!).ShouldBe("rules-of-the-workshop");
            }
        }

        var own = await _bay.PostAsync("/api/v1/visits", $$"""{"by":"T1","entries":[{{Entry("shopRules.rules.0.limit", "1.7 mm")}}]}""");
        own.Status.ShouldBe(HttpStatusCode.BadRequest, "a visit that is opened brings no rules of its own");
    }

    private static string Entry(string field, string typed, string by = "T1") =>
        new JsonObject { ["id"] = Guid.NewGuid().ToString("D"), ["field"] = field, ["typed"] = typed, ["by"] = by, ["at"] = "2026-03-14T08:52:00.000Z" }.ToJsonString();
}
