using Trundle.Store;
using Trundle.Visits.Bay;

namespace Trundle.Cli.Tests;

/// <summary>A fleet's list by the command: taken whole, or one clear message and nothing.</summary>
public sealed class FleetCommandTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("trundle-fleet-").FullName;

    private string At(string name) => Path.Combine(_folder, name);

    public void Dispose()
    {
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(_folder, true);
    }

    [Fact]
    public void A_list_is_taken_in_or_told_with_its_place()
    {
        WorkshopStore.Open(At("shop.db")).People.Add("D1", Role.Desk, UnitHabits.Metric);
        File.WriteAllText(At("list.csv"), "unit,front tyre,front pressure\nGV-07,195/65 R15 91H,230 kPa\n");
        var taken = Command.Run("fleet", At("list.csv"), "--database", At("shop.db"), "--by", "D1", "--json");
        taken.Status.ShouldBe(0, taken.Output + taken.Messages);
        taken.Json["added"]!.GetValue<int>().ShouldBe(1);

        File.WriteAllText(At("bad.csv"), "unit,front tyre,front pressure\nGV-07,195/65 R15 91H,230 kPa\nGV-08,nothing,230 kPa\nGV-09,195/65 R15 91H,23 mm\n");
        var wrong = Command.Run("fleet", At("bad.csv"), "--database", At("shop.db"), "--by", "D1", "--json");
        wrong.Status.ShouldBe(2);
        ((string)wrong.Json["error"]!["where"]!).ShouldEndWith("bad.csv: line 3, front tyre");
        ((string)wrong.Json["error"]!["message"]!).ShouldContain("1 more thing");
        WorkshopStore.Open(At("shop.db")).Fleet.All().Select(v => v.Vehicle.Unit).ShouldBe(["GV-07"]);

        ((string)Command.Run("fleet", At("none.csv"), "--database", At("shop.db"), "--by", "D1", "--json").Json["error"]!["code"]!).ShouldBe("file-missing");
        ((string)Command.Run("fleet", At("list.csv"), "--database", At("shop.db"), "--by", "X", "--json").Json["error"]!["code"]!).ShouldBe("person-unknown");
    }
}
