using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Pictures;

namespace Trundle.Visits.Operations;

/// <summary>The drawings that belong to an answer of <c>balance calibrate</c>: at each transducer what an unbalance in either plane gives, speed by speed.</summary>
public static class CalibrateDrawing
{
    private const double GramMillimetres = 1000;

    /// <summary>The drawings, named "transducer 1" and "transducer 2".</summary>
    public static IReadOnlyList<Drawing> Of(JsonObject answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var speeds = answer["calibration"]!["speeds"]!.AsArray();
        return [.. Enumerable.Range(0, 2).Select(point =>
        {
            var name = string.Create(CultureInfo.InvariantCulture, $"transducer {point + 1}");
            var vectors = speeds.SelectMany(speed => new[] { Vector(speed!, "inner", point, VectorLook.First), Vector(speed!, "outer", point, VectorLook.Left) });
            return new Drawing(name, VectorPolar.Draw($"calibrate-{point.ToString(CultureInfo.InvariantCulture)}", new VectorView($"What 1 kg·mm gives at {name}", "0°", "", [.. vectors])));
        })];
    }

    private static NumberVector Vector(JsonNode speed, string side, int point, VectorLook look)
    {
        var rpm = Quantity.Number(speed["speedRevolutionsPerMinute"]!.GetValue<double>(), 0);
        var given = speed["influence"]![side]![point]!;
        return new NumberVector(
            $"{side} plane at {rpm} r/min", given["magnitudePerGramMillimetre"]!.GetValue<double>() * GramMillimetres, Angle.FromDegrees(given["phaseDegrees"]!.GetValue<double>()), look)
        {
            Mark = rpm,
        };
    }
}
