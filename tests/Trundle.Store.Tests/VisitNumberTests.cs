namespace Trundle.Store.Tests;

public sealed class VisitNumberTests : IDisposable
{
    private readonly Workshop _workshop = new();

    public void Dispose() => _workshop.Dispose();

    [Fact]
    public void Visits_are_numbered_by_day_and_the_same_identifier_opens_one()
    {
        var id = Guid.NewGuid();
        var first = _workshop.Store.Visits.Open(id, "D1", Workshop.Morning, Workshop.Day);
        first.Number.ShouldBe("26-0314-1");
        _workshop.Store.Visits.Open(id, "D1", Workshop.Morning.AddDays(1), Workshop.Day.AddDays(1)).ShouldBe(first);
        Enumerable.Range(2, 11).Select(_ => _workshop.Store.Visits.Open(Guid.NewGuid(), "D1", Workshop.Morning, Workshop.Day).Number)
            .ShouldBe(Enumerable.Range(2, 11).Select(n => $"26-0314-{n}"));
        _workshop.Store.Visits.Open(Guid.NewGuid(), "D1", Workshop.Morning.AddDays(1), Workshop.Day.AddDays(1)).Number.ShouldBe("26-0315-1");
        _workshop.Store.Visits.InTheWorkshop().Count.ShouldBe(13);
    }
}
