using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Engine.Balance;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Visits.Operations;

/// <summary>How well the circles of trial runs without phase meet, for people and for programs.</summary>
internal static class CircleWords
{
    public static JsonObject Json(CircleCheck circles)
    {
        return new JsonObject
        {
            ["meet"] = circles.Fault == CircleFault.None,
            ["likelyFault"] = Word(circles.Fault),
            ["repeatRun"] = circles.Run ?? circles.Outlier?.Run,
            ["runThatDoesNotFit"] = circles.Outlier is { } run ? new JsonObject
            {
                ["run"] = run.Run,
                ["point"] = run.Point,
                ["measured"] = run.Measured,
                ["byOthers"] = run.ByOthers,
                ["chance"] = run.Chance,
                ["correctionWithout"] = run.CorrectionWithout is { } without ? new JsonObject { ["massGrams"] = without.Mass.Grams, ["angleDegrees"] = without.Angle.Degrees } : null,
            } : null,
            ["standardErrorGrams"] = circles.Error?.Along.Grams,
            ["standardErrorDegrees"] = circles.Error?.Turn?.Degrees,
            ["interval"] = circles.Error is { } error ? new JsonObject
            {
                ["percent"] = 100 * CircleError.Chance.Value,
                ["massGrams"] = error.MassWithin.Grams,
                ["angleDegrees"] = error.TurnWithin?.Degrees,
                ["leftOver"] = error.LeftOver,
                ["basis"] = Word(error.Basis),
            } : null,
            ["spanDegrees"] = circles.Span.Degrees,
            ["leftAtMost"] = AnswerJson.List(circles.LeftAtMost.Select(v => (JsonNode?)v)),
            ["otherAnswer"] = circles.Other is { } other ? new JsonObject { ["massGrams"] = other.Mass.Grams, ["angleDegrees"] = other.Angle.Degrees } : null,
            ["runs"] = AnswerJson.List(circles.Misses.Select(m => (JsonNode?)new JsonObject { ["run"] = m.Run, ["point"] = m.Point, ["measured"] = m.Measured, ["byFit"] = m.ByFit })),
        };
    }

    /// <summary>That the circles do not meet, by how much, and what to do.</summary>
    public static string DoNotMeet(CircleCheck circles, TrialSolution solution)
    {
        var limit = Figures.Of("balance.circlesMisfit");
        return $"The circles do not meet: the amplitudes miss by {Quantity.Number(solution.MisfitPercent, 0)} % of the initial run, more than the {Quantity.Number(limit.Value, 0)} % allowed. {WhatToDo(circles)}";
    }

    /// <summary>Which run the others disagree with, by how much, and what to do.</summary>
    public static string DoesNotFit(RunOutlier outlier)
    {
        var without = outlier.CorrectionWithout is { } mass ? $" Without it the others ask for {mass.Mass.Text("g", 1)} at {WheelAngle.FromDegrees(mass.Angle.Degrees)}." : "";
        return string.Create(CultureInfo.InvariantCulture,
            $"Run {outlier.Run} does not fit the others: at point {outlier.Point} it shows {outlier.Measured:G3}, and they foretell {outlier.ByOthers:G3}; by chance the worst of all runs would be so far off less than once in {Math.Floor(1 / Math.Max(outlier.Chance, 1e-6)):0} times. Repeat that run, and look whether its mass sat where it was entered.{without}");
    }

    public static IEnumerable<string> Cautions(CircleCheck circles, TrialSolution solution, bool mayFit)
    {
        if (!mayFit)
        {
            yield return "Fit nothing from these runs: the trial mass changed too little.";
            yield break;
        }

        if (circles.Other is { } other)
        {
            yield return $"A second answer fits nearly as well: {other.Mass.Text("g", 1)} at {WheelAngle.FromDegrees(other.Angle.Degrees)}. One more trial run, at a place well away from the others, parts the two.";
        }

        if (circles.Error is { } error && solution.Corrections[0].Mass.Si > 0)
        {
            yield return Known(error, circles.Outlier);
        }
    }

    /// <summary>How sure the correction is, what that rests on, and what to do about it.</summary>
    private static string Known(CircleError error, RunOutlier? outlier)
    {
        var chance = string.Create(CultureInfo.InvariantCulture, $"in {10 * CircleError.Chance.Value:0} of 10 cases");
        if (error.Across.Si >= error.Correction.Si || error.Along.Si >= error.Correction.Si)
        {
            return "The correction is known no better than its own size: do not fit it.";
        }

        var basis = error.Basis switch
        {
            CircleErrorBasis.Misses => "from how far the runs miss the fit",
            CircleErrorBasis.Reading => "from how finely the amplitudes were read, as the runs miss the fit by less than that",
        };
        return error.TurnWithin is { } turn && !error.IsAsLargeAsTheCorrection
            ? $"The correction is known to ± {error.MassWithin.Text("g", 1)} and ± {Quantity.Number(turn.Degrees, 0)}° ({chance}, {basis}; {LeftOver(error)}). {(outlier is { } run ? string.Create(CultureInfo.InvariantCulture, $"Repeat run {run.Run} before anything is fitted.") : "Fit it, run again, and correct what is left.")}"
            : $"The correction may be wrong by as much as its own size ({chance}, {basis}; {LeftOver(error)}). One more trial run, at another place, tells it better.";
    }

    private static string LeftOver(CircleError error) => error.LeftOver == 1 ? "only one number is left over to judge by" : string.Create(CultureInfo.InvariantCulture, $"{error.LeftOver} numbers are left over to judge by");

    /// <summary>That the trial masses stood too close together or in line, and what to do; null where they did not.</summary>
    public static (string Code, string Message)? Places(CircleCheck circles) =>
        circles.IsCrowded ? ("trial-places-crowded", $"The trial masses span only {Quantity.Number(circles.Span.Degrees, 0)}° of the circle, less than the {Quantity.Number(CircleCheck.LeastSpan.Value, 0)}° that tell a direction: the correction's angle is hardly known, whatever the runs agree on. Run again with the trial mass well apart, best a third or a quarter of a turn from place to place.")
        : circles.IsInLine ? ("trial-places-in-line", $"The trial masses stand within {Quantity.Number(circles.OffLine.Degrees, 0)}° of one line through the axle: the correction and its mirror image about that line look alike. One more run with the trial mass a quarter of a turn from that line parts them.")
        : null;

    private static string WhatToDo(CircleCheck circles) => circles.Fault switch
    {
        CircleFault.None => "",
        CircleFault.TrialTooSmall => "The trial mass changed the vibration by little more than that: use a larger one, at one steady speed, and see that nothing else shakes.",
        CircleFault.OneRun => $"Run {circles.Run?.ToString(CultureInfo.InvariantCulture)} disagrees with all the others, which agree without it: repeat that run, and look whether its mass sat where it was entered.",
        CircleFault.InitialRun => "The trial runs agree with each other but not with the initial run: repeat the initial run at the same speed.",
        CircleFault.Unknown => "These runs cannot tell which of them is wrong: repeat the initial run, then add a trial run at another place, all at one steady speed, engine and road the same.",
    };

    private static string Word(CircleErrorBasis basis) => basis switch
    {
        CircleErrorBasis.Misses => "misses",
        CircleErrorBasis.Reading => "reading",
    };

    private static string Word(CircleFault fault) => fault switch
    {
        CircleFault.None => "none",
        CircleFault.TrialTooSmall => "trial-too-small",
        CircleFault.OneRun => "one-run",
        CircleFault.InitialRun => "initial-run",
        CircleFault.Unknown => "unknown",
    };
}
