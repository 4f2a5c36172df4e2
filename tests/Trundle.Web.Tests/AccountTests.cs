using System.Net;
using System.Text;
using Trundle.Visits.Bay;

namespace Trundle.Web.Tests;

/// <summary>How people are let in: the first code, passwords, PINs, lock-out, the limit on tries, and sign-out everywhere.</summary>
public sealed class AccountTests : IAsyncLifetime
{
    private const string Password = "four plain grey words";
    private readonly StandingClock _clock = new(new DateTimeOffset(2026, 3, 14, 9, 0, 0, TimeSpan.Zero));
    private RunningBay _bay = null!;

    public async ValueTask InitializeAsync() => _bay = await RunningBay.StartAsync(_clock, signIn: true);

    public ValueTask DisposeAsync() => _bay.DisposeAsync();

    private Task<(HttpStatusCode Status, string Text, string? To)> ComeInAsync(string code, string name = "", string password = Password, string pin = "8264") =>
        _bay.SendFormAsync("/code", "/code", ("code", code), ("name", name), ("password", password), ("pin", pin));

    private async Task OwnerAsync()
    {
        var (status, text, to) = await ComeInAsync(_bay.FirstCode!, "O9");
        status.ShouldBe(HttpStatusCode.Redirect, text);
        to.ShouldBe("/");
    }

    private Task<(HttpStatusCode Status, string Text, string? To)> SignInAsync(HttpClient browser, string name, string password = Password, string to = "") =>
        RunningBay.SendFormAsync(browser, "/sign-in", "/sign-in", ("name", name), ("password", password), ("to", to));

    private long Id(string name) => _bay.Store.People.All().Single(p => p.Name == name).Id;

    /// <summary>The owner lets somebody in, who comes in at the same browser.</summary>
    private async Task LetInAsync(string name, string pin)
    {
        var (status, text, _) = await ComeInAsync(await _bay.CodeForAsync(name), pin: pin);
        status.ShouldBe(HttpStatusCode.Redirect, text);
    }

    private async Task<(HttpStatusCode, string?)> PinAsync(string name, string pin)
    {
        var (status, body) = await _bay.PostAsync("/api/v1/people/me/pin", $$"""{"id":{{Id(name)}},"pin":"{{pin}}"}""");
        return (status, body["error"]?["code"]?.GetValue<string>());
    }

    [Fact]
    public async Task Before_the_first_account_every_page_leads_to_the_code_and_nothing_is_told()
    {
        _bay.FirstCode.ShouldNotBeNull().Length.ShouldBe(11);
        foreach (var page in new[] { "/", "/people", "/history", "/sign-in", "/instruments" })
        {
            using var answer = await _bay.Client.GetAsync(new Uri(page, UriKind.Relative));
            answer.StatusCode.ShouldBe(HttpStatusCode.Redirect, page);
            answer.Headers.Location!.ToString().ShouldBe("/code");
        }

        var (status, body) = await _bay.JsonAsync("/api/v1/people");
        status.ShouldBe(HttpStatusCode.Unauthorized);
        body["error"]!["code"]!.GetValue<string>().ShouldBe("sign-in-needed");
    }

    [Fact]
    public async Task Computations_and_the_bays_own_files_hold_nothing_of_the_workshop_and_need_no_sign_in()
    {
        (await _bay.PostAsync("/api/v1/sidewall", """{"marking":"205/55 R16 91V"}""")).Status.ShouldBe(HttpStatusCode.OK);
        (await _bay.GetAsync($"/bay/{Guid.NewGuid():D}")).Status.ShouldBe(HttpStatusCode.OK);
        (await _bay.GetAsync("/css/trundle.css")).Status.ShouldBe(HttpStatusCode.OK);
    }

    [Fact]
    public async Task The_first_code_makes_the_owner_once()
    {
        (await ComeInAsync("AAAAA-BBBBB", "O9")).Text.ShouldContain("No such code serves");
        (await ComeInAsync(_bay.FirstCode!, "O9", "short")).Text.ShouldContain("10 to 128 characters");
        (await ComeInAsync(_bay.FirstCode!, "O9", pin: "1234")).Text.ShouldContain("guessed at once");
        // As read off a console: small letters, blanks.
        var (status, text, _) = await ComeInAsync($" {_bay.FirstCode!.ToLowerInvariant().Replace('-', ' ')} ", "O9");
        status.ShouldBe(HttpStatusCode.Redirect, text);
        _bay.Store.People.All().Single(p => p.Name == "O9").Role.ShouldBe(Role.Owner);
        (await _bay.GetAsync("/")).Status.ShouldBe(HttpStatusCode.OK);
        (await _bay.JsonAsync("/api/v1/people")).Body["people"]!.AsArray().Select(p => p!["name"]!.GetValue<string>()).ShouldBe(["O9"]);
        (await ComeInAsync(_bay.FirstCode!, "X1")).Text.ShouldContain("No such code serves");
        _bay.Store.People.All().ShouldNotContain(p => p.Name == "X1");
    }

    [Fact]
    public async Task A_code_serves_for_a_day()
    {
        _clock.Now = _clock.Now.AddHours(24);
        (await ComeInAsync(_bay.FirstCode!, "O9")).Text.ShouldContain("No such code serves");
        _bay.Store.Accounts.Any().ShouldBeFalse();
    }

    [Fact]
    public async Task A_password_lets_in_where_it_was_asked_from_and_never_to_another_host()
    {
        await OwnerAsync();
        using var tablet = _bay.OtherBrowser();
        using (var asked = await tablet.GetAsync(new Uri("/history?page=2", UriKind.Relative)))
        {
            asked.Headers.Location!.ToString().ShouldBe("/sign-in?to=%2Fhistory%3Fpage%3D2");
        }

        (await SignInAsync(tablet, "o9", to: "/history?page=2")).To.ShouldBe("/history?page=2");
        foreach (var outside in new[] { "https://elsewhere.test/", "//elsewhere.test", "/\\elsewhere.test", "history" })
        {
            using var another = _bay.OtherBrowser();
            (await SignInAsync(another, "O9", to: outside)).To.ShouldBe("/", outside);
        }
    }

    [Fact]
    public async Task Unknown_names_and_wrong_passwords_read_alike_and_five_lock_for_ten_minutes()
    {
        await OwnerAsync();
        using var tablet = _bay.OtherBrowser();
        var unknown = await SignInAsync(tablet, "Nobody");
        var noAccount = await SignInAsync(tablet, "T1");
        var wrong = await SignInAsync(tablet, "O9", "not the password");
        foreach (var (status, text, _) in new[] { unknown, noAccount, wrong })
        {
            status.ShouldBe(HttpStatusCode.BadRequest);
            text.ShouldContain("The name and the password do not belong together.");
            text.ShouldNotContain("not the password");
        }

        for (var i = 0; i < 4; i++)
        {
            await SignInAsync(tablet, "O9", $"wrong word {i}");
        }

        (await SignInAsync(tablet, "O9")).Text.ShouldContain("Too many wrong passwords");
        _clock.Now = _clock.Now.AddMinutes(10);
        (await SignInAsync(tablet, "O9")).Status.ShouldBe(HttpStatusCode.Redirect);
    }

    [Fact]
    public async Task One_address_may_try_twenty_times_in_a_minute()
    {
        await OwnerAsync();
        using var tablet = _bay.OtherBrowser();
        var told = new List<HttpStatusCode>();
        for (var i = 0; i < 21; i++)
        {
            told.Add((await SignInAsync(tablet, $"Name {i}")).Status);
        }

        // The owner's code was one try.
        told.Count(s => s == HttpStatusCode.BadRequest).ShouldBe(19);
        told[^1].ShouldBe(HttpStatusCode.TooManyRequests);
        (await _bay.GetAsync("/")).Status.ShouldBe(HttpStatusCode.OK);
    }

    [Fact]
    public async Task Two_people_on_one_tablet_change_over_by_pin_and_the_fifth_wrong_one_asks_for_the_password()
    {
        await OwnerAsync();
        await LetInAsync("T1", "9317");
        (await _bay.JsonAsync("/api/v1/people")).Body["me"]!.GetValue<long>().ShouldBe(Id("T1"));
        (await _bay.PostAsync("/api/v1/people/me", $$"""{"id":{{Id("O9")}}}""")).Body["error"]!["code"]!.GetValue<string>().ShouldBe("pin-needed");
        (await PinAsync("O9", "9317")).ShouldBe((HttpStatusCode.Forbidden, "pin-wrong"));
        (await PinAsync("O9", "8264")).ShouldBe((HttpStatusCode.OK, null));
        (await _bay.JsonAsync("/api/v1/people")).Body["me"]!.GetValue<long>().ShouldBe(Id("O9"));
        // Somebody who never signed in here is not offered, whatever the PIN.
        (await PinAsync("T4", "8264")).Item2.ShouldBe("person-unknown");

        for (var i = 0; i < 4; i++)
        {
            (await PinAsync("T1", "1122")).Item2.ShouldBe("pin-wrong");
        }

        (await PinAsync("T1", "1122")).Item2.ShouldBe("signed-out");
        (await PinAsync("T1", "9317")).Item2.ShouldBe("person-unknown");
        (await SignInAsync(_bay.Client, "T1")).Status.ShouldBe(HttpStatusCode.Redirect);
        (await PinAsync("T1", "9317")).ShouldBe((HttpStatusCode.OK, null));
    }

    [Fact]
    public async Task An_entry_counts_only_for_somebody_who_was_signed_in_on_the_device_when_it_was_made()
    {
        await OwnerAsync();
        await LetInAsync("T1", "9317");
        var (opened, visit) = await _bay.PostAsync("/api/v1/visits", """{"by":"T1"}""");
        opened.ShouldBe(HttpStatusCode.Created);
        (await _bay.PostAsync("/api/v1/visits", """{"by":"D1"}""")).Body["error"]!["code"]!.GetValue<string>().ShouldBe("not-signed-in");
        var address = $"/api/v1/visits/{visit["id"]!.GetValue<string>()}/entries";

        (await EnterAsync("I2", _clock.Now)).ShouldBe("not-signed-in");
        (await EnterAsync("T1", _clock.Now)).ShouldBeNull();

        // T1 signs out; what T1 entered before with no network still counts, what is claimed later does not.
        await _bay.SendFormAsync("/people", "/sign-out", ("where", "here"));
        _clock.Now = _clock.Now.AddMinutes(5);
        await SignInAsync(_bay.Client, "O9");
        (await EnterAsync("T1", _clock.Now.AddMinutes(-6))).ShouldBeNull();
        (await EnterAsync("T1", _clock.Now)).ShouldBe("not-signed-in");

        async Task<string?> EnterAsync(string by, DateTimeOffset at)
        {
            var (_, body) = await _bay.PostAsync(address, $$"""{"entries":[{"id":"{{Guid.NewGuid():D}}","field":"vehicle.name","typed":"Grey van","by":"{{by}}","at":"{{at.UtcDateTime:yyyy-MM-dd'T'HH:mm:ss.fff'Z'}}"}]}""");
            return body["refused"]!.AsArray() is [{ } one] ? one["error"]!["code"]!.GetValue<string>() : null;
        }
    }

    [Fact]
    public async Task Sign_out_everywhere_a_new_password_and_a_new_code_end_every_other_device()
    {
        await OwnerAsync();
        using var tablet = _bay.OtherBrowser();
        await SignInAsync(tablet, "O9");
        (await tablet.GetAsync(new Uri("/people", UriKind.Relative))).StatusCode.ShouldBe(HttpStatusCode.OK);
        (await RunningBay.SendFormAsync(tablet, "/people", "/people/password", ("old", "not this one"), ("password", "another four grey words"))).Text.ShouldContain("not the password you have");
        (await RunningBay.SendFormAsync(tablet, "/people", "/people/password", ("old", Password), ("password", "another four grey words"))).Status.ShouldBe(HttpStatusCode.Redirect);
        (await tablet.GetAsync(new Uri("/people", UriKind.Relative))).StatusCode.ShouldBe(HttpStatusCode.OK);
        (await _bay.GetAsync("/people")).Status.ShouldBe(HttpStatusCode.Redirect);

        (await SignInAsync(_bay.Client, "O9", "another four grey words")).Status.ShouldBe(HttpStatusCode.Redirect);
        await RunningBay.SendFormAsync(tablet, "/people", "/sign-out", ("where", "everywhere"));
        (await _bay.GetAsync("/people")).Status.ShouldBe(HttpStatusCode.Redirect);
        (await tablet.GetAsync(new Uri("/people", UriKind.Relative))).StatusCode.ShouldBe(HttpStatusCode.Redirect);
    }

    [Fact]
    public async Task A_device_not_used_for_a_week_and_a_person_who_left_are_out()
    {
        await OwnerAsync();
        _clock.Now = _clock.Now.AddDays(6);
        (await _bay.GetAsync("/")).Status.ShouldBe(HttpStatusCode.OK);
        _clock.Now = _clock.Now.AddDays(6);
        (await _bay.GetAsync("/")).Status.ShouldBe(HttpStatusCode.OK);

        using var tablet = _bay.OtherBrowser();
        await RunningBay.SendFormAsync(tablet, "/code", "/code", ("code", await _bay.CodeForAsync("T1")), ("password", Password), ("pin", ""));
        (await tablet.GetAsync(new Uri("/", UriKind.Relative))).StatusCode.ShouldBe(HttpStatusCode.OK);
        await _bay.SendFormAsync("/people", $"/people/{Id("T1")}", ("do", "change"), ("role", "technician"), ("left", "true"));
        (await tablet.GetAsync(new Uri("/", UriKind.Relative))).StatusCode.ShouldBe(HttpStatusCode.Redirect);
        (await SignInAsync(tablet, "T1")).Text.ShouldContain("do not belong together");

        _clock.Now = _clock.Now.AddDays(7).AddSeconds(1);
        (await _bay.GetAsync("/")).Status.ShouldBe(HttpStatusCode.Redirect);
    }

    [Fact]
    public async Task The_last_owner_stays_owner()
    {
        await OwnerAsync();
        (await _bay.SendFormAsync("/people", $"/people/{Id("O9")}", ("do", "change"), ("role", "technician"), ("left", "false"))).Text.ShouldContain("the only owner who can sign in");
        (await _bay.SendFormAsync("/people", $"/people/{Id("O9")}", ("do", "change"), ("role", "owner"), ("left", "true"))).Text.ShouldContain("the only owner who can sign in");
    }

    [Fact]
    public async Task No_secret_lies_in_the_store()
    {
        await OwnerAsync();
        var account = _bay.Store.Accounts.Of(Id("O9"));
        account.PasswordHash.ShouldNotBeNull().ShouldNotContain(Password);
        account.PinHash.ShouldNotBeNull().ShouldNotContain("8264");
        var bytes = Encoding.Latin1.GetString(await ReadSharedAsync(_bay.Store.Path)) + Encoding.Latin1.GetString(await ReadSharedAsync(_bay.Store.Path + "-wal"));
        bytes.ShouldNotContain(Password);
        bytes.ShouldNotContain(_bay.FirstCode!.Replace("-", "", StringComparison.Ordinal));
    }

    private static async Task<byte[]> ReadSharedAsync(string path)
    {
        if (!File.Exists(path))
        {
            return [];
        }

        await using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        using var memory = new MemoryStream();
        await file.CopyToAsync(memory);
        return memory.ToArray();
    }
}
