using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Fitment;

/// <summary>The tyre against its rim: diameter by the codes, width by table data only.</summary>
internal static class TyreToRim
{
    public static void Check(CheckBook book, Assembly assembly)
    {
        var at = assembly.Position.ToString();
        if (assembly.Tyre?.Marking?.Size is not { } size)
        {
            return;
        }

        if (assembly.Wheel?.Rim is not { } rim)
        {
            book.Need(at, "the rim stamp: width and diameter", "the tyre is held against it");
            return;
        }

        var fits = size.RimDiameterInches is { } inches && rim.DiameterInches is { } rimInches
            ? Same(inches, rimInches)
            : size.RimDiameterMillimetres is { } mm && rim.DiameterMillimetres is { } rimMm && Same(mm, rimMm);
        book.Judge("rim.diameter", at, !fits, Diameter(rim.DiameterInches, rim.DiameterMillimetres), new Limit(Diameter(size.RimDiameterInches, size.RimDiameterMillimetres), Source.Entered("the tyre's marking")));
        if (fits)
        {
            Width(book, at, size, rim);
        }
    }

    private static bool Same(double first, double second) => Math.Abs(first - second) < 0.01;

    private static Amount Diameter(double? inches, double? millimetres) => inches is { } code
        ? new Amount(code, "in", string.Create(CultureInfo.InvariantCulture, $"{code:0.#} in rim"))
        : new Amount(millimetres, "mm", string.Create(CultureInfo.InvariantCulture, $"{millimetres:0} mm rim"));

    /// <summary>By a table's row only: a rule of thumb never makes a rim approved.</summary>
    private static void Width(CheckBook book, string at, SizeDesignation size, RimStamp rim)
    {
        if (RimRanges.For(size) is not { } range)
        {
            book.Need(at, $"the approved rim widths of {size.Text}, from the tyre's maker or the standard's yearbook", "no table is held for this size, and no estimate stands for one");
            return;
        }

        var passed = range.BoundPassedBy(rim.Width, Length.FromMillimetres(CheckBook.Hair));
        book.Judge("rim.width", at, passed is not null, Amount.Of(rim.Width, "in", 1), new Limit(new Amount((passed ?? range.Most).Inches, "in", range.Text), range.Source), null, [.. range.Cautions]);
    }
}
