using Trundle.Engine.Findings;
using Trundle.Engine.InUse;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Fitment;

/// <summary>How alike tyres roll that share a drive or a dual pair.</summary>
internal static class RollingMatch
{
    /// <summary>
    /// The spread of circumferences on driven axles, from the design diameters against each placard's own and the tread depths measured.
    /// A staggered set that is the maker's own has no spread by design.
    /// </summary>
    public static void Driven(CheckBook book)
    {
        var driven = Drivetrain.DrivenAxles(book.Vehicle);
        if (book.Vehicle.Axles.Count == 0)
        {
            return;
        }

        if (driven.Count == 0)
        {
            book.Need(null, "which axles are driven", "circumferences are compared on driven axles, and constructions with all wheels driven");
            return;
        }

        if (Drivetrain.AllWheelsDriven(book.Vehicle))
        {
            var assemblies = driven.SelectMany(a => book.Subject.OnAxle(a)).ToList();
            if (Spread(book, null, assemblies) is { } percent)
            {
                var minor = book.Limit("circumference.all-wheel-drive.minor", null);
                var major = book.Limit("circumference.all-wheel-drive", null);
                var treadMinor = book.Limit("tread.spread.minor", null);
                var treadMajor = book.Limit("tread.spread", null);
                var apart = TreadApart(assemblies);
                var byRolling = major.IsBrokenBy(percent) ? 2 : minor.IsBrokenBy(percent) ? 1 : 0;
                var byTread = treadMajor.IsBrokenBy(apart.Millimetres) ? 2 : treadMinor.IsBrokenBy(apart.Millimetres) ? 1 : 0;
                var rule = Math.Max(byRolling, byTread) == 2 ? "circumference.all-wheel-drive" : "circumference.all-wheel-drive.minor";

                // On a large tyre the tread's limit is reached first: the graver of the two decides, and is the one that is shown.
                if (byTread > byRolling)
                {
                    book.Judge(rule, null, true, new Amount(apart.Millimetres, "mm", $"{Amount.Of(apart, "mm", 2).Text} of tread between the deepest and the least"), (byTread == 2 ? treadMajor : treadMinor).Limit);
                }
                else
                {
                    book.Judge(rule, null, byRolling > 0, Percent(percent), (byRolling == 2 ? major : minor).Limit);
                }

                book.ByWorkshop(JudgedQuantity.CircumferenceSpread, null, null, percent, Percent(percent));
            }

            return;
        }

        foreach (var axle in driven)
        {
            var assemblies = book.Subject.OnAxle(axle);
            if (Spread(book, axle, assemblies) is { } percent)
            {
                var limit = book.Limit("circumference.axle", null);
                var beyondWear = book.Limit("circumference.axle.sizes", null);
                var over = limit.IsBrokenBy(percent);
                var spares = assemblies.Count(a => a.Tyre?.Marking?.Size.TyreClass == TyreClass.TemporarySpare);
                var spareBesideFull = spares > 0 && spares < assemblies.Count;
                var (rule, ruling) = over && spareBesideFull ? ("circumference.axle.temporary-spare", limit)
                    : beyondWear.IsBrokenBy(percent) ? ("circumference.axle.sizes", beyondWear)
                    : ("circumference.axle", limit);
                book.Judge(rule, CheckBook.AxleName(axle), over || ruling == beyondWear, Percent(percent), ruling.Limit);
                book.ByWorkshop(JudgedQuantity.CircumferenceSpread, null, CheckBook.AxleName(axle), percent, Percent(percent));
            }
        }
    }

    /// <summary>The diameters of each dual pair: by the US law's half inch, and by the closer table of the trade.</summary>
    public static void Duals(CheckBook book)
    {
        for (var axle = 1; axle <= Drivetrain.AxleCount(book.Subject); axle++)
        {
            foreach (var side in (Side[])[Side.Left, Side.Right])
            {
                var inner = book.Subject.At(Position.On(axle, side, DualPlace.Inner));
                var outer = book.Subject.At(Position.On(axle, side, DualPlace.Outer));
                if (inner is not null && outer is not null)
                {
                    Pair(book, inner, outer);
                }
            }
        }
    }

    private static void Pair(CheckBook book, Assembly inner, Assembly outer)
    {
        var at = outer.Position.ToString();
        if (inner.Tyre?.Marking?.Size.OverallDiameter is not { } innerDesign || outer.Tyre?.Marking?.Size.OverallDiameter is not { } outerDesign)
        {
            book.Need(at, "the diameters of this dual pair, measured", "no design diameter is known for its sizes");
            return;
        }

        var worn = Tread.Mean(inner) is { } innerTread && Tread.Mean(outer) is { } outerTread ? 2 * (outerTread - innerTread) : (Length?)null;
        if (worn is null)
        {
            book.Need(at, "tread depths of both tyres, or their measured diameters", "a dual pair is held to nearly one diameter");
        }

        var difference = outerDesign - innerDesign + (worn ?? default);
        var apart = Length.FromMillimetres(Math.Abs(difference.Millimetres));
        var limit = book.Limit("dual.diameter", outer.Position, outerDesign);
        var measured = Amount.Of(apart, "mm", 1);
        if (book.LawLimit("dual.diameter.law", outer.Position) is { } law)
        {
            book.Judge("dual.diameter.law", at, law.IsBrokenBy(apart.Millimetres), measured, law.Limit);
        }

        book.Judge("dual.diameter", at, limit.IsBrokenBy(apart.Millimetres), measured, limit.Limit);
        book.ByWorkshop(JudgedQuantity.DualDifference, outer.Position, at, apart.Millimetres, measured, outerDesign);
        if (difference.Millimetres < -CheckBook.Hair)
        {
            book.Judge("dual.larger-outside", at, true, Amount.Word("the inner tyre is the larger one"), null);
        }
    }

    /// <summary>The deepest tread less the least; none where fewer than two were measured.</summary>
    private static Length TreadApart(IReadOnlyList<Assembly> assemblies)
    {
        var means = assemblies.Select(Tread.Mean).OfType<Length>().ToList();
        return means.Count < 2 ? default : means.Max() - means.Min();
    }

    private static Amount Percent(double percent) => Amount.Number(percent, "%", 2);

    /// <summary>Greatest less least circumference, in per cent of the least; null where a diameter is not known.</summary>
    private static double? Spread(CheckBook book, int? axle, IReadOnlyList<Assembly> assemblies)
    {
        var at = axle is { } a ? CheckBook.AxleName(a) : null;
        if (assemblies.Count < 2)
        {
            return null;
        }

        if (assemblies.FirstOrDefault(x => x.Tyre?.Marking?.Size.OverallDiameter is null) is { } unknown)
        {
            book.Need(unknown.Position.ToString(), "the circumference, measured with a tape at placard pressure", "no design diameter is known for this tyre");
            return null;
        }

        // A staggered set that follows each axle's own placard rolls as the maker meant; without placards all are held to one diameter.
        var design = assemblies.Select(x => x.Tyre!.Marking!.Size.OverallDiameter!.Value).ToList();
        var placards = assemblies.Select(x => book.Vehicle.PlacardAt(x.Position)?.Size?.Size.OverallDiameter).ToList();
        var byPlacard = placards.TrueForAll(p => p is not null);
        var treads = assemblies.Select(Tread.Mean).ToList();
        var allMeasured = treads.TrueForAll(t => t is not null);
        var deepest = allMeasured ? treads.Max()!.Value : default;
        var ratios = design.Select((diameter, i) => (diameter - (allMeasured ? 2 * (deepest - treads[i]!.Value) : default)) / (byPlacard ? placards[i]!.Value : design[0])).ToList();
        if (!allMeasured)
        {
            book.Need(at, "tread depths of all driven wheels, or their circumferences with a tape at placard pressure", "the design sizes alone do not show how worn tyres roll");
        }

        return (ratios.Max() / ratios.Min() - 1) * 100;
    }
}
