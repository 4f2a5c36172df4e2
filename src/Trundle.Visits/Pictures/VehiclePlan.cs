using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Visits.Pictures;

/// <summary>One wheel on a vehicle's plan.</summary>
/// <param name="Position">Where it sits.</param>
/// <param name="Name">In words: front left.</param>
/// <param name="Entered">False draws it dashed: nothing entered yet.</param>
/// <param name="Lines">What is written at it: the first full, the others softer.</param>
/// <param name="Tread">Its depths, or null.</param>
/// <param name="Category">The gravest finding there, or null where it is not judged yet.</param>
/// <param name="Href">Where a tap leads, or null.</param>
/// <param name="Chosen">Drawn heavier: it is the one in hand.</param>
public sealed record PlanWheel(Position Position, string Name, bool Entered, IReadOnlyList<string> Lines, TreadView? Tread, Category? Category, string? Href, bool Chosen = false);

/// <summary>A vehicle's plan: axles from the front with their distances where known.</summary>
/// <param name="Title">What a screen reader calls it.</param>
/// <param name="Wheels">Every wheel, the spare too.</param>
/// <param name="Axles">How many axles.</param>
/// <param name="Behind">How far each axle is behind the first; empty where not known.</param>
/// <param name="Track">The widest track, or null where not known.</param>
public sealed record PlanView(string Title, IReadOnlyList<PlanWheel> Wheels, int Axles, IReadOnlyList<Length> Behind, Length? Track)
{
    /// <summary>A motorcycle: its wheels stand one behind the other on the middle line.</summary>
    public bool SingleTrack { get; init; }
}

/// <summary>
/// The vehicle as its axle lines seen from above, the front at the left and the left side on top; or upright, the front on top, for a narrow page.
/// Wheels are links where a tap leads somewhere.
/// </summary>
public static class VehiclePlan
{
    private const double WheelLength = 116;
    private const double WheelWidth = 42;

    /// <summary>The wide drawing; 760 units wide for two axles.</summary>
    public static string Wide(string id, PlanView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var span = Math.Max(1, view.Axles - 1) * 300.0;
        var x = Places(view, 148, span);
        var duals = view.Wheels.Any(w => w.Position.Dual != DualPlace.Single);
        var spare = view.Wheels.FirstOrDefault(w => w.Position.IsSpare);
        var last = x.DefaultIfEmpty(148).Max();
        var spareAt = last + (duals ? 158 : 104);
        var width = Math.Max(spare is null ? last + 212 : spareAt + 158, 560);
        var near = duals ? 190 : 142;
        var scale = view.Behind.Count == view.Axles && view.Axles > 1 ? (x[^1] - x[0]) / view.Behind[^1].Millimetres : (double?)null;
        var middle = view.SingleTrack ? near : near + (scale is { } perMillimetre && view.Track is { } track ? Math.Clamp(track.Millimetres * perMillimetre / 2, 90, 220) : 138);
        var svg = new Svg(id, width, (view.SingleTrack ? middle + 74 : 2 * middle) + 4, view.Title, Describe(view), holdsLinks: true);
        var reach = middle - near;

        svg.Line(30, middle, last + 70, middle, Svg.Hairline, 1.25, "12 4 2 4");
        svg.Words(14, middle + 5, "front", 13, "start", Svg.Soft);
        for (var axle = 1; axle <= view.Axles && !view.SingleTrack; axle++)
        {
            svg.Line(x[axle - 1], near, x[axle - 1], middle + reach, Svg.Ink, 2);
        }

        for (var axle = 2; axle <= view.Behind.Count && axle <= view.Axles; axle++)
        {
            svg.Dimension(x[axle - 2], x[axle - 1], middle + 34, Spaced((view.Behind[axle - 1] - view.Behind[axle - 2]).Millimetres) + " mm");
        }

        foreach (var wheel in view.Wheels.Where(w => !w.Position.IsSpare))
        {
            var left = view.SingleTrack || wheel.Position.Side == Side.Left;
            var inner = wheel.Position.Dual == DualPlace.Inner;
            var shift = wheel.Position.Dual == DualPlace.Outer ? -(WheelWidth + 6) : 0;
            var centreY = left ? near + shift : middle + reach - shift;
            var centreX = x[wheel.Position.Axle - 1];
            Begin(svg, wheel);
            Body(svg, wheel, centreX - (WheelLength / 2), centreY - (WheelWidth / 2));
            End(svg, wheel);
            if (inner)
            {
                // An inner wheel's words stand inside the vehicle, beside the axle line.
                Words(svg, wheel, centreX + 12, left ? centreY + 44 : centreY - 70);
            }
            else
            {
                // The words stand outside the vehicle: above its left side, below its right.
                var top = left ? centreY - 96 : centreY + 46;
                Words(svg, wheel, centreX - 118, top);
                if (wheel.Tread is not null)
                {
                    // A long name pushes the bars aside.
                    TreadSection.Bars(svg, wheel.Tread, centreX - 118 + Math.Max(92, wheel.Name.Length * 8.2), top + 45);
                }
            }
        }

        if (spare is not null)
        {
            var sx = spareAt;
            Begin(svg, spare);
            Body(svg, spare, sx, middle - (WheelWidth / 2));
            End(svg, spare);
            Words(svg, spare, sx, middle + 44);
        }

        return svg.End();
    }

    /// <summary>The upright drawing for a narrow page, 360 units wide.</summary>
    public static string Upright(string id, PlanView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var duals = view.Wheels.Any(w => w.Position.Dual != DualPlace.Single);
        var axleGap = duals ? 236.0 : 178.0;
        var spare = view.Wheels.FirstOrDefault(w => w.Position.IsSpare);
        var height = 74 + (Math.Max(1, view.Axles) * axleGap) + (spare is null ? 0 : 96);
        var svg = new Svg(id, 360, height, view.Title, Describe(view), holdsLinks: true);
        svg.Words(180, 14, "front", 13, "middle", Svg.Soft);
        svg.Line(180, 22, 180, 40 + (Math.Max(1, view.Axles) * axleGap) - 70, Svg.Hairline, 1.25, "12 4 2 4");
        for (var axle = 1; axle <= view.Axles && !view.SingleTrack; axle++)
        {
            svg.Line(52, Y(axle), 308, Y(axle), Svg.Ink, 2);
        }

        foreach (var wheel in view.Wheels)
        {
            var spareHere = wheel.Position.IsSpare;
            var left = wheel.Position.Side == Side.Left;
            var inner = wheel.Position.Dual == DualPlace.Inner;
            var y = spareHere ? height - 52 : Y(wheel.Position.Axle);
            var shift = inner ? 40 : 0;
            var x = spareHere || view.SingleTrack ? 180 : left ? 32 + shift : 328 - shift;
            Begin(svg, wheel);
            if (spareHere)
            {
                Body(svg, wheel, x - (WheelLength / 2), y - (WheelWidth / 2));
                End(svg, wheel);
                svg.Words(x, y + 40, string.Join(" · ", wheel.Lines.Prepend(wheel.Name).Take(2)), 14, "middle");
            }
            else
            {
                UprightBody(svg, wheel, x, y);
                End(svg, wheel);
                if (!inner)
                {
                    // Beside a single wheel there is room; the words of a dual pair stand under it.
                    var at = view.SingleTrack ? 212 : duals ? (left ? 13 : 347) : left ? 64 : 296;
                    var anchor = left || view.SingleTrack ? "start" : "end";
                    svg.Words(at, duals ? y + 92 : y - 30, Capital(wheel.Name), 15, anchor, Svg.Ink, wheel.Chosen);
                    if (wheel.Lines.Count > 0)
                    {
                        svg.Words(at, duals ? y + 110 : y - 11, wheel.Entered ? string.Join(" ", wheel.Lines) : "nothing yet", 14, anchor, wheel.Entered ? Svg.Ink : Svg.Soft);
                    }

                    if (wheel.Tread is not null)
                    {
                        TreadSection.Bars(svg, wheel.Tread with { LimitWords = "" }, view.SingleTrack ? 212 : duals ? (left ? 100 : 158) : left ? 64 : 194, duals ? y + (left ? -8 : 70) : y + 66);
                    }
                }
            }
        }

        return svg.End();

        double Y(int axle) => 40 + ((axle - 1) * axleGap) + 52;
    }

    /// <summary>A wheel that leads somewhere is a link: what is seen on it is its position, and its name says all that is drawn beside it.</summary>
    private static void Begin(Svg svg, PlanWheel wheel)
    {
        if (wheel.Href is not null)
        {
            svg.Raw($"""<a href="{Svg.Escape(wheel.Href)}" aria-label="{Svg.Escape(Say(wheel))}" class="plan-wheel">""");
        }
    }

    private static void End(Svg svg, PlanWheel wheel)
    {
        if (wheel.Href is not null)
        {
            svg.Raw("</a>");
        }
    }

    private static void Body(Svg svg, PlanWheel wheel, double x, double y)
    {
        svg.Box(x, y, WheelLength, WheelWidth, wheel.Chosen ? Svg.Wash : Svg.Card, wheel.Entered ? Svg.Ink : "var(--control,#71757d)", wheel.Chosen ? 3 : 2, 8, wheel.Entered ? null : "5 4");
        svg.Words(x + (WheelLength / 2), y + (WheelWidth / 2) + 5.5, wheel.Position.ToString(), 16, "middle", wheel.Entered ? Svg.Ink : Svg.Soft, true);
        Square(svg, wheel, x + WheelLength + 8, y + (WheelWidth / 2) - 10);
    }

    private static void UprightBody(Svg svg, PlanWheel wheel, double x, double y)
    {
        svg.Box(x - 19, y - 46, 38, 92, wheel.Chosen ? Svg.Wash : Svg.Card, wheel.Entered ? Svg.Ink : "var(--control,#71757d)", wheel.Chosen ? 3 : 2, 8, wheel.Entered ? null : "5 4");
        svg.Words(x, y + 5.5, wheel.Position.ToString(), wheel.Position.Dual == DualPlace.Single ? 16 : 14, "middle", wheel.Entered ? Svg.Ink : Svg.Soft, true);
        Square(svg, wheel, x - 10, y + 52);
    }

    private static void Square(Svg svg, PlanWheel wheel, double x, double y)
    {
        if (wheel.Category is { } category)
        {
            svg.Raw($"""<g transform="translate({Svg.N(x)} {Svg.N(y)})">{CategorySquare.Inside(category)}</g>""");
        }
    }

    private static void Words(Svg svg, PlanWheel wheel, double x, double top)
    {
        svg.Words(x, top, Capital(wheel.Name), 15, "start", Svg.Ink, wheel.Chosen);
        for (var i = 0; i < wheel.Lines.Count; i++)
        {
            svg.Words(x, top + 21 + (i * 18), wheel.Lines[i], i == 0 ? 15 : 13, "start", i == 0 && wheel.Entered ? Svg.Ink : Svg.Soft);
        }
    }

    private static double[] Places(PlanView view, double first, double span)
    {
        var known = view.Behind.Count == view.Axles && view.Axles > 1 && view.Behind[^1].Millimetres > 0;
        return [.. Enumerable.Range(0, view.Axles).Select(i => view.Axles == 1 ? first + (span / 2) : known
            ? first + (span * 1.3 * (view.Behind[i] / view.Behind[^1]))
            : first + (i * span * 1.3 / (view.Axles - 1)))];
    }

    private static string Describe(PlanView view) => string.Join(" ", view.Wheels.Select(w => Say(w) + "."));

    private static string Say(PlanWheel wheel)
    {
        var parts = new List<string> { $"{Capital(wheel.Name)}, {wheel.Position}" };
        parts.AddRange(wheel.Lines);
        if (wheel.Tread is not null)
        {
            parts.Add($"tread {TreadSection.Describe(wheel.Tread).TrimEnd('.')}");
        }

        if (wheel.Category is { } category)
        {
            parts.Add(CategorySquare.Words(category));
        }

        return string.Join(": ", [parts[0], string.Join(", ", parts.Skip(1))]).TrimEnd(' ', ':');
    }

    private static string Capital(string text) => text.Length == 0 ? text : string.Concat(text[..1].ToUpperInvariant(), text.AsSpan(1));

    /// <summary>A whole number with a narrow no-break space between thousands, as on a drawing.</summary>
    private static string Spaced(double value) => Math.Round(value).ToString("#,0", CultureInfo.InvariantCulture).Replace(',', '\u202f');
}
