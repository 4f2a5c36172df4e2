using System.Text.Json.Nodes;
using Trundle.Engine.Instruments;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Instruments;

namespace Trundle.Visits.Operations;

/// <summary><c>instrument check</c>: how far a wrench or gauge is off its reference, a verdict, and what to do next.</summary>
public static class InstrumentCheckOperation
{
    /// <summary>The operation.</summary>
    public static Operation Operation { get; } = new("instrument check", "How far a wrench or gauge is off its reference: verdict, figures, next step.", Run) { TakesFile = true };

    private static Reading<Answer> Run(FileNode body)
    {
        var problems = new List<Problem>();
        var file = InstrumentCheckReader.Read(body, problems);
        if (file is null || problems.Count > 0)
        {
            return AnswerJson.Wrong(problems);
        }

        var verdict = Verdict(file);
        var cautions = Cautions(file).ToList();
        var next = NextStep(verdict);
        var json = new JsonObject
        {
            ["verdict"] = verdict.Word(),
            ["kind"] = file.Kind.Word(),
            ["by"] = file.By,
            ["certificate"] = file.Certificate,
            ["stated"] = file.Stated?.Word(),
            ["points"] = AnswerJson.List(file.Points.Select(p => (JsonNode?)Json(p))),
            ["worstDeviationPercent"] = file.Points.Count == 0 ? null : file.Points.MaxBy(p => Math.Abs(p.Percent))!.Percent,
            ["nextStep"] = next,
            ["cautions"] = AnswerJson.List(cautions),
        };
        return Reading<Answer>.Of(new Answer(verdict == InstrumentVerdict.Failed, json, [.. Lines(file, verdict, next, cautions)]));
    }

    /// <summary>What the points and the certificate say together: neither makes good what the other calls wrong.</summary>
    private static InstrumentVerdict Verdict(InstrumentCheckFile file) =>
        file.OfPoints == InstrumentVerdict.Failed || file.Stated == InstrumentVerdict.Failed ? InstrumentVerdict.Failed
        : file.OfPoints == InstrumentVerdict.Passed ? InstrumentVerdict.Passed
        : file.Stated ?? InstrumentVerdict.NotJudged;

    private static IEnumerable<string> Cautions(InstrumentCheckFile file)
    {
        if (file is { Stated: InstrumentVerdict.Passed, OfPoints: InstrumentVerdict.Failed })
        {
            yield return "The certificate states 'passed', but a point of it is beyond what is permitted: ask who wrote it.";
        }
        else if (file is { Stated: InstrumentVerdict.Failed, OfPoints: InstrumentVerdict.Passed })
        {
            yield return "The certificate states 'failed', though every point here is within what is permitted: it may have had other points or limits. It counts as failed.";
        }

        if (file.Points.Any(p => p.Permitted is null))
        {
            yield return "How far this instrument may be off was not given. Its maker's figure or the certificate says it.";
        }
    }

    private static string NextStep(InstrumentVerdict verdict) => verdict switch
    {
        InstrumentVerdict.Passed => "Use it, and have it checked again when its next check is due, or after a fall.",
        InstrumentVerdict.Failed => "Take it out of use and have it put right. Then look back: what was set with it since its last good check may be wrong.",
        InstrumentVerdict.Undecided => "Check it again with more points before it is used.",
        InstrumentVerdict.NotJudged => "Give how far it may be off, from its maker or the certificate, to have a verdict.",
    };

    private static JsonObject Json(CheckedPoint point) => new()
    {
        ["reference"] = AnswerJson.Of(point.Reference),
        ["shown"] = AnswerJson.Of(point.Shown),
        ["deviation"] = AnswerJson.Of(point.Deviation),
        ["deviationPercent"] = point.Percent,
        ["permitted"] = AnswerJson.Of(point.Permitted),
        ["within"] = point.Within,
    };

    private static IEnumerable<string> Lines(InstrumentCheckFile file, InstrumentVerdict verdict, string next, List<string> cautions)
    {
        yield return $"{file.Kind.Word()}: {verdict.ForPeople()}{(file.Certificate is null ? "" : $", certificate {file.Certificate}")}{(file.By is null ? "" : $", by {file.By}")}";
        foreach (var p in file.Points)
        {
            yield return $"    reference {p.Reference.Text}, shows {p.Shown.Text}: off by {p.Deviation.Text} ({Quantity.Number(p.Percent, 2)} %)"
                + (p.Permitted is null ? "" : $"; {(p.Within == true ? "within" : "BEYOND")} {p.Permitted.Amount.Text} [{p.Permitted.Source.ForPeople}]");
        }

        yield return next;
        foreach (var caution in cautions)
        {
            yield return $"Caution: {caution}";
        }
    }
}
