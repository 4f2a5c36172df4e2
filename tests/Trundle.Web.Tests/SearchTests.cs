using System.Net;
using Trundle.Store;
using Trundle.Visits.Bay;

namespace Trundle.Web.Tests;

/// <summary>A visit is found by what names it now, however it is typed.</summary>
public sealed class SearchTests : IAsyncLifetime
{
    private readonly StandingClock _clock = new(new DateTimeOffset(2026, 3, 14, 9, 0, 0, TimeSpan.Zero));
    private RunningBay _bay = null!;
    private Guid _van;

    public async ValueTask InitializeAsync()
    {
        _bay = await RunningBay.StartAsync(_clock);
        _van = Visit(("vehicle.name", "Grüner Kübelwagen"), ("vehicle.vin", "1M8GDM9AXKP042788"), ("fitted.1L.tyre.id", "A-77"), ("fitted.1L.tyre.tin", "1AB CDEFHJ 2218"), ("fitted.1L.tyre.marking", "205/55 R16 91V"));
        Visit(("vehicle.name", "Blue estate 100%"), ("fitted.2R.tyre.marking", "195/65 R15 91H"));
    }

    public ValueTask DisposeAsync() => _bay.DisposeAsync();

    private Guid Visit(params (string Field, string Typed)[] fields)
    {
        var id = Guid.NewGuid();
        _bay.Store.Visits.Open(id, "D1", _clock.Now, new DateOnly(2026, 3, 14));
        Enter(id, fields);
        return id;
    }

    private void Enter(Guid id, params (string Field, string Typed)[] fields)
    {
        _clock.Now = _clock.Now.AddSeconds(1);
        _bay.Store.Visits.Append(id, [.. fields.Select(f => new Entry(Guid.NewGuid(), f.Field, f.Typed, "D1", Role.Desk, _clock.Now))], _clock.Now).Value.Refused.ShouldBeEmpty();
    }

    [Theory]
    [InlineData("1abcdefhj2218")]
    [InlineData("1AB CDEFHJ")]
    [InlineData("cdef-hj 22")]
    [InlineData("a77")]
    [InlineData("grüner")]
    [InlineData("GRÜNER kübel")]
    [InlineData("kübel 205/55")]
    [InlineData("KP0427")]
    [InlineData("205/55r16")]
    public void The_van_is_found_by(string words) => _bay.Store.Search.Find(words, 10).Select(f => f.Visit.Heading.Id).ShouldBe([_van]);

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData("kübel 195/65")]
    [InlineData("_")]
    [InlineData("' OR 1=1 --")]
    [InlineData("D1")]
    public void Nothing_is_found_by(string words) => _bay.Store.Search.Find(words, 10).ShouldBeEmpty();

    [Fact]
    public void A_sign_of_the_database_is_a_letter_like_any_other() => _bay.Store.Search.Find("100%", 10).Count.ShouldBe(1);

    [Fact]
    public void What_no_longer_stands_is_not_found()
    {
        Enter(_van, ("fitted.1L.tyre.id", "B-12"));
        _bay.Store.Search.Find("A-77", 10).ShouldBeEmpty();
        _bay.Store.Search.Find("b12", 10).Count.ShouldBe(1);
    }

    [Fact]
    public async Task The_page_lists_what_was_found_and_says_where_nothing_was()
    {
        var (status, page) = await _bay.GetAsync("/search?q=1AB%20CDEFHJ");
        status.ShouldBe(HttpStatusCode.OK);
        page.ShouldContain($"/visits/{_van:D}");
        page.ShouldContain("1AB CDEFHJ 2218");
        (await _bay.GetAsync("/search?q=%3Cb%3Ecat")).Text.ShouldContain("Nothing here is named “&lt;b&gt;cat”.");
        (await _bay.GetAsync("/search")).Text.ShouldNotContain("Nothing here");
    }
}
