using System.IO.Compression;
using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using Trundle.Store;
using Trundle.Visits.Bay;
using Trundle.Web.Demo;

namespace Trundle.Web.Tests;

/// <summary>Everything that a workshop owns goes out and comes back the same; secrets stay; what is not whole is not taken in.</summary>
public sealed class ExportTests : IDisposable
{
    private static readonly StandingClock Clock = new(new DateTimeOffset(2026, 3, 14, 9, 0, 0, TimeSpan.Zero));
    private readonly string _folder = Directory.CreateTempSubdirectory("trundle-export-").FullName;

    public void Dispose()
    {
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(_folder, true);
    }

    [Fact]
    public async Task A_whole_workshop_comes_back_equal()
    {
        var first = Full("first.db");
        var taken = await ZipAsync(first);
        var second = WorkshopStore.Open(Path.Combine(_folder, "second.db"));
        var rows = second.Import.Read(new MemoryStream(taken));
        rows.IsRead.ShouldBeTrue(rows.Problem?.ToString());
        rows.Value.ShouldBeGreaterThan(700);
        Parts(await ZipAsync(second)).ShouldBe(Parts(taken));

        // And lives on: the visit reads the same, its photograph is there, and it takes another entry.
        var visit = first.Visits.InTheWorkshop()[0];
        second.Visits.Find(visit.Heading.Id)!.Fields.Assemble().Text.ShouldBe(visit.Fields.Assemble().Text);
        second.Photos.Find(visit.Heading.Id, Photo)!.Value.Bytes.ShouldBe(Picture);
        second.Visits.Append(visit.Heading.Id, [new Entry(Guid.NewGuid(), "work.bay", "7", "T2", Role.Technician, Clock.Now)], Clock.Now).Value.Taken.Count.ShouldBe(1);
        second.Visits.Open(Guid.NewGuid(), "T1", Clock.Now, new DateOnly(2026, 3, 14)).Number.ShouldNotBe(visit.Heading.Number);
    }

    [Fact]
    public async Task It_holds_every_table_but_the_secret_ones_as_json_and_csv()
    {
        var parts = Parts(await ZipAsync(Full("shop.db")));
        var tables = JsonNode.Parse(parts["workshop.json"])!["tables"]!.AsObject().Select(t => t.Key).ToList();
        tables.ShouldBe(["condemned", "entries", "instrument_records", "instruments", "kept", "kept_records", "people", "photos", "procedure_editions", "stock_items", "stock_moves", "visits"]);
        parts.Keys.ShouldBe(["workshop.json", .. tables.Select(t => $"csv/{t}.csv"), $"photos/{Photo:D}"], ignoreOrder: true);
        parts["csv/people.csv"].ShouldContain("\"T2\"");
        parts["workshop.json"].ShouldNotContain("hash", Case.Insensitive);
        parts["workshop.json"].ShouldContain("\"At\": \"20");
    }

    [Theory]
    [InlineData("not a zip", "not-an-export")]
    [InlineData("edition", "other-edition")]
    [InlineData("missing table", "missing")]
    [InlineData("missing column", "missing")]
    [InlineData("unknown table", "unknown-table")]
    [InlineData("unknown column", "unknown-column")]
    [InlineData("wrong value", "value-unreadable")]
    [InlineData("missing photograph", "photo-missing")]
    [InlineData("missing visit", "not-whole")]
    [InlineData("twice", "not-whole")]
    public async Task What_is_not_whole_is_told_in_one_message_and_nothing_is_taken_in(string how, string code)
    {
        var bytes = Spoilt(await ZipAsync(Full("shop.db")), how);
        var empty = WorkshopStore.Open(Path.Combine(_folder, "empty.db"));
        empty.Import.Read(new MemoryStream(bytes)).Problem!.Code.ShouldBe(code);
        empty.People.All().ShouldBeEmpty();
        empty.Visits.InTheWorkshop().ShouldBeEmpty();
    }

    [Fact]
    public async Task It_comes_back_into_an_empty_file_only()
    {
        var shop = Full("shop.db");
        var problem = shop.Import.Read(new MemoryStream(await ZipAsync(shop))).Problem!;
        problem.Code.ShouldBe("not-empty");
    }

    [Theory]
    [InlineData("D1", HttpStatusCode.Forbidden)]
    [InlineData("I2", HttpStatusCode.Forbidden)]
    [InlineData("O5", HttpStatusCode.OK)]
    public async Task The_owner_takes_it_out_in_the_office(string who, HttpStatusCode expected)
    {
        await using var bay = await RunningBay.StartAsync();
        bay.Store.People.Add("O5", Role.Owner, UnitHabits.Metric);
        await bay.EnterAsAsync(who);
        using var answer = await bay.Client.GetAsync(new Uri("/export.zip", UriKind.Relative), TestContext.Current.CancellationToken);
        answer.StatusCode.ShouldBe(expected);
        (await bay.GetAsync("/history")).Text.Contains("/export.zip", StringComparison.Ordinal).ShouldBe(expected == HttpStatusCode.OK);
        if (expected == HttpStatusCode.OK)
        {
            Parts(await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken))["csv/people.csv"].ShouldContain("\"O5\"");
        }
    }

    private static readonly Guid Photo = new("01920000-0000-7000-8000-0000000000aa");

    // The smallest PNG: one pixel.
    private static readonly byte[] Picture = Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==");

    /// <summary>The invented workshop with a photograph and an account.</summary>
    private WorkshopStore Full(string name)
    {
        var store = WorkshopStore.Open(Path.Combine(_folder, name));
        DemoWorkshop.Fill(store, Clock).ShouldBeTrue();
        var visit = store.Visits.InTheWorkshop()[0].Heading.Id;
        store.Photos.Add(visit, Photo, Picture, "T2", Clock.Now).IsRead.ShouldBeTrue();
        store.Accounts.Keep(new Account(store.People.All()[0].Id, "a hash", null, 0, null));
        return store;
    }

    private static async Task<byte[]> ZipAsync(WorkshopStore store)
    {
        using var memory = new MemoryStream();
        await store.Export.WriteAsync(memory);
        return memory.ToArray();
    }

    private static Dictionary<string, string> Parts(byte[] zip)
    {
        using var archive = new ZipArchive(new MemoryStream(zip), ZipArchiveMode.Read);
        return archive.Entries.ToDictionary(e => e.FullName, e =>
        {
            using var memory = new MemoryStream();
            using var stream = e.Open();
            stream.CopyTo(memory);
            return e.FullName.StartsWith("photos/", StringComparison.Ordinal) ? Convert.ToBase64String(memory.ToArray()) : Encoding.UTF8.GetString(memory.ToArray());
        });
    }

    private static byte[] Spoilt(byte[] zip, string how)
    {
        if (how == "not a zip")
        {
            return zip[..200];
        }

        using var memory = new MemoryStream();
        memory.Write(zip);
        using (var archive = new ZipArchive(memory, ZipArchiveMode.Update, leaveOpen: true))
        {
            if (how == "missing photograph")
            {
                archive.GetEntry($"photos/{Photo:D}")!.Delete();
            }

            var entry = archive.GetEntry("workshop.json")!;
            JsonObject json;
            using (var stream = entry.Open())
            {
                json = JsonNode.Parse(stream)!.AsObject();
            }

            var tables = json["tables"]!.AsObject();
            switch (how)
            {
                case "edition": json["edition"] = "20200101000000_Before"; break;
                case "missing table": tables.Remove("people"); break;
                case "missing column": tables["people"]![0]!.AsObject().Remove("Role"); break;
                case "unknown table": tables["cats"] = new JsonArray(); break;
                case "unknown column": tables["people"]![0]!["Cat"] = 1; break;
                case "wrong value": tables["visits"]![0]!["OpenedAt"] = "yesterday"; break;
                case "missing visit": tables["visits"]!.AsArray().RemoveAt(0); break;
                case "twice": tables["people"]!.AsArray().Add(tables["people"]![0]!.DeepClone()); break;
            }

            entry.Delete();
            using var writer = archive.CreateEntry("workshop.json").Open();
            writer.Write(Encoding.UTF8.GetBytes(json.ToJsonString()));
        }

        return memory.ToArray();
    }
}
