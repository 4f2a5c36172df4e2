using System.Text.Json.Nodes;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Operations;

/// <summary>A temporary spare that stands on an axle runs at its own pressure, far above the axle's (T tyres: 420 kPa, UN R30 and the placard of the spare).</summary>
public sealed class TemporarySpareTests
{
    private static JsonObject Ask(string operation, string spare) => OperationList.Of(operation).Run(FileNode.Parse($$$"""
        {"rules":"uk","date":"2026-03-14","vehicle":{"name":"Grey hatchback","axles":[{"steered":true,"driven":true,"dual":false,"placard":{"size":"205/55 R16 91V","cold":"230 kPa"}},{"steered":false,"driven":false,"dual":false,"placard":{"size":"205/55 R16 91V","cold":"230 kPa"}}]{{{spare}}}},
         "fitted":[{"position":"1L","tyre":{"marking":"T125/70 D16 96M"},"pressure":{"value":"230 kPa","temperature":"18 °C","hot":false}}]}
        """, "visit.json").Value).Value.Body;

    [Fact]
    public void At_the_axles_pressure_it_has_run_low()
    {
        var answer = Ask("inspect", ""","spare":{"placard":{"size":"T125/70 D16 96M","cold":"420 kPa"}}""");
        var found = answer["findings"]!.AsArray().Where(f => ((string)f!["rule"]!).StartsWith("pressure.", StringComparison.Ordinal) && (string?)f["position"] == "1L").ToList();
        found.ShouldContain(f => (string)f!["category"]! == "major" || (string)f["category"]! == "refer");
        found.ShouldAllBe(f => !((string)f!["measured"]!["text"]!).Contains("100 %", StringComparison.Ordinal));
        found.ShouldContain(f => ((string)f!["measured"]!["text"]!).Contains("55 % of the placard", StringComparison.Ordinal));

        var pressure = Ask("pressure", ""","spare":{"placard":{"size":"T125/70 D16 96M","cold":"420 kPa"}}""");
        pressure.ToJsonString().ShouldNotContain("onTarget");
    }

    [Fact]
    public void Without_its_own_placard_its_pressure_is_asked_for()
    {
        var answer = Ask("inspect", "");
        answer["findings"]!.AsArray().ShouldAllBe(f => (string)f!["rule"]! != "pressure.low");
        answer.ToJsonString().ShouldContain("the temporary spare\\u0027s own cold pressure");
    }
}
