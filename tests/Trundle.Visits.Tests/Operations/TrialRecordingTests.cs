using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Operations;

/// <summary>Trial runs whose vibration is a recording of a meter or a telephone, without an index mark.</summary>
public sealed class TrialRecordingTests
{
    private static readonly string[] Recordings = [.. Enumerable.Range(0, 4).Select(k => File.ReadAllText(string.Create(CultureInfo.InvariantCulture, $"trial-recording-{k}.csv")))];

    private static Reading<Answer> Run(JsonObject body) => BalanceTrialOperation.Operation.Run(FileNode.From(body));

    private static JsonObject Body(Func<int, JsonObject>? recording = null, string speed = "100 km/h")
    {
        JsonArray Vibration(int k) => [new JsonObject { ["recording"] = recording?.Invoke(k) ?? new JsonObject { ["csv"] = Recordings[k] } }];
        var runs = new JsonArray((JsonNode)new JsonObject { ["vibration"] = Vibration(0) });
        for (var k = 1; k < 4; k++)
        {
            runs.Add((JsonNode)new JsonObject { ["trial"] = new JsonObject { ["plane"] = 1, ["mass"] = "30 g", ["angle"] = 120 * (k - 1) }, ["vibration"] = Vibration(k) });
        }

        return new JsonObject { ["speed"] = speed, ["rollingCircumference"] = "1.96 m", ["runs"] = runs };
    }

    [Fact]
    public void The_sample_made_for_42_g_at_130_degrees_is_met_within_three_standard_errors()
    {
        var answer = Run(Body()).Value;
        answer.No.ShouldBeFalse();
        var correction = answer.Body["corrections"]![0]!;
        var error = answer.Body["circles"]!["standardErrorGrams"]!.GetValue<double>();
        error.ShouldBeInRange(0.3, 3);
        var (grams, degrees) = (correction["massGrams"]!.GetValue<double>(), correction["angleDegrees"]!.GetValue<double>());
        var (x, y) = ((grams * Math.Cos(degrees * Math.PI / 180)) - (42 * Math.Cos(130 * Math.PI / 180)), (grams * Math.Sin(degrees * Math.PI / 180)) - (42 * Math.Sin(130 * Math.PI / 180)));
        Math.Sqrt((x * x) + (y * y)).ShouldBeLessThan(3 * error);

        var recorded = answer.Body["recordings"]!.AsArray();
        recorded.Count.ShouldBe(4);
        recorded[0]!["signal"]!.GetValue<string>().ShouldBe("az");
        recorded[0]!["amplitude"]!.GetValue<double>().ShouldBe(0.021 * 42, 3 * recorded[0]!["amplitudeStandardError"]!.GetValue<double>());
        recorded[0]!["speedRevolutionsPerMinute"]!.GetValue<double>().ShouldBe(850, 4);
        answer.Body["cautions"]!.AsArray().ShouldContain(c => c!.GetValue<string>().Contains("second person"));
    }

    [Fact]
    public void Another_direction_is_taken_where_it_is_named()
    {
        var answer = Run(Body(k => new JsonObject { ["csv"] = Recordings[k], ["signal"] = "ax" })).Value;
        answer.Body["recordings"]![2]!["signal"]!.GetValue<string>().ShouldBe("ax");

        // The sample's other direction shakes 0.3 times as much.
        answer.Body["recordings"]![0]!["amplitude"]!.GetValue<double>().ShouldBe(0.3 * 0.021 * 42, 0.06);
    }

    [Fact]
    public void Runs_at_different_speeds_are_flagged()
    {
        // Read as if it had been sampled faster, the third run was made 4 % faster.
        var body = Body(k => k == 2
            ? new JsonObject { ["csv"] = string.Join('\n', Recordings[k].Split('\n').Select(l => l.Contains(',', StringComparison.Ordinal) ? l[(l.IndexOf(',', StringComparison.Ordinal) + 1)..] : l)), ["sampleRate"] = "104 Hz" }
            : new JsonObject { ["csv"] = Recordings[k] });
        var answer = Run(body).Value;
        answer.No.ShouldBeTrue();
        answer.Body["warnings"]!.AsArray().ShouldContain(w => w!["code"]!.GetValue<string>() == "speeds-differ" && w["message"]!.GetValue<string>().Contains("Repeat"));
    }

    [Theory]
    [InlineData("""{"csv": "time_s,az\n0,1\n0.01,2\n0.02,1\n0.03,2"}""", "100 km/h", "runs[0].vibration[0].recording", "order-not-found", "steady speed")]
    [InlineData("""{"csv": "time_s\n0\n0.01\n0.02"}""", "100 km/h", "runs[0].vibration[0].recording.csv", "column-missing", "vibration")]
    [InlineData("""{"csv": "az\n1\n2"}""", "100 km/h", "runs[0].vibration[0].recording.sampleRate", "missing", "100 Hz")]
    [InlineData("""{"csv": "time_s,az\n0,x"}""", "100 km/h", "runs[0].vibration[0].recording.csv:2:3", "number-unreadable", "not a number")]
    [InlineData("""{"csv": "time_s,az\n0,1\n0.02,1\n0.01,2"}""", "100 km/h", "runs[0].vibration[0].recording.csv", "time-uneven", "line 4")]
    [InlineData("""{"csv": "time_s,az\n0,1\n0.01,2\n0.02,1", "signal": "up"}""", "100 km/h", "runs[0].vibration[0].recording.signal", "signal-missing", "'az'")]
    [InlineData("""{"csv": "time_s,az\n0,1\n0.01,2\n0.02,1", "time": "t"}""", "100 km/h", "runs[0].vibration[0].recording.time", "column-missing", "'time_s'")]
    [InlineData("""{"file": "a.csv"}""", "100 km/h", "runs[0].vibration[0].recording.file", "file-not-here", "'csv'")]
    [InlineData("""{"name": "a"}""", "100 km/h", "runs[0].vibration[0].recording", "missing", "one form")]
    [InlineData("""{"wav": "!"}""", "100 km/h", "runs[0].vibration[0].recording.wav", "base64-unreadable", "base 64")]
    [InlineData("""{"csv": "time_s,az\n0,1\n0.01,2\n0.02,1", "rows": 3}""", "100 km/h", "runs[0].vibration[0].recording.rows", "key-unknown", "rows")]
    [InlineData("""{"csv": "time_s,az\n0,1\n0.01,2\n0.02,1"}""", "", "speed", "missing", "r/min")]
    public void Each_problem_names_its_place(string recording, string speed, string where, string code, string words)
    {
        var problem = Run(Body(k => k == 0 ? JsonNode.Parse(recording)!.AsObject() : new JsonObject { ["csv"] = Recordings[k] }, speed)).Problem.ShouldNotBeNull();
        (problem.Where, problem.Code).ShouldBe((where, code), problem.Message);
        problem.Message.ShouldContain(words);
    }
}
