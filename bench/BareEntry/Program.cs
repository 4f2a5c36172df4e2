using System.Globalization;
using System.Text.Json.Nodes;
using Microsoft.Data.Sqlite;

// Arguments: the address, and a workshop's file that is there already.
var builder = WebApplication.CreateSlimBuilder();
builder.WebHost.UseUrls(args[0]);
builder.Logging.ClearProviders();
var connection = $"Data Source={args[1]}";
var app = builder.Build();
app.MapPost("/visits/{visit:guid}/entries", async (Guid visit, HttpRequest request) =>
{
    var entry = (await JsonNode.ParseAsync(request.Body))!["entries"]![0]!;
    await using var open = new SqliteConnection(connection);
    await open.OpenAsync();
    await using (var settings = open.CreateCommand())
    {
        // As the workshop's file is opened: on the disk when it is acknowledged.
        settings.CommandText = "PRAGMA synchronous=FULL; PRAGMA secure_delete=ON";
        await settings.ExecuteNonQueryAsync();
    }

    await using var insert = open.CreateCommand();
    insert.CommandText = """
        INSERT INTO entries ("Id", "VisitId", "Field", "Typed", "Outcome", "EngineVersion", "TableEdition", "By", "Role", "At", "ReceivedAt")
        VALUES ($id, $visit, $field, $typed, 'text', '0', '0', $by, 'technician', $at, $at)
        """;
    insert.Parameters.AddWithValue("$id", Guid.Parse(entry["id"]!.GetValue<string>()));
    insert.Parameters.AddWithValue("$visit", visit);
    insert.Parameters.AddWithValue("$field", entry["field"]!.GetValue<string>());
    insert.Parameters.AddWithValue("$typed", entry["typed"]!.GetValue<string>());
    insert.Parameters.AddWithValue("$by", entry["by"]!.GetValue<string>());
    insert.Parameters.AddWithValue("$at", DateTimeOffset.Parse(entry["at"]!.GetValue<string>(), CultureInfo.InvariantCulture).ToUnixTimeMilliseconds());
    await insert.ExecuteNonQueryAsync();
    return Results.Json(new JsonObject { ["taken"] = new JsonArray(entry["id"]!.GetValue<string>()) });
});
app.Run();
