namespace Trundle.Engine.Balance.Choice;

/// <summary>The step that some numbers are whole multiples of.</summary>
internal static class WholeStep
{
    private const double SmallestPart = 1.0 / 32;

    /// <summary>The greatest such step; null where there is no number, or the step would be a small part of the least of them.</summary>
    public static double? Of(IEnumerable<double> numbers)
    {
        var (step, least) = (0.0, double.PositiveInfinity);
        foreach (var number in numbers)
        {
            var (larger, smaller) = (number, step);
            while (smaller > 1e-7)
            {
                (larger, smaller) = (smaller, Math.Abs(larger - (smaller * Math.Round(larger / smaller))));
            }

            (step, least) = (larger, Math.Min(least, number));
        }

        return step > least * SmallestPart ? step : null;
    }
}
