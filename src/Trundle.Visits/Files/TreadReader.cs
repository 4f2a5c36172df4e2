using System.Globalization;
using Trundle.Engine.Reference;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Visits.Files;

/// <summary>Reads the depths of one tread: groove by groove, where around they were taken, and ribs and blocks at their edges.</summary>
public static class TreadReader
{
    private static readonly (string, TreadPlace)[] Places = [("inner", TreadPlace.Inner), ("centre", TreadPlace.Centre), ("outer", TreadPlace.Outer)];

    private static Length Most => Figures.Of("condition.tread-beyond").As<Length>();

    /// <summary>Reads a tread.</summary>
    public static TreadDepths Read(FileObject o)
    {
        ArgumentNullException.ThrowIfNull(o);
        var tread = new TreadDepths(Depths(o, "inner"), Depths(o, "centre"), Depths(o, "outer"))
        {
            Angles = [.. o.Quantities<Angle>("angles", "°", Angle.FromDegrees(-360), Angle.FromDegrees(360)).Select(a => WheelAngle.FromDegrees(a.Degrees))],
            Ribs = [.. o.Objects("ribs").Select(ReadRib).OfType<RibEdges>()],
            Blocks = [.. o.Objects("blocks").Select(ReadBlock).OfType<BlockEdges>()],
        };
        var places = Math.Max(o.Items("inner").Count, Math.Max(o.Items("centre").Count, o.Items("outer").Count));
        if (o.Items("angles").Count is > 0 and var angles && angles != places)
        {
            o.Wrong("angles", "angles-count", string.Create(CultureInfo.InvariantCulture, $"There are {angles} angles for {places} places around; give one for each, in degrees from the valve, or leave them out where the places are spread equally."));
        }

        o.Done();
        return tread;
    }

    private static IReadOnlyList<Length> Depths(FileObject o, string key) => o.Quantities<Length>(key, "mm", Length.FromMillimetres(0), Most);

    private static RibEdges? ReadRib(FileObject o)
    {
        var place = Place(o, "rib");
        var inner = Edge(o, "innerEdge", "the edge towards the vehicle");
        var outer = Edge(o, "outerEdge", "the edge away from the vehicle");
        o.Done();
        return place is { } p && inner is { } i && outer is { } e ? new RibEdges(p, i, e) : null;
    }

    private static BlockEdges? ReadBlock(FileObject o)
    {
        var place = Place(o, "block");
        var leading = Edge(o, "leading", "the edge that meets the road first");
        var trailing = Edge(o, "trailing", "the edge that leaves the road last");
        o.Done();
        return place is { } p && leading is { } l && trailing is { } t ? new BlockEdges(p, l, t) : null;
    }

    private static TreadPlace? Place(FileObject o, string what) => o.Require("place", $"say where the {what} is: inner, centre or outer") ? o.Word("place", Places) : null;

    private static Length? Edge(FileObject o, string key, string which) =>
        o.Require(key, $"give the depth at {which}, for example \"5.2 mm\"") ? o.Quantity<Length>(key, "mm", Length.FromMillimetres(0), Most) : null;
}
