using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Visits.Pictures;

/// <summary>What a tread's cross-section shows.</summary>
/// <param name="Tread">The depths as measured.</param>
/// <param name="Limit">The least depth that the chosen rules allow, or null where none applies.</param>
/// <param name="LimitWords">The limit with its unit, as it stands at its line.</param>
/// <param name="Depth">Writes a depth in the reader's unit, without the unit.</param>
/// <param name="Unit">The reader's unit of depth.</param>
/// <param name="InnerIsLeft">True where the side towards the vehicle is drawn at the left.</param>
public sealed record TreadView(TreadDepths Tread, Length? Limit, string LimitWords, Func<Length, string> Depth, string Unit, bool InnerIsLeft = true);

/// <summary>The cross-section of a tread: what is left of its ribs over the groove bottom, and the limit line.</summary>
public static class TreadSection
{
    private const double PerMillimetre = 13;
    private const double Base = 150;

    /// <summary>The large drawing of one tyre, every place shown, 490 by 206.</summary>
    public static string Draw(string id, string title, TreadView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var zones = Zones(view);
        var svg = new Svg(id, 490, 206, title, Describe(view));
        var greatest = zones.SelectMany(z => z.Depths).Select(d => d.Millimetres).DefaultIfEmpty(8).Max();
        var scale = Math.Min(PerMillimetre, 118 / Math.Max(greatest, 1));

        // The carcass under the grooves, rounding off to both shoulders.
        svg.Path("M18 178C18 160 30 150 52 150H368C390 150 402 160 402 178", Svg.Rubber, "none");
        for (var z = 0; z < 3; z++)
        {
            var (name, depths) = zones[z];
            var x = 58 + (z * 104);
            if (depths.Count == 0)
            {
                svg.Path($"M{Svg.N(x)} {Svg.N(Base)}v-40h96v40", "none", Svg.Hairline, 1.5, "4 4");
                svg.Words(x + 48, Base - 16, "not measured", 13, "middle", Svg.Soft);
            }
            else
            {
                Rib(svg, view, depths, x, scale);
            }

            svg.Words(x + 48, 197, name, 14, "middle", Svg.Soft);
        }

        svg.Path("M18 178C18 160 30 150 52 150H368C390 150 402 160 402 178", "none", Svg.Ink, 1.5);
        if (view.Limit is { } limit)
        {
            var y = Base - (limit.Millimetres * scale);
            svg.Line(40, y, 402, y, Svg.Ink, 1, "5 3");
            svg.Words(408, y + 4.5, view.LimitWords, 13, "start", Svg.Soft);
        }

        return svg.End();
    }

    private static void Rib(Svg svg, TreadView view, IReadOnlyList<Length> depths, double x, double scale)
    {
        var least = depths.Min();
        var low = Below(view, least);
        var step = 96.0 / depths.Count;
        for (var i = 0; i < depths.Count; i++)
        {
            var height = Math.Max(depths[i].Millimetres * scale, 1);
            var below = Below(view, depths[i]);
            svg.Box(x + (i * step), Base - height, step, height, Svg.Rubber, below ? "var(--major,#d55e00)" : Svg.Ink, below ? 2.25 : 1.25);
            svg.Words(x + ((i + 0.5) * step), Base - height - 6, view.Depth(depths[i]), depths.Count > 3 ? 12 : 15, "middle", below ? "var(--major-word,#ad4c00)" : Svg.Ink, below);
        }

        if (low)
        {
            svg.Path($"M{Svg.N(x)} {Svg.N(Base + 8)}l96 0", "none", "var(--major,#d55e00)", 3);
        }
    }

    /// <summary>The small bars of a wheel within a vehicle's plan: the least depth of each zone, 106 wide, bottom at <paramref name="bottom"/>.</summary>
    internal static void Bars(Svg svg, TreadView view, double left, double bottom)
    {
        var zones = Zones(view);
        var greatest = zones.Where(z => z.Depths.Count > 0).Select(z => z.Depths.Min().Millimetres).DefaultIfEmpty(8).Max();
        var scale = Math.Min(6.2, 52 / Math.Max(greatest, 1));
        for (var z = 0; z < 3; z++)
        {
            var depths = zones[z].Depths;
            var x = left + 6 + (z * 32);
            if (depths.Count == 0)
            {
                svg.Line(x, bottom, x + 26, bottom, Svg.Hairline, 1.5, "3 3");
                continue;
            }

            var least = depths.Min();
            var below = Below(view, least);
            var height = Math.Max(least.Millimetres * scale, 1);
            svg.Box(x, bottom - height, 26, height, below ? Svg.Card : Svg.Rubber, below ? "var(--major,#d55e00)" : Svg.Ink, below ? 2.25 : 1);
            svg.Words(x + 13, bottom - height - 5, view.Depth(least), 14, "middle", below ? "var(--major-word,#ad4c00)" : Svg.Ink, below);
        }

        svg.Line(left, bottom, left + 102, bottom, Svg.Ink, 1.5);
        if (view.Limit is { } limit)
        {
            var y = bottom - (limit.Millimetres * scale);
            svg.Line(left - 4, y, left + 108, y, Svg.Soft, 1, "3 2.5");
            svg.Words(left + 112, y + 4, view.LimitWords, 12, "start", Svg.Soft);
        }
    }

    /// <summary>In words: what a screen reader says of it.</summary>
    public static string Describe(TreadView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var zones = Zones(view).Select(z => z.Depths.Count == 0
            ? $"{z.Name} not measured"
            : $"{z.Name} {string.Join(", ", z.Depths.Select(view.Depth))} {view.Unit}{(Below(view, z.Depths.Min()) ? ", below the limit" : "")}");
        return $"{string.Join("; ", zones)}.{(view.Limit is null ? "" : $" Limit {view.LimitWords}.")}";
    }

    private static bool Below(TreadView view, Length depth) => view.Limit is { } limit && depth.Millimetres < limit.Millimetres - 1e-9;

    private static List<(string Name, IReadOnlyList<Length> Depths)> Zones(TreadView view)
    {
        var zones = new List<(string, IReadOnlyList<Length>)> { ("inner", view.Tread.Inner), ("centre", view.Tread.Centre), ("outer", view.Tread.Outer) };
        if (!view.InnerIsLeft)
        {
            zones.Reverse();
        }

        return zones;
    }
}
