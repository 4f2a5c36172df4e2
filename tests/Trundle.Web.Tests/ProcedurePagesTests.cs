using System.Net;
using System.Text.Json.Nodes;
using Trundle.Visits.Bay;

namespace Trundle.Web.Tests;

/// <summary>The office pages of the procedure: who writes, what is said at its place, and which visit is worked by which edition.</summary>
public sealed class ProcedurePagesTests : IAsyncLifetime
{
    private const string Photograph = """{"of":"2026-11-28","steps":[{"id":"rim-photograph","after":"rim-check","title":"Photograph of the rim","text":"One of each side.","hold":true}]}""";

    private RunningBay _bay = null!;

    public async ValueTask InitializeAsync() => _bay = await RunningBay.StartAsync();

    public ValueTask DisposeAsync() => _bay.DisposeAsync();

    private Task<(HttpStatusCode Status, string Text, string? To)> Whole(string text, int after) =>
        _bay.SendFormAsync("/procedures", "/procedures", ("id", Guid.NewGuid().ToString("D")), ("after", $"{after}"), ("text", text));

    [Fact]
    public async Task The_page_lists_every_part_with_its_edition_and_every_step()
    {
        var (status, html) = await _bay.GetAsync("/procedures");
        status.ShouldBe(HttpStatusCode.OK);
        var text = WebUtility.HtmlDecode(html);
        foreach (var part in Procedure.BuiltIn.Parts)
        {
            text.ShouldContain(part.Name);
        }

        foreach (var step in Procedure.BuiltIn.Steps)
        {
            text.ShouldContain($"/procedures/steps/{step.Id}\"");
            step.Cautions.ShouldAllBe(c => text.Contains(c.Text));
        }
    }

    [Theory]
    [InlineData("T1")]
    [InlineData("T4")]
    [InlineData("D1")]
    public async Task Who_may_not_write_it_is_told_so_and_what_was_typed_stays(string name)
    {
        await _bay.EnterAsAsync(name);
        var (status, html, _) = await Whole(Photograph, 0);
        status.ShouldBe(HttpStatusCode.BadRequest);
        WebUtility.HtmlDecode(html).ShouldContain("Only an instructor or the owner writes the workshop's procedure.");
        WebUtility.HtmlDecode(html).ShouldContain("\"id\":\"rim-photograph\"");
        _bay.Store.Procedures.All().ShouldBeEmpty();
    }

    [Fact]
    public async Task Every_problem_of_a_file_is_said_with_its_line_and_the_file_stays_as_typed()
    {
        await _bay.EnterAsAsync("I2");
        var (status, html, _) = await Whole("{\n \"steps\": [\n  {\"id\": \"seet\"},\n  {\"id\": \"core-out\", \"hold\": false}\n ]}", 0);
        status.ShouldBe(HttpStatusCode.BadRequest);
        var text = WebUtility.HtmlDecode(html);
        text.ShouldContain("line 3, steps[0].id: There is no step 'seet'; did you mean 'seat'?");
        text.ShouldContain("line 4, steps[1].hold: 'Core out' is a hold point");
        text.ShouldContain("{\"id\": \"seet\"}");
        _bay.Store.Procedures.All().ShouldBeEmpty();
    }

    [Fact]
    public async Task A_visit_keeps_the_edition_with_which_it_was_opened()
    {
        async Task<JsonObject> OpenAsync() => (await _bay.JsonAsync($"/api/v1/visits/{(string)(await _bay.PostAsync("/api/v1/visits", """{"by":"T1"}""")).Body["id"]!}/file.json")).Body;
        async Task<JsonObject> AgainAsync(string id) => (await _bay.JsonAsync($"/api/v1/visits/{id}/file.json")).Body;

        await _bay.EnterAsAsync("I2");
        var before = (string)(await _bay.PostAsync("/api/v1/visits", """{"by":"T1"}""")).Body["id"]!;
        (await Whole(Photograph, 0)).Status.ShouldBe(HttpStatusCode.Redirect);
        var between = (string)(await _bay.PostAsync("/api/v1/visits", """{"by":"T1"}""")).Body["id"]!;
        (await Whole(Photograph.Replace("One of each side.", "Two of each side.", StringComparison.Ordinal), 1)).Status.ShouldBe(HttpStatusCode.Redirect);
        var after = await OpenAsync();

        (await AgainAsync(before))["procedure"]!.ToJsonString().ShouldBe("""{"of":"2026-11-28"}""");
        ((string)(await AgainAsync(between))["procedure"]!["steps"]![0]!["text"]!).ShouldBe("One of each side.");
        ((string)after["procedure"]!["steps"]![0]!["text"]!).ShouldBe("Two of each side.");
        ((string)after["procedure"]!["edition"]!).ShouldBe("2");

        var (_, first) = await _bay.GetAsync("/procedures/1");
        first.ShouldContain("One of each side.");
        (await _bay.GetAsync("/procedures/3")).Status.ShouldBe(HttpStatusCode.NotFound);
    }

    [Fact]
    public async Task One_step_is_changed_in_a_form_and_its_carried_cautions_stay()
    {
        await _bay.EnterAsAsync("I2");
        var (_, form) = await _bay.GetAsync("/procedures/steps/core-out");
        WebUtility.HtmlDecode(form).ShouldContain(Procedure.BuiltIn.Step("core-out").Cautions[0].Text);
        (await StepAsync("core-out", "false", ("why", "A spring under the bead."), ("text", Procedure.BuiltIn.Step("core-out").Text), ("cautions", "Gloves on.\nDoor open."))).Status.ShouldBe(HttpStatusCode.Redirect);
        var newest = _bay.Store.Procedures.Newest()!;
        JsonNode.Parse(newest.Text)!["steps"]!.ToJsonString().ShouldBe("""[{"id":"core-out","why":"A spring under the bead.","cautions":["Gloves on.","Door open."]}]""");

        // What a hold point says to do is not reworded, and that is said at its field.
        var (status, refused, _) = await StepAsync("core-out", "false", ("text", "Leave the core in."));
        status.ShouldBe(HttpStatusCode.BadRequest);
        var said = WebUtility.HtmlDecode(refused);
        said.IndexOf("What to do at a hold point stays word for word", StringComparison.Ordinal).ShouldBeGreaterThan(said.IndexOf("id=\"step-text-problem\"", StringComparison.Ordinal));

        // The same form again, with a caution taken back: the workshop's own goes, the carried ones stay.
        (await StepAsync("core-out", "false", ("why", "A spring under the bead."), ("cautions", "Gloves on."))).Status.ShouldBe(HttpStatusCode.Redirect);
        var step = Trundle.Web.Office.Procedures.StepForm.Of(Trundle.Visits.Procedures.WorkshopProcedure.Read(Trundle.Visits.Files.FileNode.Parse(_bay.Store.Procedures.Newest()!.Text, "own").Value, []).Procedure.Step("core-out"));
        step["cautions"].ShouldBe("Gloves on.");
        step.Step.Cautions.Count.ShouldBe(Procedure.BuiltIn.Step("core-out").Cautions.Count + 1);
    }

    [Fact]
    public async Task A_new_step_is_written_in_a_form_and_what_is_wrong_is_said_at_its_field()
    {
        await _bay.EnterAsAsync("I2");
        (await _bay.GetAsync("/procedures/steps/rim-check/after")).Status.ShouldBe(HttpStatusCode.OK);
        var (status, html, _) = await StepAsync("rim-check", "true", ("name", "Rim Photograph"), ("title", "Photograph"), ("text", "One of each side."));
        status.ShouldBe(HttpStatusCode.BadRequest);
        var text = WebUtility.HtmlDecode(html);
        text.IndexOf("is not a step's name", StringComparison.Ordinal).ShouldBeGreaterThan(text.IndexOf("id=\"step-id-problem\"", StringComparison.Ordinal));
        text.ShouldContain("value=\"Rim Photograph\"");

        (await StepAsync("rim-check", "true", ("name", "rim-photograph"), ("title", "Photograph"), ("text", "One of each side."), ("choices", "taken\nnot taken"), ("passing", "taken"), ("hold", "true"))).Status.ShouldBe(HttpStatusCode.Redirect);
        var (_, page) = await _bay.GetAsync("/procedures");
        WebUtility.HtmlDecode(page).ShouldContain("Photograph: a new step after 'Clean and check the rim', a hold point.");
        (await StepAsync("rim-check", "true", ("name", "rim-photograph"), ("title", "Again"), ("text", "Again."))).Status.ShouldBe(HttpStatusCode.BadRequest);
    }

    private Task<(HttpStatusCode Status, string Text, string? To)> StepAsync(string step, string isNew, params (string Name, string Value)[] fields) =>
        _bay.SendFormAsync($"/procedures/steps/{step}", "/procedures/steps", [("id", Guid.NewGuid().ToString("D")), ("after", $"{_bay.Store.Procedures.All().Count}"), ("step", step), ("new", isNew), .. fields]);
}
