using System.Diagnostics;
using Microsoft.Data.Sqlite;
using Trundle.Visits.Bay;

namespace Trundle.Store.Tests;

public sealed class LastingTests : IDisposable
{
    private readonly Workshop _workshop = new();

    public void Dispose() => _workshop.Dispose();

    private object? Pragma(string name)
    {
        using var connection = new SqliteConnection($"Data Source={_workshop.Path}");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = $"PRAGMA {name}";
        return command.ExecuteScalar();
    }

    [Fact]
    public void What_was_taken_is_there_when_the_file_is_opened_again()
    {
        var visit = _workshop.OpenVisit();
        var entry = Workshop.Typed("vehicle.name", "Blue hatchback");
        _workshop.Append(visit, entry);
        var stored = _workshop.Reopen().Visits.Find(visit)!;
        stored.Entries.ShouldHaveSingleItem().Entry.ShouldBe(entry with { Role = Role.Technician });
        _workshop.Store.People.All().Select(p => p.Name).ShouldBe(["D1", "I2", "T1", "T4"]);
    }

    [Fact]
    public void Readers_do_not_wait_for_a_writer() => Pragma("journal_mode").ShouldBe("wal");

    [Fact]
    public void A_file_copied_while_the_store_is_open_holds_every_entry_that_was_acknowledged()
    {
        // What a crash leaves: the file and its write-ahead log as they lie on the disk, with nobody there to close them.
        var visit = _workshop.OpenVisit();
        var ids = new List<Guid>();
        for (var i = 0; i < 20; i++)
        {
            ids.AddRange(_workshop.Append(visit, Workshop.Typed("vehicle.name", $"name {i}", i)).Taken);
        }

        var copy = System.IO.Path.Combine(System.IO.Path.GetDirectoryName(_workshop.Path)!, "after-a-crash.db");
        File.Copy(_workshop.Path, copy);
        if (File.Exists(_workshop.Path + "-wal"))
        {
            File.Copy(_workshop.Path + "-wal", copy + "-wal");
        }

        WorkshopStore.Open(copy).Visits.Find(visit)!.Entries.Select(e => e.Entry.Id).ShouldBe(ids);
    }

    [Fact]
    public void A_transaction_that_was_cut_off_leaves_nothing_half_done()
    {
        var visit = _workshop.OpenVisit();
        _workshop.Append(visit, Workshop.Typed("vehicle.name", "kept"));
        SqliteConnection.ClearAllPools();
        using (var connection = new SqliteConnection($"Data Source={_workshop.Path};Pooling=False"))
        {
            connection.Open();
            using var transaction = connection.BeginTransaction();
            using var command = connection.CreateCommand();
            command.Transaction = transaction;
            command.CommandText = "UPDATE entries SET Typed = 'half done'";
            command.ExecuteNonQuery().ShouldBe(1);
            // The connection goes without a commit, as it does when the program is ended.
        }

        _workshop.Reopen().Visits.Find(visit)!.Fields["vehicle.name"].ShouldBe("kept");
    }

    [Fact]
    public async Task Two_tablets_that_send_at_once_both_get_all_their_entries_in()
    {
        var visit = _workshop.OpenVisit();
        var sent = Enumerable.Range(0, 4).Select(tablet => Enumerable.Range(0, 15)
            .Select(i => Workshop.Typed($"fitted.{tablet + 1}L.tyre.id", $"{tablet}-{i}", i)).ToList()).ToList();
        var watch = Stopwatch.StartNew();
        await Task.WhenAll(sent.Select(entries => Task.Run(() =>
        {
            foreach (var entry in entries)
            {
                _workshop.Append(visit, entry).Taken.Count.ShouldBe(1);
            }
        })));
        var stored = _workshop.Store.Visits.Find(visit)!;
        stored.Entries.Select(e => e.Entry.Id).ToHashSet().ShouldBe(sent.SelectMany(s => s).Select(e => e.Id).ToHashSet(), ignoreOrder: true);
        stored.Entries.Select(e => e.Sequence).ShouldBeUnique();
        watch.Elapsed.ShouldBeLessThan(TimeSpan.FromMinutes(1));
    }
}
