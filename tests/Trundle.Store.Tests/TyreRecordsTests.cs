using Trundle.Engine.Sidewall;
using Trundle.Visits.Bay;
using Trundle.Visits.Keeping;

namespace Trundle.Store.Tests;

/// <summary>A recall over everything that was ever entered: visits with what was superseded, sets, registrations.</summary>
public sealed class TyreRecordsTests : IDisposable
{
    private static readonly Recorder By = new("I2", Role.Instructor, Workshop.Morning);
    private readonly Workshop _workshop = new();

    public void Dispose() => _workshop.Dispose();

    private RecallAnswer Look(string plant, string from = "", string to = "", string code = "") => RecallAnswer.Of(TinRange.Read(plant, code, from, to).Value, _workshop.Store.Tyres.All());

    private Guid Visit(params (string Field, string Typed)[] fields)
    {
        var visit = _workshop.OpenVisit();
        _workshop.Append(visit, [.. fields.Select((f, i) => Workshop.Typed(f.Field, f.Typed, i))]).Refused.ShouldBeEmpty();
        return visit;
    }

    [Fact]
    public void A_visits_tyres_are_found_with_vehicle_position_and_what_became_of_them()
    {
        Visit(("vehicle.name", "Red coupé"), ("fitted.1L.tyre.tin", "1AB CDEFHJ 1025"), ("fitted.1L.tyre.condemned", "true"), ("fitted.1R.tyre.tin", "1AB CDEFHJ 2225"), ("work.renewed.1R.tyre.tin", "1AB CDEFHJ 2325"),
            ("fitted.2L.tyre.tin", "1ABCDEFHJ1525"), ("fitted.2R.tyre.marking", "195/65 R15 91H"));
        var answer = Look("1AB", "1025", "2225");
        answer.Hits.Select(h => (h.Tyre.Position, h.Tyre.Left, h.Verdict.Match)).OrderBy(h => h.Position).ShouldBe([("1L", true, TinMatch.Yes), ("1R", true, TinMatch.Yes), ("2L", false, TinMatch.Yes)]);
        answer.Hits.ShouldAllBe(h => h.Tyre.Vehicle == "Red coupé" && h.Tyre.Where == "visit" && h.Tyre.On == Workshop.Day);
        answer.Hits.Single(h => h.Tyre.Position == "1L").Tyre.Fate.ShouldContain("condemned");
        answer.Hits.Single(h => h.Tyre.Position == "1R").Tyre.Fate.ShouldContain("another tyre");
        (answer.Looked, answer.Without).ShouldBe((4, 1));
        Look("1AB", "2325", "2325").Hits.ShouldHaveSingleItem().Tyre.Position.ShouldBe("1R, new");
        Look("1AC").Hits.ShouldBeEmpty();
        Look("1AC").Answer().No.ShouldBeFalse();
        answer.Answer().No.ShouldBeTrue();
    }

    [Fact]
    public void A_number_in_whose_place_another_was_entered_is_found_all_the_same()
    {
        Visit(("fitted.1L.tyre.tin", "1AB CDEFHJ 1025"), ("fitted.1L.tyre.tin", "1ab cdefhj 1025"), ("fitted.1L.tyre.tin", "1AB CDEFHJ 3025"), ("fitted.2L.tyre.tin", "1AB CDEFHJ 1125"), ("fitted.2L.tyre.tin", ""));
        var answer = Look("1AB", "1025", "1125");
        answer.Hits.Select(h => (h.Tyre.Position, h.Tyre.Superseded)).OrderBy(h => h.Position).ShouldBe([("1L", true), ("2L", true)]);
        answer.Hits.Single(h => h.Tyre.Position == "1L").Tyre.Fate.ShouldContain("1AB CDEFHJ 3025");
    }

    /// <summary>A recalled tyre under which a valve or a wheel was renewed is still on the vehicle.</summary>
    [Theory]
    [InlineData("work.renewed.1L.valve.kind", "clamp-in")]
    [InlineData("work.renewed.1L.wheel.rim", "6J x 15")]
    public void A_new_valve_or_wheel_is_no_new_tyre(string field, string typed)
    {
        Visit(("fitted.1L.tyre.tin", "1AB CDEFHJ 1025"), (field, typed));
        var tyre = Look("1AB", "1025", "1125").Hits.ShouldHaveSingleItem().Tyre;
        tyre.Left.ShouldBe(false);
        tyre.Fate.ShouldContain("not known to have left the vehicle");
    }

    [Fact]
    public void What_cannot_be_read_is_told_and_left_to_a_person()
    {
        Visit(("fitted.1L.tyre.tin", "worn off"), ("fitted.1R.tyre.tin", "1AB CDEFHJ"));
        var answer = Look("1AB", "1025", "1125");
        answer.Unread.ShouldHaveSingleItem().Tin.ShouldBe("worn off");
        answer.Gaps.ShouldHaveSingleItem().ShouldContain("'worn off'");
        answer.Hits.ShouldHaveSingleItem().Words.ShouldBe("may match: it was recorded without its date");
    }

    [Fact]
    public void Sets_and_registrations_are_looked_through_and_say_where_the_tyre_is()
    {
        var visit = Visit(("vehicle.name", "Green estate"), ("fitted.1L.tyre.marking", "195/65 R15 91H"), ("fitted.1L.tyre.tin", "1AB CDEFHJ 1025"));
        var set = _workshop.Store.Sets.TakeIn(Guid.NewGuid(), visit, """{"place": "rack D", "fields": {"vehicle.name": "Green estate", "fitted.1L.tyre.marking": "195/65 R15 91H", "fitted.1L.tyre.tin": "1AB CDEFHJ 1025"}}""", Workshop.Day, Workshop.Day, By).Value;
        _workshop.Store.Registrations.Declare(RegistrationTests.SellerBody, Workshop.Day, By).ShouldBeNull();
        _workshop.Store.Registrations.Record(Guid.NewGuid(), null, RegistrationTests.SaleBody("1AB CDEFHJ 1125"), Workshop.Day, Workshop.Day, By).IsRead.ShouldBeTrue();

        var hits = Look("1AB", "1025", "1125").Hits;
        hits.Single(h => h.Tyre.Where == "visit").Tyre.Fate.ShouldBe($"went into storage as set {set.Kept.Number}");
        hits.Single(h => h.Tyre.Where == "set").Tyre.Fate.ShouldBe("in storage at rack D");
        hits.Single(h => h.Tyre.Where == "registration").Tyre.Fate.ShouldContain("neither given nor sent");
        hits.ShouldAllBe(h => h.Tyre.Vehicle == null || h.Tyre.Vehicle == "Green estate");

        _workshop.Store.Sets.Add(set.Kept.Id, new NewKeptRecord(Guid.NewGuid(), SetRecords.GivenOut, Workshop.Day, """{"to": "Green estate"}"""), Workshop.Day, By).IsRead.ShouldBeTrue();
        var given = Look("1AB", "1025", "1125").Hits.Single(h => h.Tyre.Where == "set").Tyre;
        (given.Fate, given.Left).ShouldBe(("given out on 2026-03-14: Green estate", false));
    }

    [Fact]
    public void The_csv_has_a_line_for_each_match_and_makes_no_formula_of_what_was_typed()
    {
        Visit(("vehicle.name", "=Red \"van\""), ("fitted.1L.tyre.tin", "1AB CDEFHJ 1025"));
        var lines = Look("1AB").Csv().Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        lines.Length.ShouldBe(2);
        lines[0].ShouldStartWith("\"match\",\"why\",\"tin\"");
        lines[1].ShouldStartWith("\"yes\",\"\",\"1AB CDEFHJ 1025\",\"visit\",");
        lines[1].ShouldContain("\"'=Red \"\"van\"\"\"");
    }
}
