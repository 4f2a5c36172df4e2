using Trundle.Engine;
using Trundle.Visits.Bay;

namespace Trundle.Store.Tests;

public sealed class EntryTests : IDisposable
{
    private readonly Workshop _workshop = new();

    public void Dispose() => _workshop.Dispose();

    [Fact]
    public void An_entry_is_kept_as_typed_and_as_SI_with_who_when_and_what_understood_it()
    {
        var visit = _workshop.OpenVisit();
        var entry = Workshop.Typed("fitted.1L.pressure.value", "33 psi", 5);
        _workshop.Append(visit, entry).Taken.ShouldBe([entry.Id]);

        var stored = _workshop.Store.Visits.Find(visit)!.Entries.ShouldHaveSingleItem();
        stored.Entry.Typed.ShouldBe("33 psi");
        stored.Si!.Unit.ShouldBe("Pa");
        // 33 psi × 6 894.757 293 168 Pa (exact pound, inch and standard gravity).
        stored.Si.Value!.Value.ShouldBe(227_526.990_674_5, 1e-6);
        stored.Outcome.ShouldBe("read");
        stored.Entry.By.ShouldBe("T1");
        stored.Entry.At.ShouldBe(Workshop.Morning.AddMinutes(5));
        stored.ReceivedAt.ShouldBe(Workshop.Morning.AddHours(4));
        stored.EngineVersion.ShouldBe(EngineVersion.Engine);
        stored.TableEdition.ShouldBe(EngineVersion.Tables);
    }

    [Fact]
    public void The_role_kept_is_the_workshops_and_not_the_tablets()
    {
        var visit = _workshop.OpenVisit();
        _workshop.Append(visit, new Entry(Guid.NewGuid(), "vehicle.name", "Blue hatchback", "T4", Role.Owner, Workshop.Morning));
        _workshop.Store.Visits.Find(visit)!.Entries[0].Entry.Role.ShouldBe(Role.Trainee);
    }

    [Fact]
    public void A_newer_entry_supersedes_and_the_older_stays()
    {
        var visit = _workshop.OpenVisit();
        var first = Workshop.Typed("vehicle.odometer", "48200 km", 1);
        var second = Workshop.Typed("vehicle.odometer", "48 300 km", 2);
        _workshop.Append(visit, first);
        _workshop.Append(visit, second);

        var stored = _workshop.Store.Visits.Find(visit)!;
        stored.Entries.Select(e => e.Entry.Id).ShouldBe([first.Id, second.Id]);
        stored.Entries[0].Supersedes.ShouldBeNull();
        stored.Entries[1].Supersedes.ShouldBe(first.Id);
        stored.Fields["vehicle.odometer"].ShouldBe("48 300 km");
    }

    [Fact]
    public void An_entry_that_comes_late_does_not_supersede_one_that_was_typed_after_it()
    {
        var visit = _workshop.OpenVisit();
        var late = Workshop.Typed("vehicle.name", "typed first, sent last", 1);
        _workshop.Append(visit, Workshop.Typed("vehicle.name", "typed last, sent first", 2));
        _workshop.Append(visit, late);

        var stored = _workshop.Store.Visits.Find(visit)!;
        stored.Fields["vehicle.name"].ShouldBe("typed last, sent first");
        stored.Entries.Single(e => e.Entry.Id == late.Id).Supersedes.ShouldBeNull();
    }

    [Fact]
    public void The_same_identifier_is_taken_once()
    {
        var visit = _workshop.OpenVisit();
        var entry = Workshop.Typed("vehicle.name", "Blue hatchback");
        _workshop.Append(visit, entry, entry).Taken.ShouldBe([entry.Id]);
        var again = _workshop.Append(visit, entry, Workshop.Typed("vehicle.complaint", "shakes at 70"));
        again.Already.ShouldBe([entry.Id]);
        again.Taken.Count.ShouldBe(1);
        _workshop.Store.Visits.Find(visit)!.Entries.Count.ShouldBe(2);
    }

    [Fact]
    public void An_identifier_that_stands_for_another_entry_is_refused()
    {
        var visit = _workshop.OpenVisit();
        var entry = Workshop.Typed("vehicle.name", "Blue hatchback");
        _workshop.Append(visit, entry);
        _workshop.Append(visit, entry with { Typed = "Red van" }).Refused.ShouldHaveSingleItem().Problem.Code.ShouldBe("entry-id-taken");
        _workshop.Append(_workshop.OpenVisit(), entry).Refused.ShouldHaveSingleItem().Problem.Code.ShouldBe("entry-id-taken");
        _workshop.Store.Visits.Find(visit)!.Fields["vehicle.name"].ShouldBe("Blue hatchback");
    }

    [Theory]
    [InlineData("fitted.1L.pressure.value", "soft", "number-missing")]
    [InlineData("fitted.1L.pressure.value", "9000 kPa", "out-of-range")]
    [InlineData("vehicle.odometer", "48,200 km", "comma-ambiguous")]
    [InlineData("vehicle.colour", "blue", "key-unknown")]
    public void What_cannot_be_read_is_kept_as_typed_with_its_problem(string field, string typed, string code)
    {
        var visit = _workshop.OpenVisit();
        _workshop.Append(visit, Workshop.Typed(field, typed)).Refused.ShouldBeEmpty();
        var stored = _workshop.Store.Visits.Find(visit)!.Entries.ShouldHaveSingleItem();
        stored.Entry.Typed.ShouldBe(typed);
        stored.Si.ShouldBeNull();
        stored.Outcome.ShouldBe(code);
        stored.Problem.ShouldNotBeNullOrWhiteSpace();
    }

    [Theory]
    [InlineData("nothing.like.it", "x", "T1", "field-unreadable")]
    [InlineData("vehicle..name", "x", "T1", "field-unreadable")]
    [InlineData("vehicle.name", "x", "nobody", "person-unknown")]
    [InlineData("vehicle.name", "x", CondemnedRegister.Name, "person-unknown")]
    [InlineData("vehicle.name", "bell \a", "T1", "not-text")]
    public void What_may_not_stand_is_refused_by_itself_and_the_rest_is_taken(string field, string typed, string by, string code)
    {
        var visit = _workshop.OpenVisit();
        var taken = _workshop.Append(visit, Workshop.Typed(field, typed, by: by), Workshop.Typed("vehicle.complaint", "shakes"));
        taken.Refused.ShouldHaveSingleItem().Problem.Code.ShouldBe(code);
        _workshop.Store.Visits.Find(visit)!.Entries.ShouldHaveSingleItem().Entry.Field.ShouldBe("vehicle.complaint");
    }

    [Fact]
    public void Half_a_character_is_refused()
    {
        // Not an InlineData: an attribute's text is stored as UTF-8, which has no half characters.
        var visit = _workshop.OpenVisit();
        _workshop.Append(visit, Workshop.Typed("vehicle.name", "half \ud800")).Refused.ShouldHaveSingleItem().Problem.Code.ShouldBe("not-text");
        _workshop.Append(visit, Workshop.Typed("vehicle.name", "whole \ud83d\ude97")).Refused.ShouldBeEmpty();
    }

    [Fact]
    public void A_tablet_whose_clock_runs_ahead_does_not_win_for_ever()
    {
        var visit = _workshop.OpenVisit();
        _workshop.Append(visit, Workshop.Typed("vehicle.name", "from next year", 60 * 24 * 365));
        _workshop.Store.Visits.Append(visit, [Workshop.Typed("vehicle.name", "from today", 60 * 5)], Workshop.Morning.AddHours(5));
        _workshop.Store.Visits.Find(visit)!.Fields["vehicle.name"].ShouldBe("from today");
    }

    [Fact]
    public void Somebody_who_left_enters_nothing_more_and_what_was_entered_keeps_the_name()
    {
        var visit = _workshop.OpenVisit();
        _workshop.Append(visit, Workshop.Typed("vehicle.name", "Blue hatchback", 1));
        var person = _workshop.Store.People.All().Single(p => p.Name == "T1");
        _workshop.Store.People.Change(person.Id, Role.Technician, left: true);
        _workshop.Append(visit, Workshop.Typed("vehicle.name", "Red van", 2)).Refused.ShouldHaveSingleItem().Problem.Code.ShouldBe("person-unknown");
        _workshop.Store.Visits.Find(visit)!.Fields.EntryOf("vehicle.name")!.By.ShouldBe("T1");
    }

    [Fact]
    public void Too_many_at_once_or_an_unknown_visit_takes_nothing()
    {
        var visit = _workshop.OpenVisit();
        var many = Enumerable.Range(0, VisitStore.MostInBatch + 1).Select(i => Workshop.Typed("vehicle.name", $"{i}")).ToList();
        _workshop.Store.Visits.Append(visit, many, Workshop.Morning).Problem!.Code.ShouldBe("too-many");
        _workshop.Store.Visits.Append(Guid.NewGuid(), [many[0]], Workshop.Morning).Problem!.Code.ShouldBe("visit-unknown");
        _workshop.Store.Visits.Find(visit)!.Entries.ShouldBeEmpty();
    }
}
