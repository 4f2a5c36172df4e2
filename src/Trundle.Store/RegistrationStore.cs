using Trundle.Measures;
using Trundle.Store.Database;
using Trundle.Visits.Bay;
using Trundle.Visits.Keeping;

namespace Trundle.Store;

/// <summary>Tyres that were sold, with their purchasers, for as long as the registration needs the names; and what the workshop says of itself as a seller.</summary>
public sealed class RegistrationStore
{
    internal const string Kind = "registration";

    // One declaration a workshop: its own row under a fixed identifier.
    private static readonly Guid Declaration = new("7b1f0c52-6a5e-4d3b-9f57-1c0e8a4f5740");

    private readonly KeptRecords _kept;
    private readonly KeptRecords _sellers;

    internal RegistrationStore(StoreFile file) => (_kept, _sellers) = (new KeptRecords(file, Kind, "R"), new KeptRecords(file, "seller", "D"));

    /// <summary>Every registration, oldest first.</summary>
    public IReadOnlyList<Registration> All() => [.. _kept.All().Select(Registration.Of).OfType<Registration>()];

    /// <summary>A registration, or null.</summary>
    public Registration? Find(Guid id) => _kept.Find(id) is { } kept ? Registration.Of(kept) : null;

    /// <summary>The workshop as a seller that registers tyres, or null where it has not said so, or has taken it back.</summary>
    public Seller? Seller() => _sellers.Find(Declaration)?.Records[^1] is { Kind: Visits.Keeping.Seller.Subject } record && Visits.Keeping.Seller.Read(record.Body) is { IsRead: true } read ? read.Value : null;

    /// <summary>The workshop says that it registers the tyres that it sells, or that it does not.</summary>
    /// <param name="body">As <see cref="Visits.Keeping.Seller"/> writes it; null where it does not.</param>
    /// <param name="day">The workshop's date.</param>
    /// <param name="by">Who says so: an instructor or the owner.</param>
    public Problem? Declare(string? body, DateOnly day, Recorder by)
    {
        ArgumentNullException.ThrowIfNull(by);
        if (!by.Role.May(Right.AnswerForRegistration))
        {
            return new Problem("by", "may-not-declare", "An instructor or the owner says what the workshop is subject to.");
        }

        if (body is not null && Visits.Keeping.Seller.Read(body).Problem is { } problem)
        {
            return problem;
        }

        var record = new NewKeptRecord(Guid.CreateVersion7(by.At), body is null ? Visits.Keeping.Seller.NotSubject : Visits.Keeping.Seller.Subject, day, body ?? "{}");
        return (_sellers.Find(Declaration) is null ? _sellers.Open(Declaration, null, record, day, by) : _sellers.Add(Declaration, record, day, by, _ => null)).Problem;
    }

    /// <summary>Records a sale. The same identifier records it once.</summary>
    public Reading<Registration> Record(Guid id, Guid? visit, string sale, DateOnly sold, DateOnly day, Recorder by)
    {
        ArgumentNullException.ThrowIfNull(by);
        if (Seller() is null)
        {
            return Reading<Registration>.Failed(new Problem("seller", "not-subject", "This workshop has not said that it registers tyres."));
        }

        return Wrong(sale, sold) is { } problem
            ? Reading<Registration>.Failed(problem)
            : Known(_kept.Open(id, visit, new NewKeptRecord(Guid.CreateVersion7(by.At), RegistrationRecords.Sold, sold, sale), day, by));
    }

    /// <summary>Puts a sale right, or says in which way it was registered.</summary>
    public Reading<Registration> Add(Guid id, NewKeptRecord record, DateOnly day, Recorder by)
    {
        ArgumentNullException.ThrowIfNull(record);
        var problem = record.Kind == RegistrationRecords.Corrected ? Wrong(record.Body, record.On)
            : RegistrationRecords.Ways.Contains(record.Kind) ? null
            : new Problem("form", "word-unknown", "Open the page again and use one of its forms.");
        return problem is not null
            ? Reading<Registration>.Failed(problem)
            : Known(_kept.Add(id, record, day, by, kept =>
                kept.Records.Any(r => r.Kind == RegistrationRecords.PurchaserRemoved) ? new Problem("form", "purchaser-removed", "The purchaser was taken out of this registration: nothing is added to it.")
                : RegistrationRecords.Ways.Contains(record.Kind) && record.On < kept.Records[0].On ? new Problem("on", "out-of-range", "It cannot be given or sent before the tyres were sold.")
                : null));
    }

    /// <summary>Takes the purchaser's name and address out of every record of a registration that was given or sent. The TINs stay: a recall finds them.</summary>
    public Reading<Registration> RemovePurchaser(Guid id, DateOnly day, Recorder by)
    {
        ArgumentNullException.ThrowIfNull(by);
        if (!by.Role.May(Right.AnswerForRegistration))
        {
            return Reading<Registration>.Failed(new Problem("by", "may-not-remove", "An instructor or the owner takes a purchaser's name out."));
        }

        var record = new NewKeptRecord(Guid.CreateVersion7(by.At), RegistrationRecords.PurchaserRemoved, day, "{}");
        return Known(_kept.Add(
            id, record, day, by,
            kept => Registration.Of(kept) is { Done: null } ? new Problem("form", "not-registered", "First give or send the form: until then the registration needs the name.")
                : kept.Records.Any(r => r.Kind == RegistrationRecords.PurchaserRemoved) ? new Problem("form", "purchaser-removed", "The purchaser was taken out already.")
                : null,
            row => row.Body = row.Kind is RegistrationRecords.Sold or RegistrationRecords.Corrected ? Sale.Read(row.Body, null).Match(sale => (sale with { Purchaser = null }).Body(), _ => "{}") : row.Body));
    }

    private static Problem? Wrong(string sale, DateOnly sold) => Sale.Read(sale, sold).Match(
        read => read.Purchaser is null ? new Problem("purchaser.name", "missing", "Give the purchaser's name and address: the registration is theirs.") : null,
        problem => problem);

    private static Reading<Registration> Known(Reading<KeptThing> kept) => kept.Then(k => Registration.Of(k) is { } registration
        ? Reading<Registration>.Of(registration)
        : Reading<Registration>.Failed(new Problem("registration", "registration-unknown", "There is no such registration in this workshop.")));
}
