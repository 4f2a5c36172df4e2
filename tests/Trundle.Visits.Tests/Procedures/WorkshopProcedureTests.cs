using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;
using Trundle.Visits.Procedures;

namespace Trundle.Visits.Tests.Procedures;

/// <summary>A workshop's own file laid over the carried procedure: what it adds, what it may not, and what it says where it is wrong.</summary>
public sealed class WorkshopProcedureTests
{
    private const string Own = """
        {"name": "Ours", "edition": "3",
         "machines": [{"name": "the machine by the door", "instruction": "Its book, page 12: clamp from inside, first speed only."}],
         "steps": [
           {"id": "seat", "why": "It jumps once.", "cautions": ["Ear protection on.", {"text": "Door of the bay shut.", "when": ["truck"]}]},
           {"id": "valve", "hold": true, "text": "New valve, always."},
           {"id": "rim-photo", "after": "rim-check", "title": "Photograph of the rim", "text": "One of each side, with the stamp.", "enter": "choice", "choices": ["both sides", "not taken"], "passing": ["both sides"], "stop": "Take them.", "hold": true},
           {"id": "rim-shelf", "after": "rim-check", "title": "Old tyre on its shelf", "text": "Label it with the visit."}]}
        """;

    private static (LaidOver Laid, List<Problem> Problems) Read(string json)
    {
        var problems = new List<Problem>();
        return (WorkshopProcedure.Read(FileNode.Parse(json, "own").Value, problems), problems);
    }

    [Fact]
    public void The_carried_procedure_printed_whole_changes_nothing()
    {
        var (laid, problems) = Read(ProcedureText.Text(ProcedureText.Whole(Procedure.BuiltIn)));
        problems.ShouldBeEmpty();
        laid.Changes.ShouldBeEmpty();
        laid.Kept.ShouldBeEmpty();
        laid.Procedure.Steps.ShouldBe(Procedure.BuiltIn.Steps);
    }

    [Fact]
    public void What_it_says_holds_and_what_it_does_not_name_stays()
    {
        var (laid, problems) = Read(Own);
        problems.ShouldBeEmpty();
        var seat = laid.Procedure.Step("seat");
        seat.Why.ShouldBe("It jumps once.");
        seat.Text.ShouldBe(Procedure.BuiltIn.Step("seat").Text);
        seat.Cautions.Select(c => c.Text).ShouldBe([.. Procedure.BuiltIn.Step("seat").Cautions.Select(c => c.Text), "Ear protection on.", "Door of the bay shut."]);
        seat.Where(Circumstances.Ordinary)!.Cautions.ShouldContain(c => c.Text == "Ear protection on.");
        seat.Where(Circumstances.Ordinary)!.Cautions.ShouldNotContain(c => c.Text == "Door of the bay shut.");
        laid.Procedure.Step("valve").HoldPoint.ShouldBeTrue();
        laid.Procedure.Steps.Select(s => s.Id).SkipWhile(id => id != "rim-check").Take(4).ShouldBe(["rim-check", "rim-photo", "rim-shelf", "tube-and-flap"]);
        laid.Procedure.Step("rim-photo").ShouldSatisfyAllConditions(s => s.Leg.ShouldBe(Leg.OffTheCar), s => s.PerWheel.ShouldBeTrue(), s => s.Job.ShouldBe(WheelJob.Demount), s => s.HoldPoint.ShouldBeTrue());
        laid.Changes.Count.ShouldBe(5);
        laid.Procedure.EditionText.ShouldBe($"edition {Procedure.BuiltIn.Edition}, with the workshop's own of edition 3");
    }

    [Fact]
    public void What_a_visit_takes_along_gives_the_same_procedure_again()
    {
        var own = Read(Own).Laid.Procedure;
        var taken = ProcedureText.OwnOnly(own);
        taken["steps"]!.AsArray().Count.ShouldBe(4, "what it does not change is not taken along");
        var (again, problems) = Read(taken.ToJsonString());
        problems.ShouldBeEmpty();
        ProcedureText.Text(ProcedureText.Whole(again.Procedure)).ShouldBe(ProcedureText.Text(ProcedureText.Whole(own)));
        again.Procedure.Machines.ShouldBe(own.Machines);
        again.Procedure.EditionText.ShouldBe(own.EditionText);
    }

    [Fact]
    public void Cautions_that_a_file_leaves_out_stay_and_that_is_said()
    {
        var (laid, problems) = Read("""{"steps": [{"id": "core-out", "cautions": ["Gloves."]}, {"id": "by-hand", "cautions": []}]}""");
        problems.ShouldBeEmpty();
        foreach (var id in new[] { "core-out", "by-hand" })
        {
            laid.Procedure.Step(id).Cautions.Take(Procedure.BuiltIn.Step(id).Cautions.Count).ShouldBe(Procedure.BuiltIn.Step(id).Cautions);
        }

        laid.Kept.ShouldContain(k => k.StartsWith("Core out: the file leaves out a caution of the carried procedure; it stays: “All air out", StringComparison.Ordinal));
        laid.Kept.ShouldContain(k => k.Contains("Never power a fixing on from the socket", StringComparison.Ordinal));
    }

    [Fact]
    public void No_file_lifts_a_hold_point_or_loses_a_step()
    {
        foreach (var step in Procedure.BuiltIn.Steps.Where(s => s.HoldPoint))
        {
            var (laid, problems) = Read($$"""{"steps": [{"id": "{{step.Id}}", "hold": false}]}""");
            problems.ShouldHaveSingleItem().Code.ShouldBe("hold-point-stays", step.Id);
            laid.Procedure.Step(step.Id).HoldPoint.ShouldBeTrue(step.Id);
        }

        Read("""{"steps": []}""").Laid.Procedure.Steps.Count.ShouldBe(Procedure.BuiltIn.Steps.Count);
    }

    [Theory]
    [InlineData("""{"steps": [{"id": "core-out", "after": "bead-breaking"}]}""", "steps[0].after", "carried-stays", "where it stands")]
    [InlineData("""{"steps": [{"id": "air-to-road", "after": "received"}]}""", "steps[0].after", "carried-stays", "behind 'lowered'")]
    [InlineData("""{"stepps": []}""", "stepps", "key-unknown", "did you mean 'steps'")]
    [InlineData("""{"steps": [{"title": "x"}]}""", "steps[0].id", "missing", "name the step")]
    [InlineData("""{"steps": [{"id": "Seat"}]}""", "steps[0].id", "id-unreadable", "small letters")]
    [InlineData("""{"steps": [{"id": "seet"}]}""", "steps[0].id", "step-unknown", "did you mean 'seat'")]
    [InlineData("""{"steps": [{"id": "own", "after": "rim-chek", "title": "T", "text": "X"}]}""", "steps[0].after", "step-unknown", "did you mean 'rim-check'")]
    [InlineData("""{"steps": [{"id": "own", "after": "rim-check", "text": "X"}]}""", "steps[0].title", "missing", "a few words")]
    [InlineData("""{"steps": [{"id": "own", "after": "rim-check", "title": "T"}]}""", "steps[0].text", "missing", "what to do")]
    [InlineData("""{"steps": [{"id": "own", "after": "rim-check", "title": "T", "text": "X", "leg": "prove"}]}""", "steps[0].leg", "leg-of-the-step-before", "offTheCar")]
    [InlineData("""{"steps": [{"id": "own", "after": "rim-check", "title": "T", "text": "X", "enter": "torques"}]}""", "steps[0].enter", "entry-of-a-carried-step", "'confirm', 'choice', 'pressure' or 'text'")]
    [InlineData("""{"steps": [{"id": "own", "after": "rim-check", "title": "T", "text": "X", "choices": ["a"], "passing": ["a"]}]}""", "steps[0].enter", "choices-and-entry", "\"enter\": \"choice\"")]
    [InlineData("""{"steps": [{"id": "own", "after": "rim-check", "title": "T", "text": "X", "enter": "choice"}]}""", "steps[0].choices", "choices-and-entry", "'choices'")]
    [InlineData("""{"steps": [{"id": "own", "after": "rim-check", "title": "T", "text": "X", "enter": "choice", "choices": ["a"], "passing": ["b"]}]}""", "steps[0].passing[0]", "word-unknown", "write 'a'")]
    [InlineData("""{"steps": [{"id": "own", "after": "rim-check", "title": "T", "text": "X", "enter": "choice", "choices": ["a"]}]}""", "steps[0].passing", "missing", "nothing ever passes")]
    [InlineData("""{"steps": [{"id": "own", "after": "rim-check", "title": "T", "text": "X", "when": ["sensors"]}]}""", "steps[0].when[0]", "word-unknown", "did you mean 'sensor'")]
    [InlineData("""{"steps": [{"id": "seat", "enter": "confirm"}]}""", "steps[0].enter", "carried-stays", "pressure")]
    [InlineData("""{"steps": [{"id": "soap-test", "passing": ["bubbles"], "choices": ["no bubbles", "bubbles"]}]}""", "steps[0].passing", "carried-stays", "no bubbles")]
    [InlineData("""{"steps": [{"id": "seat", "leg": "prove"}]}""", "steps[0].leg", "carried-stays", "offTheCar")]
    [InlineData("""{"steps": [{"id": "seat", "job": "balance"}]}""", "steps[0].job", "carried-stays", "demount")]
    [InlineData("""{"steps": [{"id": "seat", "machine": false}]}""", "steps[0].machine", "machine-stays", "comes first")]
    [InlineData("""{"steps": [{"id": "valve", "text": "New.", "when": ["truck"]}]}""", "steps[0].when", "words-hold-everywhere", "'also' or 'cautions'")]
    [InlineData("""{"steps": [{"id": "seat", "cautions": [""]}]}""", "steps[0].cautions[0]", "empty", "a sentence")]
    [InlineData("""{"steps": [{"id": "seat", "cautions": [{"when": ["truck"]}]}]}""", "steps[0].cautions[0].text", "missing", "the sentence")]
    [InlineData("""{"steps": [{"id": "seat"}, {"id": "seat"}]}""", "steps[1].id", "step-twice", "in one place")]
    [InlineData("""{"of": "1999"}""", "of", "edition-not-carried", "look through it again")]
    [InlineData("""{"machines": [{"name": "a"}]}""", "machines[0].instruction", "missing", "where it stands")]
    public void What_cannot_be_meant_is_refused_at_its_place(string json, string where, string code, string said)
    {
        var problem = Read(json).Problems.ShouldHaveSingleItem();
        (problem.Where, problem.Code).ShouldBe((where, code));
        problem.Message.ShouldContain(said);
    }

    [Fact]
    public void A_visit_is_worked_by_the_procedure_in_its_file()
    {
        var file = JsonNode.Parse(Bay.VisitStandingTests.SampleText)!.AsObject();
        file["procedure"] = JsonNode.Parse(Own);
        var problems = new List<Problem>();
        var state = VisitStanding.Of(FileNode.Parse(file.ToJsonString(), "own").Value, problems);
        problems.ShouldBeEmpty();
        state.Stops.Select(s => (s.Position, s.What)).ShouldBe([("1L", "Photograph of the rim"), ("1R", "Photograph of the rim")]);
        file["work"]!["steps"]!["1L"]!["rim-photo"] = "both sides";
        file["work"]!["steps"]!["1R"]!["rim-photo"] = "both sides";
        VisitStanding.Of(FileNode.Parse(file.ToJsonString(), "own").Value, problems).MayLeave.ShouldBeTrue();
        file["procedure"]!["steps"]![0]!["hold"] = false;
        var kept = VisitStanding.Of(FileNode.Parse(file.ToJsonString(), "own").Value, problems).Work.Procedure;
        problems.ShouldBeEmpty("a visit is read as it was kept");
        kept.Step("seat").HoldPoint.ShouldBeTrue();
        kept.LeftOut.ShouldHaveSingleItem().ShouldContain("(hold)");
    }

    [Fact]
    public void The_command_prints_the_carried_one_and_checks_a_workshops_own()
    {
        var printed = OperationList.Of("procedure print").Run(FileNode.From(new JsonObject())).Value;
        var check = OperationList.Of("procedure check").Run(FileNode.Parse(string.Join('\n', printed.ForPeople), "printed").Value).Value;
        check.ForPeople[1].ShouldBe("The file changes nothing.");
        check.Body["steps"]!.AsArray().Count.ShouldBe(Procedure.BuiltIn.Steps.Count);
        foreach (var part in Procedure.BuiltIn.Parts)
        {
            OperationList.Of("procedure print").Run(FileNode.From(new JsonObject { ["part"] = part.Key })).Value.Body["edition"]!.GetValue<string>().ShouldBe(part.Edition);
        }

        OperationList.Of("procedure check").Run(FileNode.Parse(Own, "own").Value).Value.ForPeople.ShouldContain(l => l.Contains("Photograph of the rim: a new step after", StringComparison.Ordinal));
    }
}
