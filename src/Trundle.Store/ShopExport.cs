using System.Data.Common;
using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;
using Microsoft.EntityFrameworkCore.Storage;
using Trundle.Store.Database;
using Trundle.Visits.Keeping;

namespace Trundle.Store;

/// <summary>
/// Everything that the workshop owns in one ZIP that other programs read: <c>workshop.json</c>, which comes back whole by <see cref="ShopImport"/>; the same
/// tables as CSV for people; photographs as files. Passwords, PINs, devices and the host's own keys are not in it.
/// </summary>
public sealed class ShopExport
{
    /// <summary>The name of the file in the ZIP that holds every table.</summary>
    public const string Tables = "workshop.json";

    internal const string Format = "trundle-workshop";

    /// <summary>The tables that hold secrets, or what is only this host's.</summary>
    private static readonly Type[] Kept = [typeof(AccountRow), typeof(DeviceRow), typeof(SignInRow), typeof(InvitationRow), typeof(HostKeyRow)];

    private readonly StoreFile _file;

    internal ShopExport(StoreFile file) => _file = file;

    /// <summary>Writes the ZIP, as the store stands at one moment.</summary>
    public async Task WriteAsync(Stream to, CancellationToken stop = default)
    {
        var context = _file.Context();
        await using var _ = context.ConfigureAwait(false);
        var transaction = await context.Database.BeginTransactionAsync(System.Data.IsolationLevel.Serializable, stop).ConfigureAwait(false);
        await using var __ = transaction.ConfigureAwait(false);
        var csv = new List<(string Table, string Text)>();
        var zip = await ZipArchive.CreateAsync(to, ZipArchiveMode.Create, leaveOpen: true, Encoding.UTF8, stop).ConfigureAwait(false);
        await using var ___ = zip.ConfigureAwait(false);
        var tables = await zip.CreateEntry(Tables, CompressionLevel.Optimal).OpenAsync(stop).ConfigureAwait(false);
        await using (tables.ConfigureAwait(false))
        {
            var json = new Utf8JsonWriter(tables, new JsonWriterOptions { Indented = true });
            await using var ____ = json.ConfigureAwait(false);
            json.WriteStartObject();
            json.WriteString("format", Format);
            json.WriteString("edition", Edition(context));
            json.WriteStartObject("tables");
            foreach (var table in Owned(context))
            {
                csv.Add((table.Name, await TableAsync(context, table, json, stop).ConfigureAwait(false)));
            }

            json.WriteEndObject();
            json.WriteEndObject();
        }

        foreach (var (table, text) in csv)
        {
            var entry = await zip.CreateEntry($"csv/{table}.csv", CompressionLevel.Optimal).OpenAsync(stop).ConfigureAwait(false);
            await using var open = entry.ConfigureAwait(false);
            await entry.WriteAsync(Encoding.UTF8.GetBytes(text), stop).ConfigureAwait(false);
        }

        // One picture in memory at a time.
        foreach (var id in await context.Photos.AsNoTracking().Select(p => p.Id).ToListAsync(stop).ConfigureAwait(false))
        {
            var bytes = await context.Photos.AsNoTracking().Where(p => p.Id == id).Select(p => p.Bytes).SingleAsync(stop).ConfigureAwait(false);
            var entry = await zip.CreateEntry(PhotoName(id), CompressionLevel.NoCompression).OpenAsync(stop).ConfigureAwait(false);
            await using var open = entry.ConfigureAwait(false);
            await entry.WriteAsync(bytes, stop).ConfigureAwait(false);
        }
    }

    /// <summary>The edition of the tables: an export comes back into a store of the same one.</summary>
    internal static string Edition(StoreContext context) => context.Database.GetMigrations().Last();

    internal static string PhotoName(Guid id) => $"photos/{id:D}";

    /// <summary>The tables that are the workshop's own, by name, with their columns in order.</summary>
    internal static IReadOnlyList<Table> Owned(StoreContext context) =>
    [
        .. context.Model.GetEntityTypes().Where(t => !Kept.Contains(t.ClrType)).Select(t =>
        {
            var name = t.GetTableName()!;
            var at = StoreObjectIdentifier.Table(name);
            return new Table(name, [.. t.GetProperties().Select(p => new Column(p.GetColumnName(at)!, Nullable.GetUnderlyingType(p.ClrType) ?? p.ClrType))],
                [.. t.FindPrimaryKey()!.Properties.Select(p => p.GetColumnName(at)!)]);
        }).OrderBy(t => t.Name, StringComparer.Ordinal),
    ];

    private static async Task<string> TableAsync(StoreContext context, Table table, Utf8JsonWriter json, CancellationToken stop)
    {
        var columns = table.Columns.Where(c => c.Type != typeof(byte[])).ToList();
        var csv = new StringBuilder().Append(CsvLine.Of([.. columns.Select(c => c.Name)]));
        var command = context.Database.GetDbConnection().CreateCommand();
        await using var _ = command.ConfigureAwait(false);
        command.Transaction = context.Database.CurrentTransaction!.GetDbTransaction();
#pragma warning disable CA2100 // Names of our own tables and columns.
        command.CommandText = $"SELECT {string.Join(", ", columns.Select(c => $"\"{c.Name}\""))} FROM \"{table.Name}\" ORDER BY {string.Join(", ", table.Key.Select(k => $"\"{k}\""))}";
#pragma warning restore CA2100
        var rows = await command.ExecuteReaderAsync(stop).ConfigureAwait(false);
        await using var __ = rows.ConfigureAwait(false);
        json.WriteStartArray(table.Name);
        while (await rows.ReadAsync(stop).ConfigureAwait(false))
        {
            json.WriteStartObject();
            var cells = new string?[columns.Count];
            for (var i = 0; i < columns.Count; i++)
            {
                cells[i] = Write(json, columns[i], rows, i);
            }

            json.WriteEndObject();
            csv.Append(CsvLine.Of(cells));
        }

        json.WriteEndArray();
        return csv.ToString();
    }

    /// <summary>Writes one value, and tells it as text.</summary>
    private static string? Write(Utf8JsonWriter json, Column column, DbDataReader rows, int i)
    {
        json.WritePropertyName(column.Name);
        if (rows.IsDBNull(i))
        {
            json.WriteNullValue();
            return null;
        }

        if (column.Type == typeof(bool))
        {
            json.WriteBooleanValue(rows.GetInt64(i) != 0);
            return rows.GetInt64(i) != 0 ? "true" : "false";
        }

        if (column.Type == typeof(double))
        {
            json.WriteNumberValue(rows.GetDouble(i));
            return rows.GetDouble(i).ToString("R", CultureInfo.InvariantCulture);
        }

        if (column.Type == typeof(int) || column.Type == typeof(long))
        {
            json.WriteNumberValue(rows.GetInt64(i));
            return rows.GetInt64(i).ToString(CultureInfo.InvariantCulture);
        }

        var text = column.Type == typeof(DateTimeOffset) ? DateTimeOffset.FromUnixTimeMilliseconds(rows.GetInt64(i)).UtcDateTime.ToString(Column.TimeForm, CultureInfo.InvariantCulture)
            : column.Type == typeof(Guid) ? rows.GetGuid(i).ToString("D")
            : rows.GetString(i);
        json.WriteStringValue(text);
        return text;
    }

    /// <summary>A table of the workshop's own.</summary>
    internal sealed record Table(string Name, IReadOnlyList<Column> Columns, IReadOnlyList<string> Key);

    /// <summary>A column, and what it holds.</summary>
    internal sealed record Column(string Name, Type Type)
    {
        public const string TimeForm = "yyyy-MM-dd'T'HH:mm:ss.fff'Z'";
    }
}
