using Trundle.Store.Database;

namespace Trundle.Store;

/// <summary>One workshop's store: an SQLite file that is brought to the newest form of its tables when it is opened.</summary>
public sealed class WorkshopStore
{
    private readonly StoreFile _file;

    private WorkshopStore(StoreFile file)
    {
        _file = file;
        Path = file.Path;
        Visits = new VisitStore(file);
        People = new PeopleStore(file);
        Condemned = new CondemnedRegister(file);
        Instruments = new InstrumentStore(file);
        Procedures = new ProcedureStore(file);
        Photos = new PhotoStore(file);
        Stock = new StockStore(file);
        Scrap = new ScrapRecord(file);
        Incidents = new IncidentRecord(file);
        Fleet = new FleetStore(file);
        Roll = new RollStore(file);
        Lessons = new LessonStore(file);
        Sets = new WheelSetStore(file);
        Registrations = new RegistrationStore(file);
        Tyres = new TyreRecords(file);
        Keys = new HostKeys(file);
        Accounts = new AccountStore(file);
        Search = new VisitSearch(file);
        Export = new ShopExport(file);
        Import = new ShopImport(file);
    }

    /// <summary>Opens the file, or makes it where there is none.</summary>
    public static WorkshopStore Open(string path)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        return new WorkshopStore(new StoreFile(path));
    }

    /// <summary>The file's whole path.</summary>
    public string Path { get; }

    /// <summary>Visits and their entries.</summary>
    public VisitStore Visits { get; }

    /// <summary>The people of the workshop.</summary>
    public PeopleStore People { get; }

    /// <summary>Tyres and wheels that may not be fitted again.</summary>
    public CondemnedRegister Condemned { get; }

    /// <summary>The workshop's instruments and their records.</summary>
    public InstrumentStore Instruments { get; }

    /// <summary>The workshop's own procedure, edition by edition.</summary>
    public ProcedureStore Procedures { get; }

    /// <summary>The photographs of visits.</summary>
    public PhotoStore Photos { get; }

    /// <summary>The shop's stock.</summary>
    public StockStore Stock { get; }

    /// <summary>What went out as scrap.</summary>
    public ScrapRecord Scrap { get; }

    /// <summary>Incidents and near misses.</summary>
    public IncidentRecord Incidents { get; }

    /// <summary>A text that is another one after any visit was opened, anything was entered, and stock was counted or a part condemned.</summary>
    public string Tip()
    {
        using var context = _file.Context();
        return FormattableString.Invariant($"{context.Entries.Max(e => (long?)e.Sequence) ?? 0}-{context.Visits.Count()}-{context.StockMoves.Max(m => (long?)m.Sequence) ?? 0}-{context.Condemned.Count(c => c.WithdrawnAt == null)}");
    }

    /// <summary>Vehicles of fleets.</summary>
    public FleetStore Fleet { get; }

    /// <summary>Attempts in practice, and what was decided of them.</summary>
    public RollStore Roll { get; }

    /// <summary>Lessons that instructors put together.</summary>
    public LessonStore Lessons { get; }

    /// <summary>Sets of wheels in storage.</summary>
    public WheelSetStore Sets { get; }

    /// <summary>Tyres that were sold.</summary>
    public RegistrationStore Registrations { get; }

    /// <summary>Every TIN that was ever recorded.</summary>
    public TyreRecords Tyres { get; }

    /// <summary>Finds visits by what names them.</summary>
    public VisitSearch Search { get; }

    /// <summary>Everything that the workshop owns, for other programs.</summary>
    public ShopExport Export { get; }

    /// <summary>The way back of an export.</summary>
    public ShopImport Import { get; }

    /// <summary>Accounts, and who is signed in where.</summary>
    public AccountStore Accounts { get; }

    /// <summary>The keys with which the host signs its forms.</summary>
    public HostKeys Keys { get; }
}
