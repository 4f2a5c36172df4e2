using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Engine.Balance;
using Trundle.Engine.Reference;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Files.Spin;

namespace Trundle.Visits.Operations;

/// <summary><c>balance trial</c>: corrections from trial-mass runs, in one plane or more, with or without phase.</summary>
public static class BalanceTrialOperation
{
    /// <summary>The operation.</summary>
    public static Operation Operation { get; } = new("balance trial", "Corrections from trial-mass runs, in one plane or more, with or without phase.", Run) { TakesFile = true, TakesRecordings = true };

    private static Reading<Answer> Run(FileNode body)
    {
        var problems = new List<Problem>();
        var file = BalanceTrialReader.Read(body, problems);
        if (file is null || problems.Count > 0)
        {
            return AnswerJson.Wrong(problems);
        }

        if (file.Runs.Count == 0)
        {
            return Reading<Answer>.Of(TrialMassWords.Alone(file.Rotor!));
        }

        var solution = Solve(file);
        List<(string Code, string Message)> warnings = [.. Warnings(solution), .. TrialRecordings.Warnings(file.Recorded)];
        IReadOnlyList<string> cautions = Cautions(solution, file);
        return Reading<Answer>.Of(new Answer(warnings.Count > 0, Json(solution, file, warnings, cautions), [.. Lines(solution, file, warnings, cautions)]));
    }

    /// <summary>The corrections of a file that was read.</summary>
    internal static TrialSolution Solve(TrialFile file) => file.WithPhase
        ? TrialBalance.WithPhase(file.Runs, file.TrialKeptOn)
        : TrialBalance.WithoutPhase(file.Runs, file.TrialKeptOn);

    private static IEnumerable<(string Code, string Message)> Warnings(TrialSolution solution)
    {
        if (solution.WithoutEffect.Count > 0)
        {
            yield return ("trial-without-effect", $"The trial mass on plane {string.Join(", ", solution.WithoutEffect)} changed nothing that a reading can tell; no correction follows. Use a larger one and run again.");
        }

        if (solution.Circles is { } met && met.Fault != CircleFault.None)
        {
            yield return ("circles-do-not-meet", CircleWords.DoNotMeet(met, solution));
        }

        if (solution is { Circles.Outlier: { } outlier, WithoutEffect.Count: 0 })
        {
            yield return ("run-does-not-fit", CircleWords.DoesNotFit(outlier));
        }

        if (solution.Circles is { } placed && CircleWords.Places(placed) is { } places)
        {
            yield return places;
        }

        if (solution.NearlyDependent)
        {
            var limit = Figures.Of("balance.mostConditionNumber").Value;
            yield return ("planes-nearly-dependent",
                $"The planes do nearly the same at every point (condition number {Shown(solution.ConditionNumber)}, limit {Shown(limit)}): the masses may be large and fight each other. Leave one plane out, or measure at another point.");
        }
    }

    private static List<string> Cautions(TrialSolution solution, TrialFile file)
    {
        var cautions = new List<string>
        {
            TrialMassWords.Fixing,
        };
        if (file.Recorded.Count > 0)
        {
            cautions.Add("The driver only drives: fix the recorder to the vehicle, and let a second person start it. Wheels that turn on stands turn as the vehicle's maker allows, with nobody beside or before them.");
        }

        if (solution.Circles is { } circles)
        {
            cautions.AddRange(CircleWords.Cautions(circles, solution, mayFit: solution.WithoutEffect.Count == 0));
        }

        return cautions;
    }

    private static JsonObject Json(TrialSolution solution, TrialFile file, List<(string Code, string Message)> warnings, IReadOnlyList<string> cautions) => new()
    {
        ["influence"] = solution.Influence is null ? null : AnswerJson.List(solution.Influence.Select(plane =>
            (JsonNode?)AnswerJson.List(plane.Select(c => (JsonNode?)new JsonObject { ["magnitude"] = c.MagnitudePerGram, ["phaseDegrees"] = c.Phase.Degrees })))),
        ["unit"] = file.Unit.Length == 0 ? null : file.Unit,
        ["corrections"] = Masses(solution.Corrections),
        ["addToLastRun"] = Masses(solution.AddToLastRun),
        ["residualVibration"] = AnswerJson.List(solution.ResidualVibration.Select(v =>
            (JsonNode?)new JsonObject { ["amplitude"] = v.Amplitude, ["phaseDegrees"] = v.Phase?.Degrees })),
        ["misfit"] = new JsonObject { ["rms"] = solution.MisfitRootMeanSquare, ["relativePercent"] = solution.MisfitPercent },
        ["circles"] = solution.Circles is { } circles ? CircleWords.Json(circles) : null,
        ["recordings"] = AnswerJson.List(file.Recorded.Select(r => (JsonNode?)new JsonObject
        {
            ["run"] = r.Run,
            ["point"] = r.Point,
            ["signal"] = r.Signal,
            ["amplitude"] = r.Found.Amplitude,
            ["amplitudeStandardError"] = r.Found.AmplitudeStandardError,
            ["speedRevolutionsPerMinute"] = r.Found.Speed.RevolutionsPerMinute,
            ["speedStandardErrorRevolutionsPerMinute"] = r.Found.SpeedStandardError.RevolutionsPerMinute,
            ["turns"] = r.Found.Turns,
            ["driftPercent"] = r.Found.DriftPercent,
        })),
        ["conditionNumber"] = Finite(solution.ConditionNumber),
        ["suggestedTrial"] = file.Rotor is { } rotor ? TrialMassWords.Json(rotor) : null,
        ["warnings"] = AnswerJson.List(warnings.Select(w =>
            (JsonNode?)new JsonObject { ["code"] = w.Code, ["conditionNumber"] = Finite(solution.ConditionNumber), ["message"] = w.Message })),
        ["cautions"] = AnswerJson.List(cautions),
    };

    private static JsonArray Masses(IReadOnlyList<PlaneMass> masses) => AnswerJson.List(masses.Select(m =>
        (JsonNode?)new JsonObject { ["plane"] = m.Plane, ["massGrams"] = m.Mass.Grams, ["angleDegrees"] = m.Angle.Degrees }));

    private static double? Finite(double number) => double.IsFinite(number) ? number : null;

    private static IEnumerable<string> Lines(TrialSolution solution, TrialFile file, List<(string Code, string Message)> warnings, IReadOnlyList<string> cautions)
    {
        yield return "Angles are in the sense of the input's phases.";
        foreach (var (total, add) in solution.Corrections.Zip(solution.AddToLastRun))
        {
            yield return string.Create(CultureInfo.InvariantCulture,
                $"Plane {total.Plane}: {Text(total)} in all, with every trial mass off; or {Text(add)} added to the rotor as it stood in the last run.");
        }

        var unit = file.Unit.Length == 0 ? "" : $" {file.Unit}";
        for (var p = 0; p < solution.ResidualVibration.Count; p++)
        {
            var before = file.Runs[0].Vibration[p].Amplitude;
            var after = solution.Circles is { } circles
                ? circles.LeftAtMost[p] is { } most ? $"may keep up to {Small(most, before)}{unit}" : "may keep any amount: the runs do not tell"
                : $"becomes {Small(solution.ResidualVibration[p].Amplitude, before)}{unit}";
            yield return string.Create(CultureInfo.InvariantCulture, $"Point {p + 1}: {before:G4}{unit} {after}.");
        }

        yield return file.WithPhase
            ? $"Left over all points: {Small(solution.MisfitRootMeanSquare, file.Runs[0].Vibration.Max(v => v.Amplitude))}{unit} root mean square, {Quantity.Number(solution.MisfitPercent, 1)} % of the initial run."
            : $"The amplitudes of the trial runs are met within {Small(solution.MisfitRootMeanSquare, file.Runs[0].Vibration.Max(v => v.Amplitude))}{unit} root mean square, {Quantity.Number(solution.MisfitPercent, 1)} % of the initial run.";
        foreach (var r in file.Recorded)
        {
            yield return string.Create(CultureInfo.InvariantCulture,
                $"Run {r.Run}, point {r.Point}: {Shown(r.Found.Amplitude)} ± {Shown(r.Found.AmplitudeStandardError)} (one standard error) in '{r.Signal}' at {Quantity.Number(r.Found.Speed.RevolutionsPerMinute, 1)} r/min, over {Quantity.Number(r.Found.Turns, 0)} turns.");
        }

        if (file.Rotor is { } rotor)
        {
            yield return TrialMassWords.Line(rotor);
        }

        foreach (var (_, message) in warnings)
        {
            yield return $"Warning: {message}";
        }

        foreach (var caution in cautions)
        {
            yield return $"Caution: {caution}";
        }
    }

    private static string Text(PlaneMass mass) => $"{mass.Mass.Text("g", 1)} at {WheelAngle.FromDegrees(mass.Angle.Degrees)}";

    /// <summary>Three figures; nothing where only rounding is left.</summary>
    private static string Small(double number, double beside) => number <= 1e-9 * beside ? "0" : Shown(number);

    private static string Shown(double number) => double.IsFinite(number) ? number.ToString("G3", CultureInfo.InvariantCulture) : "without bound";
}
