using System.Text.Json;
using System.Text.Json.Nodes;

namespace Trundle.Cli.Tests;

/// <summary>The quick half, machine code from the same sources, and the whole command say the same: byte for byte, but for the last digits of sums that a wider vector adds in another order, and of what is iterated from them.</summary>
public sealed class QuickCommandTests
{
    private static readonly string Built = Path.Combine(Checkout(), "artifacts", "command", "quick", "trundle");

    private static readonly Lazy<string> Quick = new(BesideThisBuild);

    [Fact]
    public void Every_sample_has_one_answer()
    {
        var compared = 0;
        foreach (var (words, file) in Command.SamplesByCommand())
        {
            Same("", [.. words, file]);
            Same("", [.. words, file, "--json"]);
            compared++;
        }

        compared.ShouldBeGreaterThan(15);
    }

    [Theory]
    [InlineData("sidewall", "LT265/75R16 123/120Q LR E", "--tin", "1AB CDEFHJ 2218", "--on", "2026-03-14", "--json")]
    [InlineData("fixings", "--count", "5", "--torque", "110,5 Nm", "--thread", "M12x1,5", "--property-class", "10.9", "--seat", "cone", "--condition", "dry")]
    [InlineData("balance", "tolerance", "--mass", "18 kg", "--speed", "300 r/min", "--grade", "16", "--json")]
    [InlineData("sidewall", "nonsense")]
    [InlineData("sidewall", "nonsense", "--json")]
    [InlineData("fitment", "no-such-file.json")]
    [InlineData("fixings", "--count", "five", "--json")]
    public void A_line_of_options_has_one_answer(params string[] arguments) => Same("", arguments).ShouldBeInRange(0, 2);

    [Theory]
    [InlineData]
    [InlineData("--help")]
    [InlineData("balance", "solve", "--help")]
    [InlineData("no-such-command", "--json")]
    [InlineData("sidewall")]
    [InlineData("sidewall", "205/55 R16", "--no-such-option", "1")]
    [InlineData("visit", "sheet", "no-such-file.json", "-o", "never.pdf")]
    public void What_the_quick_half_does_not_carry_is_handed_to_the_whole_command(params string[] arguments) => Same("", arguments).ShouldBeInRange(0, 2);

    [Fact]
    public void A_spoilt_file_on_standard_input_has_one_answer()
    {
        var random = new Random(7);
        var text = File.ReadAllText(Path.Combine(Command.Samples, "visit-blue-hatchback.json"));
        var wrong = 0;
        for (var i = 0; i < 30; i++)
        {
            var cut = random.Next(text.Length - 40);
            wrong += Same(text.Remove(cut, random.Next(1, 40)), "visit", "check", "-") == 2 ? 1 : 0;
        }

        wrong.ShouldBeGreaterThan(20);
    }

    private static int Same(string input, params string[] arguments)
    {
        if (File.GetLastWriteTimeUtc(Built) < File.GetLastWriteTimeUtc(Path.Combine(AppContext.BaseDirectory, "Trundle.Visits.dll")))
        {
            Assert.Skip("The quick half of the command is not built, or is older than these sources; ./trundle and ./test build it where gcc can be had.");
        }

        var quick = Command.RunProgram(Quick.Value, input, [], arguments);
        var whole = Command.RunWith(input, [], arguments);
        var line = string.Join(' ', arguments);
        if (quick.Output != whole.Output && arguments.Contains("--json"))
        {
            Differences("", quick.Json, whole.Json).ShouldBeEmpty(line);
        }
        else
        {
            quick.Output.ShouldBe(whole.Output, line);
        }

        quick.Messages.ShouldBe(whole.Messages, line);
        quick.Status.ShouldBe(whole.Status, line);
        return quick.Status;
    }

    private static IEnumerable<string> Differences(string at, JsonNode? one, JsonNode? other)
    {
        if (one is JsonObject a && other is JsonObject b && a.Select(m => m.Key).SequenceEqual(b.Select(m => m.Key)))
        {
            return a.SelectMany(m => Differences($"{at}.{m.Key}", m.Value, b[m.Key]));
        }

        if (one is JsonArray c && other is JsonArray d && c.Count == d.Count)
        {
            return c.SelectMany((e, i) => Differences($"{at}[{i}]", e, d[i]));
        }

        var same = one?.GetValueKind() == JsonValueKind.Number && other?.GetValueKind() == JsonValueKind.Number
            ? Math.Abs(one.GetValue<double>() - other.GetValue<double>()) <= 1e-9 * Math.Max(1, Math.Abs(other.GetValue<double>()))
            : JsonNode.DeepEquals(one, other);
        return same ? [] : [$"{at}: {one?.ToJsonString()} and {other?.ToJsonString()}"];
    }

    /// <summary>The quick half under a folder in which this build is the whole command, as they lie when both are published.</summary>
    private static string BesideThisBuild()
    {
        var folder = Directory.CreateTempSubdirectory("trundle-quick-").FullName;
        File.CreateSymbolicLink(Path.Combine(folder, "trundle"), Path.Combine(AppContext.BaseDirectory, "trundle"));
        var quick = Path.Combine(Directory.CreateDirectory(Path.Combine(folder, "quick")).FullName, "trundle");
        File.Copy(Built, quick);
        return quick;
    }

    private static string Checkout()
    {
        var at = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(at.FullName, "Trundle.slnx")))
        {
            at = at.Parent ?? throw new InvalidOperationException("Trundle.slnx was not found above the test.");
        }

        return at.FullName;
    }
}
