using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Engine.Balance;
using Trundle.Engine.Balance.Spin;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Files.Spin;

namespace Trundle.Visits.Operations;

/// <summary><c>balance calibrate</c>: influence coefficients of a machine from spins with known masses.</summary>
public static class BalanceCalibrateOperation
{
    /// <summary>The operation.</summary>
    public static Operation Operation { get; } = new("balance calibrate", "A machine's calibration from spins with a known mass in each plane, at one speed or several.", Run) { TakesFile = true, TakesRecordings = true };

    private sealed record Calibrated(IReadOnlyList<SpeedFit> Fits, IReadOnlyList<(int Spin, SpinWarning Warning)> Warnings);

    private static Reading<Answer> Run(FileNode body)
    {
        var problems = new List<Problem>();
        var file = SpinFileReader.ReadCalibrationSpins(body, problems);
        if (file is null || problems.Count > 0)
        {
            return AnswerJson.Wrong(problems);
        }

        return Calibrate(file).Then(done => Reading<Answer>.Of(new Answer(
            done.Warnings.Count > 0 || done.Fits.Any(f => f.IsNearlyDependent || f.Misfit is { IsBeyondErrors: true }),
            Json(file, done),
            [.. Lines(file, done)])));
    }

    private static Reading<Calibrated> Calibrate(CalibrationFile file)
    {
        var spins = new List<CalibrationSpin>();
        var warnings = new List<(int, SpinWarning)>();
        foreach (var entry in file.Spins)
        {
            if (entry.Recording is { } recording)
            {
                if (SpinAnalysis.Of(recording, file.Harmonics) is not { } result)
                {
                    return Reading<Calibrated>.Failed(BalanceCaptureOperation.NoSpeed($"{entry.Path}.recording.index"));
                }

                warnings.AddRange(result.Warnings.Select(w => (spins.Count, w)));
                spins.Add(new CalibrationSpin(entry.Added, result.Speed, [.. result.Points.Select(p => new VibrationReading(p.Amplitude, p.Phase))]) { StandardErrors = [.. result.Points.Select(p => p.OwnStandardError)], MarkStandardError = result.MarkStandardError });
            }
            else
            {
                spins.Add(new CalibrationSpin(entry.Added, entry.Speed!.Value, entry.Points));
            }
        }

        var fits = new List<SpeedFit>();
        foreach (var group in CalibrationFit.BySpeed([.. spins.Select(s => s.Speed)]))
        {
            if (CalibrationFit.Of([.. group.Select(i => spins[i])], group, file.Sense) is not { } fit)
            {
                return Reading<Calibrated>.Failed(new Problem("spins", "too-few-spins", string.Create(CultureInfo.InvariantCulture,
                    $"At {spins[group[0]].Speed.Text("r/min", 1)} there {(group.Count == 1 ? "is 1 spin" : $"are {group.Count} spins")} that do not tell the wheel and its two planes apart: at each speed spin once plain, once with a known mass in the inner plane and once in the outer one.")));
            }

            fits.Add(fit);
        }

        return fits.Count == 0
            ? Reading<Calibrated>.Failed(new Problem("spins", "too-few-spins", "There is no spin; spin once plain, once with a known mass in the inner plane and once in the outer one."))
            : Reading<Calibrated>.Of(new Calibrated(fits, warnings));
    }

    private static JsonObject Json(CalibrationFile file, Calibrated done) => new()
    {
        ["calibration"] = new JsonObject
        {
            ["rotation"] = SpinJson.Word(file.Sense.Rotation),
            ["phases"] = SpinJson.Word(file.Sense.Phases),
            ["planes"] = SpinJson.Planes(file.Planes),
            ["speeds"] = AnswerJson.List(done.Fits.Select(f => (JsonNode?)SpinJson.Speed(f.Coefficients))),
        },
        ["speeds"] = AnswerJson.List(done.Fits.Select(f => (JsonNode?)new JsonObject
        {
            ["speedRevolutionsPerMinute"] = f.Coefficients.Speed.RevolutionsPerMinute,
            ["conditionNumber"] = double.IsFinite(f.ConditionNumber) ? f.ConditionNumber : null,
            ["spareSpins"] = f.Spare,
            ["planesUnchecked"] = AnswerJson.List(Unchecked(f)),
            ["misfit"] = f.Misfit is { } m ? new JsonObject { ["chiSquared"] = m.ChiSquared, ["limit"] = m.Limit, ["degreesOfFreedom"] = m.DegreesOfFreedom } : null,
            ["residuals"] = AnswerJson.List(f.Residuals.OrderBy(r => r.Spin).Select(r => (JsonNode?)new JsonObject
            {
                ["spin"] = r.Spin,
                ["points"] = AnswerJson.List(r.Left.Select(l => (JsonNode?)new JsonObject { ["amplitude"] = l.Amplitude, ["phaseDegrees"] = l.Phase?.Degrees })),
                ["innerGrams"] = r.AsUnbalance.Inner.MassAt(file.Planes.Inner.Radius).Grams,
                ["outerGrams"] = r.AsUnbalance.Outer.MassAt(file.Planes.Outer.Radius).Grams,
            })),
        })),
        ["warnings"] = AnswerJson.List([.. done.Warnings.Select(w =>
        {
            var json = SpinJson.Warning(w.Warning);
            json["spin"] = w.Spin;
            return (JsonNode?)json;
        }), .. done.Fits.Where(f => f.Misfit is { IsBeyondErrors: true }).Select(f =>
        {
            var json = SpinJson.Warning(DoNotFit(f.Misfit!));
            json["speedRevolutionsPerMinute"] = f.Coefficients.Speed.RevolutionsPerMinute;
            return (JsonNode?)json;
        }), .. done.Fits.Where(f => f.IsNearlyDependent).Select(f => (JsonNode?)new JsonObject
        {
            ["code"] = "planes-nearly-dependent",
            ["conditionNumber"] = double.IsFinite(f.ConditionNumber) ? f.ConditionNumber : null,
            ["speedRevolutionsPerMinute"] = f.Coefficients.Speed.RevolutionsPerMinute,
        })]),
        ["cautions"] = AnswerJson.List([.. SpinJson.Cautions, .. done.Fits.Select(MassUnchecked).OfType<string>()]),
        ["source"] = "T. P. Goodman, A Least-Squares Method for Computing Balance Corrections, 1964",
        ["status"] = "read",
    };

    private static List<string> Unchecked(SpeedFit fit) => [.. new[] { ("inner", fit.InnerUnchecked), ("outer", fit.OuterUnchecked) }.Where(p => p.Item2).Select(p => p.Item1)];

    /// <summary>What a person must know who trusts a calibration in which a mass entered wrongly cannot show.</summary>
    private static string? MassUnchecked(SpeedFit fit) => Unchecked(fit) is { Count: > 0 } planes
        ? $"At {fit.Coefficients.Speed.Text("r/min", 1)} no second spin checks the known mass in the {string.Join(" and the ", planes)} plane: were its size, its angle or its plane entered wrongly, nothing would show it, and every wheel would be told wrong by as much. Weigh it, look at its place, and add one more spin with another mass or another angle in {(planes.Count == 1 ? "that plane" : "each of them")}."
        : null;

    private static SpinWarning DoNotFit(CalibrationMisfit misfit) => new(
        "spins-do-not-fit",
        null,
        new Amount(misfit.ChiSquared, "", string.Create(CultureInfo.InvariantCulture, $"chi-squared {misfit.ChiSquared:0.0} of {misfit.DegreesOfFreedom} degrees of freedom")),
        new Limit(Amount.Number(misfit.Limit, "", 1), Figures.Of("spin.misfitConfidencePercent").Source),
        "The spins do not fit each other: what they leave is more than the readings' own errors allow. Look at the sense of rotation and of the phases, at each known mass and its angle as entered, and whether the wheel and the masses sat fast; then calibrate anew. What is left counts in the errors of every spin told with this calibration.");

    private static IEnumerable<string> Lines(CalibrationFile file, Calibrated done)
    {
        yield return $"Calibrated {SpinJson.Word(file.Sense.Rotation)} as seen from the outer face; phases {SpinJson.Word(file.Sense.Phases)}. With --json the answer is the calibration: keep it in a file and give it as --calibration.";
        foreach (var fit in done.Fits)
        {
            yield return $"{fit.Coefficients.Speed.Text("r/min", 1)}: condition number {(double.IsFinite(fit.ConditionNumber) ? Quantity.Number(fit.ConditionNumber, 1) : "without bound")}.";
            foreach (var (name, plane) in new[] { ("inner", fit.Coefficients.Inner), ("outer", fit.Coefficients.Outer) })
            {
                yield return $"    1 g·mm in the {name} plane: {string.Join("; ", plane.Select((c, p) => string.Create(CultureInfo.InvariantCulture, $"transducer {p + 1} {c.MagnitudePerGramMillimetre:G4} at {c.Phase.Degrees:0.0}°")))}";
            }

            foreach (var residual in fit.Residuals.Where(_ => fit.Spare > 0).OrderBy(r => r.Spin))
            {
                yield return string.Create(CultureInfo.InvariantCulture,
                    $"    spin {residual.Spin + 1} is off by what {residual.AsUnbalance.Inner.MassAt(file.Planes.Inner.Radius).Grams:0.00} g inner and {residual.AsUnbalance.Outer.MassAt(file.Planes.Outer.Radius).Grams:0.00} g outer would do");
            }

            if (MassUnchecked(fit) is { } caution)
            {
                yield return $"Caution: {caution}";
            }

            if (fit.Misfit is { IsBeyondErrors: true } misfit)
            {
                yield return SpinJson.Line(DoNotFit(misfit), fit.Coefficients.Speed.Text("r/min", 1));
            }

            if (fit.IsNearlyDependent)
            {
                yield return $"Warning: the transducers hardly tell the two planes apart (limit {Quantity.Number(Figures.Of("spin.mostConditionNumber").Value, 0)}).";
            }
        }

        foreach (var (spin, warning) in done.Warnings)
        {
            yield return SpinJson.Line(warning, $"spin {Quantity.Number(spin + 1, 0)}");
        }

        foreach (var caution in SpinJson.Cautions)
        {
            yield return $"Caution: {caution}";
        }
    }
}
