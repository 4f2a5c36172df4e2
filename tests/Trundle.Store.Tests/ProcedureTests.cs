using Trundle.Visits.Bay;

namespace Trundle.Store.Tests;

/// <summary>The workshop's own procedure: editions that are added and never changed, and visits that keep the one they were opened with.</summary>
public sealed class ProcedureTests : IDisposable
{
    private const string Gloves = """{"of":"2026-11-28","steps":[{"id":"core-out","cautions":["Gloves on."]}]}""";
    private const string Photograph = """{"of":"2026-11-28","steps":[{"id":"rim-photograph","after":"rim-check","title":"Photograph","text":"One of each side.","hold":true}]}""";

    private static readonly Recorder Instructor = new("I2", Role.Instructor, Workshop.Morning);
    private readonly Workshop _workshop = new();

    public void Dispose() => _workshop.Dispose();

    private ProcedureStore Store => _workshop.Store.Procedures;

    [Fact]
    public void An_edition_is_added_with_who_and_when_and_none_is_changed()
    {
        Store.Add(Guid.NewGuid(), Gloves, 0, Instructor).Value.Number.ShouldBe(1);
        Store.Add(Guid.NewGuid(), Photograph, 1, new Recorder("O1", Role.Owner, Workshop.Morning.AddHours(1))).Value.Number.ShouldBe(2);
        var all = _workshop.Reopen().Procedures.All();
        all.Select(e => (e.Number, e.Text, e.By, e.Role)).ShouldBe([(2, Photograph, "O1", Role.Owner), (1, Gloves, "I2", Role.Instructor)]);
        all[0].At.ShouldBe(Workshop.Morning.AddHours(1));
        all[1].Changes.ShouldHaveSingleItem().ShouldBe("Core out: 1 more caution.");
        all[1].Kept.ShouldNotBeEmpty("the file leaves out the carried caution, and it stays");
        Store.Newest()!.Number.ShouldBe(2);
    }

    [Theory]
    [InlineData(Role.Desk, false)]
    [InlineData(Role.Technician, false)]
    [InlineData(Role.Trainee, false)]
    [InlineData(Role.Instructor, true)]
    [InlineData(Role.Owner, true)]
    public void Only_an_instructor_or_the_owner_writes_it(Role role, bool may)
    {
        var added = Store.Add(Guid.NewGuid(), Gloves, 0, Instructor with { Role = role });
        added.IsRead.ShouldBe(may);
        if (!may)
        {
            added.Problem!.Code.ShouldBe("may-not-edit");
            Store.All().ShouldBeEmpty();
        }
    }

    [Theory]
    [InlineData("{", "json")]
    [InlineData("""{"steps":[{"id":"core-out","hold":false}]}""", "hold-point-stays")]
    [InlineData("""{"steps":[{"id":"coer-out"}]}""", "step-unknown")]
    public void What_is_wrong_is_not_kept(string text, string code)
    {
        var added = Store.Add(Guid.NewGuid(), text, 0, Instructor);
        added.Problem!.Code.ShouldStartWith(code);
        Store.All().ShouldBeEmpty();
    }

    [Fact]
    public void A_sentence_longer_than_a_visit_can_keep_is_said_and_not_kept()
    {
        Store.Add(Guid.NewGuid(), $$"""{"steps":[{"id":"core-out","why":"{{new string('a', Entry.MostCharacters + 1)}}"}]}""", 0, Instructor).Problem!.Code.ShouldBe("too-long");
        Store.All().ShouldBeEmpty();
    }

    [Fact]
    public void What_somebody_else_wrote_meanwhile_is_not_covered_and_a_form_sent_twice_is_one_edition()
    {
        var id = Guid.NewGuid();
        Store.Add(id, Gloves, 0, Instructor).Value.Number.ShouldBe(1);
        Store.Add(id, Gloves, 0, Instructor).Value.Number.ShouldBe(1);
        Store.Add(Guid.NewGuid(), Photograph, 0, Instructor).Problem!.Code.ShouldBe("edited-since");
        Store.Add(Guid.NewGuid(), Gloves, 1, Instructor).Problem!.Code.ShouldBe("nothing-changed");
        Store.All().Count.ShouldBe(1);
    }

    [Fact]
    public void A_visit_takes_along_the_edition_and_what_it_changes_only()
    {
        Store.ForAVisit().ShouldBe([("procedure.of", Procedure.BuiltIn.Edition)]);
        Store.Add(Guid.NewGuid(), Gloves, 0, Instructor);
        var fields = Store.ForAVisit();
        fields.ShouldContain(("procedure.edition", "1"));
        fields.ShouldContain(("procedure.steps.0.cautions.0", "Gloves on."));
        fields.Count.ShouldBe(5, "of, name, edition, the step's id and its caution");
    }

    [Fact]
    public void Nobody_enters_another_procedure_into_an_open_visit()
    {
        var visit = _workshop.OpenVisit();
        _workshop.Append(visit, Workshop.Typed("procedure.of", Procedure.BuiltIn.Edition), Workshop.Typed(EntryGate.NumberField, "26-1", 1)).Refused.ShouldBeEmpty();
        foreach (var by in new[] { "T1", "I2" })
        {
            _workshop.Append(visit, Workshop.Typed("procedure.steps.0.id", "seat", 2, by)).Refused.ShouldHaveSingleItem().Problem.Code.ShouldBe("procedure-of-the-workshop");
        }
    }

    [Fact]
    public void A_rim_once_called_of_several_pieces_is_put_right_by_an_instructor_only()
    {
        var visit = _workshop.OpenVisit();
        _workshop.Append(visit, Workshop.Typed("fitted.1L.wheel.multiPiece", "true"));
        _workshop.Append(visit, Workshop.Typed("fitted.1L.wheel.multiPiece", "false", 1)).Refused.ShouldHaveSingleItem().Problem.Code.ShouldBe("may-not-release");
        _workshop.Append(visit, Workshop.Typed("fitted.1L.wheel.multiPiece", "", 2)).Refused.ShouldHaveSingleItem();
        _workshop.Append(visit, Workshop.Typed("fitted.1L.wheel.multiPiece", "false", 3, "I2")).Refused.ShouldBeEmpty();
    }

    [Fact]
    public void A_repair_is_known_of_the_tyre_on_its_next_visit_by_the_workshops_name_of_it()
    {
        var first = _workshop.OpenVisit();
        _workshop.Append(first,
            Workshop.Typed("fitted.2L.tyre.id", "A-17"), Workshop.Typed("fitted.2L.tyre.tin", "1AB CDEFHJ 2220"), Workshop.Typed("work.repairs.2L.place", "tread"), Workshop.Typed("work.repairs.2L.size", "4 mm"));

        var early = _workshop.OpenVisit();
        _workshop.Append(early, Workshop.Typed("fitted.1R.tyre.id", "a 17")).Added.ShouldBeEmpty("it is not marked as done yet");
        _workshop.Append(first, Workshop.Typed("work.steps.2L.repair-marked", "beside the patch", 5)).Refused.ShouldBeEmpty();

        var next = _workshop.OpenVisit();
        var added = _workshop.Append(next, Workshop.Typed("fitted.1R.tyre.id", "a 17", 10)).Added;
        added.Select(a => (a.Entry.Field, a.Entry.Typed, a.Entry.By)).ShouldBe(
        [
            ("fitted.1R.tyre.repaired", "true", "repair register"), ("fitted.1R.tyre.repairs.0.place", "tread", "repair register"),
            ("fitted.1R.tyre.repairs.0.method", "stem and patch", "repair register"), ("fitted.1R.tyre.repairs.0.size", "4 mm", "repair register"),
        ]);

        var another = _workshop.OpenVisit();
        _workshop.Append(another, Workshop.Typed("fitted.2L.tyre.tin", "1AB CDEFHJ 2220", 11), Workshop.Typed("fitted.2L.tyre.id", "B-3", 11)).Added.ShouldBeEmpty("a TIN names every tyre of its mould and week");
        _workshop.Append(another, Workshop.Typed("fitted.1L.tyre.repairs.0.place", "shoulder", 12), Workshop.Typed("fitted.1L.tyre.id", "A 17", 12)).Added.ShouldBeEmpty("what a person entered stays");
    }
}
