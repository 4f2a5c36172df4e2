using System.Globalization;
using Trundle.Engine.Vehicles;

namespace Trundle.Visits.Pictures;

/// <summary>One move of an assembly.</summary>
/// <param name="Order">At which turn of the lift it is made, from 1; 0 where the order does not matter.</param>
/// <param name="From">From.</param>
/// <param name="To">To.</param>
/// <param name="Remount">The tyre has to be remounted for it.</param>
public sealed record PictureMove(int Order, Position From, Position To, bool Remount);

/// <summary>A rotation on the vehicle's plan, the front on top: each assembly's way as an arrow, numbered in the order of the lift.</summary>
public static class RotationMoves
{
    private const double Gap = 150;

    /// <summary>The drawing, 320 wide.</summary>
    public static string Draw(string id, string title, int axles, IReadOnlyList<Position> positions, IReadOnlyList<PictureMove> moves)
    {
        ArgumentNullException.ThrowIfNull(positions);
        ArgumentNullException.ThrowIfNull(moves);
        var spare = positions.Any(p => p.IsSpare);
        var height = 56 + ((axles - 1) * Gap) + 78 + (spare ? 76 : 0);
        var svg = new Svg(id, 320, height, title, Describe(moves));
        svg.Words(160, 14, "front", 13, "middle", Svg.Soft);
        svg.Line(160, 22, 160, 56 + ((axles - 1) * Gap) + 20, Svg.Hairline, 1.25, "12 4 2 4");
        for (var axle = 1; axle <= axles; axle++)
        {
            var y = 64 + ((axle - 1) * Gap);
            svg.Line(60, y, 260, y, Svg.Ink, 1.75);
        }

        foreach (var position in positions)
        {
            var (x, y) = Place(position, axles);
            var (w, h) = position.IsSpare ? (70.0, 30.0) : (30.0, 66.0);
            svg.Box(x - (w / 2), y - (h / 2), w, h, Svg.Card, Svg.Ink, 1.75, 6);
            svg.Words(x, y + 5, position.ToString(), 13, "middle", Svg.Ink, true);
        }

        foreach (var move in moves.Where(m => m.From != m.To))
        {
            Arrow(svg, move, axles);
        }

        return svg.End();
    }

    /// <summary>In words.</summary>
    public static string Describe(IReadOnlyList<PictureMove> moves)
    {
        ArgumentNullException.ThrowIfNull(moves);
        var going = moves.Where(m => m.From != m.To).ToList();
        return going.Count == 0
            ? "Every assembly stays where it is."
            : string.Join("; ", going.Select(m => $"{(m.Order > 0 ? m.Order.ToString(CultureInfo.InvariantCulture) + ". " : "")}{m.From} to {m.To}{(m.Remount ? ", tyre remounted" : "")}")) + ".";
    }

    private static void Arrow(Svg svg, PictureMove move, int axles)
    {
        var from = Place(move.From, axles);
        var to = Place(move.To, axles);
        var (dx, dy) = (to.X - from.X, to.Y - from.Y);
        var length = Math.Max(1, Math.Sqrt((dx * dx) + (dy * dy)));
        var (ux, uy) = (dx / length, dy / length);

        // Ways that come and go on one line pass beside one another: each keeps to its own right.
        var (px, py) = (-uy, ux);
        const double bow = 16;
        var start = Edge(from, (ux, uy), move.From, (px * 6, py * 6));
        var end = Edge(to, (-ux, -uy), move.To, (px * 6, py * 6));
        var (cx, cy) = (((start.X + end.X) / 2) + (px * bow), ((start.Y + end.Y) / 2) + (py * bow));
        svg.Path($"M{Svg.N(start.X)} {Svg.N(start.Y)}Q{Svg.N(cx)} {Svg.N(cy)} {Svg.N(end.X)} {Svg.N(end.Y)}", "none", Svg.Accent, 2, move.Remount ? "7 4" : null);
        var (ex, ey) = (end.X - cx, end.Y - cy);
        var el = Math.Max(1, Math.Sqrt((ex * ex) + (ey * ey)));
        (ex, ey) = (ex / el, ey / el);
        svg.Path($"M{Svg.N(end.X)} {Svg.N(end.Y)}L{Svg.N(end.X - (ex * 11) - (ey * 4.5))} {Svg.N(end.Y - (ey * 11) + (ex * 4.5))}L{Svg.N(end.X - (ex * 11) + (ey * 4.5))} {Svg.N(end.Y - (ey * 11) - (ex * 4.5))}z", Svg.Accent, "none");
        if (move.Order > 0)
        {
            // The number stands a third along, where crossing ways are still apart.
            var (nx, ny) = Along(start, (cx, cy), end, 0.3);
            svg.Circle(nx, ny, 10, Svg.Card, Svg.Accent, 1.25);
            svg.Words(nx, ny + 4.5, move.Order.ToString(CultureInfo.InvariantCulture), 13, "middle", Svg.Accent, true);
        }
    }

    private static (double X, double Y) Along((double X, double Y) a, (double X, double Y) control, (double X, double Y) b, double t)
    {
        var s = 1 - t;
        return ((s * s * a.X) + (2 * s * t * control.X) + (t * t * b.X), (s * s * a.Y) + (2 * s * t * control.Y) + (t * t * b.Y));
    }

    /// <summary>Where a way leaves a wheel's outline in a direction.</summary>
    private static (double X, double Y) Edge((double X, double Y) at, (double X, double Y) direction, Position position, (double X, double Y) aside)
    {
        var (w, h) = position.IsSpare ? (38.0, 18.0) : (18.0, 36.0);
        var reach = Math.Min(Math.Abs(direction.X) < 1e-6 ? double.MaxValue : w / Math.Abs(direction.X), Math.Abs(direction.Y) < 1e-6 ? double.MaxValue : h / Math.Abs(direction.Y));
        return (at.X + (direction.X * reach) + aside.X, at.Y + (direction.Y * reach) + aside.Y);
    }

    private static (double X, double Y) Place(Position position, int axles)
    {
        if (position.IsSpare)
        {
            return (160, 56 + ((axles - 1) * Gap) + 94);
        }

        var shift = position.Dual switch { DualPlace.Single => 0.0, DualPlace.Inner => 36.0, DualPlace.Outer => 0.0 };
        return (position.Side == Side.Left ? 44 + shift : 276 - shift, 64 + ((position.Axle - 1) * Gap));
    }
}
