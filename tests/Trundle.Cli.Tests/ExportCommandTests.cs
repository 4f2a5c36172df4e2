using Trundle.Store;
using Trundle.Visits.Bay;

namespace Trundle.Cli.Tests;

/// <summary>A workshop goes out by the command and comes back into a new file, or not at all.</summary>
public sealed class ExportCommandTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("trundle-export-").FullName;

    private string At(string name) => Path.Combine(_folder, name);

    public void Dispose()
    {
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(_folder, true);
    }

    [Fact]
    public void A_workshop_goes_out_and_comes_back()
    {
        WorkshopStore.Open(At("shop.db")).People.Add("T2", Role.Technician, UnitHabits.Metric);
        Command.Run("export", "--database", At("shop.db"), "-o", At("shop.zip"), "--json").Status.ShouldBe(0);
        var back = Command.Run("import", At("shop.zip"), "--database", At("new.db"), "--json");
        back.Status.ShouldBe(0, back.Output + back.Messages);
        back.Json["rows"]!.GetValue<int>().ShouldBe(1);
        WorkshopStore.Open(At("new.db")).People.All().Single().Name.ShouldBe("T2");
    }

    [Fact]
    public void What_cannot_be_read_leaves_nothing_and_what_is_there_is_not_written_over()
    {
        File.WriteAllText(At("shop.zip"), "not a zip");
        var wrong = Command.Run("import", At("shop.zip"), "--database", At("new.db"), "--json");
        wrong.Status.ShouldBe(2);
        ((string)wrong.Json["error"]!["code"]!).ShouldBe("not-an-export");
        Directory.GetFiles(_folder).ShouldBe([At("shop.zip")]);

        File.WriteAllText(At("there.db"), "somebody's");
        ((string)Command.Run("import", At("shop.zip"), "--database", At("there.db"), "--json").Json["error"]!["code"]!).ShouldBe("file-there");
        File.ReadAllText(At("there.db")).ShouldBe("somebody's");
        ((string)Command.Run("import", At("none.zip"), "--database", At("new.db"), "--json").Json["error"]!["code"]!).ShouldBe("file-missing");
        ((string)Command.Run("export", "--database", At("none.db"), "-o", At("x.zip"), "--json").Json["error"]!["code"]!).ShouldBe("file-missing");
    }
}
