using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
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

        var rule = Rule(book, assembly.Position);
        if (rule is not { } chosen)
        {
            book.Need(at, "this country's own least tread depth for this class of vehicle", "the European text covers cars, vans and light trailers only");
            chosen = ("tread.depth", "condition.tread-trade", null);
        }

        var limit = Figures.Of(chosen.Figure);
        var least = tread.All.MinBy(t => t.Depth);
        var inUse = rule is null ? InUseRules.Of("tread.depth", null) : InUseRules.Of(chosen.Rule, book.Rules);
        var broken = Below(least.Depth, limit);
        if (broken && chosen.BandRule is { } band && OnlyOneShoulder(tread, limit))
        {
            book.Judge(InUseRules.Of(band, book.Rules), at, true, Measured(tread), limit.Limit(Decimals(limit)));
        }
        else
        {
            book.Judge(inUse, at, broken, Measured(tread), limit.Limit(Decimals(limit)), null, Cautions(tread));
        }

        WearIndicator(book, at, least.Depth, limit, rule, broken);
        var near = Figures.Of("condition.tread-near");
        if (!broken && Below(least.Depth, near))
        {
            book.Judge("tread.near-limit", at, true, Measured(tread), near.Limit(1));
        }
    }

    internal static IEnumerable<(string Place, IReadOnlyList<Length> Depths)> Places(TreadDepths tread) =>
        [("inner", tread.Inner), ("centre", tread.Centre), ("outer", tread.Outer)];

    /// <summary>The rule and figure that hold at a position; null where the rule set has none for the vehicle's class.</summary>
    private static (string Rule, string Figure, string? BandRule)? Rule(CheckBook book, Position position)
    {
        var vehicle = book.Vehicle;
        var heavyClass = vehicle.VehicleClass is "goods over 3500 kg" or "bus" or "minibus" or "motorcycle";
        return book.Rules switch
        {
            null => ("tread.depth", "condition.tread-trade", null),
            RuleSet.UnitedStates when Drivetrain.HeavyByUnitedStatesRules(vehicle) => position.Axle == 1 && vehicle.VehicleClass != "trailer"
                ? ("tread.depth.heavy-front", "condition.tread-us-heavy-front", null)
                : ("tread.depth.heavy", "condition.tread-us-heavy", null),
            RuleSet.UnitedStates => ("tread.depth", "condition.tread-us", null),
            RuleSet.UnitedKingdom when heavyClass => ("tread.depth.heavy", "condition.tread-uk-heavy", "tread.depth.heavy-band"),
            RuleSet.UnitedKingdom => ("tread.depth", "condition.tread-uk", null),
            RuleSet.EuropeanUnion when heavyClass && vehicle.VehicleClass != "minibus" => null,
            RuleSet.EuropeanUnion => ("tread.depth", "condition.tread-eu", null),
            _ => throw new InvalidOperationException("No such rule set."),
        };
    }

    /// <summary>At the height of the wear indicators they are level with the tread; the European categories name that.</summary>
    private static void WearIndicator(CheckBook book, string at, Length least, Figure limit, (string, string, string?)? rule, bool broken)
    {
        if (book.Rules == RuleSet.EuropeanUnion && rule is not null && !broken && least.Millimetres <= limit.As<Length>().Millimetres + CheckBook.Hair)
        {
            book.Judge("tread.wear-indicator", at, true, Amount.Of(least, "mm", 2), Figures.Of("condition.tread-trade").Limit(1));
        }
    }

    /// <summary>True where only the inner or only the outer place is below, so that three quarters of the breadth may still have the depth.</summary>
    private static bool OnlyOneShoulder(TreadDepths tread, Figure limit)
    {
        var below = Places(tread).Where(p => p.Depths.Any(d => Below(d, limit))).ToList();
        return below is [{ Place: not "centre" }] && below[0].Depths.All(d => d.Millimetres > CheckBook.Hair);
    }

    private static bool Below(Length depth, Figure limit) => depth.Millimetres < limit.As<Length>().Millimetres - CheckBook.Hair;

    private static int Decimals(Figure limit) => limit.Unit == "in" ? 4 : 1;

    /// <summary>The least depth, and the least at each place.</summary>
    private static Amount Measured(TreadDepths tread)
    {
        var least = tread.All.MinBy(t => t.Depth);
        var each = Places(tread).Where(p => p.Depths.Count > 0).Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.Place} {p.Depths.Min().Millimetres:0.0##}"));
        return new Amount(least.Depth.Millimetres, "mm", string.Create(CultureInfo.InvariantCulture, $"{least.Depth.Millimetres:0.0##} mm at the {least.Place} (least of {string.Join(", ", each)})"));
    }

    private static string[] Cautions(TreadDepths tread) => Places(tread).Any(p => p.Depths.Count is > 0 and < 3)
        ? ["The rules hold round the whole tyre: measure at three places about equally spaced, and at the least of all."]
        : [];
}
