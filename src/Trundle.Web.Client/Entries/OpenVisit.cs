using System.Text.Json.Nodes;
using Microsoft.JSInterop;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Visits.Instruments;
using Trundle.Web.Client.Instruments;
using Trundle.Web.Client.Paper;

namespace Trundle.Web.Client.Entries;

/// <summary>
/// The visit that is open on this device: what the host has of it, what this device still holds, and how it stands, computed here by the same
/// engine as everywhere. It goes on computing while the host is not reached.
/// </summary>
public sealed partial class OpenVisit(Browser browser, Outbox outbox, Photos photos, KnownVisits known, TimeProvider clock) : IFields, IDisposable
{
    private static readonly TimeSpan Often = TimeSpan.FromSeconds(4);
    private static readonly TimeSpan Seldom = TimeSpan.FromSeconds(20);

    private readonly Dictionary<Guid, Entry> _theirs = [];
    private readonly CancellationTokenSource _stop = new();
    private DotNetObjectReference<OpenVisit>? _self;
    private DateTimeOffset _lastMade;
    private long _last;
    private string? _edition;
    private IReadOnlyList<CondemnedLine> _register = [];
    private bool _busy;
    private bool _going;

    /// <summary>Told whenever something to be shown has changed.</summary>
    public event Action? Changed;

    /// <summary>Told where only the sending has changed: how much this device still holds, whether the host answers.</summary>
    public event Action? Told;

    /// <summary>Which visit.</summary>
    public Guid Id { get; private set; }

    /// <summary>True once the visit's entries are here.</summary>
    public bool Loaded { get; private set; }

    /// <summary>Why it could not be opened, in words, or null.</summary>
    public string? Trouble { get; private set; }

    /// <summary>True while the host answers.</summary>
    public bool Reached { get; private set; }

    /// <summary>Who may enter.</summary>
    public IReadOnlyList<Person> People { get; private set; } = [];

    /// <summary>Who enters on this device, or null where nobody was chosen yet.</summary>
    public Person? Me { get; private set; }

    /// <summary>True where people sign in with a password, and enter and sign with a PIN.</summary>
    public bool SignIn { get; private set; }

    /// <summary>True where the host answers, and says that nobody is signed in on this device: entries wait here until somebody is.</summary>
    public bool SignedOut { get; private set; }

    /// <summary>The workshop's instruments, as they came with the visit.</summary>
    public IReadOnlyList<Instrument> Instruments { get; private set; } = [];

    /// <summary>The shop's stock, as it came with the visit.</summary>
    public IReadOnlyList<ShopItem> Stock { get; private set; } = [];

    /// <summary>Photographs on their way to the host.</summary>
    public Photos Photos => photos;

    /// <summary>The re-torque that the last visit of this vehicle left due, or null.</summary>
    public ReTorqueOfBefore? ReTorqueBefore { get; private set; }

    /// <summary>In which units the person who enters reads and types.</summary>
    public UnitHabits Units => Me?.Units ?? UnitHabits.Metric;

    /// <summary>The newest entry of every field, sent or not.</summary>
    public VisitFields Fields { get; private set; } = VisitFields.Empty;

    /// <summary>What two devices entered against each other, until somebody chooses.</summary>
    public IReadOnlyList<Clash> Clashes { get; private set; } = [];

    /// <summary>The file that they make, read, and how the visit stands.</summary>
    public VisitReading Reading { get; private set; } = VisitReading.Of(VisitFields.Empty);

    /// <summary>How the visit stands.</summary>
    public VisitState State => Reading.State;

    /// <summary>How many entries of any visit this device still holds.</summary>
    public int Unsent => outbox.Waiting.Count(w => w.Refused is null);

    /// <summary>False where this browser keeps no entries on the device.</summary>
    public bool Keeps => outbox.Keeps;

    /// <summary>Why the host would not take what was entered in a field, or null.</summary>
    public string? RefusalOf(string field) => outbox.Waiting.LastOrDefault(w => w.Visit == Id && w.Refused is not null && w.Entry.Field == field)?.Refused;

    /// <summary>Entries that the host would not take.</summary>
    public IEnumerable<WaitingEntry> Refused => outbox.Waiting.Where(w => w.Visit == Id && w.Refused is not null);

    /// <summary>What stands in a field, as typed.</summary>
    public string? this[string field] => Fields[field];

    /// <summary>The problem of a field in words, or null: the host's refusal first, then what the reader says.</summary>
    public string? ProblemOf(string field) => RefusalOf(field) ?? Reading.ProblemOf(field);

    /// <summary>Opens a visit. What this device still holds is there even where the host is not reached.</summary>
    public async Task OpenAsync(Guid visit)
    {
        if (Id == visit)
        {
            return;
        }

        var first = Id == Guid.Empty;
        Id = visit;
        Loaded = false;
        Trouble = null;
        _theirs.Clear();
        _last = 0;
        if (first)
        {
            await outbox.OpenAsync();
            await photos.OpenAsync();
            _self = DotNetObjectReference.Create(this);
            await browser.WatchAsync(_self);
        }

        await PeopleAsync();
        await FetchAsync();
        if (!Loaded && !SignedOut && Trouble != Unknown)
        {
            await RecallAsync();
        }

        Recompute();
        Changed?.Invoke();
        if (first)
        {
            _ = KeepGoingAsync();
            if (Reached)
            {
                _ = known.KeepProgramAsync();
            }
        }
    }

    /// <summary>Enters texts into fields: kept on this device first, then computed with, then sent.</summary>
    public Task EnterAsync(string field, string typed) => EnterAsync((field, typed));

    /// <summary>Enters texts into fields: kept on this device first, then computed with, then sent.</summary>
    public async Task EnterAsync(params (string Field, string Typed)[] texts)
    {
        if (Me is not { } me)
        {
            return;
        }

        var entries = texts
            .Where(t => (Fields.EntryOf(t.Field)?.Typed ?? "") != t.Typed || RefusalOf(t.Field) is not null || Clashes.Any(c => c.Field == t.Field))
            .Select(t => Make(t.Field, t.Typed.Length > Entry.MostCharacters ? t.Typed[..Entry.MostCharacters] : t.Typed, me))
            .ToList();
        if (entries.Count == 0)
        {
            return;
        }

        // The browser writes them down while they are computed with; they leave for the host once they are kept.
        var kept = Keeps;
        var keeping = outbox.AddAsync(Id, entries);
        Recompute();
        Changed?.Invoke();
        await keeping;
        if (kept != Keeps)
        {
            Told?.Invoke();
        }

        _ = ExchangeAsync();
    }

    /// <summary>Takes the picture that was chosen in a control into a field: kept on this device first, then named by an entry, then sent.</summary>
    /// <returns>Null where it was taken, else why not.</returns>
    public async Task<string?> PhotographAsync(string control, string field)
    {
        if (Me is null)
        {
            return "First choose who enters.";
        }

        var id = Guid.CreateVersion7(clock.GetUtcNow());
        if (await photos.TakeAsync(control, id, Id) is { } wrong)
        {
            return wrong;
        }

        await EnterAsync(field, id.ToString("D"));
        return null;
    }

    /// <summary>Chooses who enters on this device, or changes that person's units. The host has to be reached for it.</summary>
    /// <param name="person">Who is to enter.</param>
    /// <param name="pin">That person's PIN; null where the person enters already, or where nobody signs in.</param>
    /// <returns>Null where it was taken, else why not.</returns>
    public async Task<string?> ChooseAsync(Person person, string? pin = null)
    {
        ArgumentNullException.ThrowIfNull(person);
        var body = new JsonObject
        {
            ["id"] = person.Id,
            ["units"] = new JsonObject
            {
                ["pressure"] = person.Units.Pressure,
                ["depth"] = person.Units.Depth,
                ["torque"] = person.Units.Torque,
                ["mass"] = person.Units.Mass,
            },
        };
        if (pin is not null)
        {
            body["pin"] = pin;
        }

        var answer = await browser.AskAsync("POST", pin is null ? "/api/v1/people/me" : "/api/v1/people/me/pin", body);
        Reached = answer.Status != 0;
        if (!answer.Good)
        {
            if (answer.Status == HostAnswer.NotSignedIn)
            {
                SignedOut = true;
            }
            else if (Reached)
            {
                // A fifth wrong PIN ends a sign-in: who is offered is asked anew.
                await PeopleAsync();
            }

            Changed?.Invoke();
            return Reached ? answer.Body?["error"]?["message"]?.GetValue<string>() ?? "The workshop's computer did not take it." : "The workshop's computer does not answer. Try again when it does.";
        }

        Me = person;
        People = [.. People.Select(p => p.Id == person.Id ? person : p)];
        Changed?.Invoke();
        return null;
    }

    /// <summary>Whoever enters proves by the PIN to be there still, before a signature. The host has to be reached for it.</summary>
    /// <returns>Null where the PIN is right, or where nobody signs in.</returns>
    public Task<string?> ProveAsync(string pin) => SignIn && Me is { } me ? ChooseAsync(me, pin) : Task.FromResult<string?>(null);

    /// <summary>Called by the browser when the network is back or the page is looked at again.</summary>
    [JSInvokable]
    public Task NetworkIsBack() => ExchangeAsync();

    /// <inheritdoc />
    public void Dispose()
    {
        if (_self is null)
        {
            return;
        }

        _stop.Cancel();
        _stop.Dispose();
        _self.Dispose();
        _self = null;
    }

    private Entry Make(string field, string typed, Person me)
    {
        // Moments on one device rise strictly, to the millisecond that the host keeps: so the later of two entries is the later one everywhere.
        var now = DateTimeOffset.FromUnixTimeMilliseconds(clock.GetUtcNow().ToUnixTimeMilliseconds());
        _lastMade = now > _lastMade ? now : _lastMade.AddMilliseconds(1);
        return new Entry(Guid.CreateVersion7(_lastMade), field, typed, me.Name, me.Role, _lastMade)
        {
            After = [.. Trundle.Visits.Bay.Clashes.Unseen(All.Where(e => e.Field == field)).Take(Entry.MostAfter).Select(e => e.Id)],
        };
    }

    /// <summary>Every entry of the visit that this device knows.</summary>
    private IEnumerable<Entry> All => _theirs.Values.Concat(outbox.Waiting.Where(w => w.Visit == Id).Select(w => w.Entry));

    /// <summary>Chooses one of the values that stand against each other, for every device.</summary>
    public Task ChooseAsync(Clash clash, Entry chosen)
    {
        ArgumentNullException.ThrowIfNull(clash);
        ArgumentNullException.ThrowIfNull(chosen);
        return EnterAsync((clash.Field, chosen.Typed));
    }

    /// <summary>Reads the visit anew, as far as an entry changed what stands in it: that an entry was sent changes only what is told of the sending.</summary>
    private void Recompute()
    {
        Fields = VisitFields.Of(All);
        Clashes = Trundle.Visits.Bay.Clashes.Of(All);
        Reading = VisitReading.Of(Fields, Id, _register, Reading);
    }
}
