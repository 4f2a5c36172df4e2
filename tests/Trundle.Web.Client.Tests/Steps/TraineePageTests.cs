using Bunit;
using Trundle.Visits.Bay;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Tests.Steps;

/// <summary>What a trainee and an instructor see at a step that can maim.</summary>
public sealed class TraineePageTests : BayContext
{
    private static readonly (string, string)[] AtTheSeat = [("work.steps.1L.seat", ""), ("work.steps.1L.bead-line", ""), ("work.steps.1L.core-in", ""), ("work.steps.1L.soap-test", "")];

    [Fact]
    public void A_trainee_without_permission_is_told_so_and_can_enter_nothing()
    {
        BeforeTheSignature(Role.Trainee, AtTheSeat);
        var page = Page(Leg.OffTheCar, "1L", "seat");
        page.Find("#permission").TextContent.ShouldBe("Trainees: permission for the first inflation");
        page.FindAll(".stops")[0].TextContent.ShouldContain("you do not begin this: no instructor permitted the first inflation on this visit");
        page.FindAll($"#{FieldPart.IdOf("work.steps.1L.seat")}").ShouldBeEmpty();
        page.FindAll(".next .button").ShouldHaveSingleItem().TextContent.ShouldBe("The instructor enters");
        page.FindAll(".caution").ShouldNotBeEmpty("what can hurt stands there all the same");
    }

    [Fact]
    public async Task An_instructor_permits_and_what_is_missing_is_said()
    {
        BeforeTheSignature(Role.Instructor, AtTheSeat);
        var page = Page(Leg.OffTheCar, "1L", "seat");
        await page.FindAll("button").Single(b => b.TextContent == "Permit a trainee").ClickAsync(new());
        var permit = "Permit the first inflation, by";
        await Press();
        page.Find("[role=alert]").TextContent.ShouldBe("Name the trainee.");
        await page.Find("#permit-for").ChangeAsync("T9");
        await Press();
        page.Find("[role=alert]").TextContent.ShouldContain("passed the machine-safety drill");
        await page.Find("#permit-drill").ChangeAsync("2999-01-01");
        await page.Find("#permit-protection").ChangeAsync(true);
        await Press();
        page.Find("[role=alert]").TextContent.ShouldContain("not here yet");
        await page.Find("#permit-drill").ChangeAsync("2026-03-01");
        await Press();
        page.WaitForAssertion(() => Visit.State.Work.Permissions.ShouldHaveSingleItem().ShouldSatisfyAllConditions(p => p.Lacks.ShouldBeNull(), p => p.For.ShouldBe("T9"), p => p.Act.ShouldBe(HazardousAct.Inflate)));
        page.Find("#permission").ParentElement!.TextContent.ShouldContain("T9: permitted by");

        Task Press() => page.FindAll("button").Single(b => b.TextContent.StartsWith(permit, StringComparison.Ordinal)).ClickAsync(new());
    }

    [Fact]
    public async Task An_instructor_signs_a_trainees_step_off()
    {
        Browser.RoleWord = "instructor";
        Browser.Enter(Sample.Fields("work.handBack"), Sample.Noon);
        Browser.Enter([("work.steps.1L.seat", "270 kPa")], Sample.Noon.AddMinutes(1), "T9", Role.Trainee);
        var page = Page(Leg.OffTheCar, "1L", "seat");
        page.Find("#sign-off").TextContent.ShouldStartWith("Done by a trainee");
        page.FindAll(".stops").ShouldContain(s => s.TextContent.Contains("no instructor permitted the first inflation", StringComparison.Ordinal));
        await page.FindAll("button").Single(b => b.TextContent == "Satisfactory").ClickAsync(new());
        page.WaitForAssertion(() => Visit.State.On(Leg.OffTheCar).Steps.Single(s => s.At == "1L" && s.Step.Id == "seat").Standing.ShouldBe(StepStanding.Passed));
    }

    [Fact]
    public async Task A_near_miss_is_recorded_with_two_touches()
    {
        BeforeTheSignature(Role.Trainee);
        var page = Page(Leg.Refit, "1L", "hub-face");
        page.Find("details.incident summary").TextContent.ShouldBe("Near miss or incident"); // the first touch opens it
        await page.FindAll("details.incident button").Single(b => b.TextContent == "Record a near miss").ClickAsync(new());
        page.WaitForAssertion(() => Visit.State.Work.Incidents.ShouldHaveSingleItem().ShouldSatisfyAllConditions(i => i.Kind.ShouldBe("near miss"), i => i.Where.ShouldBe("Refit"), i => i.By.ShouldNotBeNull()));
    }
}
