using System.Text.Json.Nodes;
using Trundle.Engine.Findings;
using Trundle.Engine.InUse;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Files;

public sealed class ShopRulesReaderTests
{
    private const string Rule = """{"id":"tread","quantity":"tread depth","holds":"at least","limit":"3 mm","ruleSets":["uk"],"category":"refer","text":"Three millimetres.","action":"Offer a tyre.","source":"Workshop rule of 2026-01-05"}""";

    private const string Correction = """{"rule":"uk.tread.depth","limit":"1.7 mm","source":"SI 1986/1078","clause":"reg. 27","edition":"2026","status":"read"}""";

    [Fact]
    public void A_file_is_read_with_all_that_stands_in_it()
    {
        var (inForce, problems) = Read($$"""{"rules":[{"id":"tread.winter","quantity":"tread depth","holds":"at least","limit":"6/32 in","classes":["van"],"place":"steered axle","country":"at","from":"2026-01-01","until":"2030-01-01","season":"11-01 to 03-31","category":"minor","text":"Five.","action":"Offer a tyre.","source":"Workshop rule"},{{Rule}}],"corrections":[{{Correction}}]}""");
        problems.ShouldBeEmpty();
        inForce.Added.Select(r => r.Rule.Rule).ShouldBe(["shop.tread.winter", "shop.tread"]);
        var winter = inForce.Added[0];
        (winter.Limit.Text, winter.Limit.Country, winter.Limit.Scope.Place, winter.Rule.Category).ShouldBe(("0.1875 in", "AT", RulePlace.SteeredAxle, Category.Minor));
        winter.Limit.Dates.ToString().ShouldBe("from 2026-01-01, until 2030-01-01, each year 11-01 to 03-31");
        winter.Sets.ShouldBeEmpty();
        inForce.Limits.Single(l => l.Id == "uk.tread.depth").Value.ShouldBe(1.7);
    }

    [Theory]
    [InlineData("\"quantity\":\"tread depth\"", "\"quantity\":\"tread\"", "shopRules.rules[0].quantity", "word-unknown", "winter mark")]
    [InlineData("\"quantity\":\"tread depth\",", "", "shopRules.rules[0].quantity", "missing", "tread depth")]
    [InlineData("\"limit\":\"3 mm\"", "\"limit\":\"3 kg\"", "shopRules.rules[0].limit", "unit-unknown", "mm")]
    [InlineData("\"limit\":\"3 mm\"", "\"limit\":\"300 mm\"", "shopRules.rules[0].limit", "out-of-range", "up to 40 mm")]
    [InlineData("\"limit\":\"3 mm\"", "\"limit\":\"0 mm\"", "shopRules.rules[0].limit", "out-of-range", "over 0")]
    [InlineData("\"holds\":\"at least\"", "\"holds\":\"at most\"", "shopRules.rules[0].holds", "holds-backwards", "would forbid what is good")]
    [InlineData("\"holds\":\"at least\"", "\"holds\":\"over\"", "shopRules.rules[0].holds", "word-unknown", "at least")]
    [InlineData("\"category\":\"refer\"", "\"category\":\"none\"", "shopRules.rules[0].category", "word-unknown", "write 'minor', 'refer', 'major' or 'dangerous'")]
    [InlineData("\"id\":\"tread\"", "\"id\":\"Tread depth\"", "shopRules.rules[0].id", "name-unreadable", "small letters")]
    [InlineData("[\"uk\"]", "[\"gb\"]", "shopRules.rules[0].ruleSets[0]", "word-unknown", "'us', 'uk' or 'eu'")]
    [InlineData("\"category\"", "\"classes\":[\"lorry\"],\"category\"", "shopRules.rules[0].classes[0]", "word-unknown", "goods over 3500 kg")]
    [InlineData("\"category\"", "\"place\":\"roof\",\"category\"", "shopRules.rules[0].place", "word-unknown", "steered axle")]
    [InlineData("\"category\"", "\"season\":\"winter\",\"category\"", "shopRules.rules[0].season", "season-unreadable", "11-01 to 04-15")]
    [InlineData("\"category\"", "\"from\":\"2026-02-01\",\"until\":\"2026-01-01\",\"category\"", "shopRules.rules[0].until", "dates-backwards", "before the first")]
    [InlineData("\"category\"", "\"country\":\"Austria\",\"category\"", "shopRules.rules[0].country", "country-unreadable", "two letters")]
    [InlineData("\"source\":\"Workshop rule of 2026-01-05\"", "\"source\":\" \"", "shopRules.rules[0].source", "missing", "whose rule")]
    [InlineData("\"category\"", "\"limits\":\"3 mm\",\"category\"", "shopRules.rules[0].limits", "key-unknown", "did you mean 'limit'")]
    [InlineData("uk.tread.depth", "uk.tread.dept", "shopRules.corrections[0].rule", "rule-unknown", "did you mean 'uk.tread.depth'")]
    [InlineData("\"status\":\"read\"", "\"status\":\"from memory\"", "shopRules.corrections[0].status", "word-unknown", "'read' or 'second-hand'")]
    [InlineData(",\"status\":\"read\"", "", "shopRules.corrections[0].status", "missing", "second-hand")]
    [InlineData("\"source\":\"SI 1986/1078\",", "", "shopRules.corrections[0].source", "missing", "the text that says so")]
    [InlineData("\"limit\":\"1.7 mm\"", "\"limit\":\"1.7 psi\"", "shopRules.corrections[0].limit", "unit-unknown", "mm")]
    [InlineData("\"rule\":\"uk.tread.depth\"", "\"rule\":\"uk.axle.size\"", "shopRules.corrections[0].limit", "no-limit", "no number of its own")]
    [InlineData("\"rule\":\"uk.tread.depth\",\"limit\":\"1.7 mm\"", "\"rule\":\"uk.age.law\",\"limit\":\"9 years\"", "shopRules.corrections[0].limit", "no-limit", "uk.age.law.front, uk.age.law.minibus")]
    [InlineData("\"rule\":\"uk.tread.depth\",\"limit\":\"1.7 mm\"", "\"rule\":\"uk.age.law.front\",\"category\":\"major\"", "shopRules.corrections[0].category", "no-category", "uk.age.law")]
    public void What_cannot_be_meant_is_refused_at_its_place(string good, string bad, string where, string code, string said)
    {
        var json = $$"""{"rules":[{{Rule}}],"corrections":[{{Correction}}]}""";
        json.ShouldContain(good);
        var (inForce, problems) = Read(json.Replace(good, bad, StringComparison.Ordinal));
        problems.ShouldNotBeEmpty();
        var problem = problems.FirstOrDefault(p => p.Where == where);
        problem.ShouldNotBeNull(string.Join("; ", problems.Select(p => $"{p.Where} {p.Code}")));
        problem.Code.ShouldBe(code);
        problem.Message.ShouldContain(said);
        inForce.ShouldBe(RulesInForce.Carried);
    }

    [Fact]
    public void A_name_stands_once()
    {
        Read($$"""{"rules":[{{Rule}},{{Rule}}]}""").Problems.ShouldHaveSingleItem().Code.ShouldBe("rule-twice");
        Read($$"""{"corrections":[{{Correction}},{{Correction}}]}""").Problems.ShouldHaveSingleItem().Code.ShouldBe("rule-twice");
    }

    /// <summary>Each carried limit at the same place: the same number is no stricter, the next one is.</summary>
    [Fact]
    public void For_every_carried_limit_a_stricter_one_is_taken_and_the_same_is_not()
    {
        var tried = 0;
        foreach (var limit in InUseLimits.List.Where(l => l.Quantity != JudgedQuantity.WinterMark))
        {
            var category = InUseRules.Of(limit.Rule, limit.Set).Category;
            if (category == Category.None)
            {
                continue;
            }

            string Own(double value) => new JsonObject
            {
                ["rules"] = new JsonArray(new JsonObject
                {
                    ["id"] = "own",
                    ["quantity"] = JudgedQuantities.Word(limit.Quantity),
                    ["holds"] = InUseLimits.Comparisons.Single(c => c.Value == limit.Holds).Word,
                    ["limit"] = FormattableString.Invariant($"{value} {limit.Unit}"),
                    ["ruleSets"] = limit.Set is { } set ? new JsonArray(RuleSetWords.Of(set)) : null,
                    ["country"] = limit.Country,
                    ["classes"] = new JsonArray([.. limit.Scope.Classes.Select(c => (JsonNode?)c)]),
                    ["place"] = limit.Scope.PlaceWord.Length == 0 ? null : limit.Scope.PlaceWord,
                    ["category"] = category.Word(),
                    ["text"] = "Ours.",
                    ["action"] = "Decide.",
                    ["source"] = "Workshop rule",
                }),
            }.ToJsonString();

            WorkshopRules.Read(FileNode.Parse(Own(limit.Value), "rules").Value).Problem!.Code.ShouldBe("not-stricter", $"{limit.Id}: {Own(limit.Value)}");
            Read(Own(limit.Value)).InForce.Overtaken.ShouldHaveSingleItem(limit.Id).ShouldContain("the stricter holds");
            var strictest = (limit.IsFloor, limit.Unit) switch { (true, "in") => 0.5, (true, "mm") when limit.Value < 12 => 12, (true, _) => limit.Value * 1.2, (false, "in") => 0.05, _ => 0.1 };
            WorkshopRules.Read(FileNode.Parse(Own(strictest), "rules").Value).IsRead.ShouldBeTrue(limit.Id);
            Read(Own(strictest)).InForce.Overtaken.ShouldBeEmpty(limit.Id);
            tried++;
        }

        tried.ShouldBeGreaterThan(15);
    }

    [Fact]
    public void The_command_the_interface_and_the_bay_give_one_answer()
    {
        var rules = $$"""{"rules":[{{Rule}}],"corrections":[{{Correction}}]}""";
        var fields = VisitFields.Of(WorkshopRules.Read(FileNode.Parse(rules, "rules").Value).Value.Fields
            .Concat([("rules", "uk"), ("date", "2026-03-14"), ("fitted.1L.tyre.marking", "195/65 R15 91H"), ("fitted.1L.tread.centre.0", "1.65 mm"), ("vehicle.axles.0.steered", "true")])
            .Select(f => new Entry(Guid.CreateVersion7(), f.Item1, f.Item2, "T1", Role.Technician, DateTimeOffset.UnixEpoch)));
        var assembled = fields.Assemble();

        var asked = OperationList.Of("inspect").Run(assembled.Root).Value;
        var found = asked.Body["findings"]!.AsArray().Select(f => ((string)f!["rule"]!, (string)f["category"]!, (string?)f["limit"]?["text"], (string)f["source"]!)).ToList();
        found.ShouldContain(("shop.tread", "refer", "3.0 mm", "Workshop rule of 2026-01-05"));
        found.ShouldContain(f => f.Item1 == "tread.depth" && f.Item2 == "dangerous" && f.Item3 == "1.7 mm");
        ((string)asked.Body["notes"]![0]!).ShouldBe("With the workshop's own rules: 1 added, 1 put right.");

        var problems = new List<Problem>();
        var state = VisitStanding.Of(assembled.Root, problems);
        problems.ShouldBeEmpty();
        state.On(Leg.LookOver).Findings.Where(f => f.Rule is "shop.tread" or "tread.depth").Select(f => (f.Rule, f.Category.Word(), f.Limit?.Amount.Text))
            .ShouldBe([("tread.depth", "dangerous", "1.7 mm"), ("shop.tread", "refer", "3.0 mm")]);
        state.Stops.ShouldContain(s => s.What.StartsWith("shop.tread:", StringComparison.Ordinal) && s.DecisionKey == "shop-tread@1L");
    }

    /// <summary>A visit takes its rules along; where a later edition of the carried ones is stricter, the visit is judged by the stricter, and that is said.</summary>
    [Theory]
    [InlineData("1.6 mm")]
    [InlineData("1 mm")]
    public void A_rule_of_a_visit_that_the_carried_ones_have_overtaken_is_a_caution(string limit)
    {
        var (inForce, problems) = Read($$"""{"rules":[{{Rule.Replace("3 mm", limit, StringComparison.Ordinal)}}]}""");
        problems.ShouldBeEmpty();
        inForce.Overtaken.ShouldHaveSingleItem().ShouldContain("'uk.tread.depth'");
        var answer = OperationList.Of("inspect").Run(FileNode.Parse($$$"""{"rules":"uk","shopRules":{"rules":[{{{Rule.Replace("3 mm", limit, StringComparison.Ordinal)}}}]},"vehicle":{"axles":[{}]},"fitted":[{"position":"1L","tyre":{"marking":"195/65 R15 91H"},"tread":{"centre":["1.59 mm"]}}]}""", "file").Value).Value;
        answer.Body["notes"]!.AsArray().Select(n => (string)n!).ShouldContain(inForce.Overtaken[0]);
        answer.ForPeople.ShouldContain($"Caution: {inForce.Overtaken[0]}");
        ((string)answer.Body["findings"]!.AsArray().Single(f => (string)f!["rule"]! == "tread.depth")!["category"]!).ShouldBe("dangerous");
    }

    [Fact]
    public void A_wrong_file_of_a_workshop_is_said_with_its_place()
    {
        WorkshopRules.Read(FileNode.Parse($$"""{"rules":[{{Rule.Replace("3 mm", "1.6 mm", StringComparison.Ordinal)}}]}""", "rules").Value).Problem!.Message.ShouldContain("write a correction of 'uk.tread.depth'");
        WorkshopRules.Read(FileNode.Parse($$"""{"rules":[{{Rule.Replace("3 mm", "1 mm", StringComparison.Ordinal)}}]}""", "rules").Value).Problem!.Where.ShouldBe("rules[0].limit");
        WorkshopRules.Read(FileNode.Parse($$"""{"rules":[{{Rule.Replace("Three", new string('x', 2001), StringComparison.Ordinal)}}]}""", "rules").Value).Problem!.Code.ShouldBe("too-long");
    }

    [Theory]
    [InlineData("uk.damage.cord", "minor", 1)]
    [InlineData("trade.rim.diameter", "major", 1)]
    [InlineData("trade.rim.diameter", "dangerous", 0)]
    public void A_correction_makes_no_dangerous_rule_less_grave(string rule, string category, int problems)
    {
        var (_, found) = Read($$"""{"corrections":[{"rule":"{{rule}}","category":"{{category}}","source":"A text","status":"read"}]}""");
        found.Count.ShouldBe(problems);
        found.ShouldAllBe(p => p.Where.EndsWith("corrections[0].category", StringComparison.Ordinal) && p.Code == "dangerous-stays");
    }

    /// <summary>A breach of a law is called less grave only where clause and edition of a text that was read say so, and then every answer says it; a visit, which cannot mend its file, keeps the graver.</summary>
    [Theory]
    [InlineData("""{"rule":"eu.load.index","category":"minor","source":"A text","status":"read"}""", true)]
    [InlineData("""{"rule":"eu.load.index","category":"minor","source":"A text","clause":"5","edition":"2025","status":"second-hand"}""", true)]
    [InlineData("""{"rule":"eu.load.index","category":"minor","source":"A text","clause":"5","edition":"2025","status":"read"}""", false)]
    [InlineData("""{"rule":"eu.load.index","category":"dangerous","source":"A text","status":"read"}""", false)]
    public void A_law_is_made_less_grave_only_by_a_text_that_was_read(string correction, bool refused)
    {
        var read = WorkshopRules.Read(FileNode.Parse($$"""{"corrections":[{{correction}}]}""", "rules").Value);
        read.IsRead.ShouldBe(!refused);
        if (refused)
        {
            (read.Problem!.Where, read.Problem.Code).ShouldBe(("corrections[0].category", "less-grave"));
        }

        var (kept, problems) = Read($$"""{"corrections":[{{correction}}]}""");
        problems.ShouldBeEmpty();
        kept.Corrections.Count.ShouldBe(refused ? 0 : 1);
        kept.Overtaken.Count.ShouldBe(correction.Contains("dangerous", StringComparison.Ordinal) ? 0 : 1);
    }

    private const string Looser = """{"rule":"uk.tread.depth","limit":"1.2 mm","source":"A newer text","status":"read"}""";

    /// <summary>A looser number needs clause, edition and a text that was read; a workshop's file without them is refused at its place.</summary>
    [Theory]
    [InlineData("\"status\":\"read\"", "\"status\":\"read\"", true)]
    [InlineData("\"status\":\"read\"", "\"status\":\"read\",\"clause\":\"reg. 27\"", true)]
    [InlineData("\"status\":\"read\"", "\"status\":\"second-hand\",\"clause\":\"reg. 27\",\"edition\":\"2031\"", true)]
    [InlineData("\"status\":\"read\"", "\"status\":\"read\",\"clause\":\"reg. 27\",\"edition\":\"2031\"", false)]
    [InlineData("1.2 mm", "1.7 mm", false)]
    public void A_looser_number_is_refused_without_the_edition_that_has_it(string from, string to, bool refused)
    {
        var read = WorkshopRules.Read(FileNode.Parse($$"""{"corrections":[{{Looser.Replace(from, to, StringComparison.Ordinal)}}]}""", "rules").Value);
        read.IsRead.ShouldBe(!refused);
        if (refused)
        {
            (read.Problem!.Where, read.Problem.Code).ShouldBe(("corrections[0].limit", "looser"));
            read.Problem.Message.ShouldContain("'at least 1.6 mm'");
        }
    }

    [Theory]
    [InlineData("", "1.6 mm", "changes nothing")]
    [InlineData(",\"clause\":\"reg. 27\",\"edition\":\"2031\"", "1.2 mm", "holds here")]
    public void A_looser_number_in_a_visit_is_a_caution_on_the_answer_and_the_stricter_stays_unless_the_edition_is_stated(string more, string limit, string caution)
    {
        var (inForce, problems) = Read($$"""{"corrections":[{{Looser.Replace("\"status\"", more.TrimStart(',') + (more.Length > 0 ? "," : "") + "\"status\"", StringComparison.Ordinal)}}]}""");
        problems.ShouldBeEmpty();
        inForce.Limits.Single(l => l.Id == "uk.tread.depth").Text.ShouldBe(limit);
        inForce.Limits.Single(l => l.Id == "uk.tread.depth").Source.Text.StartsWith("A newer text", StringComparison.Ordinal).ShouldBe(more.Length > 0, "a text is named for its own number only");
        inForce.Overtaken.ShouldHaveSingleItem().ShouldContain(caution);
    }

    private static (RulesInForce InForce, List<Problem> Problems) Read(string shopRules)
    {
        var problems = new List<Problem>();
        var file = VisitFileReader.Read(FileNode.Parse($$"""{"shopRules":{{shopRules}}}""", "file").Value, problems);
        return (file.Subject.InForce, problems);
    }
}
