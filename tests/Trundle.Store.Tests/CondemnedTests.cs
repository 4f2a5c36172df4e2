using Trundle.Visits.Bay;

namespace Trundle.Store.Tests;

public sealed class CondemnedTests : IDisposable
{
    private readonly Workshop _workshop = new();

    public void Dispose() => _workshop.Dispose();

    private Guid Condemn(string place, params (string Field, string Typed)[] names)
    {
        var visit = _workshop.OpenVisit();
        _workshop.Append(visit, [.. names.Select((n, i) => Workshop.Typed($"{place}.{n.Field}", n.Typed, i))]);
        return visit;
    }

    [Theory]
    [InlineData("fitted.1L", "tyre", "A-17", "fitted.2R", "a 17")]
    [InlineData("fitted.1L", "tyre", "A-17", "work.renewed.2R", "A17")]
    [InlineData("fitted.1L", "wheel", "W 9", "fitted.1L", "w-9")]
    [InlineData("work.renewed.1L", "tyre", "B2", "fitted.1L", "B2")]
    public void What_one_visit_condemned_is_condemned_on_every_other(string where, string part, string name, string there, string asTyped)
    {
        Condemn(where, ($"{part}.id", name), ($"{part}.condemned", "true"));
        var other = _workshop.OpenVisit();
        var taken = _workshop.Append(other, Workshop.Typed($"{there}.{part}.id", asTyped));

        taken.Added.ShouldHaveSingleItem().Entry.Field.ShouldBe($"{there}.{part}.condemned");
        var stored = _workshop.Store.Visits.Find(other)!;
        stored.Fields[$"{there}.{part}.condemned"].ShouldBe("true");
        stored.Fields.EntryOf($"{there}.{part}.condemned")!.By.ShouldBe(CondemnedRegister.Name);
        _workshop.Store.Condemned.Matches(stored).ShouldHaveSingleItem().Line.VisitNumber.ShouldBe("26-0314-1");
    }

    [Fact]
    public void The_order_of_name_and_verdict_does_not_matter()
    {
        Condemn("fitted.1L", ("tyre.condemned", "true"), ("tyre.id", "A17"));
        _workshop.Store.Condemned.All().ShouldHaveSingleItem().Name.ShouldBe("A17");
    }

    [Fact]
    public void Typing_false_over_it_does_not_help_not_even_an_instructors_while_it_stands_elsewhere()
    {
        Condemn("fitted.1L", ("tyre.id", "A17"), ("tyre.condemned", "true"));
        var other = _workshop.OpenVisit();
        _workshop.Append(other, Workshop.Typed("fitted.2R.tyre.id", "A17"));
        _workshop.Append(other, Workshop.Typed("fitted.2R.tyre.condemned", "false", 60 * 4)).Refused.ShouldHaveSingleItem().Problem.Code.ShouldBe("may-not-release");
        _workshop.Append(other, Workshop.Typed("fitted.2R.tyre.condemned", "false", 60 * 4, "I2")).Refused.ShouldBeEmpty();
        _workshop.Store.Visits.Find(other)!.Fields["fitted.2R.tyre.condemned"].ShouldBe("true");
    }

    [Fact]
    public void A_TIN_is_of_a_batch_so_it_is_told_and_not_condemned()
    {
        Condemn("fitted.1L", ("tyre.tin", "DOT XX12 ABC 2423"), ("tyre.condemned", "true"));
        var other = _workshop.OpenVisit();
        _workshop.Append(other, Workshop.Typed("fitted.2R.tyre.tin", "dotxx12abc2423")).Added.ShouldBeEmpty();
        var match = _workshop.Store.Condemned.Matches(_workshop.Store.Visits.Find(other)!).ShouldHaveSingleItem();
        match.Named.Field.ShouldBe("fitted.2R.tyre.tin");
        match.Line.Kind.ShouldBe(CondemnedKind.Tin);
    }

    [Fact]
    public void A_name_that_was_mistyped_is_corrected_on_its_own_visit()
    {
        var visit = Condemn("fitted.1L", ("tyre.id", "A71"), ("tyre.condemned", "true"));
        _workshop.Append(visit, Workshop.Typed("fitted.1L.tyre.id", "A17", 9));
        _workshop.Store.Condemned.All().ShouldHaveSingleItem().Name.ShouldBe("A17");
    }

    [Fact]
    public void Only_an_instructor_or_the_owner_withdraws_and_says_why_and_then_it_may_be_fitted()
    {
        Condemn("fitted.1L", ("tyre.id", "A17"), ("tyre.condemned", "true"));
        var register = _workshop.Store.Condemned;
        register.Withdraw(CondemnedKind.Tyre, "A17", "T1", Role.Technician, "looks fine", Workshop.Morning).Problem!.Code.ShouldBe("may-not-release");
        register.Withdraw(CondemnedKind.Tyre, "A17", "I2", Role.Instructor, " ", Workshop.Morning).Problem!.Code.ShouldBe("missing");
        register.Withdraw(CondemnedKind.Tyre, "nothing", "I2", Role.Instructor, "x", Workshop.Morning).Problem!.Code.ShouldBe("not-condemned");
        register.Withdraw(CondemnedKind.Tyre, "a-17", "I2", Role.Instructor, "another tyre was meant", Workshop.Morning).Value.ShouldBe(1);

        var other = _workshop.OpenVisit();
        _workshop.Append(other, Workshop.Typed("fitted.2R.tyre.id", "A17")).Added.ShouldBeEmpty();
        register.All().ShouldHaveSingleItem().WithdrawnWhy.ShouldBe("another tyre was meant");
    }
}
