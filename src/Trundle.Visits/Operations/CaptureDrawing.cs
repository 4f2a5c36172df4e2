using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Pictures;

namespace Trundle.Visits.Operations;

/// <summary>The drawings that belong to an answer of <c>balance capture</c>: each transducer's vector with its error, and both planes on a calibrated machine.</summary>
public static class CaptureDrawing
{
    /// <summary>The drawings, named "transducer 1", "inner" and so on.</summary>
    /// <param name="answer">The operation's answer.</param>
    /// <param name="unit">The reader's unit of mass.</param>
    public static IReadOnlyList<Drawing> Of(JsonObject answer, string unit)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var drawings = new List<Drawing>();
        var points = answer["points"]!.AsArray();
        for (var i = 0; i < points.Count; i++)
        {
            var point = points[i]!;
            var name = string.Create(CultureInfo.InvariantCulture, $"transducer {i + 1}");
            var vector = new NumberVector("amplitude", Number(point, "amplitude"), Angle.FromDegrees(Number(point, "phaseDegrees")), VectorLook.First)
            {
                Error = (Number(point, "amplitudeStandardError"), Angle.FromDegrees(Number(point, "phaseStandardErrorDegrees"))),
            };
            drawings.Add(new Drawing(name, VectorPolar.Draw($"capture-{i}", new VectorView($"First harmonic at {name}", "index mark", "", [vector]))));
        }

        if (answer["planes"] is JsonObject planes)
        {
            var full = PolarGrid.FullScale(new[] { "inner", "outer" }.Select(side => Mass.FromGrams(Number(planes[side]!, "massGrams"))), unit);
            foreach (var side in new[] { "inner", "outer" })
            {
                var plane = planes[side]!;

                // The answer tells where to add; the drawing shows the heavy place, opposite.
                var heavy = new PolarMark(Mass.FromGrams(Number(plane, "massGrams")), WheelAngle.FromDegrees(Number(plane, "angleDegrees") + 180))
                {
                    Error = (Mass.FromGrams(Number(plane, "massStandardErrorGrams")), Angle.FromDegrees(Number(plane, "angleStandardErrorDegrees"))),
                };
                drawings.Add(new Drawing(side, PolarGrid.Draw($"capture-{side}", new PolarView($"{side} plane", heavy, null, null, unit), full)));
            }
        }

        return drawings;
    }

    private static double Number(JsonNode node, string key) => node[key]!.GetValue<double>();
}
