using Trundle.Engine.Balance;
using Trundle.Measures;

namespace Trundle.Visits.Files;

/// <summary>Reads how fast a wheel turns: turns per minute, or a road speed with the rolling circumference.</summary>
internal static class BalanceSpeedReader
{
    private static readonly Length LeastCircumference = Length.FromMillimetres(300);
    private static readonly Length MostCircumference = Length.FromMetres(8);

    /// <summary>The speed of turning under <c>speed</c>, with the circumference under the key named; null where a problem was added.</summary>
    public static RotationalSpeed? Read(FileObject o, string circumferenceKey)
    {
        var circumference = o.Quantity<Length>(circumferenceKey, "mm", LeastCircumference, MostCircumference);
        if (!o.Require("speed", "give the greatest speed in service, \"300 r/min\", or a road speed such as \"120 km/h\""))
        {
            return null;
        }

        if (o.Text("speed") is not { } text)
        {
            return null;
        }

        var turning = Quantity.Read<RotationalSpeed>(text);
        if (turning.IsRead)
        {
            return InRange(o, turning.Value);
        }

        var road = Quantity.Read<Speed>(text);
        if (!road.IsRead)
        {
            var code = road.Problem!.Code;
            o.Wrong("speed", code, code is "unit-unknown" or "unit-missing"
                ? $"'{NumberText.Shown(text)}' is not a speed here; write turns, \"300 r/min\", or a road speed, \"120 km/h\" or \"75 mph\"."
                : road.Problem.Message);
            return null;
        }

        if (circumference is { } round)
        {
            return InRange(o, PermissibleUnbalance.TurningAt(road.Value, round));
        }

        if (!o.Has(circumferenceKey))
        {
            o.Wrong(circumferenceKey, "missing", $"'{circumferenceKey}' is missing: a road speed needs the distance that the tyre rolls in one turn, for example \"1.95 m\".");
        }

        return null;
    }

    private static RotationalSpeed? InRange(FileObject o, RotationalSpeed speed)
    {
        if (speed.RevolutionsPerMinute is > 0 and <= 100_000)
        {
            return speed;
        }

        o.Wrong("speed", "out-of-range", $"{speed} is no speed of a turning wheel; it lies above 0 and up to 100000 r/min.");
        return null;
    }
}
