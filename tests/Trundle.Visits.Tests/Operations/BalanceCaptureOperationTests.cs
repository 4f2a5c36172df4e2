using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Operations;

/// <summary>
/// The invented spin: made apart from this code with a wheel that wants 35 g at 30° inner and 22 g at 240° outer, at 180 r/min, on a machine that the
/// calibration sample describes; signals 0.096828 at 258.20° and 0.070852 at 123.61°, noise 0.004 a sample.
/// </summary>
public class BalanceCaptureOperationTests
{
    private static readonly string Csv = File.ReadAllText("balance-capture-spin.csv");
    private static readonly byte[] Wav = File.ReadAllBytes("balance-capture-spin.wav");

    private static Reading<Answer> Run(JsonObject body) => BalanceCaptureOperation.Operation.Run(FileNode.Parse(body.ToJsonString(), "body").Value);

    private static JsonObject OfCsv(string csv) => new() { ["recording"] = new JsonObject { ["csv"] = csv } };

    private static JsonObject OfWav(byte[] wav, string? name = null)
    {
        var recording = new JsonObject { ["wav"] = Convert.ToBase64String(wav) };
        if (name is not null)
        {
            recording["name"] = name;
        }

        return new() { ["rotation"] = "clockwise", ["phases"] = "lag", ["fullScale"] = 5, ["recording"] = recording };
    }

    private static JsonNode Calibration() => BalanceCalibrateOperation.Operation.Run(FileNode.Parse(File.ReadAllText("balance-calibrate-worked.json"), "c").Value).Value.Body;

    private static double Number(JsonNode? node) => node!.GetValue<double>();

    private static void Shows(JsonNode body)
    {
        Number(body["speedRevolutionsPerMinute"]).ShouldBe(180, 0.03);
        Point(0, 0.096828, 258.20);
        Point(1, 0.070852, 123.61);

        void Point(int p, double amplitude, double degrees)
        {
            var point = body["points"]![p]!;
            Number(point["amplitude"]).ShouldBe(amplitude, 4 * Number(point["amplitudeStandardError"]));
            Number(point["phaseDegrees"]).ShouldBe(degrees, 4 * Number(point["phaseStandardErrorDegrees"]));

            // White noise of 0.004 over 1500 samples: 0.004·√(2/1500).
            Number(point["amplitudeStandardError"]).ShouldBe(0.000146, 0.00001);
        }
    }

    [Fact]
    public void The_spin_as_CSV()
    {
        var answer = Run(OfCsv(Csv)).Value;
        answer.No.ShouldBeFalse(string.Join("\n", answer.ForPeople));
        Shows(answer.Body);
        answer.Body["planes"].ShouldBeNull();
        answer.Body["warnings"]!.AsArray().ShouldBeEmpty();
        answer.ForPeople.ShouldContain(l => l.Contains("not calibrated"));
        answer.ForPeople.ShouldContain(l => l.Contains("guard down") && l.Contains("eye protection") && l.Contains("stones"));
        answer.ForPeople.ShouldContain(l => l.Contains("Do not knock the shaft") && l.Contains("does not run on freely, stop"));
    }

    [Fact]
    public void The_spin_as_WAV() => Shows(Run(OfWav(Wav)).Value.Body);

    [Fact]
    public void The_spin_as_lists()
    {
        var rows = Csv.Split('\n', StringSplitOptions.RemoveEmptyEntries)[3..].Select(r => r.Split(',').Select(c => double.Parse(c, CultureInfo.InvariantCulture)).ToArray()).ToList();
        JsonArray Column(int c) => new([.. rows.Select(r => (JsonNode?)JsonValue.Create(r[c]))]);
        var body = new JsonObject
        {
            ["rotation"] = "clockwise", ["phases"] = "lag", ["sampleRate"] = "0.5 kHz",
            ["recording"] = new JsonObject { ["first"] = Column(1), ["second"] = Column(2), ["index"] = Column(3) },
        };
        var answer = Run(body).Value.Body;
        Shows(answer);
        foreach (var key in new[] { "amplitude", "phaseDegrees" })
        {
            Number(answer["points"]![0]![key]).ShouldBe(Number(Run(OfCsv(Csv)).Value.Body["points"]![0]![key]), 1e-9);
        }
    }

    [Fact]
    public void With_the_calibration_both_planes_are_told()
    {
        var body = OfCsv(Csv);
        body["calibration"] = Calibration();
        var planes = Run(body).Value.Body["planes"]!;
        Plane("inner", 35, 30);
        Plane("outer", 22, 240);

        void Plane(string side, double grams, double degrees)
        {
            Number(planes[side]!["massGrams"]).ShouldBe(grams, 4 * Number(planes[side]!["massStandardErrorGrams"]));
            Number(planes[side]!["angleDegrees"]).ShouldBe(degrees, 4 * Number(planes[side]!["angleStandardErrorDegrees"]));
            Number(planes[side]!["massStandardErrorGrams"]).ShouldBeLessThan(0.2);
        }
    }

    [Fact]
    public void Other_planes_and_a_turned_valve()
    {
        var body = OfCsv(Csv);
        body["calibration"] = Calibration();
        var own = Run(body).Value.Body["planes"]!;
        body["planes"] = JsonNode.Parse("""{"inner": {"radius": "200 mm", "axial": "0 mm"}, "outer": {"radius": "160 mm", "axial": "135 mm"}}""");
        body["valve"] = 90;
        var moved = Run(body).Value.Body["planes"]!;

        // Outer: g·mm × 180/135, at 160 mm; a quarter turn less from the valve.
        Number(moved["outer"]!["massGrams"]).ShouldBe(Number(own["outer"]!["massGrams"]) * 180 / 135 * 200 / 160, 1e-6);
        Number(moved["outer"]!["angleDegrees"]).ShouldBe(Number(own["outer"]!["angleDegrees"]) - 90, 1e-6);
        Number(moved["staticGramMillimetres"]).ShouldBe(Number(own["staticGramMillimetres"]), 1e-6);
    }

    [Fact]
    public void A_speed_that_the_calibration_does_not_serve_gives_no_planes()
    {
        var body = OfCsv(Csv);
        var calibration = Calibration()["calibration"]!.DeepClone();
        calibration["speeds"]!.AsArray().RemoveAt(2);
        calibration["speeds"]!.AsArray().RemoveAt(1);
        body["calibration"] = calibration;
        var answer = Run(body).Value;
        answer.No.ShouldBeTrue();
        answer.Body["planes"].ShouldBeNull();
        answer.Body["warnings"]![0]!["code"]!.GetValue<string>().ShouldBe("speed-outside-calibration");
    }

    [Fact]
    public void A_gap_in_the_times_is_a_drop_out_and_the_longest_stretch_counts()
    {
        var rows = Csv.Split('\n');
        var answer = Run(OfCsv(string.Join('\n', rows.Where((_, i) => i is < 300 or > 340)))).Value;
        answer.No.ShouldBeTrue();
        answer.Body["warnings"]!.AsArray().Select(w => w!["code"]!.GetValue<string>()).ShouldBe(["drop-out"]);
        answer.Body["samples"]!.GetValue<int>().ShouldBe(1500 - 338);
    }

    [Fact]
    public void Decimal_commas_between_semicolons_are_read_alike()
    {
        var answer = Run(OfCsv(Csv.Replace(',', ';').Replace('.', ','))).Value.Body;
        Number(answer["points"]![0]!["amplitude"]).ShouldBe(Number(Run(OfCsv(Csv)).Value.Body["points"]![0]!["amplitude"]));
    }

    [Theory]
    [InlineData("# rotation: clockwise\n# phases: lag\ntime_s,first,second,index\n0,1,2,x", "recording.csv", "number-unreadable", "line 4, column 7")]
    [InlineData("# rotation: clockwise\n# phases: lag\ntime_s,first,second,index\n0,1,2", "recording.csv", "cells-differ", "line 4, column 6")]
    [InlineData("# rotation: clockwise\n# phases: lag\ntime_s,first,second,index\n0,1,2,3,4", "recording.csv", "cells-differ", "line 4, column 9")]
    [InlineData("# rotation: clockwise\n# phases: lag\ntime_s,first,second,index\n0,1,,3", "recording.csv", "number-unreadable", "cell is empty")]
    [InlineData("# rotation: clockwise\n# phases: lag\ntime_s,first,second,index\n0,1,2,3\n0,1,2,3\n0,1,2,3", "recording.csv", "time-uneven", "line 5")]
    [InlineData("# rotation: clockwise\n# phases: lag\ntime_s,first,third,index\n0,1,2,3", "recording.csv", "column-missing", "'second'")]
    [InlineData("# rotation: clockwise\n# phases: lag\n", "recording.csv", "file-empty", "no row of names")]
    [InlineData("first,first,index\n1,2,3", "recording.csv", "header-unreadable", "stands twice")]
    [InlineData("# rotation: clockwise\n# phases: lag\nfirst,second,index\n1,2,3", "sampleRate", "missing", "samples there are in a second")]
    [InlineData("time_s,first,second,index\n0,1,2,3\n1,2,3,4\n2,3,4,5", "rotation", "missing", "outer face")]
    [InlineData("# rotation: clockwise\n# fases: lag\nfirst,second,index\n1,2,3", "fases", "key-unknown", "'phases'")]
    public void A_bad_CSV_is_told_by_line_and_column(string csv, string where, string code, string says)
    {
        var problem = Run(OfCsv(csv)).Problem.ShouldNotBeNull();
        problem.Where.ShouldBe(where, problem.Message);
        problem.Code.ShouldBe(code, problem.Message);
        problem.Message.ShouldContain(says);
    }

    [Theory]
    [InlineData("""{"rotation": "clockwise", "phases": "lag"}""", "recording", "missing")]
    [InlineData("""{"rotation": "clockwise", "phases": "lag", "recording": {}}""", "recording", "missing")]
    [InlineData("""{"rotation": "clockwise", "phases": "lag", "recording": {"file": "spin.csv"}}""", "recording.file", "file-not-here")]
    [InlineData("""{"rotation": "clockwise", "phases": "lag", "recording": {"csv": "a", "wav": "b"}}""", "recording", "recording-twice")]
    [InlineData("""{"rotation": "clockwise", "phases": "lag", "recording": {"wav": "?"}}""", "recording.wav", "base64-unreadable")]
    [InlineData("""{"rotation": "clockwise", "phases": "lag", "sampleRate": 100, "recording": {"first": [1], "second": [1, 2], "index": [1]}}""", "recording.index", "samples-differ")]
    [InlineData("""{"rotation": "clockwise", "phases": "lag", "sampleRate": 100, "recording": {"first": [1], "second": ["1 V"], "index": [1]}}""", "recording.second[0]", "number-unreadable")]
    [InlineData("""{"rotation": "clockwise", "phases": "lag", "sampleRate": 100, "recording": {"first": [1], "second": [1], "index": [1]}}""", "recording", "too-few-samples")]
    [InlineData("""{"rotation": "leftwards", "phases": "lag", "recording": {}}""", "rotation", "word-unknown")]
    [InlineData("""{"rotation": "clockwise", "sampleRate": 100, "recording": {"first": [1], "second": [1], "index": [1]}}""", "phases", "missing")]
    public void Each_problem_names_its_place(string body, string where, string code)
    {
        var problem = BalanceCaptureOperation.Operation.Run(FileNode.Parse(body, "body").Value).Problem.ShouldNotBeNull();
        problem.Where.ShouldBe(where, problem.Message);
        problem.Code.ShouldBe(code, problem.Message);
    }

    [Fact]
    public void Notes_that_gainsay_the_file_are_refused()
    {
        var body = OfCsv(Csv);
        body["rotation"] = "anticlockwise";
        Run(body).Problem!.Code.ShouldBe("senses-differ");
    }

    [Fact]
    public void A_calibration_of_the_other_sense_of_turning_is_refused()
    {
        var body = OfCsv(Csv.Replace("clockwise", "anticlockwise", StringComparison.Ordinal));
        body["calibration"] = Calibration();
        Run(body).Problem!.Code.ShouldBe("other-rotation");
    }

    [Fact]
    public void An_index_without_marks_tells_no_speed()
    {
        var body = OfCsv(Csv);
        body["recording"]!["columns"] = new JsonObject { ["index"] = "time_s", ["time"] = "time_s" };
        var problem = Run(body).Problem.ShouldNotBeNull();
        problem.Code.ShouldBe("no-speed");
        problem.Where.ShouldBe("recording.index");
    }

    public static TheoryData<string, int, int> Formats => new() { { "pcm", 16, 1 }, { "pcm", 24, 1 }, { "pcm", 32, 1 }, { "float", 32, 3 }, { "float", 64, 3 } };

    [Theory, MemberData(nameof(Formats))]
    public void Every_kind_of_sample_is_read(string kind, int bits, int format)
    {
        foreach (var extensible in new[] { false, true })
        {
            var body = OfWav(Written(bits, format, extensible));
            if (kind == "float")
            {
                body.Remove("fullScale");
            }

            Shows(Run(body).Value.Body);
        }
    }

    [Fact]
    public void A_part_that_nobody_knows_is_passed_over_and_the_channels_may_be_chosen()
    {
        byte[] noted = [.. Wav[..12], .. "note"u8, 3, 0, 0, 0, 1, 2, 3, 0, .. Wav[12..]];
        var body = OfWav(noted);
        body["recording"]!["channels"] = new JsonObject { ["first"] = 2, ["second"] = 1, ["index"] = 3 };
        var points = Run(body).Value.Body["points"]!;
        Number(points[0]!["amplitude"]).ShouldBe(0.070852, 0.001);
        Number(points[1]!["amplitude"]).ShouldBe(0.096828, 0.001);
    }

    [Theory]
    [InlineData(0, 0x58, "byte 0")]
    [InlineData(8, 0x58, "byte 8")]
    [InlineData(20, 7, "byte 20")]
    [InlineData(22, 0, "byte 22")]
    [InlineData(32, 5, "byte 32")]
    [InlineData(34, 8, "byte 34")]
    [InlineData(16, 4, "byte 20")]
    [InlineData(42, 1, "byte 40")]
    [InlineData(36, 0x58, "byte 9044")]
    public void A_bad_WAV_is_told_by_its_byte(int at, byte value, string says)
    {
        var bytes = (byte[])Wav.Clone();
        bytes[at] = value;
        var problem = Run(OfWav(bytes, "spin.wav")).Problem.ShouldNotBeNull();
        problem.Where.ShouldBe("spin.wav");
        problem.Message.ShouldContain(says + ":");
    }

    [Fact]
    public void Spoiled_recordings_are_answered_or_refused()
    {
        var random = new Random(61);
        var (answered, refused) = (0, 0);
        for (var i = 0; i < 1500; i++)
        {
            JsonObject body;
            if (i % 2 == 0)
            {
                var bytes = i % 4 == 0 ? Wav[..random.Next(Wav.Length)] : (byte[])Wav.Clone();
                for (var changes = random.Next(3); changes > 0 && bytes.Length > 0; changes--)
                {
                    bytes[random.Next(Math.Min(bytes.Length, random.Next(2) == 0 ? 44 : bytes.Length))] = (byte)random.Next(256);
                }

                body = OfWav(bytes);
            }
            else
            {
                var rows = Csv.Split('\n').Take(random.Next(3, 900)).ToList();
                var row = random.Next(rows.Count);
                rows[row] = rows[row].Insert(random.Next(rows[row].Length + 1), ",;#x-e9\t \0"[random.Next(10)].ToString());
                body = OfCsv(string.Join('\n', rows));
            }

            Run(body).Match(
                a =>
                {
                    a.Body.ToJsonString().ShouldNotBeEmpty();
                    return answered++;
                },
                problem =>
                {
                    (problem.Where.Length > 0 && problem.Message.Length is > 0 and < 1200).ShouldBeTrue(problem.Message);
                    return refused++;
                });
        }

        answered.ShouldBeGreaterThan(100);
        refused.ShouldBeGreaterThan(300);
    }

    /// <summary>The sample's signals written anew in another kind of WAV.</summary>
    private static byte[] Written(int bits, int format, bool extensible)
    {
        var rows = Csv.Split('\n', StringSplitOptions.RemoveEmptyEntries)[3..].Select(r => r.Split(',').Skip(1).Select(c => double.Parse(c, CultureInfo.InvariantCulture)).ToArray()).ToList();
        using var stream = new MemoryStream();
        using var writer = new BinaryWriter(stream, Encoding.ASCII);
        var data = rows.Count * 3 * bits / 8;
        writer.Write("RIFF"u8);
        writer.Write(36 + data);
        writer.Write("WAVEfmt "u8);
        writer.Write(extensible ? 40 : 16);
        writer.Write((short)(extensible ? -2 : format));
        writer.Write((short)3);
        writer.Write(500);
        writer.Write(500 * 3 * bits / 8);
        writer.Write((short)(3 * bits / 8));
        writer.Write((short)bits);
        if (extensible)
        {
            writer.Write((short)22);
            writer.Write((short)bits);
            writer.Write(7);
            writer.Write((short)format);
            writer.Write(new byte[14]);
        }

        writer.Write("data"u8);
        writer.Write(data);
        Span<byte> four = stackalloc byte[4];
        foreach (var value in rows.SelectMany(r => r))
        {
            switch (format, bits)
            {
                case (3, 32):
                    writer.Write((float)value);
                    break;
                case (3, _):
                    writer.Write(value);
                    break;
                case (_, 16):
                    writer.Write((short)Math.Round(value / 5 * 32768));
                    break;
                default:
                    BinaryPrimitives.WriteInt32LittleEndian(four, (int)Math.Round(value / 5 * (bits == 24 ? 8388608.0 : 2147483648.0)));
                    writer.Write(four[..(bits / 8)]);
                    break;
            }
        }

        return stream.ToArray();
    }

    [Theory]
    [InlineData("5 g", 0)]
    [InlineData("0.2 g", 2)]
    public void Errors_that_are_not_small_beside_the_tolerance_are_flagged(string tolerance, int planes)
    {
        var body = OfCsv(Csv);
        body["calibration"] = Calibration();
        body["tolerance"] = new JsonObject { ["perPlane"] = tolerance };
        var answer = Run(body).Value;
        answer.No.ShouldBe(planes > 0);
        answer.Body["warnings"]!.AsArray().Select(w => w!["code"]!.GetValue<string>()).ShouldBe(Enumerable.Repeat("errors-not-small", planes));
    }

    [Fact]
    public void Without_a_tolerance_the_errors_are_held_against_the_customary_one()
    {
        var body = OfCsv(Csv);
        body["calibration"] = Calibration();
        var sound = Run(body).Value;
        sound.No.ShouldBeFalse();
        Number(sound.Body["tolerance"]!["perPlaneGrams"]).ShouldBe(5);
        sound.Body["tolerance"]!["source"]!.GetValue<string>().ShouldContain("common practice");
        foreach (var speed in body["calibration"]!["calibration"]!["speeds"]!.AsArray())
        {
            speed!["misfit"] = JsonNode.Parse("""{"first": 0.02, "second": 0.02}""");
            speed.AsObject().Remove("together");
        }

        var wide = Run(body).Value;
        wide.No.ShouldBeTrue();
        wide.Body["warnings"]![0]!["code"]!.GetValue<string>().ShouldBe("errors-not-small");
        wide.Body["warnings"]![0]!["action"]!.GetValue<string>().ShouldContain("customary 5 g a plane");
    }

    [Fact]
    public void A_tolerance_of_a_spin_is_a_mass_in_each_plane()
    {
        var body = OfCsv(Csv);
        body["tolerance"] = new JsonObject { ["grade"] = "G 16" };
        var problem = Run(body).Problem!;
        problem.Where.ShouldStartWith("tolerance");
    }
}
