using System.Net;
using Trundle.Engine.Practice;

namespace Trundle.Web.Tests;

/// <summary>Where people sign in, a decision of the roll is signed by the PIN of whoever decides.</summary>
public sealed class RollPinTests : IAsyncLifetime
{
    private readonly StandingClock _clock = new(new DateTimeOffset(2026, 3, 14, 9, 0, 0, TimeSpan.Zero));
    private RunningBay _bay = null!;

    public async ValueTask InitializeAsync() => _bay = await RunningBay.StartAsync(_clock, signIn: true);

    public ValueTask DisposeAsync() => _bay.DisposeAsync();

    [Fact]
    public async Task Without_the_PIN_nothing_is_decided()
    {
        (await _bay.GetAsync("/roll")).Status.ShouldBe(HttpStatusCode.Redirect, "nobody has signed in yet");
        (await _bay.SendFormAsync("/code", "/code", ("code", _bay.FirstCode!), ("name", "O9"), ("password", "four plain grey words"), ("pin", "8264"))).Status.ShouldBe(HttpStatusCode.Redirect);
        var day = new DateOnly(2026, 3, 14);
        var trainee = _bay.Store.People.All().Single(p => p.Name == "T4");
        var id = _bay.Store.Roll.Take(Guid.NewGuid(), new PracticeAttempt(PracticeAttempts.Demount, 3, day, ["cap-kept"]), trainee, day, _clock.Now).Value.Id;
        foreach (var (pin, words) in new[] { ("", "Type the PIN."), ("1111", "That is not the PIN.") })
        {
            var refused = await DecideAsync(pin);
            refused.Status.ShouldBe(HttpStatusCode.BadRequest);
            refused.Text.ShouldContain(words);
        }

        _bay.Store.Roll.Book().Rows.Count.ShouldBe(1);
        (await DecideAsync("8264")).Status.ShouldBe(HttpStatusCode.Redirect);
        _bay.Store.Roll.Book().Rows.Count.ShouldBe(2);

        Task<(HttpStatusCode Status, string Text, string? To)> DecideAsync(string pin) =>
            _bay.SendFormAsync($"/roll/{id:D}", $"/roll/{id:D}", ("record", $"{Guid.NewGuid():D}"), ("decision", "not-yet"), ("pin", pin));
    }
}
