using System.Text.Json.Nodes;

namespace Trundle.Cli.Tests;

/// <summary>Recordings by their names: a CSV or WAV as the command's own file, one named in a JSON file, a calibration beside it.</summary>
public sealed class SpinCommandTests
{
    private static string Sample(string name) => Path.Combine(Command.Samples, name);

    [Fact]
    public void CSV_and_WAV_with_the_calibration_tell_the_same_planes()
    {
        var csv = Command.Run("balance", "capture", Sample("balance-capture-spin.csv"), "--calibration", Sample("machine-calibration.json"), "--json");
        csv.Status.ShouldBe(0, csv.Output + csv.Messages);
        var wav = Command.Run("balance", "capture", Sample("balance-capture-spin.wav"), "--rotation", "clockwise", "--phases", "lag", "--full-scale", "5", "--calibration", Sample("machine-calibration.json"), "--json");
        wav.Status.ShouldBe(0, wav.Output + wav.Messages);
        foreach (var (plane, grams, degrees) in new[] { ("inner", 35.0, 30.0), ("outer", 22, 240) })
        {
            foreach (var said in new[] { csv, wav })
            {
                said.Json["planes"]![plane]!["massGrams"]!.GetValue<double>().ShouldBe(grams, 0.5);
                said.Json["planes"]![plane]!["angleDegrees"]!.GetValue<double>().ShouldBe(degrees, 1);
            }
        }
    }

    [Fact]
    public void A_JSON_file_names_its_recording_beside_it()
    {
        var said = Command.Run("balance", "capture", Sample("balance-capture-worked.json"), "--json");
        said.Status.ShouldBe(0, said.Output + said.Messages);

        // The outer plane at 135 mm instead of 180, and at 160 mm instead of 200: 22 g become 22 · (180/135) · (200/160).
        said.Json["planes"]!["outer"]!["massGrams"]!.GetValue<double>().ShouldBe(22 * 180 / 135.0 * 200 / 160, 0.5);
    }

    [Fact]
    public void A_calibration_as_the_command_wrote_it_is_read()
    {
        var folder = Directory.CreateTempSubdirectory("trundle-cli-").FullName;
        try
        {
            var kept = Path.Combine(folder, "calibration.json");
            File.WriteAllText(kept, Command.Run("balance", "calibrate", Sample("balance-calibrate-worked.json"), "--json").Output);
            var said = Command.Run("balance", "capture", Sample("balance-capture-spin.csv"), "--calibration", kept, "--json");
            said.Status.ShouldBe(0, said.Output + said.Messages);
            said.Json["planes"]!["inner"]!["massGrams"]!.GetValue<double>().ShouldBe(35, 0.5);

            // Cut short, and a cell that is no number: one message each, with its byte, or its line and column.
            var cut = Path.Combine(folder, "cut.wav");
            File.WriteAllBytes(cut, File.ReadAllBytes(Sample("balance-capture-spin.wav"))[..700]);
            Wrong(cut, "--rotation", "clockwise", "--phases", "lag").ShouldContain("byte 40");
            var bad = Path.Combine(folder, "bad.csv");
            File.WriteAllText(bad, "# rotation: clockwise\n# phases: lag\ntime_s,first,second,index\n0,1,2,3\n0.1,1,two,3\n");
            Wrong(bad).ShouldContain("bad.csv:5:7");
            Wrong(Path.Combine(folder, "none.csv")).ShouldContain("no such file");
            var named = Path.Combine(folder, "named.json");
            File.WriteAllText(named, """{"rotation": "clockwise", "phases": "lag", "recording": {"file": "bad.csv"}}""");
            Wrong(named).ShouldContain("bad.csv:5:7");
        }
        finally
        {
            Directory.Delete(folder, true);
        }
    }

    /// <summary>What is said of a wrong file: status 2, nothing on standard output, one message.</summary>
    private static string Wrong(string file, params string[] options)
    {
        var said = Command.Run(["balance", "capture", file, .. options]);
        said.Status.ShouldBe(2, said.Output + said.Messages);
        said.Output.ShouldBeEmpty();
        said.Messages.ShouldNotContain("   at ");
        return said.Messages;
    }
}
