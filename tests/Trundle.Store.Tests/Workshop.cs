using Trundle.Measures;
using Trundle.Visits.Bay;

namespace Trundle.Store.Tests;

/// <summary>A store on a file of its own, with four people in it; the file goes when the test is over.</summary>
public sealed class Workshop : IDisposable
{
    public static readonly DateTimeOffset Morning = new(2026, 3, 14, 8, 30, 0, TimeSpan.Zero);
    public static readonly DateOnly Day = new(2026, 3, 14);

    private readonly string _folder = Directory.CreateTempSubdirectory("trundle-store-").FullName;

    public Workshop()
    {
        Path = System.IO.Path.Combine(_folder, "workshop.db");
        Store = WorkshopStore.Open(Path);
        foreach (var (name, role) in new[] { ("D1", Role.Desk), ("T1", Role.Technician), ("T4", Role.Trainee), ("I2", Role.Instructor) })
        {
            Store.People.Add(name, role, UnitHabits.Metric).IsRead.ShouldBeTrue();
        }
    }

    public string Path { get; }

    public WorkshopStore Store { get; private set; }

    public Guid OpenVisit()
    {
        var id = Guid.NewGuid();
        Store.Visits.Open(id, "D1", Morning, Day);
        return id;
    }

    public static Entry Typed(string field, string typed, double minute = 0, string by = "T1") =>
        new(Guid.NewGuid(), field, typed, by, Role.Trainee, Morning.AddMinutes(minute));

    public TakenEntries Append(Guid visit, params Entry[] entries) => Store.Visits.Append(visit, entries, Morning.AddHours(4)).Value;

    /// <summary>Opens the same file anew, as a program that was started again does.</summary>
    public WorkshopStore Reopen() => Store = WorkshopStore.Open(Path);

    public void Dispose()
    {
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(_folder, true);
    }
}
