using System.Globalization;
using Trundle.Measures;

namespace Trundle.Visits.Pictures;

/// <summary>The twelve amounts of a traverse test.</summary>
/// <param name="Title">What a screen reader calls it.</param>
/// <param name="Ratios">Each amount over the mean of all, in order of the places.</param>
/// <param name="Mean">The mean, in words.</param>
/// <param name="LimitPercent">How far an amount may lie from the mean.</param>
public sealed record TraverseView(string Title, IReadOnlyList<double> Ratios, string Mean, double LimitPercent);

/// <summary>A traverse test over the angle of the mass: the amounts as they lie about their mean, with the band in which they must lie.</summary>
public static class TraverseBand
{
    private const double Left = 50;
    private const double Right = 350;
    private const double Top = 14;
    private const double Bottom = 190;
    private const double Middle = (Top + Bottom) / 2;

    /// <summary>The drawing, 360 by 230.</summary>
    public static string Draw(string id, TraverseView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var off = view.Ratios.Select(r => 100 * (r - 1)).ToList();
        var full = Math.Max(1.5 * view.LimitPercent, 1.4 * off.Max(Math.Abs));
        double Y(double percent) => Middle - (percent / full * (Bottom - Top) / 2);
        double X(double place) => Left + 12 + (place * (Right - Left - 24) / (off.Count - 1));

        var svg = new Svg(id, 360, 230, view.Title, Describe(view));
        svg.Box(Left, Top, Right - Left, Bottom - Top, Svg.Card, Svg.Hairline);
        svg.Box(Left, Y(view.LimitPercent), Right - Left, Y(-view.LimitPercent) - Y(view.LimitPercent), Svg.Wash, "none");
        foreach (var (percent, words) in new[] { (view.LimitPercent, Percent(view.LimitPercent)), (-view.LimitPercent, Percent(-view.LimitPercent)) })
        {
            svg.Line(Left, Y(percent), Right, Y(percent), Svg.Accent, 1.5, "4 3").Words(Left - 6, Y(percent) + 4.5, words, 13, "end", Svg.Soft);
        }

        svg.Line(Left, Middle, Right, Middle, Svg.Ink, 0.75).Words(Left - 6, Middle + 4.5, "mean", 13, "end", Svg.Soft);
        foreach (var place in Enumerable.Range(0, off.Count))
        {
            var (x, y) = (X(place), Y(off[place]));
            svg.Line(x, Middle, x, y, Svg.Accent, 2.5);
            if (Math.Abs(off[place]) > view.LimitPercent)
            {
                // A square, larger, and its figure: what lies outside must not be told by its height alone.
                svg.Box(x - 6, y - 6, 12, 12, Svg.Card, Svg.Ink, 2);
                svg.Words(Math.Clamp(x, Left + 20, Right - 20), off[place] > 0 ? Math.Max(y - 10, Top + 12) : Math.Min(y + 20, Bottom - 3), Percent(Math.Round(off[place])), 13, "middle", Svg.Ink, true);
            }
            else
            {
                svg.Circle(x, y, 4.5, Svg.Ink, "none");
            }

            svg.Line(x, Bottom, x, Bottom + (place % 3 == 0 ? 6 : 3), Svg.Hairline);
            if (place % 3 == 0)
            {
                svg.Words(x, Bottom + 19, string.Create(CultureInfo.InvariantCulture, $"{place * 360 / off.Count}°"), 13, "middle", Svg.Soft);
            }
        }

        svg.Words((Left + Right) / 2, Bottom + 36, "place of the mass", 13, "middle", Svg.Soft);
        return svg.End();
    }

    /// <summary>In words.</summary>
    public static string Describe(TraverseView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var places = view.Ratios.Select((r, i) => string.Create(CultureInfo.InvariantCulture, $"{i * 360 / view.Ratios.Count}° {100 * (r - 1):+0.0;-0.0;0.0} %"));
        return $"Mean {view.Mean}. From the mean, by the place of the mass: {string.Join(", ", places)}. The band is {Quantity.Number(view.LimitPercent, 0)} % to either side.";
    }

    private static string Percent(double percent) => $"{(percent < 0 ? "−" : "+")}{Quantity.Number(Math.Abs(percent), 0)} %";
}
