using System.Text.Json.Nodes;
using Microsoft.JSInterop;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Visits.Instruments;
using Trundle.Web.Client.Instruments;
using Trundle.Web.Client.Paper;

namespace Trundle.Web.Client.Entries;

/// <summary>The exchange with the host: what waits is sent, what others entered is fetched, and what was told is kept for a page with no network.</summary>
public sealed partial class OpenVisit
{
    private async Task KeepGoingAsync()
    {
        if (_going)
        {
            return;
        }

        _going = true;
        while (!_stop.IsCancellationRequested)
        {
            try
            {
                await Task.Delay(Unsent > 0 || photos.Waiting.Any(p => p.Refused is null) || !Reached ? Often : Seldom, clock, _stop.Token);
            }
            catch (OperationCanceledException)
            {
                return;
            }

            await ExchangeAsync();
        }
    }

    /// <summary>Sends what waits and fetches what others entered.</summary>
    private async Task ExchangeAsync()
    {
        if (_busy)
        {
            return;
        }

        _busy = true;
        try
        {
            var sending = (Unsent, Reached);
            var pictures = false;
            var shown = (Reading, Refused: Refused.Count(), Loaded, Trouble, SignedOut, Clashing);
            Reached = await outbox.SendAsync(Taken);
            if (Reached)
            {
                pictures = await photos.SendAsync();
                await FetchAsync();
            }

            Recompute();
            if (pictures || shown != (Reading, Refused.Count(), Loaded, Trouble, SignedOut, Clashing))
            {
                Changed?.Invoke();
            }
            else if (sending != (Unsent, Reached))
            {
                Told?.Invoke();
            }
        }
        finally
        {
            _busy = false;
        }
    }

    /// <summary>Tells whether other entries stand against each other than before.</summary>
    private string Clashing => string.Join(' ', Clashes.SelectMany(c => c.Entries).Select(e => e.Id));

    private void Taken(Guid visit, IReadOnlyList<Entry> entries, JsonObject told)
    {
        if (visit != Id)
        {
            return;
        }

        foreach (var entry in entries)
        {
            _theirs.TryAdd(entry.Id, entry);
        }

        Take(told["added"]);
    }

    private void Take(JsonNode? entries)
    {
        foreach (var json in (entries as JsonArray ?? []).OfType<JsonObject>())
        {
            if (EntryJson.Read(json) is { } entry)
            {
                _theirs[entry.Id] = entry;
            }
        }
    }

    private async Task FetchAsync()
    {
        var answer = await browser.AskAsync("GET", FormattableString.Invariant($"/api/v1/visits/{Id:D}?since={_last}"));
        Reached = answer.Status != 0;
        if (Reached)
        {
            var back = SignedOut && answer.Status != HostAnswer.NotSignedIn;
            if (answer.Status == HostAnswer.NotSignedIn && !SignedOut)
            {
                await known.ForgetAsync();
            }

            SignedOut = answer.Status == HostAnswer.NotSignedIn;
            if (back)
            {
                await PeopleAsync();
            }
        }

        if (answer.Body is { } body && answer.Good)
        {
            Take(body["entries"]);
            Beside(body);
            await known.KeepAsync(Id, body);
            _last = body["last"]?.GetValue<long>() ?? _last;
            Loaded = true;
            Trouble = null;
            await RegisterAsync(EntryJson.Text(body, "register"));
        }
        else if (!Loaded)
        {
            Trouble = SignedOut
                ? "Nobody is signed in on this device."
                : answer.Status == 404
                ? Unknown
                : outbox.Waiting.Any(w => w.Visit == Id)
                    ? "The workshop's computer does not answer. What this device holds of the visit is here and will be sent."
                    : "The workshop's computer does not answer yet. This page tries again by itself.";
        }
    }

    private const string Unknown = "The workshop's computer knows no such visit.";

    /// <summary>Where the host does not answer, what it told this device before is shown, and goes on being worked with.</summary>
    private async Task RecallAsync()
    {
        if (await known.OfAsync(Id) is not { } before)
        {
            return;
        }

        Take(before.Entries);
        Beside(before.Beside ?? []);
        _register = Lines(before.Register ?? []);
        Loaded = true;
        Trouble = null;
    }

    /// <summary>What the workshop tells beside the entries.</summary>
    private void Beside(JsonObject body)
    {
        Instruments = ShopInstruments.Read(body) ?? Instruments;
        Stock = ShopItem.Read(body) ?? Stock;
        ReTorqueBefore = ReTorqueOfBefore.Read(body) ?? ReTorqueBefore;
    }

    private static CondemnedLine[] Lines(JsonObject body) => [.. (body["condemned"] as JsonArray ?? []).OfType<JsonObject>().Select(EntryJson.ReadCondemned).OfType<CondemnedLine>()];

    /// <summary>Fetches the register of condemned tyres and wheels where it is of another edition than the one that this device holds.</summary>
    private async Task RegisterAsync(string? edition)
    {
        if (edition is null || edition == _edition)
        {
            return;
        }

        var answer = await browser.AskAsync("GET", "/api/v1/condemned");
        if (answer.Good && answer.Body is { } body)
        {
            _register = Lines(body);
            _edition = EntryJson.Text(body, "register");
            await known.KeepRegisterAsync(answer.Text);
        }
    }

    private async Task PeopleAsync()
    {
        if (await Entries.People.AskAsync(browser) is { } people)
        {
            SignedOut = people.SignIn && people.Me is null;
            // Who entered on this page goes on entering while nobody is signed in: the entries wait, and the host judges them by their own moment.
            (People, Me, SignIn) = (people.All, people.Me ?? (people.SignIn ? Me : null), people.SignIn);
        }
    }
}
