using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Json;
using System.Text.Json.Nodes;

namespace Trundle.Bench;

/// <summary>
/// Entries from 50 tablets, 200 in a second all together, kept by the bay and by an endpoint that only writes the row. The clock of each entry starts when it
/// was due, not when a free connection took it: what waits counts.
/// </summary>
internal static class EntryBench
{
    private const int Tablets = 50;
    private const int PerSecond = 200;
    private static readonly TimeSpan Long = TimeSpan.FromSeconds(15);

    public static void Run(string published, Report report)
    {
        var folder = Directory.CreateTempSubdirectory("trundle-bench-entries-");
        try
        {
            var (bayFile, bareFile) = (Path.Combine(folder.FullName, "bay.db"), Path.Combine(folder.FullName, "bare.db"));
            using var bay = Demo(published, bayFile);
            var idle = bay.Megabytes;
            var visits = OpenVisits(bay.Address);
            File.Copy(Snapshot(published, folder.FullName), bareFile);
            var bareAddress = Server.FreeAddress();
            using var bare = Server.Start(Path.Combine(published, "bareentry", "Trundle.Bench.BareEntry"), bareAddress, bareAddress.ToString(), bareFile);
            var bareIdle = bare.Megabytes;
            var bareVisits = Rows(bareFile);
            var times = new Dictionary<string, List<double>>(StringComparer.Ordinal) { ["bare"] = [], ["bay"] = [] };
            for (var turn = 0; turn < 3; turn++)
            {
                // The first turn warms both up and is not counted.
                var (ofBare, ofBay) = (Load(bareAddress, v => $"visits/{v:D}/entries", bareVisits), Load(bay.Address, v => $"api/v1/visits/{v:D}/entries", visits));
                if (turn > 0)
                {
                    times["bare"].AddRange(ofBare);
                    times["bay"].AddRange(ofBay);
                }
            }

            Opened(bay.Address, visits);
            string[] Row(string name, string key) => [name, Text(key, 0.5), Text(key, 0.99), Ratio(key, 0.5), Ratio(key, 0.99)];
            string Text(string key, double share) => StartBench.Text(Quantile(times[key], share), "F1");
            string Ratio(string key, double share) => StartBench.Text(Quantile(times[key], share) / Quantile(times["bare"], share), "F2");
            report.Table(
                "Entries kept",
                $"Milliseconds from when each was due until it was acknowledged, on the disk; {Tablets} clients on {Tablets} whole visits of some 400 entries, {PerSecond} entries a second in all, {Long.TotalSeconds:F0} s a turn, two turns counted, the sides in turn. Both write the same row into the same table with the same settings of the file; the bay also reads the visit, judges the field, looks for clashes and answers with what it took. Aim: 2.",
                ["what", "p50", "p99", "ratio p50", "ratio p99"],
                [Row("bare endpoint, one row", "bare"), Row("bay, POST entries", "bay")]);
            report.Table(
                "The server's memory",
                $"Resident, in MB: started and asked once; and after the load above with {Tablets} open tablets, each on its own visit, that ask for what others entered.",
                ["what", "idle", "with 50 tablets"],
                [["bare endpoint", StartBench.Text(bareIdle, "F0"), StartBench.Text(bare.Megabytes, "F0")], ["bay", StartBench.Text(idle, "F0"), StartBench.Text(bay.Megabytes, "F0")]]);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    internal static Server Demo(string published, string database)
    {
        var address = Server.FreeAddress();
        return Server.Start(Path.Combine(published, "trundle", "trundle"), address, "demo", "--urls", address.ToString().TrimEnd('/'), "--database", database);
    }

    /// <summary>A second workshop's file with the same tables and visits of its own, whose server has ended.</summary>
    private static string Snapshot(string published, string folder)
    {
        var file = Path.Combine(folder, "snapshot.db");
        using (var server = Demo(published, file))
        {
            OpenVisits(server.Address);
        }

        using var open = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={file};Pooling=False");
        open.Open();
        using var command = open.CreateCommand();
        command.CommandText = "PRAGMA wal_checkpoint(TRUNCATE)";
        command.ExecuteNonQuery();
        return file;
    }

    private static List<Guid> Rows(string file)
    {
        using var open = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={file};Pooling=False");
        open.Open();
        using var command = open.CreateCommand();
        command.CommandText = """SELECT "Id" FROM visits ORDER BY "Number" DESC LIMIT 50""";
        using var reader = command.ExecuteReader();
        var ids = new List<Guid>();
        while (reader.Read())
        {
            ids.Add(reader.GetGuid(0));
        }

        return ids;
    }

    private static string Person(HttpClient client) =>
        client.GetFromJsonAsync<JsonObject>("api/v1/people").GetAwaiter().GetResult()!["people"]!.AsArray().First(p => p!["role"]!.GetValue<string>() == "technician")!["name"]!.GetValue<string>();

    private static List<Guid> OpenVisits(Uri address)
    {
        using var client = new HttpClient { BaseAddress = address };
        var by = Person(client);
        var fields = new List<(string Field, string Typed)>();
        Walk("", JsonNode.Parse(File.ReadAllText("samples/visit-blue-hatchback.json")), fields);
        var visits = new List<Guid>();
        for (var i = 0; i < Tablets; i++)
        {
            // Each visit is a whole one, entered up to the signature.
            var id = Guid.CreateVersion7();
            var entries = new JsonArray([.. fields.Where(f => !f.Field.StartsWith("work.handBack", StringComparison.Ordinal) && f.Field is not ("work.number" or "date")).Select(f => (JsonNode?)Entry(f.Field, f.Typed, by))]);
            using var answer = client.PostAsJsonAsync("api/v1/visits", new JsonObject { ["id"] = id.ToString("D"), ["by"] = by, ["entries"] = entries }).GetAwaiter().GetResult();
            answer.EnsureSuccessStatusCode();
            visits.Add(id);
        }

        return visits;
    }

    /// <summary>Each tablet asks for its visit as the bay does.</summary>
    private static void Opened(Uri address, List<Guid> visits)
    {
        using var client = new HttpClient { BaseAddress = address };
        for (var turn = 0; turn < 5; turn++)
        {
            Task.WhenAll(visits.Select(v => client.GetStringAsync($"api/v1/visits/{v:D}?since={(turn == 0 ? 0 : 1_000_000)}"))).GetAwaiter().GetResult();
        }
    }

    private static List<double> Load(Uri address, Func<Guid, string> path, List<Guid> visits)
    {
        using var handler = new SocketsHttpHandler { MaxConnectionsPerServer = Tablets };
        using var client = new HttpClient(handler) { BaseAddress = address };
        var by = address.Port == 0 ? "" : TryPerson(client);
        var count = (int)(PerSecond * Long.TotalSeconds);
        var clock = Stopwatch.StartNew();
        var tablets = visits.Select((visit, n) => Task.Run(async () =>
        {
            var times = new List<double>();
            for (var i = n; i < count; i += Tablets)
            {
                var due = TimeSpan.FromSeconds((double)i / PerSecond);
                if (due > clock.Elapsed)
                {
                    await Task.Delay(due - clock.Elapsed).ConfigureAwait(false);
                }

                var entry = Entry(FormattableString.Invariant($"fitted.{1 + (i / Tablets % 2)}{(i / Tablets % 4 < 2 ? 'L' : 'R')}.tread.inner.{i / Tablets % 3}"), FormattableString.Invariant($"{3 + (i % 50 / 10.0):F1} mm"), by);
                using var answer = await client.PostAsJsonAsync(path(visit), new JsonObject { ["entries"] = new JsonArray(entry) }).ConfigureAwait(false);
                var text = await answer.Content.ReadAsStringAsync().ConfigureAwait(false);
                if (!answer.IsSuccessStatusCode || JsonNode.Parse(text)!["taken"]!.AsArray().Count != 1)
                {
                    throw new InvalidOperationException($"An entry was not taken: {text}");
                }

                times.Add((clock.Elapsed - due).TotalMilliseconds);
            }

            return times;
        })).ToList();
        return [.. Task.WhenAll(tablets).GetAwaiter().GetResult().SelectMany(t => t)];
    }

    private static JsonObject Entry(string field, string typed, string by) => new()
    {
        ["id"] = Guid.CreateVersion7().ToString("D"),
        ["field"] = field,
        ["typed"] = typed,
        ["by"] = by,
        ["at"] = DateTime.UtcNow.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture),
    };

    /// <summary>A visit's file as the fields that a tablet enters.</summary>
    private static void Walk(string path, JsonNode? node, List<(string, string)> fields)
    {
        switch (node)
        {
            case JsonObject members:
                foreach (var (key, value) in members.Where(m => m.Key is not ("position" or "by" or "role") || path.Length == 0))
                {
                    Walk(path.Length == 0 ? key : $"{path}.{key}", value, fields);
                }

                break;
            case JsonArray items:
                for (var i = 0; i < items.Count; i++)
                {
                    var name = path == "fitted" ? items[i]!["position"]!.GetValue<string>() : (path.StartsWith("work.steps.", StringComparison.Ordinal) ? i + 1 : i).ToString(CultureInfo.InvariantCulture);
                    Walk($"{path}.{name}", items[i], fields);
                }

                break;
            case JsonValue value:
                fields.Add((path, value.TryGetValue<string>(out var text) ? text : value.ToJsonString()));
                break;
            default:
                break;
        }
    }

    /// <summary>The bay knows its people; the bare endpoint takes any name.</summary>
    private static string TryPerson(HttpClient client)
    {
        using var answer = client.GetAsync("api/v1/people").GetAwaiter().GetResult();
        return answer.IsSuccessStatusCode ? Person(client) : "T1";
    }

    internal static double Quantile(List<double> values, double share) => values.Order().ElementAt((int)(share * (values.Count - 1)));
}
