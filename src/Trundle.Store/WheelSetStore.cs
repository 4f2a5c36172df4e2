using Trundle.Measures;
using Trundle.Store.Database;
using Trundle.Visits.Bay;
using Trundle.Visits.Keeping;

namespace Trundle.Store;

/// <summary>Sets of wheels in storage. Nothing is deleted: a set that was given out stays with its records.</summary>
public sealed class WheelSetStore
{
    internal const string Kind = "set";

    private readonly KeptRecords _kept;

    internal WheelSetStore(StoreFile file) => _kept = new KeptRecords(file, Kind, "S");

    /// <summary>Every set, oldest first, those given out too.</summary>
    public IReadOnlyList<WheelSet> All() => [.. _kept.All().Select(WheelSet.Of).OfType<WheelSet>()];

    /// <summary>A set, or null.</summary>
    public WheelSet? Find(Guid id) => _kept.Find(id) is { } kept ? WheelSet.Of(kept) : null;

    /// <summary>Takes a set in. The same identifier takes it in once.</summary>
    /// <param name="id">Made with the form.</param>
    /// <param name="visit">The visit that its wheels came off on, or null.</param>
    /// <param name="description">What it is and where it stands, as <see cref="SetDescription"/> writes it.</param>
    /// <param name="on">Since when it is in storage.</param>
    /// <param name="day">The workshop's date.</param>
    /// <param name="by">Who takes it in.</param>
    public Reading<WheelSet> TakeIn(Guid id, Guid? visit, string description, DateOnly on, DateOnly day, Recorder by) =>
        SetRecords.Problem(SetRecords.TakenIn, description) is { } problem
            ? Reading<WheelSet>.Failed(problem)
            : Known(_kept.Open(id, visit, new NewKeptRecord(Guid.CreateVersion7(by.At), SetRecords.TakenIn, on, description), day, by));

    /// <summary>Adds a record to a set: put right, moved, noted, given out.</summary>
    public Reading<WheelSet> Add(Guid id, NewKeptRecord record, DateOnly day, Recorder by)
    {
        ArgumentNullException.ThrowIfNull(record);
        return SetRecords.Problem(record.Kind, record.Body) is { } problem
            ? Reading<WheelSet>.Failed(problem)
            : Known(_kept.Add(id, record, day, by, kept => Refused(WheelSet.Of(kept), record)));
    }

    /// <summary>Takes whom to call out of every record of a set, for good. That it was erased, when and by whom is kept as a record.</summary>
    public Reading<WheelSet> EraseOwner(Guid id, DateOnly day, Recorder by)
    {
        ArgumentNullException.ThrowIfNull(by);
        return !by.Role.May(Right.EraseContact)
            ? Reading<WheelSet>.Failed(new Problem("by", "may-not-erase", "A trainee may not erase it; somebody else of the workshop does."))
            : Known(_kept.Add(
                id, new NewKeptRecord(Guid.CreateVersion7(by.At), SetRecords.OwnerErased, day, "{}"), day, by,
                kept => WheelSet.Of(kept)?.Description.Owner is null ? new Problem("owner", "nothing-to-erase", "Nobody to call is entered of this set.") : null,
                row => row.Body = row.Kind is SetRecords.TakenIn or SetRecords.Corrected ? SetDescription.Read(row.Body).Match(d => (d with { Owner = null }).Body(), _ => row.Body) : row.Body));
    }

    private static Problem? Refused(WheelSet? set, NewKeptRecord record) => record.Kind switch
    {
        SetRecords.TakenIn => new Problem("form", "not-offered", "A set is taken in once; wheels that come back are a new set, with a label of their own."),
        SetRecords.Moved or SetRecords.GivenOut when set?.OutOn is { } out_ => new Problem("form", "given-out", $"This set was given out on {out_.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)}."),
        SetRecords.GivenOut when set is not null && record.On < set.InOn => new Problem("on", "out-of-range", "It cannot go out before it came in."),
        _ => null,
    };

    private static Reading<WheelSet> Known(Reading<KeptThing> kept) => kept.Then(k => WheelSet.Of(k) is { } set
        ? Reading<WheelSet>.Of(set)
        : Reading<WheelSet>.Failed(new Problem("set", "set-unknown", "There is no such set in this workshop.")));
}
