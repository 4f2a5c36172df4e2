using System.Globalization;
using System.Text.Json.Nodes;

namespace Trundle.Visits.Operations;

/// <summary>
/// The numbers of an answer as they are written. They are not rounded, but what only binary arithmetic put behind a short decimal is taken off:
/// a 6 in rim is 6, not 5.999999999999999.
/// </summary>
public static class AnswerNumbers
{
    // Ten figures are more than any instrument of the trade shows, and one part in 1e13 is the trace of a chain of operations, not of a wheel.
    private const string ShortForm = "G10";
    private const double Trace = 1e-13;

    /// <summary>The number, or the decimal of at most ten figures that it differs from by less than one part in 1e13.</summary>
    public static double Plain(double number)
    {
        if (number == Math.Floor(number) || !double.IsFinite(number))
        {
            return number;
        }

        var shortest = double.Parse(number.ToString(ShortForm, CultureInfo.InvariantCulture), NumberStyles.Float, CultureInfo.InvariantCulture);
        return Math.Abs(shortest - number) <= Trace * Math.Abs(number) ? shortest : number;
    }

    /// <summary>The same body with every number plain.</summary>
    public static JsonObject Plain(JsonObject body)
    {
        ArgumentNullException.ThrowIfNull(body);
        foreach (var (key, value) in body.ToArray())
        {
            if (Replaced(value) is { } plain)
            {
                body[key] = plain;
            }
        }

        return body;
    }

    private static JsonValue? Replaced(JsonNode? node)
    {
        switch (node)
        {
            case JsonObject members:
                Plain(members);
                return null;
            case JsonArray items:
                for (var i = 0; i < items.Count; i++)
                {
                    if (Replaced(items[i]) is { } plain)
                    {
                        items[i] = plain;
                    }
                }

                return null;
            case JsonValue value when value.TryGetValue<double>(out var number) && Plain(number) is var shortest && shortest != number:
                return JsonValue.Create(shortest);
            default:
                return null;
        }
    }
}
