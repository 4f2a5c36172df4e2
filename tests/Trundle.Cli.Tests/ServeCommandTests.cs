namespace Trundle.Cli.Tests;

/// <summary>The invented workshop needs no sign-in, and so is reached from its own machine only.</summary>
public sealed class ServeCommandTests
{
    [Theory]
    [InlineData("http://0.0.0.0:5151")]
    [InlineData("http://192.0.2.10:5151")]
    [InlineData("http://127.0.0.1:5151;http://*:5152")]
    public void The_invented_workshop_listens_on_this_machine_only(string urls)
    {
        var folder = Directory.CreateTempSubdirectory("trundle-demo-").FullName;
        var database = Path.Combine(folder, "demo.db");
        var said = Command.Run("demo", "--urls", urls, "--database", database, "--json");
        said.Status.ShouldBe(2, said.Output + said.Messages);
        ((string)said.Json["error"]!["where"]!).ShouldBe("--urls");
        File.Exists(database).ShouldBeFalse();
        Directory.Delete(folder, recursive: true);
    }
}
