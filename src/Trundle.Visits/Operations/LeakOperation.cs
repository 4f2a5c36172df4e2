using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Engine.Findings;
using Trundle.Engine.Pressure;
using Trundle.Engine.Reference;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Operations;

/// <summary><c>leak FILE</c>: how fast a tyre loses air with temperature and height taken out, whether that is more than a sound one loses, and when the warning will come.</summary>
public static class LeakOperation
{
    /// <summary>The operation.</summary>
    public static Operation Operation { get; } = new(
        "leak",
        "How fast a tyre loses air, with temperature and height taken out, and when the pressure warning will come.",
        Run)
    {
        TakesFile = true,
        Options = [CheckAnswer.RulesOption],
    };

    /// <summary>Reads a body and answers.</summary>
    public static Reading<Answer> Run(FileNode body)
    {
        ArgumentNullException.ThrowIfNull(body);
        var problems = new List<Problem>();
        return LeakFileReader.Read(body, problems) is { } file
            ? LeakStudy.Of(file).Then(study => Reading<Answer>.Of(Of(file, study)))
            : AnswerJson.Wrong(problems);
    }

    private static Answer Of(LeakFile file, LeakStudy study)
    {
        var (loss, plan, warning, until, cold) = study;
        var verdict = LeakVerdict.Of(loss, null);
        var tyre = plan.Positions[0];
        var last = file.Readings[^1].At;

        // A tyre without a placard has no target to be held to; that its loss was judged is enough.
        List<Finding> findings = [verdict.Finding, .. tyre.Cold.Pressure is null ? [] : plan.Findings.Select(f => f with { Position = null })];
        if (FlatReading.Of(file.Readings) is { } flat)
        {
            findings.RemoveAll(f => f.Rule == FlatReading.Rule);
            findings.Insert(0, flat);
        }
        else if (warning is not null && Soon(warning, until!, cold) is { } soon)
        {
            findings.Insert(1, soon);
        }

        List<string> cautions = [.. FlatReading.Cautions(file.Readings, file.Subject.Fitted[0].Tyre), .. verdict.Cautions, .. file.Cautions, .. warning is null ? tyre.Warning.Cautions : file.Warning is null ? tyre.Warning.Cautions : [], .. Always(file)];
        cautions = [.. cautions.Distinct(StringComparer.Ordinal)];
        var body = new JsonObject
        {
            ["verdict"] = Word(verdict.Case),
            ["lossPerDay"] = Of(loss.PerDay),
            ["lossPerMonth"] = Of(loss.PerMonth),
            ["sound"] = AnswerJson.Of(verdict.Sound),
            ["look"] = AnswerJson.Of(verdict.Look),
            ["reference"] = new JsonObject { ["temperatureDegreesCelsius"] = loss.Reference.DegreesCelsius, ["airKilopascals"] = loss.Air.Kilopascals },
            ["nowKilopascals"] = loss.Now.Kilopascals,
            ["readings"] = AnswerJson.List(loss.Points.Select(p => (JsonNode?)new JsonObject
            {
                ["at"] = Clock(p.Reading.At),
                ["kilopascals"] = p.Reading.Value.Kilopascals,
                ["atReferenceKilopascals"] = p.AtReference.Kilopascals,
                ["offLineKilopascals"] = p.OffLine.Kilopascals,
                ["standardUncertaintyKilopascals"] = p.StandardUncertainty.Kilopascals,
                ["filled"] = p.Reading.AirChanged,
            })),
            ["accuracy"] = Of(loss.Accuracy),
            ["warning"] = PressureOperation.Of(warning),
            ["toWarning"] = until is null ? null : Of(until, last),
            ["toWarningExpected"] = cold is null ? null : Of(cold, last),
            ["cautions"] = AnswerJson.List(cautions),
            ["findings"] = AnswerJson.List(findings.Select(f => (JsonNode?)AnswerJson.Of(f))),
            ["worst"] = FindingSet.Worst(findings).Word(),
        };
        return new Answer(AnswerJson.IsNo(findings), body, [.. Lines(loss, warning, until, cold, file, findings, cautions)]);
    }

    /// <summary>The warning may come before the next monthly look at the pressures.</summary>
    private static Finding? Soon(SourcedPressure warning, TimeToPressure until, TimeToPressure? cold)
    {
        var next = TimeSpan.FromDays(Figures.Of("leak.month").Value * Figures.Of("condition.pressure-months").Value);
        var sooner = cold?.Earliest is { } c && (until.Earliest is not { } u || c < u) ? cold : until;
        return sooner.Earliest is { } earliest && earliest <= next
            ? new Finding("pressure.warning-soon", Category.Minor, null, new Amount(earliest.TotalDays, "d", sooner.Reached ? "reached already" : $"in {Days(earliest)} at the earliest{(ReferenceEquals(sooner, cold) ? ", at the temperature expected" : "")}"),
                new Limit(Amount.Of(warning.Pressure, "kPa", 0), warning.Source), warning.Source, "The warning may come before the pressures are next looked at: set the pressure now, cold, and tell the driver.")
            : null;
    }

    private static IEnumerable<string> Always(LeakFile file)
    {
        yield return "Air goes in only after the tyre was looked at: at or below 80 % of its pressure it counts as run low, and is taken off and looked at inside first.";
        yield return "Search with soapy water at the valve, the beads, the tread and the wheel; stand clear of the tyre while it is above its driving pressure, and never raise the pressure to find a leak.";
        if (file.Expected is null)
        {
            yield return "The time until the warning holds at the reference temperature; a colder morning brings it sooner. Give 'expected' to see by how much.";
        }
    }

    private static JsonObject Of(LossRange loss) => new()
    {
        ["estimateKilopascals"] = loss.Estimate.Kilopascals,
        ["standardErrorKilopascals"] = loss.StandardError.Kilopascals,
        ["lowKilopascals"] = loss.Low.Kilopascals,
        ["highKilopascals"] = loss.High.Kilopascals,
    };

    private static JsonObject Of(ReadingAccuracy accuracy) => new()
    {
        ["gaugeKilopascals"] = accuracy.GreatestError.Kilopascals,
        ["repeatabilityKilopascals"] = accuracy.Repeatability?.Kilopascals,
        ["source"] = accuracy.Source.Text,
        ["status"] = accuracy.Source.StatusText,
        ["thermometerKelvins"] = accuracy.Thermometer.Kelvins,
        ["thermometerSource"] = accuracy.ThermometerSource.Text,
        ["thermometerStatus"] = accuracy.ThermometerSource.StatusText,
    };

    private static JsonObject Of(TimeToPressure until, DateTime last) => new()
    {
        ["reached"] = until.Reached,
        ["days"] = until.Estimate?.TotalDays,
        ["earliestDays"] = until.Earliest?.TotalDays,
        ["latestDays"] = until.Latest?.TotalDays,
        ["date"] = Date(last, until.Estimate),
        ["earliestDate"] = Date(last, until.Earliest),
        ["latestDate"] = Date(last, until.Latest),
    };

    private static string? Date(DateTime last, TimeSpan? after) => after is { } a && DateTime.MaxValue - last > a ? (last + a).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) : null;

    private static string Clock(DateTime at) => at.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    private static string Word(LeakCase found) => found switch
    {
        LeakCase.Sound => "sound",
        LeakCase.MoreThanSound => "moreThanSound",
        LeakCase.Leak => "leak",
        LeakCase.CannotTell => "cannotTell",
        LeakCase.Rose => "rose",
    };

    private static IEnumerable<string> Lines(PressureLoss loss, SourcedPressure? warning, TimeToPressure? until, TimeToPressure? cold, LeakFile file, List<Finding> findings, List<string> cautions)
    {
        yield return $"Loss a month  {Range(loss.PerMonth, 1)}, at {loss.Reference.Text("°C", 0)}; standard error {loss.PerMonth.StandardError.Text("kPa", 1)}";
        yield return $"Loss a day    {Range(loss.PerDay, 2)}";
        foreach (var p in loss.Points)
        {
            yield return $"  {Clock(p.Reading.At)}  {p.Reading.Value.Text("kPa", 1),10}  at {p.Reading.Tyre.Text("°C", 0),6}  = {p.AtReference.Text("kPa", 1),10}{(p.Reading.AirChanged ? "  (after air was let in or out)" : "")}";
        }

        yield return warning is null
            ? "Warning       not known"
            : $"Warning       {warning.Pressure.Text("kPa", 0)} [{warning.Source.ForPeople}]: {Time(until!)}";
        if (cold is not null)
        {
            yield return $"  at {file.Expected!.Value.Text("°C", 0)}: {Time(cold)}";
        }

        foreach (var line in AnswerJson.Lines(findings))
        {
            yield return line;
        }

        foreach (var caution in cautions)
        {
            yield return $"Caution: {caution}";
        }
    }

    private static string Range(LossRange loss, int decimals) => $"{loss.Estimate.Text("kPa", decimals)} ({loss.Low.Text("kPa", decimals)} to {loss.High.Text("kPa", decimals)}, 95 %)";

    private static string Time(TimeToPressure until) => until.Reached
        ? "reached already"
        : $"{(until.Estimate is { } e ? $"in {Days(e)}" : "not within ten years by the line")} (earliest {(until.Earliest is { } a ? Days(a) : "after ten years")}, latest {(until.Latest is { } b ? Days(b) : "cannot be told")})";

    private static string Days(TimeSpan time) => time.TotalDays < 3 ? $"{Quantity.Number(time.TotalHours, 0)} h" : $"{Quantity.Number(time.TotalDays, 0)} days";
}
