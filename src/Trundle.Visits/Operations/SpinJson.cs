using System.Numerics;
using System.Text.Json.Nodes;
using Trundle.Engine.Balance;
using Trundle.Engine.Balance.Spin;
using Trundle.Measures;

namespace Trundle.Visits.Operations;

/// <summary>What spins and calibrations are told with, in the contract's keys.</summary>
internal static class SpinJson
{
    /// <summary>The cautions of every spin.</summary>
    public static IReadOnlyList<string> Cautions => StepCautions.OfASpinWithTheShaft;

    public static string Word(RotationSense rotation) => rotation switch
    {
        RotationSense.Clockwise => "clockwise",
        RotationSense.Anticlockwise => "anticlockwise",
    };

    public static string Word(PhaseSense phases) => phases switch
    {
        PhaseSense.Lag => "lag",
        PhaseSense.Lead => "lead",
    };

    public static JsonObject Planes(PlanePair planes) => new() { ["inner"] = BalanceJson.Place(planes.Inner), ["outer"] = BalanceJson.Place(planes.Outer) };

    public static JsonObject Speed(CalibratedSpeed speed)
    {
        var json = new JsonObject
        {
            ["speedRevolutionsPerMinute"] = speed.Speed.RevolutionsPerMinute,
            ["influence"] = new JsonObject { ["inner"] = Influence(speed.Inner), ["outer"] = Influence(speed.Outer) },
        };
        if (speed.Misfit is [var first, var second])
        {
            json["misfit"] = new JsonObject { ["first"] = first, ["second"] = second };
        }

        // How far the errors of both transducers go together: without it they count as independent.
        json["together"] = new JsonObject { ["inner"] = Correlation(speed.InnerCorrelation), ["outer"] = Correlation(speed.OuterCorrelation), ["misfit"] = Correlation(speed.MisfitCorrelation) };

        return json;
    }

    public static JsonNode Warning(SpinWarning warning) => new JsonObject
    {
        ["code"] = warning.Code,
        ["point"] = warning.Point,
        ["measured"] = AnswerJson.Of(warning.Measured),
        ["limit"] = AnswerJson.Of(warning.Limit),
        ["action"] = warning.Action,
    };

    /// <summary>A warning as a person reads it, with the spin that it is of where there are several.</summary>
    public static string Line(SpinWarning warning, string? spin = null) =>
        $"Warning: {(spin is null ? "" : $"{spin}, ")}{warning.Code}{(warning.Point is { } p ? $", transducer {Quantity.Number(p, 0)}" : "")}: {warning.Measured.Text}{(warning.Limit is { } l ? $" (limit {l.Amount.Text})" : "")}. {warning.Action}";

    private static JsonObject Correlation(Complex of) => new() { ["magnitude"] = of.Magnitude, ["degrees"] = of.Phase * 180 / Math.PI };

    private static JsonArray Influence(IReadOnlyList<UnbalanceInfluence> plane) => AnswerJson.List(plane.Select(c =>
        (JsonNode?)new JsonObject
        {
            ["magnitudePerGramMillimetre"] = c.MagnitudePerGramMillimetre,
            ["phaseDegrees"] = c.Phase.Degrees,
            ["standardErrorPerGramMillimetre"] = c.StandardErrorPerGramMillimetre,
        }));
}
