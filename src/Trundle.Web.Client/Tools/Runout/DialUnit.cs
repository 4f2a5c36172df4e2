using Trundle.Measures;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Tools.Runout;

/// <summary>In which unit the dial in the hand reads: the one of the readings that stand, else the person's own.</summary>
public static class DialUnit
{
    /// <summary><c>mm</c> or <c>in</c>.</summary>
    public static string Of(IFields form)
    {
        ArgumentNullException.ThrowIfNull(form);
        var first = form.Fields.Newest.FirstOrDefault(e => e.Typed.Length > 0 && e.Field.Split('.').Contains("readings") && !e.Field.EndsWith(".angle", StringComparison.Ordinal))?.Typed;
        return first is not null ? first.EndsWith("in", StringComparison.Ordinal) ? "in" : "mm" : form.Units.Depth == "mm" ? "mm" : "in";
    }

    /// <summary>A runout in that unit: hundredths of a millimetre, thousandths of an inch.</summary>
    public static string Text(Length length, string unit, int more = 0) => length.Text(unit, (unit == "in" ? 3 : 2) + more);
}
