using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;
using Trundle.Visits.Tests.Files;

namespace Trundle.Visits.Tests.Operations;

/// <summary>
/// Every operation, given spoiled bodies: an answer, or one problem with place, code and message; never an exception. Numbers in answers are
/// finite, or they could not be written as JSON.
/// </summary>
public sealed class OperationFuzzTests
{
    private const int Inputs = 1_500;

    private static readonly Dictionary<string, string> Bodies = new(StringComparer.Ordinal)
    {
        ["sidewall"] = """{"marking": "LT245/75 R16 120/116S", "tin": "DOT 1AB CDEFHJ 2218", "on": "2026-03-14"}""",
        ["fixings"] = """{"count": "5", "torque": "120 N·m", "stages": ["50", "100"], "thread": "M12x1.5", "propertyClass": "10.9", "seat": "cone", "condition": "dry", "wrenchLength": "450 mm", "adapter": "50 mm", "adapterAngle": "0"}""",
        ["balance tolerance"] = """{"mass": "19 kg", "speed": "120 km/h", "grade": "G 16", "circumference": "1.95 m"}""",
        ["runout"] = """
            {"part": "assembly", "mounted": "onVehicle", "wheel": {"rim": "6J x 15", "material": "steel"},
             "radial": {"gaugeStep": "0.01 mm", "makerLimit": "0.8 mm", "mountings": [
               {"turn": 0, "readings": ["0.53 mm", "0.85 mm", "0.99 mm", "0.86 mm", "0.61 mm", "0.40 mm", "0.27 mm", "0.29 mm"]},
               {"turn": 120, "readings": ["0.62 mm", "0.55 mm", "0.48 mm", "0.43 mm", "0.52 mm", "0.70 mm", "0.78 mm", "0.72 mm"]}]},
             "lateral": {"orders": 2, "readings": [{"angle": 0, "value": 0.2}, {"angle": 50, "value": 0.3}, {"angle": 100, "value": 0.4}, {"angle": 190, "value": 0.2}, {"angle": 270, "value": 0.1}, {"angle": 320, "value": 0.1}]}}
            """,
        ["match"] = """
            {"on": "forceVariation", "objective": "worst", "amplitude": "peakToPeak", "radialStiffness": "200 N/mm", "turnStep": 15, "keepUnlessGain": "5 N", "makerLimit": "90 N",
             "tyres": [{"id": "A", "sitsOn": "1", "force": {"amplitude": "80 N", "highPoint": 130}, "lateralForce": {"clockwise": "85 N", "anticlockwise": "-45 N"}},
                       {"id": "B", "mayGoOn": ["1", "2"], "runout": {"amplitude": "0.3 mm", "highPoint": 20}}],
             "wheels": [{"id": "1", "runout": {"amplitude": "0.3 mm", "highPoint": 40}}, {"id": "2", "force": {"amplitude": "50 N", "highPoint": 200}}]}
            """,
        ["balance solve"] = """
            {"wheel": {"rimDiameter": "16 in", "rimWidth": "7 in", "mass": "19 kg", "spokes": {"count": 5, "first": 12}},
             "planes": {"inner": {"kind": "clip", "radius": "203 mm", "axial": "0 mm"}, "outer": {"kind": "adhesive", "radius": "180 mm", "axial": "150 mm", "places": "anywhere"}},
             "readings": {"inner": {"mass": "48 g", "angle": 115}, "outer": {"mass": "31 g", "angle": 290}},
             "stock": {"clip": ["5 g", "10 g", "20 g"], "adhesive": ["5 g", "10 g"]},
             "tolerance": {"perPlane": "5 g"}}
            """,
        ["balance capture"] = $$$$"""
            {"rotation": "clockwise", "phases": "lag", "sampleRate": "60 Hz", "harmonics": 2, "valve": 10,
             "recording": {"first": [{{{{Wave(0)}}}}], "second": [{{{{Wave(1)}}}}], "index": [{{{{Wave(2)}}}}]},
             "planes": {"inner": {"radius": "200 mm", "axial": "0 mm"}, "outer": {"radius": "180 mm", "axial": "150 mm"}},
             "calibration": {"rotation": "clockwise", "phases": "lead", "planes": {"inner": {"radius": "200 mm", "axial": "0 mm"}, "outer": {"radius": "200 mm", "axial": "180 mm"}},
               "speeds": [{"speedRevolutionsPerMinute": 180, "influence": {
                 "inner": [{"magnitudePerGramMillimetre": 1e-3, "phaseDegrees": 30}, {"magnitudePerGramMillimetre": 2e-4, "phaseDegrees": 210}],
                 "outer": [{"magnitudePerGramMillimetre": 2e-3, "phaseDegrees": 30}, {"magnitudePerGramMillimetre": 9e-4, "phaseDegrees": 210}]} }]} }
            """,
        ["balance calibrate"] = """
            {"rotation": "anticlockwise", "phases": "lead", "planes": {"inner": {"radius": "200 mm", "axial": "0 mm"}, "outer": {"radius": "180 mm", "axial": "150 mm"}},
             "spins": [{"speed": "180 r/min", "points": [{"amplitude": 1, "phase": 2}, {"amplitude": 3, "phase": 4}]},
               {"added": [{"plane": "inner", "mass": "50 g", "angle": 0}], "speed": "180 r/min", "points": [{"amplitude": 5, "phase": 20}, {"amplitude": 4, "phase": 70}]},
               {"added": [{"plane": "outer", "mass": "50 g", "angle": 90}], "speed": "181 r/min", "points": [{"amplitude": 6, "phase": 120}, {"amplitude": 9, "phase": 4}]}]}
            """,
        ["balance machine"] = """
            {"planes": {"inner": {"radius": "200 mm"}, "outer": {"radius": "180 mm"}}, "rotor": {"mass": "15 kg"},
             "index": {"anglesFrom": "valve", "limit": "5 g", "spins": [
               {"turned": 0, "display": {"inner": {"mass": "20 g", "angle": 30}, "outer": {"mass": "9 g", "angle": 10}}},
               {"turned": 90, "display": {"inner": {"mass": "12 g", "angle": 110}, "outer": {"mass": "8 g", "angle": 20}}}]},
             "shop": {"empty": {"inner": {"mass": "1 g", "angle": 5}, "outer": {"mass": "0 g"}}}}
            """,
        ["leak"] = """
            {"rules": "uk", "tyre": {"marking": "205/55 R16 91V", "maximumPressure": "300 kPa"}, "placard": {"size": "205/55 R16 91V", "cold": "230 kPa"},
             "gauge": {"accuracy": "3 kPa", "repeatability": "0.7 kPa"}, "thermometer": "1 °C", "expected": "-5 °C", "referenceTemperature": "15 °C", "warning": "180 kPa",
             "readings": [{"at": "2026-01-05 08:10", "pressure": "230 kPa", "temperature": "6 °C", "altitude": "120 m"},
                          {"at": "2026-01-12 08:05", "pressure": "228 kPa", "temperature": "9 °C", "air": "99.8 kPa", "hot": false},
                          {"at": "2026-01-19 08:20", "pressure": "235 kPa", "temperature": "2 °C", "altitude": "120 m", "filled": true},
                          {"at": "2026-02-02", "pressure": "206 kPa", "temperature": "0 °C", "altitude": "120 m"}]}
            """,
        ["replace"] = """
            {"rules": "eu", "vehicle": {"drive": "all", "topSpeed": "190 km/h", "axles": [{"steered": true, "placard": {"size": "195/65 R15 91H", "cold": "230 kPa"}}, {"placard": {"size": "195/65 R15 91H", "cold": "220 kPa"}}], "axleLoads": ["900 kg", "700 kg"]},
             "fitted": [{"position": "1L", "tyre": {"marking": "195/65 R15 91H"}, "wheel": {"rim": "6J x 15"}, "tread": {"centre": ["4 mm"]}, "sensor": "working"}, {"position": "2R", "tyre": {"marking": "195/65 R15 91H"}, "tread": {"centre": ["5 mm"]}, "sensor": "none"}],
             "replace": {"axles": [1, 2], "newTread": "8 mm", "speedometer": {"shown": "103 km/h", "true": "100 km/h"},
                         "candidates": ["205/55 R16 91V", {"marking": "205/60 R15 91H", "marks": ["M+S"], "rim": "6J x 15"}, "T125/80 D15 95M", "31x10.50 R15 LT"]}}
            """,
        ["instrument check"] = """
            {"kind": "torque wrench", "by": "a laboratory", "certificate": "C 1", "stated": "passed", "permitted": "4 %",
             "points": [{"reference": "40 N·m", "shown": "41 N·m"}, {"reference": "147.5 lbf·ft", "shown": "200 N·m"}]}
            """,
        ["procedure print"] = """{"part": "sensor"}""",
        ["procedure check"] = """
            {"name": "Ours", "edition": "3", "machines": [{"name": "by the door", "instruction": "turn slowly"}],
             "steps": [{"id": "seat", "why": "so that it sits", "cautions": ["ear protection", {"text": "slowly", "when": ["lowProfile"]}], "hold": true},
                       {"id": "photo", "after": "rim-check", "title": "Photograph", "text": "Take one.", "enter": "choice", "choices": ["taken", "not taken"], "passing": ["taken"], "stop": "Take it."}]}
            """,
        ["balance trial"] = """
            {"points": 2,
             "runs": [
               {"vibration": [{"amplitude": 8.1, "phase": 140}, {"amplitude": 6.4, "phase": 35}]},
               {"trial": {"plane": 1, "mass": "10 g", "angle": 0}, "vibration": [{"amplitude": 7.0, "phase": 120}, {"amplitude": 5.9, "phase": 40}]},
               {"trial": {"plane": 2, "mass": "10 g", "angle": 0}, "vibration": [{"amplitude": 6.2, "phase": 150}, {"amplitude": 9.0, "phase": 60}]}],
             "trialKeptOn": false}
            """,
        ["balance why"] = """
            {"entered": {"rimDistance": "60 mm", "rimDiameter": "16 in", "rimWidth": "7 in", "inner": "clip"},
             "machine": {"transducers": ["-120 mm", "-280 mm"], "repeatability": "1.5 g"},
             "measuredAgain": {"rimWidth": "7 in"},
             "spins": [
               {"display": {"inner": {"mass": "35 g", "angle": 40}, "outer": {"mass": "50 g", "angle": 210}},
                "fittedAfter": [{"plane": "inner", "mass": "35 g", "angle": 40, "kind": "clip"}, {"plane": "outer", "mass": "50 g", "angle": 210}]},
               {"display": {"inner": {"mass": "12 g", "angle": 75}, "outer": {"mass": "15 g", "angle": 230}}, "fittedAfter": []}]}
            """,
    };

    /// <summary>Six turns of twenty samples of a transducer, or of the index mark.</summary>
    private static string Wave(int channel) => string.Join(", ", Enumerable.Range(0, 120).Select(k => FormattableString.Invariant(
        $"{(channel == 2 ? (k % 20 == 3 ? 1 : 0) : Math.Cos((Math.Tau * k / 20) + channel) + (0.1 * Math.Sin(k * k))):0.####}")));

    public static TheoryData<string> Names => [.. OperationList.All.Select(o => o.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Spoiled_bodies_are_answered_or_refused(string name)
    {
        var operation = OperationList.All.Single(o => o.Name == name);
        var json = Bodies.GetValueOrDefault(name, InventedVisit.Json);
        var (answered, refused) = await Task.Run(() => Fuzz(operation, json)).WaitAsync(TimeSpan.FromMinutes(10));
        (answered + refused).ShouldBe(Inputs);
        answered.ShouldBeGreaterThan(0, "some bodies should stay sound, or the fuzz reaches nothing");
        refused.ShouldBeGreaterThan(0);
    }

    private static (int Answered, int Refused) Fuzz(Operation operation, string json)
    {
        var random = new Random(52_5);
        var answered = 0;
        for (var i = 0; i < Inputs; i++)
        {
            var spoiled = i == 0 ? json : Spoiled.Values(random, json);
            try
            {
                answered += Check(operation, spoiled) ? 1 : 0;
            }
            catch (Exception e) when (e is not ShouldAssertException)
            {
                throw new InvalidOperationException($"'{operation.Name}' threw on input {i}:\n{spoiled}", e);
            }
        }

        return (answered, Inputs - answered);
    }

    private static bool Check(Operation operation, string json)
    {
        var answer = FileNode.Parse(json, "input.json").Then(operation.Run);
        if (answer.IsRead)
        {
            // Writing fails on a number that is not finite.
            answer.Value.Body.ToJsonString().Length.ShouldBeGreaterThan(2);
            answer.Value.ForPeople.ShouldNotBeEmpty(json);
            return true;
        }

        answer.Problem!.Where.ShouldNotBeNullOrEmpty($"{answer.Problem.Message}\n{json}");
        answer.Problem.Code.ShouldNotBeNullOrWhiteSpace(json);
        answer.Problem.Message.ShouldNotBeNullOrWhiteSpace(json);
        answer.Problem.Message.Length.ShouldBeLessThan(1200, answer.Problem.Message);
        return false;
    }
}
