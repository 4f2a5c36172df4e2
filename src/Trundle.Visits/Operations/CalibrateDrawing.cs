using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Pictures;

namespace Trundle.Visits.Operations;

/// <summary>The drawings that belong to an answer of <c>balance calibrate</c>: what an unbalance in either plane gives at each transducer, at the highest speed.</summary>
public static class CalibrateDrawing
{
    private const double GramMillimetres = 1000;

    /// <summary>The drawings, named "transducer 1" and "transducer 2".</summary>
    public static IReadOnlyList<Drawing> Of(JsonObject answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var fastest = answer["calibration"]!["speeds"]!.AsArray().MaxBy(s => Number(s!, "speedRevolutionsPerMinute"))!;
        var at = Quantity.Number(Number(fastest, "speedRevolutionsPerMinute"), 0);
        return [.. Enumerable.Range(0, 2).Select(point =>
        {
            var name = string.Create(CultureInfo.InvariantCulture, $"transducer {point + 1}");
            var view = new VectorView(
                $"What 1 kg·mm at 0° of the wheel gives at {name}, at {at} r/min", "0°", "",
                [Vector(fastest, "inner", point, VectorLook.First), Vector(fastest, "outer", point, VectorLook.Left)]);
            return new Drawing(name, VectorPolar.Draw($"calibrate-{point.ToString(CultureInfo.InvariantCulture)}", view));
        })];
    }

    private static NumberVector Vector(JsonNode speed, string side, int point, VectorLook look)
    {
        var given = speed["influence"]![side]![point]!;
        return new NumberVector($"in the {side} plane", Number(given, "magnitudePerGramMillimetre") * GramMillimetres, Angle.FromDegrees(Number(given, "phaseDegrees")), look);
    }

    private static double Number(JsonNode node, string key) => node[key]!.GetValue<double>();
}
