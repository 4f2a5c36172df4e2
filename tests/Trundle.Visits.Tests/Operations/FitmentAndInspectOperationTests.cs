using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Operations;

public sealed class FitmentAndInspectOperationTests
{
    [Fact]
    public void The_sample_of_mixed_axles_is_refused_at_every_place_where_it_is_wrong()
    {
        var answer = Run("fitment", Sample("fitment-green-estate.json"));
        answer.No.ShouldBeTrue();
        answer.Body["worst"]!.GetValue<string>().ShouldBe("dangerous");
        answer.Body["rules"]!.GetValue<string>().ShouldBe("uk");
        Category(answer, "mix.radial-in-front", "axles 1 and 2").ShouldBe("major");
        Category(answer, "direction.rotation", "1L").ShouldBe("major");
        Category(answer, "direction.rotation", "1R").ShouldBe("none");
        Category(answer, "axle.aspect", "axle 1").ShouldBe("minor");
        Category(answer, "load.index", "2R").ShouldBe("major");
        Category(answer, "hub.bolt-circle", "2R").ShouldBe("dangerous");
        Category(answer, "hub.bore", "2R").ShouldBe("refer");
        Category(answer, "hub.seat", "2R").ShouldBe("dangerous");
        Category(answer, "wheel.load", "2R").ShouldBe("major");
        Category(answer, "hub.seat", "2L").ShouldBe("none");
    }

    [Fact]
    public void The_sample_with_1_59_millimetres_passes_in_the_united_states_and_fails_in_the_united_kingdom()
    {
        var us = Run("inspect", With(Sample("inspect-grey-saloon.json"), "us"));
        us.No.ShouldBeFalse();
        Category(us, "tread.depth", "1L").ShouldBe("none");
        Category(us, "wear.one-shoulder", "1L").ShouldBe("minor");

        var uk = Run("inspect", With(Sample("inspect-grey-saloon.json"), "uk"));
        uk.No.ShouldBeTrue();
        Category(uk, "tread.depth", "1L").ShouldBe("dangerous");
        Category(uk, "tread.depth", "1R").ShouldBe("none");
        uk.Body["worst"]!.GetValue<string>().ShouldBe("dangerous");
    }

    [Theory]
    [InlineData("""{"inner": []}""", "tread depths at inner, centre and outer groove, at three places round the tyre")]
    [InlineData("""{"inner": [], "centre": ["5 mm"], "outer": ["5 mm"]}""", "the tread depth at the inner groove")]
    [InlineData("""{"inner": ["7/32nds"], "centre": ["7/32nd"], "outer": ["7/32 in"]}""", null)]
    public void An_empty_list_of_depths_is_asked_for_and_thirty_seconds_are_read(string tread, string? need)
    {
        var file = JsonNode.Parse($$"""{"rules": "uk", "vehicle": {"axles": [{}]}, "fitted": [{"position": "1L", "tyre": {"marking": "195/65 R15 91H"}, "tread": {{tread}}}]}""")!.AsObject();
        var answer = Run("inspect", FileNode.From(file));
        answer.Body["needs"]!.AsArray().Select(n => n!["what"]!.GetValue<string>()).Where(w => w.Contains("tread depth", StringComparison.Ordinal) && !w.Contains("country", StringComparison.Ordinal)).ShouldBe(need is null ? [] : [need]);
        if (need is null)
        {
            answer.Body["findings"]!.AsArray().First(f => f!["rule"]!.GetValue<string>() == "tread.depth")!["measured"]!["value"]!.GetValue<double>().ShouldBe(5.55625, 1e-9);
        }
    }

    [Fact]
    public void Every_finding_has_the_contracts_keys_and_every_limit_its_source()
    {
        foreach (var (operation, sample) in new[] { ("fitment", "fitment-green-estate.json"), ("inspect", "inspect-grey-saloon.json") })
        {
            var findings = Run(operation, Sample(sample)).Body["findings"]!.AsArray();
            findings.Count.ShouldBeGreaterThan(20);
            foreach (var finding in findings.Select(f => f!.AsObject()))
            {
                foreach (var key in new[] { "rule", "category", "position", "measured", "limit", "source", "status", "action" })
                {
                    finding.ContainsKey(key).ShouldBeTrue(key);
                }

                finding["source"]!.GetValue<string>().ShouldNotBeNullOrWhiteSpace();
                if (finding["limit"] is JsonObject limit)
                {
                    limit["source"]!.GetValue<string>().ShouldNotBeNullOrWhiteSpace();
                    new[] { "read", "second-hand", "from memory", "calculated" }.ShouldContain(limit["status"]!.GetValue<string>());
                }
            }
        }
    }

    [Fact]
    public void Inspect_is_condition_and_fitment_and_fitment_the_same_part_of_it()
    {
        var sample = With(Sample("inspect-grey-saloon.json"), "eu");
        var fitment = Run("fitment", sample).Body["findings"]!.AsArray().Select(f => f!.ToJsonString()).ToList();
        var inspect = Run("inspect", sample).Body["findings"]!.AsArray().Select(f => f!.ToJsonString()).ToList();
        fitment.ShouldBeSubsetOf(inspect);
        inspect.Count.ShouldBeGreaterThan(fitment.Count);
    }

    [Fact]
    public void Without_rules_only_the_trades_are_applied_and_it_is_said()
    {
        var answer = Run("inspect", Sample("inspect-grey-saloon.json"));
        answer.Body["rules"].ShouldBeNull();
        answer.Body["notes"]![0]!.GetValue<string>().ShouldContain("only the rules of the trade");
        answer.ForPeople[0].ShouldContain("only the rules of the trade");
        answer.Body["findings"]!.AsArray().Select(f => f!["source"]!.GetValue<string>()).ShouldAllBe(s => !s.Contains("reg. ", StringComparison.Ordinal) && !s.Contains("2014/45", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("""{"rules":"xx"}""", "rules", "word-unknown")]
    [InlineData("""{"fitted":[]}""", "fitted", "missing")]
    [InlineData("""{"vehicle":{}}""", "fitted", "missing")]
    [InlineData("""{"fitted":[{"position":"1L","tyre":{"marking":"999/55R16"}}]}""", "fitted[0].tyre.marking", null)]
    [InlineData("""{"fitted":[{"position":"1L","tyre":{"tin":"DOT 1AB CDEFHJ 5418"}}]}""", "fitted[0].tyre.tin", "tin-week")]
    [InlineData("""{"fitted":[{"position":"1L","tread":{"inner":["5.1 furlongs"]}}]}""", "fitted[0].tread.inner[0]", "unit-unknown")]
    [InlineData("""{"fitted":[{"position":"1L","tread":{"inner":["40 mm"]}}]}""", "fitted[0].tread.inner[0]", "out-of-range")]
    [InlineData("""{"fitted":[{"position":"1L","tyre":{"id":"A 1"}},{"position":"2R","tyre":{"id":"a1"}}]}""", "fitted[1].tyre.id", "tyre-twice")]
    [InlineData("""{"fitted":[{"position":"1L","wheel":{"id":"W1"}},{"position":"S","wheel":{"id":"W1"}}]}""", "fitted[1].wheel.id", "wheel-twice")]
    [InlineData("""{"fitted":[{"position":"1L","tread":{"iner":["5.1 mm"]}}]}""", "fitted[0].tread.iner", "key-unknown")]
    public void Wrong_input_names_its_place(string body, string where, string? code)
    {
        foreach (var name in new[] { "fitment", "inspect" })
        {
            var problem = OperationList.Of(name).Run(FileNode.Parse(body, "body").Value).Problem.ShouldNotBeNull();
            problem.Where.ShouldBe(where);
            if (code is not null)
            {
                problem.Code.ShouldBe(code);
            }
        }
    }

    [Fact]
    public void A_tyre_that_stands_at_two_places_is_told_with_both()
    {
        var body = FileNode.Parse("""{"fitted":[{"position":"1L","tyre":{"id":"A1"}},{"position":"1R","tyre":{"id":"B1"}},{"position":"2R","tyre":{"id":"A1"}}]}""", "body").Value;
        OperationList.Of("fitment").Run(body).Problem!.Message.ShouldBe("The tyre 'A1' stands at 1L and at 2R; one tyre sits at one place. Put one of the two names right.");
    }

    [Fact]
    public void What_is_needed_is_no_fault()
    {
        var answer = Run("inspect", FileNode.Parse("""{"fitted":[{"position":"1L","tyre":{"marking":"195/65 R15 91H"}}]}""", "body").Value);
        answer.No.ShouldBeFalse();
        answer.Body["worst"]!.GetValue<string>().ShouldBe("none");
        answer.Body["needs"]!.AsArray().Count.ShouldBeGreaterThan(4);
    }

    private static string? Category(Answer answer, string rule, string position) =>
        answer.Body["findings"]!.AsArray().Single(f => f!["rule"]!.GetValue<string>() == rule && f["position"]?.GetValue<string>() == position)!["category"]!.GetValue<string>();

    private static Answer Run(string operation, FileNode body) => OperationList.Of(operation).Run(body).Value;

    private static FileNode With(FileNode body, string rules) => body.With("rules", FileNode.From(new JsonObject { ["value"] = rules }).Member("value")!);

    private static FileNode Sample(string name) =>
        FileNode.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, name)), name).Value;
}
