using Trundle.Measures;

namespace Trundle.Visits.Files;

/// <summary>
/// What the digits of displays say of how finely they are known: a file that holds "35 g" and "12 g" was read off a display that shows whole grams, or was
/// rounded to them. The finest of all readings counts.
/// </summary>
internal static class TypedDigits
{
    private const int MostDecimals = 9;

    // By chance a whole number is a multiple of five once in five: four of them (nothing shown is one too) once in some hundreds.
    private const int EnoughShown = 4;
    private const int EnoughAboveNothing = 2;

    /// <summary>The coarse steps that displays of balancers have, the coarsest first (common practice).</summary>
    private static readonly Mass[] UsualSteps = [Mass.FromOunces(0.25), Mass.FromGrams(5), Mass.FromOunces(0.05)];

    /// <summary>The step of the displayed masses, or null where there are none above nothing.</summary>
    public static Mass? MassStep(FileNode root)
    {
        Mass? finest = null;
        foreach (var reading in Readings(root))
        {
            if (reading.Member("mass") is { } node && Quantity.Read<Mass>(node.Text, "g") is { IsRead: true, Value.Si: > 0 } read)
            {
                // One of the last digit, in the unit that was typed: what a number of that digit alone would read as.
                var one = Quantity.Read<Mass>(OneOfLastDigit(node.Text), "g");
                finest = one.IsRead && (finest is not { } f || one.Value < f) ? one.Value : finest;
                finest ??= read.Value;
            }
        }

        return finest;
    }

    /// <summary>
    /// The usual coarse step that every displayed mass is a whole multiple of, or null where one is not, or too few are shown to say: "30 g", "5 g", "0 g" and
    /// "15 g" come off a display of 5 g, though their last digits are whole grams.
    /// </summary>
    public static Mass? CoarseStep(FileNode root)
    {
        double[] shown = [.. Readings(root).Select(r => r.Member("mass")).OfType<FileNode>().Select(m => Quantity.Read<Mass>(m.Text, "g")).Where(m => m.IsRead).Select(m => m.Value.Grams)];
        if (shown.Length < EnoughShown || shown.Count(g => g > 0) < EnoughAboveNothing)
        {
            return null;
        }

        foreach (var step in UsualSteps)
        {
            if (shown.All(g => Math.Abs(Math.IEEERemainder(g, step.Grams)) <= 1e-3 * step.Grams))
            {
                return step;
            }
        }

        return null;
    }

    /// <summary>The step of the displayed angles, or null where none is a plain number of degrees.</summary>
    public static Angle? AngleStep(FileNode root)
    {
        Angle? finest = null;
        foreach (var reading in Readings(root))
        {
            if (reading.Member("angle") is { Kind: NodeKind.Number or NodeKind.Text } node && Quantity.Read<Angle>(OneOfLastDigit(node.Text), "°") is { IsRead: true } one)
            {
                finest = finest is not { } f || one.Value < f ? one.Value : finest;
            }
        }

        return finest;
    }

    /// <summary>The step of a plain number as typed: one of its last digit.</summary>
    public static double? NumberStep(string text) => NumberText.Read(OneOfLastDigit(text).Trim()) is { IsRead: true } one ? one.Value : null;

    private static IEnumerable<FileNode> Readings(FileNode root) =>
        root.Member("spins") is { } spins
            ? spins.Items.Select(s => s.Member("display")).OfType<FileNode>().SelectMany(d => new[] { d.Member("inner"), d.Member("outer") }).OfType<FileNode>()
            : [];

    /// <summary>"35.25 g" gives "0.01 g"; a number with an exponent or a fraction gives the finest step.</summary>
    private static string OneOfLastDigit(string text)
    {
        var trimmed = text.Trim();
        var end = 0;
        while (end < trimmed.Length && (char.IsAsciiDigit(trimmed[end]) || trimmed[end] is '.' or ',' or '-' or '+'))
        {
            end++;
        }

        var rest = trimmed[end..].TrimStart();
        var odd = rest.StartsWith('/') || rest.StartsWith('e') || rest.StartsWith('E') || (rest.Length > 0 && char.IsAsciiDigit(rest[0]));
        var point = trimmed[..end].LastIndexOfAny(['.', ',']);
        var decimals = odd ? MostDecimals : point < 0 ? 0 : Math.Min(MostDecimals, end - point - 1);
        var unit = odd ? "" : rest;
        return decimals == 0 ? $"1 {unit}" : $"0.{new string('0', decimals - 1)}1 {unit}";
    }
}
