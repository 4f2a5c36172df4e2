using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;
using Trundle.Visits.Procedures;

namespace Trundle.Visits.Tests.Procedures;

/// <summary>A workshop's own words that drop an act that keeps people whole, and a visit that took such words along.</summary>
public sealed class ProtectedActsTests
{
    private static (LaidOver Laid, List<Problem> Problems) Read(JsonObject step)
    {
        var problems = new List<Problem>();
        return (WorkshopProcedure.Read(FileNode.From(new JsonObject { ["steps"] = new JsonArray(step) }), problems), problems);
    }

    [Theory]
    [InlineData("Inflate to 700 kPa standing over it.")]
    [InlineData("Leave the valve core in.")]
    [InlineData("There is no need to stand clear.")]
    [InlineData("Cage may be left out for small tyres.")]
    [InlineData("You do not have to look inside.")]
    [InlineData("Skip the stages when it is busy.")]
    [InlineData("Seat it without the restraining device.")]
    [InlineData("Goggles are optional here.")]
    [InlineData("Tighten with the impact wrench to the end.")]
    public void Words_that_drop_a_protected_act_are_refused_wherever_they_stand(string words)
    {
        foreach (var key in new[] { "also", "cautions" })
        {
            foreach (var id in new[] { "seat", "cap-kept", "stones-out" })
            {
                var problem = Read(new JsonObject { ["id"] = id, [key] = new JsonArray("Radio off.", words) }).Problems.ShouldHaveSingleItem($"{id} {key}");
                (problem.Where, problem.Code).ShouldBe(($"steps[0].{key}[1]", ProtectedActs.Denied));
            }
        }

        Read(new JsonObject { ["id"] = "own", ["after"] = "mount", ["title"] = "Ours", ["text"] = words }).Problems.ShouldHaveSingleItem().Where.ShouldBe("steps[0].text");
        Read(new JsonObject { ["id"] = "own", ["after"] = "mount", ["title"] = words, ["text"] = "As said." }).Problems.ShouldHaveSingleItem().Where.ShouldBe("steps[0].title");
        Read(new JsonObject { ["id"] = "seat", ["text"] = Procedure.BuiltIn.Step("seat").Text + " " + words }).Problems.ShouldHaveSingleItem().Where.ShouldBe("steps[0].text");
    }

    [Theory]
    [InlineData("Never stand over it, and never skip the cage.")]
    [InlineData("Stand clear, do not talk.")]
    [InlineData("The foreman holds the hose.")]
    [InlineData("The cage stands by the door.")]
    public void Words_that_ask_for_it_or_turn_the_denial_round_pass(string words)
    {
        var (laid, problems) = Read(new JsonObject { ["id"] = "cap-kept", ["also"] = new JsonArray(words) });
        problems.ShouldBeEmpty();
        laid.Procedure.Step("cap-kept").OwnWords.ShouldBe([(words, false)]);
        laid.Procedure.Step("cap-kept").Cautions.ShouldBe(Procedure.BuiltIn.Step("cap-kept").Cautions);
    }

    [Fact]
    public void A_not_beside_a_protected_act_is_warned_of_and_a_pressure_is_refused_where_tyres_are_seated()
    {
        var (laid, problems) = Read(new JsonObject { ["id"] = "seat", ["also"] = new JsonArray("Do not use the old cage.") });
        problems.ShouldBeEmpty();
        (laid.Warnings.ShouldHaveSingleItem().Where, laid.Warnings[0].Code).ShouldBe(("steps[0].also[0]", ProtectedActs.Denied));
        OperationList.Of("procedure check").Run(FileNode.Parse("""{"steps": [{"id": "seat", "also": ["Do not use the old cage."]}]}""", "own").Value).Value.Body["warnings"]!.AsArray().Count.ShouldBe(1);

        foreach (var (words, refused) in new[] { ("Bring it to 276 kPa.", false), ("Bring it to 277 kPa.", true), ("Up to 3,2 bar.", true), ("40 psi at most.", false), ("45 psi.", true) })
        {
            var read = Read(new JsonObject { ["id"] = "seat", ["also"] = new JsonArray(words) });
            read.Problems.Count.ShouldBe(refused ? 1 : 0, words);
            read.Problems.ShouldAllBe(p => p.Code == ProtectedActs.Pressure && p.Where == "steps[0].also[0]");
        }

        var after = Read(new JsonObject { ["id"] = "pressure-set", ["also"] = new JsonArray("Lorries to 850 kPa.") });
        after.Problems.ShouldBeEmpty();
        after.Laid.Warnings.ShouldHaveSingleItem().Code.ShouldBe(ProtectedActs.Pressure);
    }

    /// <summary>The carried words are the measure of what is refused wrongly: none of them drops an act.</summary>
    [Fact]
    public void No_carried_sentence_would_be_refused()
    {
        var all = Procedure.BuiltIn.Steps.SelectMany(s => s.Cautions.Concat(s.Also).Select(c => c.Text).Concat([s.Title, s.Text, s.Why ?? "", s.Stop ?? ""]).Concat(s.Tools)).Distinct(StringComparer.Ordinal).ToList();
        all.Count.ShouldBeGreaterThan(300);
        all.SelectMany(t => ProtectedActs.In(t, false).Where(a => a.Refused).Select(a => a.Message)).ShouldBeEmpty();
    }

    [Fact]
    public void A_visit_that_took_reworded_safety_words_along_is_read_told_and_shown_with_the_carried_ones()
    {
        var visit = FileNode.Parse("""
            {"vehicle": {"name": "Grey saloon"}, "procedure": {"name": "Ours", "edition": "1", "steps": [
              {"id": "core-out", "text": "Let a little air out.", "hold": false, "cautions": ["Some air may stay in when a bead is broken. The core leaves gently: face and hands may be in its line.", "Radio off."]},
              {"id": "own", "after": "core-out", "title": "Ours", "text": "Leave the valve core in.", "hold": true}]}}
            """, "visit.json").Value;
        var answer = VisitCheckOperation.Run(visit).Value;
        answer.Body["procedureLeftOut"]!.AsArray().Count.ShouldBe(2);
        ((string)answer.Body["procedureLeftOut"]![0]!).ShouldContain("cautions[0], hold, text");
        answer.ForPeople.ShouldContain(l => l.StartsWith("Caution: Words of the workshop's own procedure are left out", StringComparison.Ordinal));

        var problems = new List<Problem>();
        var step = VisitFileReader.Read(visit, problems).Procedure.Step("core-out");
        problems.ShouldBeEmpty();
        var carried = Procedure.BuiltIn.Step("core-out");
        (step.Text, step.HoldPoint).ShouldBe((carried.Text, true));
        step.Cautions.Take(carried.Cautions.Count).ShouldBe(carried.Cautions);
        step.OwnWords.Select(w => w.Words).ShouldContain("Radio off.");
        step.OwnWords.ShouldContain(w => w.Words.Contains("are left out", StringComparison.Ordinal) && w.IsCaution);
        VisitFileReader.Read(visit, problems).Procedure.Step("own").ShouldSatisfyAllConditions(s => s.HoldPoint.ShouldBeTrue(), s => s.Text.ShouldNotContain("core in"));
    }
}
