using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.InUse;
using Trundle.Measures;

namespace Trundle.Engine.Condition;

/// <summary>The spread of tread depths where all wheels are driven.</summary>
internal static class TreadSpread
{
    public static void Check(CheckBook book)
    {
        if (!Drivetrain.AllWheelsDriven(book.Vehicle))
        {
            return;
        }

        var depths = book.Subject.Fitted.Where(a => !a.Position.IsSpare).Select(a => (a.Position, Depth: Tread.Mean(a))).Where(d => d.Depth is not null).Select(d => (d.Position, Depth: d.Depth!.Value)).ToList();
        if (depths.Count < 2)
        {
            return;
        }

        var deepest = depths.MaxBy(d => d.Depth);
        var least = depths.MinBy(d => d.Depth);
        var spread = deepest.Depth - least.Depth;
        var minor = book.Limit("tread.spread.minor", null);
        var major = book.Limit("tread.spread", null);
        var grave = major.IsBrokenBy(spread.Millimetres);
        var measured = new Amount(spread.Millimetres, "mm", string.Create(CultureInfo.InvariantCulture, $"{spread.Millimetres:0.0#} mm between {deepest.Position} ({deepest.Depth.Millimetres:0.0#}) and {least.Position} ({least.Depth.Millimetres:0.0#}), mean depths"));
        book.Judge(grave ? "tread.spread" : "tread.spread.minor", null, grave || minor.IsBrokenBy(spread.Millimetres), measured, (grave ? major : minor).Limit);
        book.ByWorkshop(JudgedQuantity.TreadSpread, null, null, spread.Millimetres, measured);
    }
}
