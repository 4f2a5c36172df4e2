using System.Text.Json.Nodes;
using Trundle.Engine.Findings;
using Trundle.Engine.Uniformity;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Operations;

/// <summary><c>runout FILE</c>: harmonics, eccentricity and limits from dial readings; tyre and wheel parted where it was mounted more than once.</summary>
public static class RunoutOperation
{
    /// <summary>The operation.</summary>
    public static Operation Operation { get; } = new("runout", "Harmonics, eccentricity and limits from dial readings around a tyre or a wheel.", Run) { TakesFile = true };

    private static Reading<Answer> Run(FileNode body)
    {
        var problems = new List<Problem>();
        var file = RunoutFileReader.Read(body, problems);
        if (file is null)
        {
            return AnswerJson.Wrong(problems);
        }

        var traces = new List<RunoutAnswer>();
        foreach (var trace in file.Traces)
        {
            var answer = RunoutAnswer.Of(file, trace);
            if (!answer.IsRead)
            {
                return Reading<Answer>.Failed(answer.Problem!);
            }

            traces.Add(answer.Value);
        }

        var json = traces[0].Json();
        json["withinLimit"] = traces.Any(t => t.Verdict.WithinLimit == false) ? false : traces.All(t => t.Verdict.WithinLimit == true) ? true : null;
        if (traces.Count > 1)
        {
            json["traces"] = AnswerJson.List(traces.Select(t => (JsonNode?)t.Json()));
        }

        json["cautions"] = AnswerJson.List(traces.SelectMany(t => t.Cautions).Distinct(StringComparer.Ordinal));
        IReadOnlyList<string> lines = [.. traces.SelectMany(t => t.Lines()), .. traces.SelectMany(t => t.Cautions).Distinct(StringComparer.Ordinal).Select(c => $"Caution: {c}")];
        return Reading<Answer>.Of(new Answer(traces.Any(t => t.Verdict.MustBeLookedAt || t.PartsInDoubt), json, lines));
    }
}

/// <summary>The answer of one direction.</summary>
internal sealed record RunoutAnswer(RunoutFile Given, RunoutTrace Trace, RunoutOutcome.Found Found, RunoutVerdict Verdict, PartingOutcome<Length>.Parted? Parts)
{
    /// <summary>What each mounting's readings tell, the last as it stands now; one where it was mounted once.</summary>
    public required IReadOnlyList<RunoutOutcome.Found> Mountings { get; init; }

    /// <summary>Parts from places that take a higher order for the first, or that stand crowded: a person looks at them first.</summary>
    public bool PartsInDoubt => Parts is not null && Mountings.Any(m => !m.TellsBetween);

    private static readonly string[] Always =
    [
        "The vehicle or the machine's shaft held so that it cannot move or start; hands, sleeves and the gauge's cable clear while the part is turned by hand.",
        "Measure a tyre warm from driving: flat spots from standing read as runout.",
    ];

    private Angle NowTurned => Trace.Mountings[^1].Turn;

    /// <summary>The turn of the tyre on the wheel from how it stands now, where parts are known.</summary>
    public MatchedTurn? Best => Parts is { } p ? MatchedTurn.Of(p.Tyre.Turned(NowTurned), p.Wheel) : null;

    /// <summary>Analyses one direction.</summary>
    public static Reading<RunoutAnswer> Of(RunoutFile file, RunoutTrace trace)
    {
        var found = new List<RunoutOutcome.Found>();
        foreach (var mounting in trace.Mountings)
        {
            var problem = RunoutAnalysis.Of(mounting.Readings, trace.Orders, trace.GaugeStep).Match<Problem?>(
                f =>
                {
                    found.Add(f);
                    return null;
                },
                few => new Problem("", "too-few-places", $"There should be readings at {Quantity.Number(few.Needed, 0)} different places at least{(trace.Orders is null ? ", better eight or more" : " for so many orders")}."),
                alike => new Problem("", "places-do-not-tell", $"The places stand so close together or so alike that {(alike.Orders == 1 ? "the first order" : $"{Quantity.Number(alike.Orders, 0)} orders")} cannot be told; spread them around."));
            if (problem is not null)
            {
                return Reading<RunoutAnswer>.Failed(problem.At(mounting.Path.Length == 0 ? "readings" : $"{mounting.Path}.readings"));
            }
        }

        PartingOutcome<Length>.Parted? parts = null;
        if (trace.Mountings.Count > 1)
        {
            var parting = MountingParts.Part([.. trace.Mountings.Zip(found, (m, f) => new Mounting<Length>(m.Turn, f.First))], trace.Repeatability);
            var problem = parting.Match<Problem?>(
                p =>
                {
                    parts = p;
                    return null;
                },
                MatchFileReader.TooSmall,
                r => MatchFileReader.WithinRepeatability(r.Difference.Text("mm", 3)));
            if (problem is not null)
            {
                var path = trace.Mountings[0].Path;
                return Reading<RunoutAnswer>.Failed(problem.At(path[..path.LastIndexOf('[')]));
            }
        }

        var now = found[^1];
        var verdict = RunoutLimits.Judge(now, file.Part, trace.Direction, file.Mounted, file.Material, trace.MakerLimit);
        return Reading<RunoutAnswer>.Of(new RunoutAnswer(file, trace, now, verdict, parts) { Mountings = found });
    }

    /// <summary>The contract's keys, and more beside them.</summary>
    public JsonObject Json()
    {
        var json = new JsonObject
        {
            ["part"] = RunoutLimits.Word(Given.Part),
            ["direction"] = RunoutLimits.Word(Trace.Direction),
            ["harmonics"] = AnswerJson.List(Found.Harmonics.Select(h => (JsonNode?)new JsonObject
            {
                ["order"] = h.Order,
                ["amplitudeMillimetres"] = h.Amplitude.Millimetres,
                ["peakToPeakMillimetres"] = 2 * h.Amplitude.Millimetres,
                ["highPointDegrees"] = h.HighPoint.Degrees,
                ["phaseDegrees"] = h.Phase.Degrees,
                ["amplitudeStandardErrorMillimetres"] = h.StandardError?.Millimetres,
                ["mayBeOrder"] = h.MayBeOrder,
            })),
            ["peakToPeakMillimetres"] = Found.PeakToPeak.Millimetres,
            ["peakToPeakAroundMillimetres"] = Found.PeakToPeakAround.Millimetres,
            ["judgedMillimetres"] = Found.Judged.Millimetres,
            ["eccentricityMillimetres"] = Trace.Direction == RunoutDirection.Radial ? Found.First.Amount.Millimetres : null,
            ["withinLimit"] = Verdict.WithinLimit,
            ["limit"] = AnswerJson.Of(Verdict.Ruling),
            ["limitsConsidered"] = AnswerJson.List(Verdict.Considered.Select(c =>
            {
                var limit = AnswerJson.Of(c.Limit)!;
                limit["what"] = c.What;
                return (JsonNode?)limit;
            })),
            ["meanMillimetres"] = Found.Mean.Millimetres,
            ["afterFirst"] = new JsonObject { ["peakToPeakMillimetres"] = Found.PeakToPeakAfterFirst.Millimetres, ["rootMeanSquareMillimetres"] = Found.RootMeanSquareAfterFirst.Millimetres },
            ["places"] = new JsonObject { ["count"] = Found.Readings.Count, ["evenlySpaced"] = Found.EvenlySpaced, ["greatestGapDegrees"] = Found.GreatestGap.Degrees, ["crowding"] = Found.Crowding, ["tellBetween"] = Found.TellsBetween },
            ["warnings"] = AnswerJson.List(RunoutWords.Warnings(this).Select(w => (JsonNode?)new JsonObject { ["code"] = w.Code, ["order"] = w.Order, ["message"] = w.Message })),
            ["suspect"] = Suspect(),
            ["gauge"] = Trace.GaugeStep is { } step ? new JsonObject { ["stepMillimetres"] = step.Millimetres } : null,
        };
        if (Parts is { } parts && Best is { } best)
        {
            json["parts"] = new JsonObject
            {
                ["tyre"] = Vector(parts.Tyre),
                ["wheel"] = Vector(parts.Wheel),
                ["noiseGain"] = parts.NoiseGain,
                ["misfitMillimetres"] = parts.Misfit.Millimetres,
                ["standardErrorMillimetres"] = parts.StandardError?.Millimetres,
            };
            json["match"] = new JsonObject { ["turnDegrees"] = best.Turn.Degrees, ["beforeMillimetres"] = Found.First.Amount.Millimetres, ["afterMillimetres"] = best.After.Millimetres };
            json["instruction"] = AnswerJson.List(MatchWords.Turn(best.Turn, Given.Tyre, Given.Wheel));
        }

        json["cautions"] = AnswerJson.List(Cautions);
        return json;
    }

    /// <summary>Everything, line by line, without the cautions.</summary>
    public IEnumerable<string> Lines() => RunoutWords.Lines(this);

    /// <summary>The cautions of this direction.</summary>
    public IReadOnlyList<string> Cautions =>
    [
        .. Verdict.Cautions,
        .. Always.Take(Given.Part == RunoutPart.Wheel ? 1 : 2),
        .. Parts is null ? [] : MatchWords.Cautions(Given.Tyre, Given.Wheel),
    ];

    private JsonObject? Suspect() => Found.Suspect is not { } s ? null : new JsonObject
    {
        ["index"] = s.Index,
        ["angleDegrees"] = s.Reading.Place.Degrees,
        ["valueMillimetres"] = s.Reading.Value.Millimetres,
        ["expectedMillimetres"] = s.Expected.Millimetres,
        ["studentisedResidual"] = s.Studentised,
        ["firstHarmonicWithout"] = Vector(s.FirstHarmonicWithout),
    };

    private static JsonObject Vector(HarmonicVector<Length> vector) =>
        new() { ["amplitudeMillimetres"] = vector.Amount.Millimetres, ["highPointDegrees"] = vector.HighPoint.Degrees };
}

/// <summary>The best turn of one tyre on its wheel from how it stands.</summary>
internal sealed record MatchedTurn(Angle Turn, Length After)
{
    public static MatchedTurn Of(HarmonicVector<Length> tyre, HarmonicVector<Length> wheel)
    {
        var pair = ((Engine.Uniformity.Matching.MatchOutcome<Length>.Matched)Engine.Uniformity.Matching.SetMatch.Solve(new Engine.Uniformity.Matching.MatchProblem<Length>
        {
            Tyres = [new("tyre", [tyre], true) { SitsOn = 0 }],
            Wheels = [new("wheel", [wheel], true)],
        })).Pairs[0];
        return new MatchedTurn(pair.Turn!.Value, pair.After);
    }
}
