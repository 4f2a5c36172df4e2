using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Fitment;

/// <summary>
/// Whether radial, diagonal and bias-belted tyres stand together as they may: on one axle, and from axle to axle, by the rules of
/// <c>construction-mix.csv</c>. It reads positions and tyres only, so it judges a planned rotation as well as what is fitted.
/// </summary>
public static class ConstructionMix
{
    /// <summary>The results of every construction rule, the passes too.</summary>
    /// <param name="subject">The vehicle with what is fitted, or would be.</param>
    /// <source>UK SI 1986/1078 reg. 26 (from memory, in substance read in the MOT inspection manual 4.1); 49 CFR 570.9(b) and 2014/45/EU Annex I 5.2.3 (from memory); common practice for radial tyres in front of others</source>
    public static IReadOnlyList<Finding> Judge(FittedVehicle subject) => Check(subject).Findings;

    /// <summary>The construction rules that would be broken; empty where the assemblies may stand so.</summary>
    /// <param name="subject">The vehicle with what is fitted, or would be.</param>
    /// <source>as <see cref="Judge"/></source>
    public static IReadOnlyList<Finding> Broken(FittedVehicle subject) => [.. Judge(subject).Where(f => f.Category >= Category.Refer)];

    /// <summary>The results, and which constructions must be read on the sidewall before anything can be said.</summary>
    /// <param name="subject">The vehicle with what is fitted, or would be.</param>
    /// <source>as <see cref="Judge"/></source>
    public static CheckResult Check(FittedVehicle subject)
    {
        ArgumentNullException.ThrowIfNull(subject);
        var book = new CheckBook(subject);
        Check(book);
        return book.Result();
    }

    internal static void Check(CheckBook book)
    {
        var tyres = Tyres(book);
        var axles = tyres.GroupBy(t => t.Axle).OrderBy(g => g.Key).Select(g => (Axle: g.Key, Tyres: g.ToList())).ToList();
        foreach (var (axle, built) in axles)
        {
            Axle(book, axle, built);
        }

        var faulty = false;
        foreach (var front in axles)
        {
            foreach (var rear in axles.Where(a => a.Axle > front.Axle))
            {
                faulty |= Across(book, front.Axle, front.Tyres, rear.Axle, rear.Tyres);
            }
        }

        if (axles.Count > 1 && !faulty)
        {
            var law = MixingRules.Of(book.Rules, MixingScope.TwoAxleSingle);
            var rule = law.Count > 0 ? law[0] : MixingRules.Of(book.Rules, MixingScope.InFront)[0];
            book.Judge(rule.InUse, null, false, Amount.Word(string.Join(", ", axles.Select(a => $"{CheckBook.AxleName(a.Axle)} {string.Join(" and ", a.Tyres.Select(t => Words(t.Possible)).Distinct())}"))), null);
        }
    }

    private static List<Built> Tyres(CheckBook book)
    {
        var tyres = new List<Built>();
        var excused = book.Vehicle.VehicleClass is not ("bus" or "minibus");
        foreach (var assembly in book.Subject.Fitted.Where(a => !a.Position.IsSpare).OrderBy(a => a.Position.Axle).ThenBy(a => a.Position.Side).ThenBy(a => a.Position.Dual))
        {
            if (assembly.Tyre?.Marking?.Size.TyreClass == TyreClass.TemporarySpare && excused)
            {
                var rule = book.Rule("spare.excused");
                book.Judge(rule, assembly.Position.ToString(), false, Amount.Word("temporary spare"), Figures.Of("fitment.spare-excuse").Limit(0), rule.Action);
                continue;
            }

            var possible = SidewallMarks.Constructions(assembly.Tyre);
            if (possible.Count == 0)
            {
                book.Need(assembly.Position.ToString(), "the tyre's construction: radial, diagonal or bias-belted", "constructions are not mixed");
                continue;
            }

            tyres.Add(new Built(assembly, assembly.Position.Axle, possible));
        }

        return tyres;
    }

    private static void Axle(CheckBook book, int axle, List<Built> tyres)
    {
        if (tyres.Count < 2)
        {
            return;
        }

        var verdict = Worst(tyres, tyres, MixingRule.Differs);
        Say(book, tyres, verdict);
        if (verdict != Verdict.Open)
        {
            var measured = tyres.Select(t => Words(t.Possible)).Distinct().Count() == 1
                ? Words(tyres[0].Possible)
                : string.Join(", ", tyres.Select(t => $"{t.Assembly.Position} {Words(t.Possible)}"));
            book.Judge(MixingRules.Of(book.Rules, MixingScope.Axle)[0].InUse, CheckBook.AxleName(axle), verdict == Verdict.Broken, Amount.Word(measured), null);
        }
        else if (tyres.Select(t => Words(t.Possible)).Distinct().Count() > 1)
        {
            book.Judge("mix.unread", CheckBook.AxleName(axle), true, Amount.Word(string.Join(", ", tyres.Select(t => $"{t.Assembly.Position} {Words(t.Possible)}"))), null);
        }
    }

    /// <summary>Judges two axles, the front one first. True where anything worse than advice was found, or where a construction must be read first.</summary>
    private static bool Across(CheckBook book, int frontAxle, List<Built> front, int rearAxle, List<Built> rear)
    {
        var at = string.Create(CultureInfo.InvariantCulture, $"axles {frontAxle} and {rearAxle}");
        var measured = Amount.Word($"{CheckBook.AxleName(frontAxle)} {Words(front)}, {CheckBook.AxleName(rearAxle)} {Words(rear)}");
        var (found, readTwoWays) = (false, false);
        // The rows of one rule belong together: what a '-' leaves open may break one row or the other, and so the rule either way.
        var rules = MixingRules.AcrossAxles(book.Rules).Where(r => Applies(r, book, frontAxle, rearAxle, front, rear)).GroupBy(r => (r.Rule, r.InUse.Set, r.Scope));
        foreach (var rows in rules.Select(g => g.ToList()))
        {
            var rule = rows[0];
            // Where the law's text reads two ways, the trade's rule stands with the readings, for the one who decides, and is no second finding.
            if (found && rule.Scope is MixingScope.AnyTwoAxles || book.HasFault(rule.Rule, at) || (rule.Scope is MixingScope.InFront && readTwoWays))
            {
                continue;
            }

            var verdict = Worst(front, rear, (a, b) => rows.Exists(r => r.Forbids(a, b)));
            if (rule.Category > Category.Minor)
            {
                Say(book, [.. front, .. rear], verdict);
                found |= verdict == Verdict.Open;
            }

            if (verdict == Verdict.Broken)
            {
                readTwoWays |= rule.InUse.OtherReading is not null;
                book.Judge(rule.InUse, at, true, measured, null, null, rule.InUse.OtherReading is null ? [] : [.. OfTheTrade(front, rear)]);
                found = true;
            }
        }

        return found;
    }

    /// <summary>What the trade says of the same two axles, whichever reading of the law holds.</summary>
    private static IEnumerable<string> OfTheTrade(List<Built> front, List<Built> rear) => MixingRules.Of(null, MixingScope.InFront)
        .Where(r => Worst(front, rear, r.Forbids) == Verdict.Broken)
        .Select(r => $"The trade's rule, whichever reading holds: {r.Text}").Distinct();

    private static bool Applies(MixingRule rule, CheckBook book, int frontAxle, int rearAxle, List<Built> front, List<Built> rear)
    {
        var driven = Drivetrain.DrivenAxles(book.Vehicle);
        var plain = Drivetrain.AxleCount(book.Subject) == 2 && book.Subject.Fitted.All(a => a.Position.Dual == DualPlace.Single) && book.Vehicle.Axles.All(a => !a.Dual);
        var slow = book.Vehicle.TopSpeed is { } top && top <= Figures.Of("fitment.slow-vehicle").As<Speed>();
        return rule.Scope switch
        {
            MixingScope.Axle => false,
            MixingScope.InFront or MixingScope.AnyTwoAxles => true,
            MixingScope.TwoAxleSingle => plain && !slow && !Wide(front, rear),
            MixingScope.OtherVehicle => !slow && (!plain || Wide(front, rear)),
            MixingScope.Steered => Steered(book, frontAxle) && Steered(book, rearAxle),
            MixingScope.DrivenNotSteered => new[] { frontAxle, rearAxle }.All(a => driven.Contains(a) && !Steered(book, a)),
            MixingScope.AllWheelDrive => Drivetrain.AllWheelsDriven(book.Vehicle),
        };
    }

    private static bool Steered(CheckBook book, int axle) => axle <= book.Vehicle.Axles.Count && book.Vehicle.Axles[axle - 1].Steered;

    /// <summary>A tyre's contact is never wider than its section: only from this nominal width on can the contact reach the regulation's limit.</summary>
    private static bool Wide(List<Built> front, List<Built> rear) =>
        front.Concat(rear).Any(t => t.Assembly.Tyre?.Marking?.Size.SectionWidth is { } width && width.Millimetres >= Figures.Of("fitment.wide-tyre").As<Length>().Millimetres - CheckBook.Hair);

    private static Verdict Worst(List<Built> first, List<Built> second, Func<Construction, Construction, bool> forbids)
    {
        var worst = Verdict.Kept;
        foreach (var a in first)
        {
            foreach (var b in second.Where(b => !ReferenceEquals(a, b)))
            {
                var cases = a.Possible.SelectMany(x => b.Possible, (x, y) => forbids(x, y)).ToList();
                var verdict = cases.TrueForAll(broken => broken) ? Verdict.Broken : cases.Contains(true) ? Verdict.Open : Verdict.Kept;
                worst = verdict > worst ? verdict : worst;
            }
        }

        return worst;
    }

    private static void Say(CheckBook book, List<Built> tyres, Verdict verdict)
    {
        if (verdict != Verdict.Open)
        {
            return;
        }

        foreach (var tyre in tyres.Where(t => t.Possible.Count > 1))
        {
            book.Need(tyre.Assembly.Position.ToString(), "the construction as read on the sidewall: diagonal or bias-belted", "'-' in the size leaves it open, and constructions are not mixed");
        }
    }

    private static string Words(List<Built> tyres) => string.Join(" and ", tyres.Select(t => Words(t.Possible)).Distinct());

    private static string Words(IReadOnlyList<Construction> possible) => string.Join(" or ", possible.Select(MixingRules.Word));

    private sealed record Built(Assembly Assembly, int Axle, IReadOnlyList<Construction> Possible);

    private enum Verdict
    {
        Kept,
        Open,
        Broken,
    }
}
