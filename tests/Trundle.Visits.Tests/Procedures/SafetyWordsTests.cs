using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;
using Trundle.Visits.Procedures;

namespace Trundle.Visits.Tests.Procedures;

/// <summary>The words of hold points, stops and cautions: no workshop's file rewords them, whichever step they stand at, and every file may add to them.</summary>
public sealed class SafetyWordsTests
{
    public static TheoryData<string> HoldPoints => [.. Procedure.BuiltIn.Steps.Where(s => s.HoldPoint).Select(s => s.Id)];

    public static TheoryData<string> Stops => [.. Procedure.BuiltIn.Steps.Where(s => s.Stop is not null).Select(s => s.Id)];

    private static (LaidOver Laid, List<Problem> Problems) Step(string id, params (string Key, JsonNode Value)[] own)
    {
        var step = new JsonObject { ["id"] = id };
        foreach (var (key, value) in own)
        {
            step[key] = value;
        }

        var problems = new List<Problem>();
        return (WorkshopProcedure.Read(FileNode.From(new JsonObject { ["steps"] = new JsonArray(step) }), problems), problems);
    }

    [Theory]
    [MemberData(nameof(HoldPoints))]
    public void No_hold_point_is_called_or_told_otherwise(string id)
    {
        var carried = Procedure.BuiltIn.Step(id);
        foreach (var (key, words) in new[] { ("title", "As you like"), ("text", "This may be skipped."), ("text", carried.Text + "s"), ("text", carried.Text.ToUpperInvariant()), ("text", "Not so: " + carried.Text) })
        {
            var (laid, problems) = Step(id, (key, words));
            var problem = problems.ShouldHaveSingleItem();
            (problem.Where, problem.Code).ShouldBe(($"steps[0].{key}", "safety-words-stay"));
            problem.Message.ShouldContain(key == "title" ? carried.Title : carried.Text);
            laid.Procedure.Step(id).ShouldBe(carried, "nothing of a file with a problem is laid over");
        }
    }

    [Theory]
    [MemberData(nameof(Stops))]
    public void What_stops_a_step_is_not_reworded(string id)
    {
        var carried = Procedure.BuiltIn.Step(id).Stop!;
        var problem = Step(id, ("stop", "Go on.")).Problems.ShouldHaveSingleItem();
        (problem.Where, problem.Code).ShouldBe(("steps[0].stop", "safety-words-stay"));
        problem.Message.ShouldContain(carried);
        var (laid, problems) = Step(id, ("stop", carried + " Then ring the foreman."));
        problems.ShouldBeEmpty();
        laid.Procedure.Step(id).Stop.ShouldBe(carried + " Then ring the foreman.");
        laid.Changes.ShouldHaveSingleItem().ShouldEndWith("more on what stops it.");
    }

    [Fact]
    public void No_caution_is_added_that_is_a_carried_one_reworded()
    {
        foreach (var step in Procedure.BuiltIn.Steps)
        {
            foreach (var caution in step.Cautions.Where(c => c.Text.Split(' ', ',', '.', ':').Count(w => w.Length >= 4) > 3))
            {
                foreach (var key in new[] { "cautions", "also" })
                {
                    var turned = "It is not so that " + char.ToLowerInvariant(caution.Text[0]) + caution.Text[1..];
                    var problem = Step(step.Id, (key, new JsonArray("Ear protection on.", turned))).Problems.ShouldHaveSingleItem(turned);
                    (problem.Where, problem.Code).ShouldBe(($"steps[0].{key}[1]", "caution-reworded"));
                    problem.Message.ShouldContain(caution.Text);
                }
            }
        }

        Step("core-out", ("cautions", new JsonArray("Some air may stay in when a bead is broken. The core leaves gently: face and hands may be in its line."))).Problems.ShouldHaveSingleItem().Code.ShouldBe("caution-reworded");
    }

    [Fact]
    public void A_caution_reworded_at_another_step_or_at_a_new_one_is_refused_too()
    {
        const string turned = "Not all air need be out before a bead is broken. The core leaves like a feather: face, hands and other people in its line.";
        var problem = Step("cap-kept", ("cautions", new JsonArray(turned))).Problems.ShouldHaveSingleItem();
        (problem.Where, problem.Code).ShouldBe(("steps[0].cautions[0]", "caution-reworded"));
        Step("own", ("after", "core-out"), ("title", "Once more"), ("text", "Look again."), ("also", new JsonArray("Slowly.", turned))).Problems.ShouldHaveSingleItem().Where.ShouldBe("steps[0].also[1]");

        // A carried caution repeated word for word elsewhere is no rewording.
        Step("cap-kept", ("cautions", new JsonArray(Procedure.BuiltIn.Step("core-out").Cautions[0].Text))).Problems.ShouldBeEmpty();
    }

    [Fact]
    public void No_carried_sentence_is_taken_for_another_of_its_step_reworded()
    {
        foreach (var step in Procedure.BuiltIn.Steps)
        {
            foreach (var own in step.Cautions.Concat(step.Also).Select(s => s.Text))
            {
                step.Cautions.Where(c => c.Text != own && SafetyWords.IsReworded(c.Text, own)).ShouldBeEmpty(own);
            }
        }
    }

    [Fact]
    public void A_file_adds_to_a_hold_point_and_rewords_what_is_no_safety_word()
    {
        var seat = Procedure.BuiltIn.Step("seat");
        var (laid, problems) = Step("seat", ("text", seat.Text + "\nThe foreman stands at the valve."), ("why", "It jumps once."), ("cautions", new JsonArray("Radio off.")));
        problems.ShouldBeEmpty();
        laid.Procedure.Step("seat").Text.ShouldStartWith(seat.Text);
        laid.Changes.ShouldHaveSingleItem().ShouldContain("more on what to do, why is reworded, 1 more caution");
        Step("valve", ("title", "New valve, always"), ("text", "One of the box by the door.")).Problems.ShouldBeEmpty();
    }

    [Fact]
    public void A_tool_of_a_hold_point_stays_and_that_is_said()
    {
        var (laid, problems) = Step("seat", ("tools", new JsonArray("the long hose", "clip-on chuck")));
        problems.ShouldBeEmpty();
        laid.Procedure.Step("seat").Tools.ShouldBe([.. Procedure.BuiltIn.Step("seat").Tools, "the long hose"]);
        laid.Kept.ShouldContain(k => k.Contains("eye and ear protection", StringComparison.Ordinal));
        Step("valve", ("tools", new JsonArray("the long puller"))).Laid.Procedure.Step("valve").Tools.ShouldBe(["the long puller"]);
    }

    [Fact]
    public void The_check_refuses_with_one_message_at_its_place()
    {
        var text = ProcedureText.Text(ProcedureText.Whole(Procedure.BuiltIn)).Replace("All air out before a bead is broken.", "No air need be out before a bead is broken.", StringComparison.Ordinal);
        var at = JsonNode.Parse(text)!["steps"]!.AsArray().Select((s, i) => (s, i)).First(s => (string)s.s!["id"]! == "core-out").i;
        var read = OperationList.Of("procedure check").Run(FileNode.Parse(text, "own").Value);
        read.IsRead.ShouldBeFalse();
        read.Problem!.Where.ShouldBe($"steps[{at}].cautions[0]");
        read.Problem.Code.ShouldBe("caution-reworded");
    }
}
