using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
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
                var minor = Figures.Of("fitment.circumference-minor");
                var major = Figures.Of("fitment.circumference-major");
                var treadMinor = Figures.Of("condition.spread-minor");
                var treadMajor = Figures.Of("condition.spread-major");
                var apart = TreadApart(assemblies);
                var byRolling = percent > major.Value ? 2 : percent > minor.Value ? 1 : 0;
                var byTread = Above(apart, treadMajor) ? 2 : Above(apart, treadMinor) ? 1 : 0;
                var rule = Math.Max(byRolling, byTread) == 2 ? "circumference.all-wheel-drive" : "circumference.all-wheel-drive.minor";

                // On a large tyre the tread's limit is reached first: the graver of the two decides, and is the one that is shown.
                if (byTread > byRolling)
                {
                    book.Judge(rule, null, true, new Amount(apart.Millimetres, "mm", $"{Amount.Of(apart, "mm", 2).Text} of tread between the deepest and the least"), (byTread == 2 ? treadMajor : treadMinor).Limit(4));
                }
                else
                {
                    book.Judge(rule, null, byRolling > 0, Percent(percent), (byRolling == 2 ? major : minor).Limit(1));
                }
            }

            return;
        }

        foreach (var axle in driven)
        {
            var assemblies = book.Subject.OnAxle(axle);
            if (Spread(book, axle, assemblies) is { } percent)
            {
                var limit = Figures.Of("fitment.circumference-major");
                var spares = assemblies.Count(a => a.Tyre?.Marking?.Size.TyreClass == TyreClass.TemporarySpare);
                var spareBesideFull = spares > 0 && spares < assemblies.Count && percent > limit.Value;
                book.Judge(spareBesideFull ? "circumference.axle.temporary-spare" : "circumference.axle", CheckBook.AxleName(axle), percent > limit.Value, Percent(percent), limit.Limit(1));
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
        var limit = Figures.Of(outerDesign.Inches switch
        {
            < 30 => "fitment.dual-under-30",
            < 40 => "fitment.dual-30-to-40",
            <= 50 => "fitment.dual-40-to-50",
            _ => "fitment.dual-over-50",
        });
        var measured = Amount.Of(apart, "mm", 1);
        var law = InUseRules.LawOf("dual.diameter.law", book.Rules);
        var lawLimit = Figures.Of("fitment.dual-law");
        if (law is not null)
        {
            book.Judge(law, at, Above(apart, lawLimit), measured, lawLimit.Limit(2));
        }

        book.Judge("dual.diameter", at, Above(apart, limit), measured, limit.Limit(3));
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

    private static bool Above(Length value, Figure limit) => value.Millimetres > limit.As<Length>().Millimetres + CheckBook.Hair;

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
