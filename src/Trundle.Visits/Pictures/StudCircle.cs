using System.Globalization;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Visits.Pictures;

/// <summary>A stud circle with its tightening order.</summary>
/// <param name="Title">What a screen reader calls it.</param>
/// <param name="Count">How many fixings.</param>
/// <param name="Order">Fixing numbers, clockwise from the one at the top, in the order in which they are tightened.</param>
/// <param name="Done">Fixings already recorded on this stage.</param>
/// <param name="Now">The fixing whose turn it is, or null.</param>
/// <param name="Circle">The bolt circle, or null where nobody gave it: then it is drawn without a size.</param>
/// <param name="Bore">The hub's bore, or null.</param>
public sealed record StudView(string Title, int Count, IReadOnlyList<int> Order, IReadOnlySet<int> Done, int? Now, BoltCircle? Circle, Length? Bore);

/// <summary>The stud circle as it is on the hub, seen from outside: the fixing's number in each circle, the turn at which it comes beside it.</summary>
public static class StudCircle
{
    private const double Centre = 160;
    private const double Pitch = 92;

    /// <summary>The drawing, 320 by 336.</summary>
    public static string Draw(string id, StudView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var svg = new Svg(id, 320, 336, view.Title, Describe(view));
        var size = view.Count > 8 ? 16 : 21;
        svg.Circle(Centre, Centre, Pitch + size + 12, Svg.Card, Svg.Hairline, 1.25);
        svg.Circle(Centre, Centre, Pitch, "none", Svg.Hairline, 1.25, "10 3 2 3");
        var bore = view.Circle is { } c && view.Bore is { } b ? Math.Clamp(b / c.Diameter * Pitch, 12, Pitch - size - 6) : 0;
        if (bore > 0)
        {
            svg.Circle(Centre, Centre, bore, Svg.Paper, Svg.Ink, 1.25);
        }

        svg.Line(Centre - 8, Centre, Centre + 8, Centre, Svg.Soft, 0.75).Line(Centre, Centre - 8, Centre, Centre + 8, Svg.Soft, 0.75);
        for (var i = 0; i + 1 < view.Order.Count; i++)
        {
            Arrow(svg, Place(view, view.Order[i]), Place(view, view.Order[i + 1]), size + 3);
        }

        for (var turn = 0; turn < view.Order.Count; turn++)
        {
            var fixing = view.Order[turn];
            var (x, y) = Place(view, fixing);
            var now = view.Now == fixing;
            var done = view.Done.Contains(fixing);
            svg.Circle(x, y, size, now ? Svg.Accent : Svg.Card, now ? Svg.Accent : Svg.Ink, now ? 3 : 1.75);
            svg.Words(x, y + 6, fixing.ToString(CultureInfo.InvariantCulture), 17, "middle", now ? "var(--on-accent,#ffffff)" : Svg.Ink, true);
            var (ox, oy) = Outside(view, fixing, Pitch + size + 27);
            svg.Words(ox, oy + 5, Turn(turn + 1), 13, "middle", Svg.Accent, true);
            if (done)
            {
                svg.Path($"M{Svg.N(x + size - 8)} {Svg.N(y - size + 5)}l4 4.5 8 -10", "none", Svg.Card, 5).Path($"M{Svg.N(x + size - 8)} {Svg.N(y - size + 5)}l4 4.5 8 -10", "none", Svg.Ink, 2.25);
            }
        }

        if (view.Circle is { } circle)
        {
            svg.Words(Centre, 330, $"{circle.Count.ToString(CultureInfo.InvariantCulture)} on {circle.Diameter.Text("mm", circle.Diameter.Millimetres == Math.Round(circle.Diameter.Millimetres) ? 0 : 1)}", 13, "middle", Svg.Soft);
        }

        return svg.End();
    }

    /// <summary>In words.</summary>
    public static string Describe(StudView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var done = view.Done.Count == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $" {view.Done.Count} of {view.Count} recorded.");
        return $"{view.Count.ToString(CultureInfo.InvariantCulture)} fixings, numbered clockwise from the top as seen from outside. Tighten in the order {string.Join(", ", view.Order)}.{(view.Now is { } now ? $" Now {now.ToString(CultureInfo.InvariantCulture)}." : "")}{done}";
    }

    /// <summary>1st, 2nd, 3rd …</summary>
    public static string Turn(int number) => number.ToString(CultureInfo.InvariantCulture) + ((number % 100) is 11 or 12 or 13 ? "th" : (number % 10) switch { 1 => "st", 2 => "nd", 3 => "rd", _ => "th" });

    private static void Arrow(Svg svg, (double X, double Y) from, (double X, double Y) to, double clear)
    {
        var (dx, dy) = (to.X - from.X, to.Y - from.Y);
        var length = Math.Sqrt((dx * dx) + (dy * dy));
        if (length < (2 * clear) + 6)
        {
            return;
        }

        var (ux, uy) = (dx / length, dy / length);
        var (x1, y1) = (from.X + (ux * clear), from.Y + (uy * clear));
        var (x2, y2) = (to.X - (ux * clear), to.Y - (uy * clear));
        svg.Line(x1, y1, x2, y2, Svg.Accent, 1.25);
        svg.Path($"M{Svg.N(x2)} {Svg.N(y2)}L{Svg.N(x2 - (ux * 9) - (uy * 3.5))} {Svg.N(y2 - (uy * 9) + (ux * 3.5))}L{Svg.N(x2 - (ux * 9) + (uy * 3.5))} {Svg.N(y2 - (uy * 9) - (ux * 3.5))}z", Svg.Accent, "none");
    }

    private static (double X, double Y) Place(StudView view, int fixing) => Outside(view, fixing, Pitch);

    private static (double X, double Y) Outside(StudView view, int fixing, double radius)
    {
        var radians = 2 * Math.PI * (fixing - 1) / Math.Max(1, view.Count);
        return (Centre + (radius * Math.Sin(radians)), Centre - (radius * Math.Cos(radians)));
    }
}
