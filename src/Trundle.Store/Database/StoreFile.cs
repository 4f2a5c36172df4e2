using System.Data.Common;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Trundle.Store.Database;

/// <summary>One workshop's SQLite file: opened, brought to the newest form of its tables, and handed out a context at a time.</summary>
internal sealed class StoreFile
{
    private readonly DbContextOptions<StoreContext> _options;

    public StoreFile(string path)
    {
        Path = System.IO.Path.GetFullPath(path);
        var folder = System.IO.Path.GetDirectoryName(Path)!;
        Directory.CreateDirectory(folder);
        var connection = new SqliteConnectionStringBuilder { DataSource = Path, Mode = SqliteOpenMode.ReadWriteCreate, ForeignKeys = true, DefaultTimeout = 30 };
        _options = new DbContextOptionsBuilder<StoreContext>()
            .UseSqlite(connection.ConnectionString)
            .AddInterceptors(new Durable())
            .Options;
        using var context = Context();
        context.Database.Migrate();
        // Readers do not wait for a writer. The file keeps this once it is set.
        context.Database.ExecuteSqlRaw("PRAGMA journal_mode=WAL");
    }

    public string Path { get; }

    /// <summary>The entries of the visits that are worked on.</summary>
    public EntriesAtHand AtHand { get; } = new();

    public StoreContext Context() => new(_options);

    /// <summary>Writes the log into the file and empties it.</summary>
    public void Truncate()
    {
        using var context = Context();
        context.Database.ExecuteSqlRaw("PRAGMA wal_checkpoint(TRUNCATE)");
    }

    /// <summary>
    /// Every commit is on the disk before it is acknowledged: an entry that a tablet was told is kept survives a loss of power.
    /// </summary>
    private sealed class Durable : DbConnectionInterceptor
    {
        // What is erased is overwritten in the file, not only taken off its list.
        private const string Settings = "PRAGMA synchronous=FULL; PRAGMA secure_delete=ON";

        public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
        {
            using var command = connection.CreateCommand();
            command.CommandText = Settings;
            command.ExecuteNonQuery();
        }

        public override async Task ConnectionOpenedAsync(DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
        {
            var command = connection.CreateCommand();
            await using (command.ConfigureAwait(false))
            {
                command.CommandText = Settings;
                await command.ExecuteNonQueryAsync(cancellationToken).ConfigureAwait(false);
            }
        }
    }
}
