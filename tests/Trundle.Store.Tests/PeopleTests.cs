using Trundle.Visits.Bay;

namespace Trundle.Store.Tests;

public sealed class PeopleTests : IDisposable
{
    private readonly Workshop _workshop = new();

    public void Dispose() => _workshop.Dispose();

    [Fact]
    public void A_persons_units_are_remembered()
    {
        var person = _workshop.Store.People.All()[0];
        _workshop.Store.People.Remember(person.Id, new UnitHabits("psi", "32nds", "lbf·ft", "oz"));
        _workshop.Reopen().People.Find(person.Id)!.Habits.ShouldBe(new UnitHabits("psi", "32nds", "lbf·ft", "oz"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData("two\nlines")]
    [InlineData("t1")]
    [InlineData("Condemned register")]
    public void A_name_is_one_line_and_nobody_elses(string name) =>
        _workshop.Store.People.Add(name, Role.Desk, UnitHabits.Metric).Problem!.Where.ShouldBe("name");

    [Fact]
    public void A_unit_that_is_not_offered_is_refused_with_its_place() =>
        _workshop.Store.People.Remember(1, UnitHabits.Metric with { Torque = "furlong" }).Problem!.Where.ShouldBe("torque");
}
