using System.Diagnostics;
using System.Text;
using System.Text.Json.Nodes;

namespace Trundle.Cli.Tests;

/// <summary>The command itself, as a process: what it writes, and when it writes nothing.</summary>
public sealed class SheetCommandTests : IDisposable
{
    private const string Visit = """
        {"rules":"uk","date":"2026-03-14",
         "vehicle":{"name":"Red van, DEMO 31","odometer":"12000 km","axles":[{"placard":{"size":"195/65 R15 91H","cold":"230 kPa"}}]},
         "fitted":[{"position":"1L","tyre":{"marking":"195/65 R15 91H"},"tread":{"inner":["1.0 mm"],"centre":["1.0 mm"],"outer":["1.0 mm"]}}]}
        """;

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("command");

    private string PathOf(string name) => Path.Combine(_folder.FullName, name);

    [Fact]
    public async Task It_writes_the_sheet_and_answers_as_the_check_does()
    {
        await File.WriteAllTextAsync(PathOf("visit.json"), Visit);
        var check = await Run("visit", "check", PathOf("visit.json"), "--json");
        var sheet = await Run("visit", "sheet", PathOf("visit.json"), "-o", PathOf("sheet.pdf"), "--json");
        check.Status.ShouldBe(1);
        sheet.Status.ShouldBe(1);
        var said = JsonNode.Parse(sheet.Out)!;
        said["pages"]!.GetValue<int>().ShouldBe(1);
        said["worst"]!.GetValue<string>().ShouldBe(JsonNode.Parse(check.Out)!["worst"]!.GetValue<string>());
        Encoding.ASCII.GetString((await File.ReadAllBytesAsync(PathOf("sheet.pdf")))[..5]).ShouldBe("%PDF-");
        _folder.GetFiles().Select(f => f.Name).Order().ShouldBe(["sheet.pdf", "visit.json"]);
    }

    [Fact]
    public async Task An_american_sheet_is_on_letter_paper_and_a_locale_that_is_not_spoken_writes_nothing()
    {
        await File.WriteAllTextAsync(PathOf("visit.json"), Visit);
        var american = await Run("visit", "sheet", PathOf("visit.json"), "-o", PathOf("sheet.pdf"), "--locale", "en-us", "--json");
        JsonNode.Parse(american.Out)!["paper"]!.GetValue<string>().ShouldBe("letter");
        Encoding.Latin1.GetString(await File.ReadAllBytesAsync(PathOf("sheet.pdf"))).ShouldContain("en-US");
        var other = await Run("visit", "sheet", PathOf("visit.json"), "-o", PathOf("other.pdf"), "--locale", "xx");
        other.Status.ShouldBe(2);
        File.Exists(PathOf("other.pdf")).ShouldBeFalse();
    }

    [Fact]
    public async Task Photographs_in_a_folder_are_printed_on_the_sheet_for_the_file()
    {
        const string id = "0b9f6c1e-3a52-4d0e-9d0c-2f6a55e2d731";
        await File.WriteAllTextAsync(PathOf("visit.json"), """{"arrival":{"damage":[{"place":"rear bumper","photos":["0b9f6c1e-3a52-4d0e-9d0c-2f6a55e2d731"]}]},"vehicle":{"name":"Red van, DEMO 31"}}""");
        async Task<(int Status, string Out, bool Picture)> Sheet(string folder)
        {
            File.Delete(PathOf("sheet.pdf"));
            var run = await Run("visit", "sheet", PathOf("visit.json"), "-o", PathOf("sheet.pdf"), "--for", "file", "--photos", folder, "--json");
            return (run.Status, run.Out, File.Exists(PathOf("sheet.pdf")) && Encoding.Latin1.GetString(await File.ReadAllBytesAsync(PathOf("sheet.pdf"))).Contains("/Subtype/Image", StringComparison.Ordinal));
        }

        (await Sheet(_folder.FullName)).Picture.ShouldBeFalse("none lies there");
        await File.WriteAllBytesAsync(PathOf($"{id}.png"), Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAIAAACQd1PeAAAADElEQVR4nGNoaGgAAAMEAYFL09IQAAAAAElFTkSuQmCC"));
        (await Sheet(_folder.FullName)).Picture.ShouldBeTrue();
        await File.WriteAllTextAsync(PathOf($"{id}.png"), "no picture");
        var wrong = await Sheet(_folder.FullName);
        wrong.Status.ShouldBe(2);
        JsonNode.Parse(wrong.Out)!["error"]!["code"]!.GetValue<string>().ShouldBe("not-a-picture");
        var nowhere = await Sheet(PathOf("nowhere"));
        nowhere.Status.ShouldBe(2);
        JsonNode.Parse(nowhere.Out)!["error"]!["where"]!.GetValue<string>().ShouldBe("--photos");
        File.Exists(PathOf("sheet.pdf")).ShouldBeFalse();
    }

    [Theory]
    [InlineData("""{"rules":"moon"}""", "rules")]
    [InlineData("""{"vehicle":{"odometre":"1 km"}}""", "vehicle.odometre")]
    [InlineData("{", "visit.json:1")]
    public async Task With_wrong_input_nothing_is_written_and_an_older_sheet_stays(string visit, string where)
    {
        await File.WriteAllTextAsync(PathOf("visit.json"), visit);
        await File.WriteAllTextAsync(PathOf("sheet.pdf"), "older");
        var sheet = await Run("visit", "sheet", PathOf("visit.json"), "-o", PathOf("sheet.pdf"), "--json");
        sheet.Status.ShouldBe(2);
        JsonNode.Parse(sheet.Out)!["error"]!["where"]!.GetValue<string>().ShouldContain(where);
        (await File.ReadAllTextAsync(PathOf("sheet.pdf"))).ShouldBe("older");
        _folder.GetFiles().Length.ShouldBe(2);
    }

    [Fact]
    public async Task A_word_of_an_option_that_is_not_known_is_said_with_the_words_that_are()
    {
        await File.WriteAllTextAsync(PathOf("visit.json"), Visit);
        var paper = await Run("visit", "sheet", PathOf("visit.json"), "-o", PathOf("sheet.pdf"), "--paper", "a5");
        paper.Status.ShouldBe(2);
        paper.Error.ShouldContain("'a4' or 'letter'");
        var nowhere = await Run("visit", "sheet", PathOf("visit.json"), "-o", PathOf("none/sheet.pdf"));
        nowhere.Status.ShouldBe(2);
        nowhere.Error.ShouldContain("no such folder");
        File.Exists(PathOf("sheet.pdf")).ShouldBeFalse();
    }

    [Fact]
    public async Task The_visit_may_come_by_standard_input()
    {
        var sheet = await RunWith(Visit, "visit", "sheet", "-", "-o", PathOf("sheet.pdf"), "--for", "file", "--paper", "letter");
        sheet.Status.ShouldBe(1);
        sheet.Out.ShouldContain("pages.");
        File.Exists(PathOf("sheet.pdf")).ShouldBeTrue();
    }

    public void Dispose() => _folder.Delete(recursive: true);

    private static Task<(int Status, string Out, string Error)> Run(params string[] words) => RunWith("", words);

    private static async Task<(int Status, string Out, string Error)> RunWith(string input, params string[] words)
    {
        using var process = Process.Start(new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "trundle.dll"), .. words])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardInputEncoding = new UTF8Encoding(false),
            StandardOutputEncoding = Encoding.UTF8,
            StandardErrorEncoding = Encoding.UTF8,
        })!;
        await process.StandardInput.WriteAsync(input);
        process.StandardInput.Close();
        var output = process.StandardOutput.ReadToEndAsync();
        var error = process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        return (process.ExitCode, await output, await error);
    }
}
