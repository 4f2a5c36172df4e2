using Trundle.Store;
using Trundle.Visits.Bay;

namespace Trundle.Cli.Tests;

/// <summary>The recall look-up as a process over a workshop's own file.</summary>
public sealed class RecallCommandTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("recall");
    private readonly string _database;

    public RecallCommandTests()
    {
        _database = PathOf("shop.db");
        var now = new DateTimeOffset(2026, 3, 14, 9, 0, 0, TimeSpan.Zero);
        var store = WorkshopStore.Open(_database);
        store.People.Add("T1", Role.Technician, UnitHabits.Metric);
        var visit = Guid.NewGuid();
        store.Visits.Open(visit, "T1", now, new DateOnly(2026, 3, 14));
        store.Visits.Append(visit, [.. new[] { ("vehicle.name", "Red coupé"), ("fitted.1L.tyre.tin", "1AB CDEFHJ 1025") }.Select(f => new Entry(Guid.NewGuid(), f.Item1, f.Item2, "T1", Role.Technician, now))], now);
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
    }

    public void Dispose() => _folder.Delete(true);

    private string PathOf(string name) => Path.Combine(_folder.FullName, name);

    [Fact]
    public void A_match_is_status_1_with_a_line_for_people_and_one_object_for_programs()
    {
        var said = Command.Run("recall", "--database", _database, "--plant", "1AB", "--from", "1025", "--to", "2225");
        said.Status.ShouldBe(1, said.Messages);
        said.Output.ShouldContain("1AB CDEFHJ 1025: matches");
        said.Output.ShouldContain("2026-03-14, Red coupé, 1L");
        var json = Command.Run("recall", "--database", _database, "--plant", "1AB", "--code", "CD", "--json").Json;
        json["matches"]!.AsArray().ShouldHaveSingleItem()!["position"]!.GetValue<string>().ShouldBe("1L");
        json["looked"]!.GetValue<int>().ShouldBe(1);
    }

    [Fact]
    public void Without_a_match_the_status_is_0_and_the_csv_has_its_head_alone()
    {
        var said = Command.Run("recall", "--database", _database, "--plant", "1AC", "--csv", PathOf("recall.csv"));
        said.Status.ShouldBe(0, said.Messages);
        said.Output.ShouldContain("0 in it, 0 that may be, of 1 recorded number.");
        File.ReadAllLines(PathOf("recall.csv")).ShouldHaveSingleItem().ShouldStartWith("\"match\"");
    }

    [Fact]
    public void Wrong_input_is_status_2_and_nothing_is_written()
    {
        var week = Command.Run("recall", "--database", _database, "--plant", "1AB", "--from", "5425", "--csv", PathOf("none.csv"), "--json");
        week.Status.ShouldBe(2);
        week.Json["error"]!["where"]!.GetValue<string>().ShouldBe("--from");
        var missing = Command.Run("recall", "--database", PathOf("other.db"), "--plant", "1AB");
        missing.Status.ShouldBe(2);
        missing.Messages.ShouldContain("There is no workshop's file");
        Command.Run("recall", "--database", _database).Status.ShouldBe(2);
        File.Exists(PathOf("none.csv")).ShouldBeFalse();
        File.Exists(PathOf("other.db")).ShouldBeFalse();
    }
}
