using Trundle.Engine.Reference;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Wear;

/// <summary>A groove's depth, where it was read: across (−1 inner, 0 centre, 1 outer) and around, in degrees from the valve.</summary>
internal readonly record struct GroovePoint(int Across, double AroundDegrees, double DepthMm);

/// <summary>The depths of one tyre as the model takes them: groove depths first, then the differences of rib edges (inner less outer) and block edges (leading less trailing).</summary>
internal sealed class TreadReadings
{
    private TreadReadings(IReadOnlyList<GroovePoint> grooves, IReadOnlyList<(int Across, double DifferenceMm)> ribs, IReadOnlyList<double> blocksMm, double stepMm)
    {
        Grooves = grooves;
        Ribs = ribs;
        BlocksMm = blocksMm;
        StepMm = stepMm;
        Values = [.. grooves.Select(g => g.DepthMm), .. ribs.Select(r => r.DifferenceMm), .. blocksMm];
    }

    public IReadOnlyList<GroovePoint> Grooves { get; }

    public IReadOnlyList<(int Across, double DifferenceMm)> Ribs { get; }

    public IReadOnlyList<double> BlocksMm { get; }

    /// <summary>The gauge's step, as the readings show it.</summary>
    public double StepMm { get; }

    /// <summary>All readings in one row.</summary>
    public double[] Values { get; }

    public int Count => Values.Length;

    /// <summary>The different angles around at which grooves were read.</summary>
    public IReadOnlyList<double> Rounds => [.. Grooves.Select(g => g.AroundDegrees).Distinct().Order()];

    public double? Mean(int across) => Grooves.Any(g => g.Across == across) ? Grooves.Where(g => g.Across == across).Average(g => g.DepthMm) : null;

    /// <summary>The greatest range around of one groove.</summary>
    public double Range => Grooves.GroupBy(g => g.Across).Select(g => g.Max(p => p.DepthMm) - g.Min(p => p.DepthMm)).DefaultIfEmpty(0).Max();

    public static TreadReadings Of(TreadDepths tread)
    {
        var places = Math.Max(tread.Inner.Count, Math.Max(tread.Centre.Count, tread.Outer.Count));
        List<GroovePoint> grooves = [.. Points(-1, tread.Inner), .. Points(0, tread.Centre), .. Points(1, tread.Outer)];
        var all = tread.All.Select(t => t.Depth)
            .Concat(tread.Ribs.SelectMany(r => new[] { r.InnerEdge, r.OuterEdge }))
            .Concat(tread.Blocks.SelectMany(b => new[] { b.Leading, b.Trailing })).ToList();
        return new TreadReadings(
            grooves,
            [.. tread.Ribs.Select(r => (Side(r.Place), (r.InnerEdge - r.OuterEdge).Millimetres))],
            [.. tread.Blocks.Select(b => (b.Leading - b.Trailing).Millimetres)],
            Step(all));

        IEnumerable<GroovePoint> Points(int across, IReadOnlyList<Length> depths) =>
            depths.Select((d, i) => new GroovePoint(across, i < tread.Angles.Count ? tread.Angles[i].Degrees : 360.0 * i / places, d.Millimetres));
    }

    private static int Side(TreadPlace place) => place switch
    {
        TreadPlace.Inner => -1,
        TreadPlace.Centre => 0,
        TreadPlace.Outer => 1,
    };

    /// <summary>The coarsest step of the usual gauges on which every reading lies; the finest of them where none fits.</summary>
    private static double Step(IReadOnlyList<Length> depths)
    {
        ReadOnlySpan<double> steps = [1.0, 25.4 / 32, 0.5, 25.4 / 64, 0.2, 0.1];
        foreach (var step in steps)
        {
            if (depths.All(d => Math.Abs((d.Millimetres / step) - Math.Round(d.Millimetres / step)) < 1e-4))
            {
                return step;
            }
        }

        return 0;
    }
}
