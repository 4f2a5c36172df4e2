using System.Text.Json.Nodes;

namespace Trundle.Cli.Tests;

/// <summary>A workshop's own rules by the command: one file for every command that judges, refused before anything is done where it cannot be meant.</summary>
public sealed class ShopRulesCommandTests
{
    private static readonly string Rules = Path.Combine(Command.Samples, "shop-rules.json");

    private static string Vehicle(string depth) => new JsonObject
    {
        ["rules"] = "uk",
        ["date"] = "2026-06-01",
        ["fitted"] = new JsonArray(new JsonObject
        {
            ["position"] = "1L",
            ["tread"] = new JsonObject { ["inner"] = new JsonArray(depth), ["centre"] = new JsonArray(depth), ["outer"] = new JsonArray(depth) },
        }),
    }.ToJsonString();

    [Theory]
    [InlineData("1.99 mm", 1, "refer")]
    [InlineData("2 mm", 0, "none")]
    [InlineData("2.01 mm", 0, "none")]
    public void The_workshops_rule_decides_and_says_whose_it_is(string depth, int status, string category)
    {
        var said = Command.RunWith(Vehicle(depth), [], "inspect", "-", "--shop-rules", Rules, "--json");
        said.Status.ShouldBe(status, said.Output + said.Messages);
        var own = said.Json["findings"]!.AsArray().Single(f => (string)f!["rule"]! == "shop.tread.summer")!;
        ((string)own["category"]!).ShouldBe(category);
        ((string)own["source"]!).ShouldBe("Workshop rule of 2026-01-05");
        ((string)own["limit"]!["text"]!).ShouldBe("2.0 mm");
        Command.RunWith(Vehicle(depth), [], "inspect", "-", "--json").Status.ShouldBe(0, "without the workshop's file nothing but the law holds");
    }

    [Fact]
    public void In_its_season_and_with_its_correction()
    {
        var winter = Command.RunWith(Vehicle("3.4 mm").Replace("2026-06-01", "2026-12-01", StringComparison.Ordinal), [], "inspect", "-", "--shop-rules", Rules, "--json").Json["findings"]!.AsArray();
        ((string)winter.Single(f => (string)f!["rule"]! == "shop.tread.winter")!["category"]!).ShouldBe("minor");
        var near = winter.Single(f => (string)f!["rule"]! == "tread.near-limit")!;
        ((double)near["limit"]!["value"]!).ShouldBe(3.5);
        ((string)near["limit"]!["source"]!).ShouldBe("Workshop rule of 2026-01-05; put right by the workshop, was 3.0 mm");
        Command.RunWith(Vehicle("3.4 mm"), [], "inspect", "-", "--shop-rules", Rules, "--json").Json["findings"]!.AsArray().ShouldNotContain(f => (string)f!["rule"]! == "shop.tread.winter");
    }

    [Theory]
    [InlineData("fitment", "-")]
    [InlineData("inspect", "-")]
    [InlineData("rotate", "-")]
    [InlineData("visit", "check", "-")]
    [InlineData("visit", "sheet", "-", "-o", "never-written.pdf")]
    public void A_wrong_file_is_2_with_its_place_and_nothing_is_written(params string[] words)
    {
        var file = Path.Combine(Directory.CreateTempSubdirectory("trundle-rules-").FullName, "rules.json");
        File.WriteAllText(file, File.ReadAllText(Rules).Replace("\"2 mm\"", "\"1 mm\"", StringComparison.Ordinal));
        var said = Command.RunWith(Vehicle("5 mm"), [], [.. words, "--shop-rules", file, "--json"]);
        said.Status.ShouldBe(2, said.Output + said.Messages);
        ((string)said.Json["error"]!["where"]!).ShouldBe("shopRules.rules[0].limit");
        ((string)said.Json["error"]!["code"]!).ShouldBe("not-stricter");
        File.Exists("never-written.pdf").ShouldBeFalse();
        Directory.Delete(Path.GetDirectoryName(file)!, recursive: true);
    }

    [Fact]
    public void The_bay_does_not_start_on_a_wrong_file()
    {
        var folder = Directory.CreateTempSubdirectory("trundle-rules-").FullName;
        var file = Path.Combine(folder, "rules.json");
        File.WriteAllText(file, """{"rules":[{"id":"tread"}]}""");
        var database = Path.Combine(folder, "workshop.db");
        var said = Command.Run("serve", "--database", database, "--shop-rules", file, "--json");
        said.Status.ShouldBe(2, said.Output + said.Messages);
        ((string)said.Json["error"]!["where"]!).ShouldBe($"{file}: rules[0].quantity");
        File.Exists(database).ShouldBeFalse();
        Directory.Delete(folder, recursive: true);
    }
}
