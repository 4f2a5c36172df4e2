using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Engine.Vehicles;
using Trundle.Engine.Wear;

namespace Trundle.Visits.Operations;

/// <summary>How each tread is worn, for programs and for people.</summary>
public static class WearAnswer
{
    private const double Told = 0.02;

    /// <summary>One reading a tyre, and its lines.</summary>
    public static (JsonNode Json, IReadOnlyList<string> Lines) Of(FittedVehicle subject)
    {
        var read = WearReading.Of(subject);
        return (AnswerJson.List(read.Select(w => (JsonNode?)Of(w))), [.. read.Select(w => $"wear      {w.Position,-7} {InOneLine(w)}")]);
    }

    private static JsonObject Of(TyreWear wear) => new()
    {
        ["position"] = wear.Position.ToString(),
        ["patterns"] = AnswerJson.List(wear.Patterns.Select(p => (JsonNode?)new JsonObject
        {
            ["pattern"] = p.Pattern.Word(),
            ["probability"] = p.Probability,
            ["evidence"] = p.Evidence,
            ["causes"] = AnswerJson.List(p.Causes.Select(c => (JsonNode?)new JsonObject
            {
                ["cause"] = c.Cause,
                ["text"] = c.Text,
                ["probability"] = c.Probability,
                ["check"] = c.Check,
                ["beforeDriving"] = c.BeforeDriving,
                ["source"] = c.Source.Text,
                ["status"] = c.Source.StatusText,
            })),
            ["nextStep"] = p.NextStep is { } step ? NextStep(p, step) : null,
            ["prior"] = p.Prior,
            ["evidenceLogRatio"] = p.EvidenceLogRatio,
            ["forms"] = AnswerJson.List(p.Forms.Select(f => (JsonNode?)new JsonObject { ["form"] = f.Form, ["text"] = f.Text, ["probability"] = f.Probability })),
        })),
        ["context"] = AnswerJson.List(wear.Context),
        ["cautions"] = AnswerJson.List(wear.Cautions),
    };

    /// <summary>The likeliest patterns and causes in one line, with what to check first.</summary>
    public static string InOneLine(TyreWear wear)
    {
        ArgumentNullException.ThrowIfNull(wear);
        var first = wear.Likeliest;
        var others = wear.Patterns.Skip(1).Take(2).Where(p => p.Probability >= Told).Select(p => $"{Name(p)} {Percent(p.Probability)}").ToList();
        return $"likeliest by the program's model: {Name(first)} {Percent(first.Probability)}{(others.Count == 0 ? "" : $", else {string.Join(", ", others)}")}."
            + (first.Pattern == WearPattern.Even ? "" : $" Likely causes: {Causes(first)}. First: {Lower(first.Causes[0].Check)}.");
    }

    /// <summary>The likeliest causes of a pattern with their probabilities.</summary>
    public static string Causes(PatternReading pattern)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        return string.Join(", ", pattern.Causes.Take(3).Select(c => $"{c.Text} {Percent(c.Probability)}"));
    }

    /// <summary>What to measure next, and what that would mean.</summary>
    public static string NextStep(PatternReading pattern, WearStep step)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        ArgumentNullException.ThrowIfNull(step);
        return $"{step.Text}: where {step.Shows}, that speaks for {(step.SpeaksForThis ? Name(pattern.Pattern) : Name(step.Between))} and against {(step.SpeaksForThis ? Name(step.Between) : Name(pattern.Pattern))}.";
    }

    /// <summary>A pattern as a person reads it, with its form where it has one.</summary>
    public static string Name(PatternReading pattern)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        return pattern.Pattern == WearPattern.OneShoulder ? $"one shoulder ({pattern.Forms[0].Form})" : Name(pattern.Pattern);
    }

    /// <summary>A probability as a person reads it.</summary>
    public static string Percent(double probability) => probability is > 0 and < 0.01 ? "under 1 %" : probability is > 0.99 and < 1 ? "over 99 %" : string.Create(CultureInfo.InvariantCulture, $"{100 * probability:0} %");

    private static string Name(WearPattern pattern) => pattern == WearPattern.HeelAndToe ? "heel and toe" : pattern.Word().Replace('-', ' ');

    private static string Lower(string text) => char.ToLowerInvariant(text[0]) + text[1..];
}
