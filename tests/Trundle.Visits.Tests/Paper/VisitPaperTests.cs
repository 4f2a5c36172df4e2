using System.Text.Json.Nodes;
using Trundle.Engine.Findings;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;
using Trundle.Visits.Paper;

namespace Trundle.Visits.Tests.Paper;

/// <summary>The paper of an invented visit: read, judged, and asked for.</summary>
public sealed class VisitPaperTests
{
    private static JsonObject Sample() => JsonNode.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "visit-plum-saloon.json")))!.AsObject();

    private static VisitState Stands(JsonObject file)
    {
        var problems = new List<Problem>();
        var state = VisitStanding.Of(FileNode.Parse(file.ToJsonString(), "sample").Value, problems);
        problems.Select(p => $"{p.Where}: {p.Message}").ShouldBeEmpty();
        return state;
    }

    private static Problem First(Action<JsonObject> spoil)
    {
        var file = Sample();
        spoil(file);
        var problems = new List<Problem>();
        VisitStanding.Of(FileNode.Parse(file.ToJsonString(), "sample").Value, problems);
        return problems.ShouldHaveSingleItem();
    }

    [Fact]
    public void The_sample_is_read_key_by_key()
    {
        var state = Stands(Sample());
        var (arrival, paper) = (state.Entered.Arrival, state.Work.Paper);
        state.Arrived.Vehicle.Vin!.Agrees.ShouldBeTrue();
        arrival.Lit.ShouldBe(["tyre pressure", "a spanner in yellow"]);
        arrival.Dark.ShouldContain("anti-lock brakes");
        arrival.Damage.Count.ShouldBe(2);
        arrival.Photos.ShouldHaveSingleItem();
        paper.Agreed.Count.ShouldBe(2);
        paper.Declined.ShouldHaveSingleItem().Signed.ShouldBeNull();
        paper.LockingKey.ShouldBe(new LockingKey("glove box", "back in the glove box"));
        paper.Stock.Sum(s => s.Count).ShouldBe(9);
        paper.Scrap.Tyres.Select(t => t.Tin).ShouldBe(["1AB CDEFHJ 2220", "1AB CDEFHJ 2220"]);
        paper.Scrap.LeadWeights!.Value.Grams.ShouldBe(85, 1e-9);
    }

    [Fact]
    public void A_locking_key_that_came_in_stops_hand_back_until_it_is_said_where_it_is()
    {
        var file = Sample();
        file["work"]!["lockingKey"]!.AsObject().Remove("out").ShouldBeTrue();
        var state = Stands(file);
        state.MayLeave.ShouldBeFalse();
        state.Stops.ShouldContain(s => s.Leg == Leg.HandBack && s.What == "Where the locking key is now" && s.Why.Contains("glove box", StringComparison.Ordinal));
        state.On(Leg.HandBack).Needs.ShouldContain(n => n.Field == "work.lockingKey.out");

        Stands(Sample()).Stops.ShouldNotContain(s => s.What.Contains("locking key", StringComparison.Ordinal));
    }

    [Fact]
    public void What_was_seen_with_the_wheels_off_is_referred_and_waits_for_a_person()
    {
        var file = Sample();
        file["work"]!["decisions"]!.AsObject().Remove("seen-boot@1R").ShouldBeTrue();
        var state = Stands(file);
        var boot = state.LeavingFindings.Single(f => f.Rule == "seen.boot");
        boot.ShouldSatisfyAllConditions(
            f => f.Category.ShouldBe(Category.Refer),
            f => f.Position.ShouldBe("1R"),
            f => f.Action.ShouldStartWith("Have it looked at by a workshop for steering and suspension"),
            f => f.Action.ShouldContain("by T2, technician"),
            f => f.Action.ShouldContain("no verdict"));
        state.Stops.ShouldContain(s => s.DecisionKey == "seen-boot@1R");
        Stands(Sample()).Stops.ShouldBeEmpty();
    }

    [Theory]
    [InlineData("4.0 mm", "3.0 mm", null, Category.None)]
    [InlineData("3.0 mm", "3.0 mm", null, Category.Refer)]
    [InlineData("2.4 mm", "3.0 mm", null, Category.Refer)]
    [InlineData("1.0 mm", null, null, Category.None)]
    [InlineData("8.0 mm", "3.0 mm", "inner pad thinner than the outer", Category.Refer)]
    public void A_thickness_is_held_against_the_makers_own_limit_alone(string thickness, string? limit, string? words, Category category)
    {
        var file = Sample();
        file["work"]!["seen"] = new JsonArray(new JsonObject { ["part"] = "brake-pad", ["position"] = "1L", ["thickness"] = thickness, ["makerLimit"] = limit, ["words"] = words });
        var finding = Stands(file).LeavingFindings.Single(f => f.Rule == "seen.brake-pad");
        finding.Category.ShouldBe(category);
        finding.Limit.ShouldBe(limit is null ? null : finding.Limit);
        finding.Cautions.Count.ShouldBe(limit is null ? 1 : 0);
    }

    [Fact]
    public void The_check_says_the_paper_and_keeps_whom_to_call_to_itself()
    {
        var answer = VisitCheckOperation.Run(FileNode.Parse(Sample().ToJsonString(), "sample").Value).Value;
        answer.Body["vin"]!["agrees"]!.GetValue<bool>().ShouldBeTrue();
        answer.Body["arrival"]!["lampsLit"]!.AsArray().Count.ShouldBe(2);
        answer.Body["declined"]![0]!["risk"]!.GetValue<string>().ShouldContain("wet");
        answer.Body["stockUsed"]!.AsArray().Count.ShouldBe(4);
        answer.Body["scrap"]!["leadWeightsGrams"]!.GetValue<double>().ShouldBe(85, 1e-9);
        answer.Body.ToJsonString().ShouldNotContain("0000 070");
        answer.ForPeople.ShouldContain(l => l.StartsWith("Lit before work: tyre pressure", StringComparison.Ordinal));
        string.Join('\n', answer.ForPeople).ShouldNotContain("0000 070");
    }

    [Fact]
    public void Bad_input_gets_one_message_with_its_place()
    {
        First(f => f["arrival"]!["lamps"]!["abs"] = true).Message.ShouldContain("'abs' is not a key here");
        First(f => f["arrival"]!["damage"]![0]!.AsObject().Remove("place")).Where.ShouldBe("arrival.damage[0].place");
        First(f => f["arrival"]!["damage"]![0]!["photos"] = new JsonArray("wing.jpg")).Where.ShouldBe("arrival.damage[0].photos[0]");
        First(f => f["work"]!["declined"]![0]!.AsObject().Remove("risk")).Message.ShouldContain("in plain words");
        First(f => f["work"]!["seen"]![0]!["part"] = "gearbox").Where.ShouldBe("work.seen[0].part");
        First(f => f["work"]!["seen"]![1]!["thickness"] = "4 mm").Message.ShouldContain("has no thickness here");
        First(f => f["work"]!["seen"]![0]!["position"] = "axle 12").Where.ShouldBe("work.seen[0].position");
        First(f => f["work"]!["stock"]![0]!["count"] = 0).Where.ShouldBe("work.stock[0].count");
        First(f => f["work"]!["stock"]![0]!.AsObject().Remove("item")).Message.ShouldContain("the shop's list");
        First(f => f["work"]!["stock"]![2]!.AsObject().Remove("mass")).Message.ShouldContain("how heavy");
        First(f => f["vehicle"]!["vin"] = "12345").Where.ShouldBe("vehicle.vin");
    }

    [Fact]
    public void Of_entries_the_moment_of_the_signature_and_who_saw_a_part_are_those_of_the_entry()
    {
        var at = new DateTimeOffset(2026, 3, 14, 9, 30, 0, TimeSpan.Zero);
        var fields = VisitFields.Of(new[] { ("work.declined.0.what", "New rear tyres"), ("work.declined.0.risk", "longer braking in the wet"), ("work.declined.0.signed", "A. Customer"), ("work.seen.0.part", "joint"), ("work.seen.0.position", "1L"), ("work.seen.0.words", "play when it is pulled") }
            .Select((f, i) => new Entry(new Guid(i + 1, 0, 0, new byte[8]), f.Item1, f.Item2, "T1", Role.Trainee, at)));
        var problems = new List<Problem>();
        var state = VisitStanding.Of(fields.Assemble().Root, problems);
        problems.ShouldBeEmpty();
        state.Work.Paper.Declined.ShouldHaveSingleItem().At.ShouldBe("2026-03-14 09:30 UTC");
        state.Work.Paper.Seen.ShouldHaveSingleItem().ShouldSatisfyAllConditions(s => s.By.ShouldBe("T1"), s => s.Role.ShouldBe(Role.Trainee));
    }

    [Theory]
    [InlineData(StockKind.Clip, "grey", 10.0, StockKind.Clip, null, 10.02, true)]
    [InlineData(StockKind.Clip, null, 10.0, StockKind.Adhesive, null, 10.0, false)]
    [InlineData(StockKind.Valve, "Snap-in 43", null, StockKind.Valve, "snap-in43", null, true)]
    [InlineData(StockKind.Valve, "Snap-in 43", null, StockKind.Core, "Snap-in 43", null, false)]
    public void One_thing_of_the_stock_is_one_thing_however_it_is_written(StockKind a, string? nameA, double? gramsA, StockKind b, string? nameB, double? gramsB, bool same)
    {
        (StockName.Key(a, nameA, Grams(gramsA)) == StockName.Key(b, nameB, Grams(gramsB))).ShouldBe(same);

        static Mass? Grams(double? grams) => grams is { } g ? Mass.FromGrams(g) : null;
    }
}
