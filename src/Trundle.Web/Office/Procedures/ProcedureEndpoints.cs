using System.Globalization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Trundle.Measures;
using Trundle.Store;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Visits.Procedures;
using Trundle.Web.People;

namespace Trundle.Web.Office.Procedures;

/// <summary>The procedure that holds, what the workshop laid over it, and its editions.</summary>
internal static class ProcedureEndpoints
{
    public static void MapProcedures(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/procedures", (HttpContext context, WorkshopStore store, TimeProvider clock) => List(context, store, clock, null, []));
        routes.MapPost("/procedures", Whole);
        routes.MapGet("/procedures/{number:int}", (int number, HttpContext context, WorkshopStore store, TimeProvider clock) =>
            store.Procedures.All().FirstOrDefault(e => e.Number == number) is { } edition
                ? new RazorComponentResult<EditionPage>(new { Frame = OfficeFrame.Of(context, store, clock), Edition = edition })
                : Results.NotFound());
        routes.MapGet("/procedures/steps/{id}", (string id, HttpContext context, WorkshopStore store, TimeProvider clock) =>
            InForce(store).Find(id) is { } step ? Step(context, store, clock, StepForm.Of(step)) : Results.NotFound());
        routes.MapGet("/procedures/steps/{id}/after", (string id, HttpContext context, WorkshopStore store, TimeProvider clock) =>
            InForce(store).Find(id) is { } before ? Step(context, store, clock, StepForm.After(before)) : Results.NotFound());
        routes.MapPost("/procedures/steps", OneStep);
    }

    /// <summary>The procedure that the next visit takes along.</summary>
    public static Procedure InForce(WorkshopStore store) =>
        store.Procedures.Newest() is { } newest && FileNode.Parse(newest.Text, "procedure") is { IsRead: true } root ? WorkshopProcedure.ReadKept(root.Value, []).Procedure : Procedure.BuiltIn;

    private static IResult Whole(HttpContext context, IFormCollection sent, WorkshopStore store, TimeProvider clock)
    {
        var text = sent["text"].ToString().ReplaceLineEndings("\n");
        if (By(context, store, clock) is not { } by)
        {
            return List(context, store, clock, text, [NobodyChosen]);
        }

        return store.Procedures.Add(Identifier(sent), text, After(sent), by).Match(
            _ => Results.LocalRedirect("~/procedures"),
            problem => List(context, store, clock, text, Problems(text, problem)));
    }

    private static IResult OneStep(HttpContext context, IFormCollection sent, WorkshopStore store, TimeProvider clock)
    {
        var procedure = InForce(store);
        if (StepForm.Sent(sent, procedure) is not { } form)
        {
            return Results.NotFound();
        }

        if (By(context, store, clock) is not { } by)
        {
            return Step(context, store, clock, form with { Problem = NobodyChosen });
        }

        return form.Into(store.Procedures.Newest()?.Text).Then(text => store.Procedures.Add(Identifier(sent), text, After(sent), by)).Match(
            _ => Results.LocalRedirect("~/procedures"),
            problem => Step(context, store, clock, form with { Problem = problem }));
    }

    /// <summary>Every problem of the text, each with its line; the store's own where the text is sound.</summary>
    private static List<Problem> Problems(string text, Problem first)
    {
        var root = FileNode.Parse(text, "procedure");
        if (!root.IsRead)
        {
            return [first];
        }

        var problems = new List<Problem>();
        WorkshopProcedure.Read(root.Value, problems);
        return problems.Count == 0 ? [first] : [.. problems.Select(p => p with { Where = Line(root.Value, p.Where) is { } line ? string.Create(CultureInfo.InvariantCulture, $"line {line}, {p.Where}") : p.Where })];
    }

    /// <summary>The line on which a place stands, or on which what holds it begins.</summary>
    private static int? Line(FileNode node, string where)
    {
        FileNode? best = null;
        void Look(FileNode at)
        {
            if (at.Path == where || (at.Path.Length > 0 && where.StartsWith(at.Path, StringComparison.Ordinal) && at.Path.Length > (best?.Path.Length ?? 0)))
            {
                best = at;
            }

            foreach (var child in at.Members.Select(m => m.Node).Concat(at.Items))
            {
                Look(child);
            }
        }

        Look(node);
        return best?.Line;
    }

    private static Guid Identifier(IFormCollection sent) => Guid.TryParseExact(sent["id"], "D", out var id) && id != Guid.Empty ? id : Guid.CreateVersion7();

    private static int After(IFormCollection sent) => int.TryParse(sent["after"], NumberStyles.None, CultureInfo.InvariantCulture, out var after) ? after : 0;

    private static Recorder? By(HttpContext context, WorkshopStore store, TimeProvider clock) =>
        WhoEnters.On(context, store) is { } person ? new Recorder(person.Name, person.Role, clock.GetUtcNow()) : null;

    private static Problem NobodyChosen => new("by", "person-unknown", "First choose who enters, on the people page.");

    private static RazorComponentResult List(HttpContext context, WorkshopStore store, TimeProvider clock, string? typed, IReadOnlyList<Problem> problems) =>
        new RazorComponentResult<ProceduresPage>(new Dictionary<string, object?>
        {
            [nameof(ProceduresPage.Frame)] = OfficeFrame.Of(context, store, clock),
            [nameof(ProceduresPage.Procedure)] = InForce(store),
            [nameof(ProceduresPage.Editions)] = store.Procedures.All(),
            [nameof(ProceduresPage.Typed)] = typed,
            [nameof(ProceduresPage.Problems)] = problems,
        })
        { StatusCode = problems.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest };

    private static RazorComponentResult Step(HttpContext context, WorkshopStore store, TimeProvider clock, StepForm form) =>
        new RazorComponentResult<StepPage>(new Dictionary<string, object?>
        {
            [nameof(StepPage.Frame)] = OfficeFrame.Of(context, store, clock),
            [nameof(StepPage.Form)] = form,
            [nameof(StepPage.After)] = store.Procedures.Newest()?.Number ?? 0,
        })
        { StatusCode = form.Problem is null ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest };
}
