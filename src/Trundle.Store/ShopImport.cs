using System.Globalization;
using System.IO.Compression;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Trundle.Measures;
using Trundle.Store.Database;

namespace Trundle.Store;

/// <summary>Brings an export back into a workshop's file that holds nothing yet: all of it, in one transaction, or nothing.</summary>
public sealed class ShopImport
{
    private readonly StoreFile _file;

    internal ShopImport(StoreFile file) => _file = file;

    /// <summary>Reads the ZIP of <see cref="ShopExport"/>.</summary>
    /// <returns>How many rows came in, or the problem with its place in the export.</returns>
    public Reading<int> Read(Stream export)
    {
        ArgumentNullException.ThrowIfNull(export);
        try
        {
            using var zip = new ZipArchive(export, ZipArchiveMode.Read);
            if (zip.GetEntry(ShopExport.Tables) is not { } tables)
            {
                return Failed("file", "not-an-export", $"There is no {ShopExport.Tables} in it; give a ZIP that 'trundle export' wrote.");
            }

            using var stream = tables.Open();
            using var json = JsonDocument.Parse(stream);
            return Tables(json.RootElement, zip);
        }
        catch (Exception e) when (e is InvalidDataException or JsonException)
        {
            return Failed("file", "not-an-export", "It cannot be read as a ZIP that 'trundle export' wrote; it may be cut short.");
        }
    }

    private Reading<int> Tables(JsonElement root, ZipArchive zip)
    {
        using var context = _file.Context();
        if (Text(root, "format") != ShopExport.Format || !root.TryGetProperty("tables", out var tables) || tables.ValueKind != JsonValueKind.Object)
        {
            return Failed(ShopExport.Tables, "not-an-export", "It is not a workshop's export.");
        }

        if (Text(root, "edition") is var edition && edition != ShopExport.Edition(context))
        {
            return Failed("edition", "other-edition", $"This export is of edition '{NumberText.Shown(edition ?? "")}', and this program's is {ShopExport.Edition(context)}. Open the workshop's own file with this program, and export it again.");
        }

        var owned = ShopExport.Owned(context);
        if (tables.EnumerateObject().Select(t => t.Name).FirstOrDefault(n => owned.All(o => o.Name != n)) is { } unknown)
        {
            return Failed($"tables.{unknown}", "unknown-table", $"There is no table '{NumberText.Shown(unknown)}'.");
        }

        using var transaction = context.Database.BeginTransaction();
        context.Database.ExecuteSqlRaw("PRAGMA defer_foreign_keys=ON");
#pragma warning disable EF1002 // Names of our own tables.
        if (owned.FirstOrDefault(t => context.Database.SqlQueryRaw<int>($"SELECT EXISTS(SELECT 1 FROM \"{t.Name}\") AS \"Value\"").AsEnumerable().Single() != 0) is { } full)
        {
            return Failed("database", "not-empty", $"The workshop's file holds something already ({full.Name}); an export comes back into a new file.");
        }
#pragma warning restore EF1002

        var rows = 0;
        try
        {
            foreach (var table in owned)
            {
                if (!tables.TryGetProperty(table.Name, out var list) || list.ValueKind != JsonValueKind.Array)
                {
                    return Failed($"tables.{table.Name}", "missing", "This table is missing; the export is not whole.");
                }

                var n = 0;
                foreach (var row in list.EnumerateArray())
                {
                    if (Insert(context, table, row, zip, $"tables.{table.Name}[{n.ToString(CultureInfo.InvariantCulture)}]") is { } problem)
                    {
                        return Reading<int>.Failed(problem);
                    }

                    n++;
                }

                rows += n;
            }

            transaction.Commit();
            return Reading<int>.Of(rows);
        }
        catch (Exception e) when (e is System.Data.Common.DbException or DbUpdateException)
        {
            return Failed("tables", "not-whole", "Its rows do not belong together: one names another that is not there, or stands twice. Nothing was taken in.");
        }
    }

    private static Problem? Insert(StoreContext context, ShopExport.Table table, JsonElement row, ZipArchive zip, string at)
    {
        if (row.ValueKind != JsonValueKind.Object)
        {
            return new Problem(at, "not-a-row", "Here should stand a row.");
        }

        if (row.EnumerateObject().Select(p => p.Name).FirstOrDefault(n => table.Columns.All(c => c.Name != n || c.Type == typeof(byte[]))) is { } unknown)
        {
            return new Problem($"{at}.{unknown}", "unknown-column", $"There is no column '{NumberText.Shown(unknown)}' in {table.Name}.");
        }

        using var command = context.Database.GetDbConnection().CreateCommand();
        command.Transaction = Microsoft.EntityFrameworkCore.Storage.DbContextTransactionExtensions.GetDbTransaction(context.Database.CurrentTransaction!);
#pragma warning disable CA2100 // Names of our own tables and columns; the values are parameters.
        command.CommandText = $"INSERT INTO \"{table.Name}\" ({string.Join(", ", table.Columns.Select(c => $"\"{c.Name}\""))}) VALUES ({string.Join(", ", table.Columns.Select((_, i) => $"$p{i}"))})";
#pragma warning restore CA2100
        for (var i = 0; i < table.Columns.Count; i++)
        {
            var column = table.Columns[i];
            var place = $"{at}.{column.Name}";
            object? value;
            if (column.Type == typeof(byte[]))
            {
                var name = Guid.TryParse(Text(row, table.Key[0]), out var id) ? ShopExport.PhotoName(id) : "";
                if (zip.GetEntry(name) is not { } file)
                {
                    return new Problem(at, "photo-missing", $"Its picture '{NumberText.Shown(name)}' is not in the export.");
                }

                using var stream = file.Open();
                using var memory = new MemoryStream();
                stream.CopyTo(memory);
                value = memory.ToArray();
            }
            else if (!row.TryGetProperty(column.Name, out var cell))
            {
                return new Problem(place, "missing", "This value is missing; the export is not whole.");
            }
            else if (!Value(column.Type, cell, out value))
            {
                return new Problem(place, "value-unreadable", $"'{NumberText.Shown(cell.ToString())}' cannot stand here.");
            }

            var parameter = command.CreateParameter();
            parameter.ParameterName = $"$p{i}";
            parameter.Value = value ?? DBNull.Value;
            command.Parameters.Add(parameter);
        }

        command.ExecuteNonQuery();
        return null;
    }

    /// <summary>The value as the store keeps it.</summary>
    private static bool Value(Type type, JsonElement cell, out object? value)
    {
        value = null;
        if (cell.ValueKind == JsonValueKind.Null)
        {
            return true;
        }

        value = type == typeof(bool) ? cell.ValueKind is JsonValueKind.True or JsonValueKind.False ? cell.GetBoolean() ? 1L : 0L : null
            : type == typeof(double) ? cell.ValueKind == JsonValueKind.Number ? cell.GetDouble() : null
            : type == typeof(int) || type == typeof(long) ? cell.ValueKind == JsonValueKind.Number && cell.TryGetInt64(out var whole) ? whole : null
            : cell.ValueKind != JsonValueKind.String ? null
            : type == typeof(DateTimeOffset) ? DateTimeOffset.TryParseExact(cell.GetString(), ShopExport.Column.TimeForm, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var time) ? time.ToUnixTimeMilliseconds() : null
            // As the store writes an identifier: in capitals.
            : type == typeof(Guid) ? Guid.TryParseExact(cell.GetString(), "D", out var id) ? id.ToString("D").ToUpperInvariant() : null
            : cell.GetString();
        return value is not null;
    }

    private static string? Text(JsonElement at, string name) => at.ValueKind == JsonValueKind.Object && at.TryGetProperty(name, out var text) && text.ValueKind == JsonValueKind.String ? text.GetString() : null;

    private static Reading<int> Failed(string where, string code, string message) => Reading<int>.Failed(new Problem(where, code, message));
}
