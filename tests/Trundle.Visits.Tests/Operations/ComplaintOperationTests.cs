using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Operations;

/// <summary>What a complaint may come of, as the command, the visit's check and the bay answer it.</summary>
public sealed class ComplaintOperationTests
{
    private static Reading<Answer> Run(string detail, string operation = "complaint") =>
        FileNode.Parse($$$"""{"vehicle": {"name": "plum coupe", "complaintDetail": {{{detail}}}}}""", "complaint.json").Then(OperationList.Of(operation).Run);

    [Fact]
    public void Causes_come_with_evidence_what_to_look_at_the_next_question_and_safety_first()
    {
        var answer = Run("""{"kind": "shake", "speed": "rising", "felt": "steering-wheel", "after": "wheel-work"}""").Value;
        var causes = answer.Body["causes"]!.AsArray();
        causes.Sum(c => c!["probability"]!.GetValue<double>()).ShouldBe(1, 1e-9);
        causes[0]!["cause"]!.GetValue<string>().ShouldBe("unbalance");
        causes[0]!["evidence"]!.AsArray().Count.ShouldBe(4);
        causes.ShouldAllBe(c => c!["check"]!.GetValue<string>().Length > 0 && c["source"]!.GetValue<string>().Length > 0 && c["status"]!.GetValue<string>().Length > 0);

        // A loose wheel is one in thirty here: it is looked at before anything else, and until then the answer is 'no'.
        answer.No.ShouldBeTrue();
        answer.Body["doNotDrive"]!.GetValue<bool>().ShouldBeTrue();
        answer.Body["notExcluded"]!.AsArray().Select(c => c!.GetValue<string>()).ShouldContain("loose-wheel");
        answer.Body["look"]![0]!["cause"]!.GetValue<string>().ShouldBe("loose-wheel");
        answer.Body["cautions"]![0]!.GetValue<string>().ShouldContain("do not drive");
        answer.ForPeople[0].ShouldStartWith("Caution: not excluded");
        answer.Body["next"]!["answers"]!.AsArray().Count.ShouldBeGreaterThan(1);
    }

    [Fact]
    public void Where_no_danger_is_left_the_answer_is_no_no()
    {
        var answer = Run("""{"kind": "shake", "after": "standing", "warm": "fades"}""").Value;
        answer.No.ShouldBeFalse();
        answer.Body["doNotDrive"]!.GetValue<bool>().ShouldBeFalse();
        answer.Body["causes"]![0]!["cause"]!.GetValue<string>().ShouldBe("flat-from-standing");
        answer.Body["cautions"]!.AsArray().Single()!.GetValue<string>().ShouldBe(ComplaintOperation.Hint);
    }

    [Fact]
    public void A_whole_visit_answers_the_same_on_look_over_even_where_nothing_is_fitted()
    {
        const string detail = """{"kind": "noise", "noise": "hum-turning", "at": "70 km/h"}""";
        JsonNode.DeepEquals(Run(detail, "visit check").Value.Body["legs"]!["lookOver"]!["complaint"], Run(detail).Value.Body).ShouldBeTrue();
        Run("{}", "visit check").Value.Body["legs"]!["lookOver"]!["complaint"].ShouldBeNull();
    }

    [Theory]
    [InlineData("""{"speed": "low", "at": "110 km/h"}""", "at", "'at' says “110 km/h” and 'speed' says “under 50 km/h”; both cannot be so")]
    [InlineData("""{"kind": "shake", "felt": "heard"}""", "felt", "'felt' says “it is only heard” and 'kind' says “it shakes”")]
    [InlineData("""{"kind": "pull", "pull": "none"}""", "pull", "that it pulls")]
    public void What_cannot_be_so_together_is_one_message_at_its_place(string detail, string key, string said)
    {
        foreach (var operation in new[] { "complaint", "visit check" })
        {
            var read = Run(detail, operation);
            read.IsRead.ShouldBeFalse();
            (read.Problem!.Where, read.Problem.Code).ShouldBe(($"vehicle.complaintDetail.{key}", "complaint-contradicts"));
            read.Problem.Message.ShouldContain(said);
        }
    }

    [Theory]
    [InlineData("{}", "vehicle.complaintDetail")]
    [InlineData("""{"kind": "wobble"}""", "vehicle.complaintDetail.kind")]
    [InlineData("""{"kinds": "shake"}""", "vehicle.complaintDetail.kinds")]
    [InlineData("""{"kind": "shake", "at": "110"}""", null)]
    [InlineData("""{"kind": "shake", "at": "0 km/h"}""", "vehicle.complaintDetail.at")]
    [InlineData("""{"kind": "shake", "at": "900 km/h"}""", "vehicle.complaintDetail.at")]
    [InlineData("""{"at": "110 kPa"}""", "vehicle.complaintDetail.at")]
    public void What_cannot_be_read_names_its_place(string detail, string? where)
    {
        var read = Run(detail);
        read.IsRead.ShouldBe(where is null);
        read.Problem?.Where.ShouldBe(where);
    }
}
