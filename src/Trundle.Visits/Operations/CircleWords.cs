using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Engine.Balance;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Visits.Operations;

/// <summary>How well the circles of trial runs without phase meet, for people and for programs.</summary>
internal static class CircleWords
{
    public static JsonObject Json(CircleCheck circles, TrialSolution solution)
    {
        var correction = solution.Corrections[0].Mass;
        return new JsonObject
        {
            ["meet"] = circles.Fault == CircleFault.None,
            ["likelyFault"] = Word(circles.Fault),
            ["repeatRun"] = circles.Run,
            ["standardErrorGrams"] = circles.StandardError?.Grams,
            ["standardErrorDegrees"] = circles.AngleError(correction)?.Degrees,
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

        if (circles.StandardError is { } error && solution.Corrections[0].Mass is { Si: > 0 } correction && circles.AngleError(correction) is var angle)
        {
            yield return angle is { } a
                ? $"The correction is known to about {error.Text("g", 1)} and {Quantity.Number(a.Degrees, 0)}° (one standard error, from how far the runs miss the fit). Fit it, run again, and correct what is left."
                : "The correction is known no better than its own size: do not fit it.";
        }
    }

    private static string WhatToDo(CircleCheck circles) => circles.Fault switch
    {
        CircleFault.None => "",
        CircleFault.TrialTooSmall => "The trial mass changed the vibration by little more than that: use a larger one, at one steady speed, and see that nothing else shakes.",
        CircleFault.OneRun => $"Run {circles.Run?.ToString(CultureInfo.InvariantCulture)} disagrees with all the others, which agree without it: repeat that run, and look whether its mass sat where it was entered.",
        CircleFault.InitialRun => "The trial runs agree with each other but not with the initial run: repeat the initial run at the same speed.",
        CircleFault.Unknown => "These runs cannot tell which of them is wrong: repeat the initial run, then add a trial run at another place, all at one steady speed, engine and road the same.",
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
