using System.Text.Json.Nodes;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;
using UglyToad.PdfPig;

namespace Trundle.Cli.Tests;

/// <summary>The rules for every command (the command contract): JSON alone on standard output, exit status, place and message, no trace.</summary>
public sealed class CommandTests
{
    private static string Sample(string name) => Path.Combine(Command.Samples, name);

    [Fact]
    public void Done_is_0_and_json_is_one_object()
    {
        var said = Command.Run("sidewall", "205/55 R16 91V", "--tin", "1AB CDEFHJ 2218", "--on", "2026-03-14", "--json");
        said.Status.ShouldBe(0, said.Messages);
        said.Json["size"]!["rimDiameterInches"]!.GetValue<double>().ShouldBe(16);
        said.Json["tin"]!["week"]!.GetValue<int>().ShouldBe(22);
        said.Messages.ShouldBeEmpty();
    }

    [Fact]
    public void The_answer_no_is_1()
    {
        var file = JsonNode.Parse(File.ReadAllText(Sample("visit-blue-hatchback.json")))!.AsObject();
        file.Remove("work");
        var said = Command.RunWith(file.ToJsonString(), [], "inspect", "-", "--rules", "uk", "--json");
        said.Status.ShouldBe(1, said.Messages);
        said.Json["worst"]!.GetValue<string>().ShouldBe("dangerous");
    }

    [Theory]
    [InlineData("sidewall", "nonsense")]
    [InlineData("fitment", "no-such-file.json")]
    [InlineData("fixings", "--count", "five")]
    [InlineData("fixings", "--count", "5", "--torque", "1,234 N·m")]
    [InlineData("balance", "tolerance", "--mass", "18 kg", "--speed", "300 r/min", "--grade", "fine")]
    [InlineData("fixings", "--count", "5", "--torque", "")]
    [InlineData("fixings", "--count", "5", "--seat", " ")]
    [InlineData("visit", "sheet", "no-such-file.json", "-o", "")]
    [InlineData("no-such-command")]
    [InlineData("visit", "check")]
    [InlineData("sidewall", "205/55 R16", "--no-such-option", "1")]
    public void Wrong_input_is_2_with_one_message_and_no_trace(params string[] arguments)
    {
        var plain = Command.Run(arguments);
        plain.Status.ShouldBe(2, plain.Output + plain.Messages);
        plain.Output.ShouldBeEmpty();
        plain.Messages.Trim().ShouldNotBeEmpty();
        plain.Messages.ShouldNotContain("   at ");

        var json = Command.Run([.. arguments, "--json"]);
        json.Status.ShouldBe(2);
        var error = json.Json["error"]!;
        error["code"]!.GetValue<string>().ShouldNotBeNullOrWhiteSpace();
        error["where"]!.GetValue<string>().ShouldNotBeNullOrWhiteSpace();
        error["message"]!.GetValue<string>().ShouldNotBeNullOrWhiteSpace();
    }

    [Fact]
    public void A_syntax_error_names_line_and_column_and_an_unknown_key_the_nearest()
    {
        var syntax = Command.RunWith("{\n  \"rules\": uk }", [], "fitment", "-", "--json");
        syntax.Status.ShouldBe(2);
        syntax.Json["error"]!["where"]!.GetValue<string>().ShouldBe("standard input:2:12");
        var key = Command.RunWith("{ \"vehicel\": {} }", [], "fitment", "-", "--json");
        key.Status.ShouldBe(2);
        key.Json["error"]!["where"]!.GetValue<string>().ShouldBe("vehicel");
        key.Json["error"]!["message"]!.GetValue<string>().ShouldContain("'vehicle'");
    }

    [Fact]
    public void A_comma_culture_changes_nothing()
    {
        var here = Command.Run("fixings", "--count", "5", "--torque", "110,5 Nm", "--thread", "M12x1,5", "--property-class", "10.9", "--seat", "cone", "--condition", "dry", "--json");
        var there = Command.RunWith("", [("LC_ALL", "de_DE.UTF-8"), ("LANG", "de_DE.UTF-8")], "fixings", "--count", "5", "--torque", "110.5 N·m", "--thread", "M12x1.5", "--property-class", "10.9", "--seat", "cone", "--condition", "dry", "--json");
        here.Status.ShouldBe(0, here.Output + here.Messages);
        there.Output.ShouldBe(here.Output);
    }

    [Fact]
    public void A_visit_check_is_the_operations_answer_to_the_letter()
    {
        var path = Sample("visit-blue-hatchback.json");
        var said = Command.Run("visit", "check", path, "--json");
        var answer = VisitCheckOperation.Run(FileNode.Parse(File.ReadAllText(path), path).Value).Value;
        said.Status.ShouldBe(answer.No ? 1 : 0);
        JsonNode.DeepEquals(said.Json, JsonNode.Parse(answer.Body.ToJsonString())).ShouldBeTrue();
    }

    [Fact]
    public void A_sheet_is_written_whole_or_not_at_all()
    {
        var folder = Directory.CreateTempSubdirectory("trundle-cli-").FullName;
        try
        {
            var good = Path.Combine(folder, "sheet.pdf");
            var said = Command.Run("visit", "sheet", Sample("visit-blue-hatchback.json"), "-o", good, "--json");
            said.Status.ShouldBeLessThan(2, said.Output + said.Messages);
            using (var pdf = PdfDocument.Open(good))
            {
                pdf.NumberOfPages.ShouldBe(1);
                pdf.GetPage(1).Text.ShouldContain("Blue hatchback");
            }

            var wrong = Path.Combine(folder, "wrong.pdf");
            Command.RunWith("{ \"vehicel\": {} }", [], "visit", "sheet", "-", "-o", wrong).Status.ShouldBe(2);
            File.Exists(wrong).ShouldBeFalse();
            Directory.GetFiles(folder).Length.ShouldBe(1);
        }
        finally
        {
            Directory.Delete(folder, true);
        }
    }

    [Fact]
    public void Every_operation_has_a_command_with_help()
    {
        OperationList.All.Count.ShouldBeGreaterThan(9);
        foreach (var operation in OperationList.All)
        {
            var said = Command.Run([.. operation.Name.Split(' '), "--help"]);
            said.Status.ShouldBe(0, operation.Name);
            said.Output.ShouldContain(operation.About[..20]);
        }
    }

    [Fact]
    public void Every_sample_is_read_by_the_command_that_it_is_for()
    {
        var read = 0;
        foreach (var (words, file) in Command.SamplesByCommand())
        {
            Command.Run([.. words, file, "--json"]).Status.ShouldBeLessThan(2, file);
            read++;
        }

        read.ShouldBeGreaterThan(4);
    }
}
