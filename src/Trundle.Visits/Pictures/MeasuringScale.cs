using System.Globalization;
using Trundle.Measures;

namespace Trundle.Visits.Pictures;

/// <summary>What a drawn gauge measures and where it stands. Nothing on it is written out: it is to be read.</summary>
/// <param name="Title">What a screen reader calls it.</param>
/// <param name="Value">Where it stands, in the scale's unit.</param>
/// <param name="From">Where the scale begins.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Parts">Into how many parts a unit of <paramref name="NumberEvery"/> is divided.</param>
/// <param name="NumberEvery">At every how many units a number stands.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Edge">What stands at the scale: the rim's flange.</param>
public sealed record ScaleView(string Title, double Value, double From, double To, int Parts, double NumberEvery, string Unit, string Edge);

/// <summary>A straight scale with an edge against it, and a vernier caliper.</summary>
public static class MeasuringScale
{
    private const double Left = 24;
    private const double Wide = 472;

    /// <summary>The scale with an edge at its value, 520 by 120.</summary>
    public static string Draw(string id, ScaleView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var svg = new Svg(id, 520, 120, view.Title, Describe(view));
        var per = Wide / (view.To - view.From);
        svg.Box(Left - 14, 48, Wide + 28, 50, Svg.Card, Svg.Ink, 1.25, 2);
        var step = view.NumberEvery / view.Parts;
        for (var i = 0; view.From + (i * step) <= view.To + 1e-9; i++)
        {
            var x = Left + (i * step * per);
            var numbered = i % view.Parts == 0;
            var half = !numbered && view.Parts % 2 == 0 && i % (view.Parts / 2) == 0;
            svg.Line(x, 48, x, numbered ? 74 : half ? 68 : 60, Svg.Ink, numbered ? 1.5 : 1);
            if (numbered)
            {
                svg.Words(x, 91, Number(view.From + (i * step)), 14, "middle");
            }
        }

        svg.Words(Left + Wide + 12, 112, view.Unit, 13, "end", Svg.Soft);
        var at = Left + ((view.Value - view.From) * per);

        // The part that is measured lies against the scale with its left edge.
        svg.Path($"M{Svg.N(at)} 46V14h26v14h-14v18z", Svg.Rubber, Svg.Ink, 1.5);
        svg.Line(at, 8, at, 60, Svg.Accent, 1.5);
        svg.Words(at + 34, 24, view.Edge, 13, "start", Svg.Soft);
        return svg.End();
    }

    /// <summary>In words, as it would be read out mark by mark.</summary>
    public static string Describe(ScaleView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var step = view.NumberEvery / view.Parts;
        var below = Math.Floor((view.Value / view.NumberEvery) + 1e-9) * view.NumberEvery;
        var marks = Math.Round((view.Value - below) / step);
        return string.Create(CultureInfo.InvariantCulture, $"A scale in {view.Unit}, numbered every {view.NumberEvery:0.##}, each divided into {view.Parts} parts. {view.Edge} stands {marks:0} marks past {below:0.##}.");
    }

    /// <summary>A vernier caliper in a bore, to a tenth of a millimetre, 520 by 140.</summary>
    /// <param name="id">Unique on its page.</param>
    /// <param name="title">What a screen reader calls it.</param>
    /// <param name="bore">What it measures, in whole tenths of a millimetre.</param>
    public static string Vernier(string id, string title, Length bore)
    {
        var tenths = (int)Math.Round(bore.Millimetres * 10);
        var (whole, tenth) = (tenths / 10, tenths % 10);
        var from = Math.Max(0, (whole / 10 * 10) - 10);
        var svg = new Svg(id, 520, 140, title, string.Create(CultureInfo.InvariantCulture, $"A vernier caliper. Its nothing stands {(tenth == 0 ? "at" : "past")} {whole} mm of the main scale; its line {tenth} meets a line of the main scale."));
        const double per = Wide / 32;
        svg.Box(Left - 14, 14, Wide + 28, 50, Svg.Card, Svg.Ink, 1.25, 2);
        for (var mm = from; mm <= from + 32; mm++)
        {
            var x = Left + ((mm - from) * per);
            svg.Line(x, 64, x, mm % 10 == 0 ? 38 : mm % 5 == 0 ? 45 : 51, Svg.Ink, mm % 10 == 0 ? 1.5 : 1);
            if (mm % 10 == 0)
            {
                svg.Words(x, 33, Number(mm), 14, "middle");
            }
        }

        svg.Words(Left + Wide + 10, 30, "mm", 13, "end", Svg.Soft);

        // Ten parts of the vernier on nine of the main scale: line k of it meets the main scale where k tenths are measured.
        var zero = Left + (((tenths / 10.0) - from) * per);
        svg.Box(zero - 10, 65, (9 * per) + 20, 46, Svg.Rubber, Svg.Ink, 1.25, 2);
        for (var k = 0; k <= 10; k++)
        {
            var x = zero + (k * 0.9 * per);
            svg.Line(x, 65, x, k % 5 == 0 ? 86 : 79, Svg.Ink, k is 0 or 10 ? 1.5 : 1);
            if (k % 5 == 0)
            {
                svg.Words(x, 103, Number(k), 14, "middle");
            }
        }

        return svg.Words(Left - 10, 132, "main scale above, vernier below: ten parts on nine millimetres", 13, "start", Svg.Soft).End();
    }

    private static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
