using Trundle.Engine.Balance;
using Trundle.Measures;

namespace Trundle.Visits.Files;

/// <summary>Reads the drawer, the arcs where nothing may sit, and the aims of a balance part.</summary>
internal static class BalanceStockReader
{
    private static readonly (string, BalanceAim)[] AimWords =
        [("tolerance", BalanceAim.Tolerance), ("pieces", BalanceAim.Pieces), ("score", BalanceAim.Score), ("mass", BalanceAim.Mass)];

    public static WeightStock ReadStock(FileObject o, WeightPlane? inner, WeightPlane? outer)
    {
        var clip = ReadItems(o, "clip", new[] { inner, outer }.Any(p => p?.Kind == WeightKind.Clip));
        var adhesive = ReadItems(o, "adhesive", new[] { inner, outer }.Any(p => p?.Kind == WeightKind.Adhesive));
        o.Done();
        return new WeightStock(clip, adhesive);
    }

    private static List<StockItem> ReadItems(FileObject o, string key, bool needed)
    {
        var items = new List<StockItem>();
        if (needed && !o.Require(key, "a plane takes this kind, so list its masses; an empty list means that the drawer has none"))
        {
            return items;
        }

        foreach (var node in o.Items(key))
        {
            if (items.Count == 100)
            {
                o.Wrong(key, "too-many", "More than 100 kinds of weight are not read.");
                break;
            }

            if (node.Kind == NodeKind.Object)
            {
                var item = new FileObject(node, o.Problems);
                var mass = item.Require("mass", "give the mass of one piece") ? item.Quantity<Mass>("mass", "g", Mass.FromGrams(0.1), Mass.FromKilograms(2)) : null;
                var size = item.Quantity<Length>("length", "mm", Length.FromMillimetres(1), Length.FromMillimetres(1000));
                var count = item.Whole("count", 0, 100_000);
                item.Done();
                if (mass is { } m)
                {
                    items.Add(new StockItem(m, size, count));
                }
            }
            else if (node.Kind is NodeKind.Text or NodeKind.Number && Quantity.Read<Mass>(node.Text, "g") is var read && read.IsRead && read.Value.Grams is >= 0.1 and <= 2000)
            {
                items.Add(new StockItem(read.Value, null, null));
            }
            else
            {
                o.Problems.Add(new Problem(node.Path, "stock-unreadable", $"'{NumberText.Shown(node.Text)}' is not a weight in the drawer; write a mass from 0.1 g to 2 kg such as \"5 g\" or \"0.25 oz\", or {{\"mass\": \"5 g\", \"length\": \"19 mm\", \"count\": 12}}."));
            }
        }

        return items;
    }

    public static List<ForbiddenArc> ReadForbidden(FileObject o)
    {
        var arcs = new List<ForbiddenArc>();
        foreach (var item in o.Objects("forbidden"))
        {
            var plane = item.Require("plane", "inner or outer") ? item.Word("plane", ("inner", PlaneSide.Inner), ("outer", PlaneSide.Outer)) : null;
            var from = item.Require("from", "where the arc begins, clockwise seen from outside") ? BalanceFileReader.Place(item, "from") : null;
            var to = item.Require("to", "where the arc ends, clockwise seen from outside") ? BalanceFileReader.Place(item, "to") : null;

            // What is there is for people: it stands in the file and on the page, and bears on nothing.
            _ = item.Text("note");
            if (from is not null && to is not null && item.Quantity<Angle>("from", "°") is { } begin && item.Quantity<Angle>("to", "°") is { } end
                && Math.Abs(Math.IEEERemainder(end.Degrees - begin.Degrees, 360)) < 1e-9)
            {
                // "0 to 360" means the whole circle; "0 to 0" means nothing, or was a slip.
                var (typedFrom, typedTo) = (NumberText.Shown(item.Text("from")), NumberText.Shown(item.Text("to")));
                if (Math.Abs(end.Degrees - begin.Degrees) < 1)
                {
                    item.Wrong("to", "arc-empty", $"The arc begins and ends at {typedTo}; give it a length, or leave it out.");
                }
                else
                {
                    item.Wrong("to", "arc-whole", $"From {typedFrom} to {typedTo} is the whole circle, which leaves no place for any weight in this plane. Give the part that must stay free; where the plane may carry nothing, leave its kind of weight out of the stock.");
                }
            }

            if (plane is { } p && from is { } f && to is { } t)
            {
                var hadPlace = !ForbiddenArc.LeaveNoPlace(arcs, p);
                arcs.Add(new ForbiddenArc(p, f, t));
                if (hadPlace && ForbiddenArc.LeaveNoPlace(arcs, p))
                {
                    item.Wrong("to", "arcs-whole", $"With this arc, from {NumberText.Shown(item.Text("from"))} to {NumberText.Shown(item.Text("to"))}, the arcs of the {item.Text("plane")} plane cover the whole circle, which leaves no place for any weight there. Give only the parts that must stay free; where the plane may carry nothing, leave its kind of weight out of the stock.");
                }
            }

            item.Done();
        }

        return arcs;
    }

    public static IReadOnlyList<BalanceAim> ReadAims(FileObject o)
    {
        if (!o.Has("aims"))
        {
            return BalanceProblem.UsualAims;
        }

        var aims = new List<BalanceAim>();
        foreach (var text in o.Texts("aims"))
        {
            var found = AimWords.Where(w => string.Equals(w.Item1, text, StringComparison.OrdinalIgnoreCase)).Select(w => (BalanceAim?)w.Item2).FirstOrDefault();
            if (found is not { } aim)
            {
                o.Wrong("aims", "word-unknown", $"'{NumberText.Shown(text)}' is not an aim; write some of {ChoiceText.Of(AimWords.Select(w => w.Item1), "and")} in their order.");
            }
            else if (aims.Contains(aim) || (aim == BalanceAim.Tolerance && aims.Count > 0))
            {
                o.Wrong("aims", "aims-order", $"'{text}' stands twice or late: each aim stands once, and 'tolerance' first where it is an aim.");
            }
            else
            {
                aims.Add(aim);
            }
        }

        if (aims.Count == 0)
        {
            o.Wrong("aims", "aims-empty", "List at least one aim, or leave the key out.");
            return BalanceProblem.UsualAims;
        }

        return aims;
    }
}
