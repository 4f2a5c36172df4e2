using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.InUse;
using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Condition;

/// <summary>Tread depths against the chosen rules. Depths are compared as measured, never rounded: 2/32 in is 1.5875 mm and not 1.6 mm.</summary>
internal static class TreadCheck
{
    public static void Check(CheckBook book, Assembly assembly)
    {
        var at = assembly.Position.ToString();
        if (assembly.Tread is not { } tread || !tread.All.Any())
        {
            book.Need(at, "tread depths at inner, centre and outer groove, at three places round the tyre", "they are held against the least depth");
            return;
        }

        foreach (var (place, depths) in Places(tread).Where(p => p.Depths.Count == 0))
        {
            book.Need(at, $"the tread depth at the {place} groove", "the least depth holds across the tyre");
        }

        var law = TreadLimits.OfLaw(book.Subject, assembly.Position);
        if (law is null && book.Rules is not null)
        {
            book.Need(at, "this country's own least tread depth for this class of vehicle", "the European text covers cars, vans and light trailers only");
        }

        var limit = law ?? TreadLimits.OfTrade(book.Subject, assembly.Position);
        var least = tread.All.MinBy(t => t.Depth);
        var depth = least.Depth.Millimetres;
        var broken = limit.IsBrokenBy(depth);
        if (broken && law is { Rule: "tread.depth.heavy" } && book.InForce.LawOf("tread.depth.heavy-band", book.Subject) is { } band && OnlyOneShoulder(tread, limit))
        {
            book.Judge(band, at, true, Measured(tread), limit.Limit);
        }
        else
        {
            book.Judge(law is null ? book.InForce.OfTrade("tread.depth") : book.Rule(limit.Rule), at, broken, Measured(tread), limit.Limit, null, [.. Cautions(tread, broken)]);
        }

        var deepest = tread.All.MaxBy(t => t.Depth).Depth;
        if (BeyondNew(assembly) is { } beyond && deepest.Millimetres > beyond.As<Length>().Millimetres + CheckBook.Hair)
        {
            book.Judge("tread.beyond-new", at, true, Amount.Of(deepest, "mm", 1), beyond.Limit(0));
        }

        // At the height of the wear indicators they are level with the tread; the European categories name that.
        if (!broken && book.LawLimit("tread.wear-indicator", assembly.Position) is { } indicator && indicator.IsBrokenBy(depth))
        {
            book.Judge("tread.wear-indicator", at, true, Amount.Of(least.Depth, "mm", 2), indicator.Limit);
        }

        var near = book.Limit("tread.near-limit", assembly.Position);
        if (!broken && near.IsBrokenBy(depth))
        {
            book.Judge("tread.near-limit", at, true, Measured(tread), near.Limit);
        }

        WinterCheck.Depth(book, assembly, depth, Measured(tread));
        book.ByWorkshop(JudgedQuantity.TreadDepth, assembly.Position, at, depth, Measured(tread));
    }

    internal static IEnumerable<(string Place, IReadOnlyList<Length> Depths)> Places(TreadDepths tread) =>
        [("inner", tread.Inner), ("centre", tread.Centre), ("outer", tread.Outer)];

    /// <summary>The depth that no new tyre of this class has; null where the reader's own bound is all that holds.</summary>
    private static Figure? BeyondNew(Assembly assembly) => assembly.Tyre?.Marking?.Size.TyreClass switch
    {
        TyreClass.Passenger or TyreClass.TemporarySpare => Figures.Of("condition.tread-beyond-car"),
        TyreClass.LightTruck or TyreClass.Commercial or TyreClass.SpecialTrailer or TyreClass.Motorcycle => Figures.Of("condition.tread-beyond-light"),
        TyreClass.Truck or null => null,
    };

    /// <summary>True where only the inner or only the outer place is below, so that three quarters of the breadth may still have the depth.</summary>
    private static bool OnlyOneShoulder(TreadDepths tread, InUseLimit limit)
    {
        var below = Places(tread).Where(p => p.Depths.Any(d => limit.IsBrokenBy(d.Millimetres))).ToList();
        return below is [{ Place: not "centre" }] && below[0].Depths.All(d => d.Millimetres > CheckBook.Hair);
    }

    /// <summary>The least depth, and the least at each place.</summary>
    private static Amount Measured(TreadDepths tread)
    {
        var least = tread.All.MinBy(t => t.Depth);
        var each = Places(tread).Where(p => p.Depths.Count > 0).Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.Place} {p.Depths.Min().Millimetres:0.0#}"));
        return new Amount(least.Depth.Millimetres, "mm", string.Create(CultureInfo.InvariantCulture, $"{least.Depth.Millimetres:0.0#} mm at the {least.Place} (least of {string.Join(", ", each)})"));
    }

    private static IEnumerable<string> Cautions(TreadDepths tread, bool broken)
    {
        if (Places(tread).Any(p => p.Depths.Count is > 0 and < 3))
        {
            yield return "The rules hold round the whole tyre: measure at three places about equally spaced, and at the least of all.";
        }

        if (broken)
        {
            yield return "Depth counts in the major grooves, those with the wear indicators, and not on an indicator, tie bar, hump or fillet (49 CFR 393.5 and 393.75, in part second-hand): make sure that the gauge stood in the groove.";
        }
    }
}
