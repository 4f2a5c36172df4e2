using Trundle.Engine.Balance;
using Trundle.Engine.Findings;
using Trundle.Measures;

namespace Trundle.Visits.Files;

/// <summary>Reads a <c>tolerance</c> in all its forms.</summary>
internal static class BalanceToleranceReader
{
    /// <summary>Reads the key <c>tolerance</c> of a balance part; the usual one where it is absent, null where a problem was added.</summary>
    /// <param name="part">The balance part.</param>
    /// <param name="assembly">Mass of the whole assembly, which a grade needs.</param>
    /// <param name="perPlane">What each plane may keep, as a person reads it.</param>
    public static BalanceTolerance? Read(FileObject part, Mass? assembly, out Amount? perPlane)
    {
        if (part.Object("tolerance") is not { } o)
        {
            perPlane = Shown(BalanceTolerance.WhereNoneGiven.Inner);
            return BalanceTolerance.WhereNoneGiven;
        }

        var tolerance = new BalanceTolerance
        {
            Static = Above(o, "static", o.Quantity<Unbalance>("static", "g·mm", default(Unbalance), Unbalance.FromKilogramMetres(100))),
            Couple = Above(o, "couple", o.Quantity<CoupleUnbalance>("couple", "g·mm²", default(CoupleUnbalance), CoupleUnbalance.FromKilogramSquareMetres(100))),
            Source = Source.Entered("the tolerance given"),
        };
        var plane = Above(o, "perPlane", o.Quantity<Mass>("perPlane", "g", default(Mass), Mass.FromKilograms(10))) is { } mass ? PlaneTolerance.Of(mass) : null;
        if (o.Has("grade"))
        {
            if (o.Has("perPlane"))
            {
                o.Wrong("grade", "tolerance-twice", "A grade is split into a part for each plane; give it or perPlane, not both.");
            }

            var graded = ReadGrade(o, part, assembly);
            plane = graded?.Inner;
            tolerance = tolerance with { Source = graded?.Source ?? tolerance.Source };
        }
        else
        {
            foreach (var key in new[] { "speed", "rollingCircumference" })
            {
                if (o.Has(key))
                {
                    o.Wrong("grade", "missing", $"'{key}' is given without a grade; give the grade as well, for example \"G 16\", or leave it out.");
                }
            }
        }

        o.Done();
        perPlane = Shown(plane);
        if (plane is null && tolerance.Static is null && tolerance.Couple is null)
        {
            o.Problems.Add(new Problem(o.Path, "tolerance-empty", $"Give static, couple, perPlane or a grade here, or leave 'tolerance' out for the usual {BalanceTolerance.WhereNoneGivenText}."));
            return null;
        }

        return tolerance with { Inner = plane, Outer = plane };
    }

    private static BalanceTolerance? ReadGrade(FileObject o, FileObject part, Mass? assembly)
    {
        var grade = o.Value("grade", BalanceGrade.Read);
        var speed = BalanceSpeedReader.Read(o, "rollingCircumference");
        if (assembly is null)
        {
            part.Problems.Add(new Problem(part.PathOf("wheel.mass"), "missing", "'mass' is missing: a grade needs the mass of the whole assembly, for example \"19 kg\"."));
        }

        return grade is { } g && speed is { } s && assembly is { } m ? BalanceTolerance.OfGrade(g, m, s) : null;
    }

    private static T? Above<T>(FileObject o, string key, T? value) where T : struct, IQuantity<T>
    {
        if (value is { Si: 0 })
        {
            o.Wrong(key, "out-of-range", "A tolerance of nothing can never be met; give what may be left.");
            return null;
        }

        return value;
    }

    private static Amount? Shown(PlaneTolerance? plane) =>
        plane?.Mass is { } mass ? Amount.Of(mass, "g", 1) : plane?.Unbalance is { } unbalance ? Amount.Of(unbalance, "g·mm", 0) : null;
}
