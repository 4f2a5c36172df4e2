using Trundle.Engine.Balance;
using Trundle.Engine.Balance.Choice;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Engine.Uniformity;
using Trundle.Measures;

namespace Trundle.Engine.Practice.Bench;

/// <summary>Judges an attempt at the practice bench: by the wheel itself, not by what the display came to.</summary>
public static class BenchJudge
{
    /// <summary>What is left on the wheel in the planes that its weights go in, without its seat on this shaft: heavy places.</summary>
    /// <param name="bench">The bench.</param>
    /// <source>equilibrium of two planes: docs/theory/balance.md (two planes)</source>
    public static UnbalancePair Left(PracticeBench bench)
    {
        ArgumentNullException.ThrowIfNull(bench);
        return SimulatedBalancer.In(bench.OnTheWheel(), bench.Wheel.Planes);
    }

    /// <summary>The toleranced parts of what is left, as the engine parts any choice of weights.</summary>
    /// <param name="bench">The bench.</param>
    /// <source>docs/theory/balance.md (choosing real weights)</source>
    public static IReadOnlyList<TolerancePart> Parts(PracticeBench bench)
    {
        var left = Left(bench);
        return [.. ScoreParts.Of(bench.Wheel.Tolerance, bench.Wheel.Planes, null).Parts
            .Select(p => BalanceSolve.Part(p, p.Of(left.Inner.GramMillimetres, left.Outer.GramMillimetres)))];
    }

    /// <summary>The attempt, criterion by criterion.</summary>
    /// <param name="bench">The bench at the end of the attempt.</param>
    /// <source>own choice for practice: docs/theory/practice.md (criteria)</source>
    public static PracticeResult Judge(PracticeBench bench)
    {
        ArgumentNullException.ThrowIfNull(bench);
        return new PracticeResult([.. BenchCriteria.Of(bench.Wheel.Level).Select(c => One(bench, c))], bench.Stop);
    }

    private static JudgedCriterion One(PracticeBench bench, Criterion criterion) => criterion.Key switch
    {
        // What came right to the bench is nobody's merit: it is told only of a wheel that was spun, and of weights that were fitted.
        "settings" or "spokes" or "rounds" or "mass" when bench.Spins.Count == 0 || (criterion.Key != "settings" && bench.Weights.Count == 0) =>
            new JudgedCriterion(criterion, false, null, null, bench.Spins.Count == 0 ? "The wheel was not spun yet." : "No weight is fitted yet."),
        "tolerance" => Tolerance(bench, criterion),
        "check" => new JudgedCriterion(criterion, bench.Spins.Count > 0 && !bench.ChangedSinceSpin, null, null,
            bench.Spins.Count > 0 && !bench.ChangedSinceSpin ? "" : "Spin once more after the last change: only a check spin shows what the hands have done."),
        "centred" => Centred(bench, criterion),
        "settings" => Settings(bench, criterion),
        "rounds" => Rounds(bench, criterion),
        "mass" => MassAgainst(bench, criterion),
        "spokes" => BehindSpokes(bench, criterion),
        "fault" => Fault(bench, criterion),
        _ => throw new ArgumentOutOfRangeException(nameof(criterion)),
    };

    private static JudgedCriterion Tolerance(PracticeBench bench, Criterion criterion)
    {
        var worst = Parts(bench).MaxBy(p => p.Ratio)!;
        var radius = worst.Name == "outer" ? bench.Wheel.Planes.Outer.Radius : bench.Wheel.Planes.Inner.Radius;
        var left = Amount.Number(worst.Left / radius.Millimetres, "g", 1);
        var limit = new Limit(Amount.Number(worst.Tolerance / radius.Millimetres, "g", 1), bench.Wheel.Tolerance.Source);
        var met = worst.Ratio <= 1 + 1e-9;
        return new JudgedCriterion(criterion, met, left, limit, met ? "" : $"{Capital(worst.Name)} keeps {left.Text}, and {limit.Amount.Text} may stay. {WhyLeft(bench)}");
    }

    /// <summary>The first thing that explains what is left, in the order in which the work is done.</summary>
    private static string WhyLeft(PracticeBench bench)
    {
        var planes = bench.Wheel.Planes;
        if (bench.Clamped is null || !bench.Clamped.Centres(bench.Wheel.Bore))
        {
            var each = bench.Eccentric.Amount / 2;
            return $"The wheel sat {bench.Seat.Off.Text("mm", 2)} off the axis: {bench.Wheel.Mass.Text("kg", 1)} times that is {bench.Eccentric.Amount.Text("g·mm", 0)}, which the display took for {Amount.Number(each.GramMillimetres / planes.Inner.Radius.Millimetres, "g", 1).Text} a plane. Weights against it are wrong on every other shaft.";
        }

        if (!SettingsRight(bench))
        {
            return "The display reckoned for planes that are not this wheel's, so its grams were those of another wheel: measure, enter, spin again.";
        }

        if (bench.Gains != (1, 1))
        {
            return "The machine shows a known mass wrongly: hang one, compare, calibrate, and only then fit weights.";
        }

        return bench.Weights.Count == 0
            ? "No weight is fitted."
            : "Read the check spin and put right what it still shows: a weight that stands 5° off leaves 8.7 % of itself.";
    }

    private static JudgedCriterion Centred(PracticeBench bench, Criterion criterion)
    {
        var bore = bench.Wheel.Bore;
        var met = bench.Clamped?.Centres(bore) == true;
        var why = bench.Clamped switch
        {
            null => "The wheel is not clamped.",
            { } c when !c.Cone.Suits(bore) => $"Cone {c.Cone.Name} is {c.Cone.Small.Text("mm", 0)} to {c.Cone.Large.Text("mm", 0)}, and the bore is {bore.Text("mm", 1)}: take the cone that enters the bore and stops within it.",
            { SmallEndOutwards: false } => "The cone stood the wrong way round: its flat end lies against the wheel and centres nothing. Small end into the bore.",
            { NutRunFree: false } => "The nut was tightened before the wheel had found its seat: run it up free by hand while you turn the wheel, then tighten.",
            _ => "",
        };
        return new JudgedCriterion(criterion, met, Amount.Of(bench.Seat.Off, "mm", 2), null, met ? "" : $"{why} It sat {bench.Seat.Off.Text("mm", 2)} off the axis.");
    }

    internal static bool SettingsRight(PracticeBench bench) => WrongSettings(bench).Count == 0;

    private static List<(string Name, string Entered, string True)> WrongSettings(PracticeBench bench)
    {
        var (entered, gauged) = (bench.Entered, bench.Wheel.Gauged);
        var slack = Figures.Of("balance.settingsSlack").As<Length>();
        var wrong = new List<(string, string, string)>();
        Hold("rim distance", entered.RimDistance, gauged.RimDistance, Figures.Of("practice.distance-slack").As<Length>(), "mm", 0);
        Hold("rim diameter", entered.RimDiameter, gauged.RimDiameter, slack, "in", 1);
        Hold("rim width", entered.RimWidth, gauged.RimWidth, slack, "in", 1);
        if (bench.InnerKind != bench.Wheel.InnerKind || bench.OuterKind != bench.Wheel.OuterKind)
        {
            wrong.Add(("kind of weight", Kinds(bench.InnerKind, bench.OuterKind), Kinds(bench.Wheel.InnerKind, bench.Wheel.OuterKind)));
        }

        return wrong;

        void Hold(string name, Length found, Length should, Length within, string unit, int decimals)
        {
            if (Math.Abs((found - should).Si) > within.Si * (1 + 1e-9))
            {
                wrong.Add((name, found.Text(unit, decimals), should.Text(unit, decimals)));
            }
        }

        static string Kinds(WeightKind inner, WeightKind outer) => $"{(inner == WeightKind.Clip ? "clip" : "adhesive")} inside, {(outer == WeightKind.Clip ? "clip" : "adhesive")} outside";
    }

    private static JudgedCriterion Settings(PracticeBench bench, Criterion criterion)
    {
        var wrong = WrongSettings(bench);
        return new JudgedCriterion(criterion, wrong.Count == 0, null, null,
            string.Join(" ", wrong.Select(w => $"The {w.Name} entered is {w.Entered}, and the wheel's is {w.True}: the display told the unbalance of other planes.")));
    }

    private static JudgedCriterion Rounds(PracticeBench bench, Criterion criterion)
    {
        var figure = Figures.Of("practice.most-rounds");
        var met = bench.FittedAfter.Count <= figure.Value;
        return new JudgedCriterion(criterion, met, Amount.Number(bench.FittedAfter.Count, "", 0), figure.Limit(0),
            met ? "" : "Weights went on after every spin. Where the first weights do not do it, look for the cause before the next: seat, settings, place, mass.");
    }

    private static JudgedCriterion MassAgainst(PracticeBench bench, Criterion criterion)
    {
        var figure = Figures.Of("practice.most-mass-ratio");
        var ratio = new[] { PlaneSide.Inner, PlaneSide.Outer }.Max(side =>
        {
            var here = bench.Weights.Where(w => w.Fitted.Plane == side).ToList();
            var sum = here.Aggregate(default(UnbalanceVector), (s, w) => s + UnbalanceVector.OfMass(w.Fitted.Mass, Length.FromMillimetres(1), w.Landed)).MassAt(Length.FromMillimetres(1));
            return here.Count < 2 ? 1 : here.Sum(w => w.Fitted.Mass.Grams) / Math.Max(0.1, sum.Grams);
        });
        var met = ratio <= figure.Value;
        return new JudgedCriterion(criterion, met, Amount.Number(Math.Min(ratio, 99), "", 2), figure.Limit(1),
            met ? "" : $"On one side the weights together are {Amount.Number(Math.Min(ratio, 99), "", 1).Text} times the one weight that would add the same: take off what pulls the other way and begin that side again.");
    }

    private static JudgedCriterion BehindSpokes(PracticeBench bench, Criterion criterion)
    {
        var slack = Figures.Of("practice.spoke-half");
        var most = bench.Weights.Where(w => w.Fitted.Plane == PlaneSide.Outer)
            .Select(w => bench.Wheel.Spokes!.Places.Min(s => Math.Abs((w.Landed - s).Degrees))).DefaultIfEmpty(0).Max();
        var met = most <= slack.Value;
        return new JudgedCriterion(criterion, met, Amount.Number(most, "°", 0), slack.Limit(0),
            met ? "" : $"A weight on the outer side sits {Amount.Number(most, "°", 0).Text} from the nearest spoke, in plain sight. Part it between the two spokes on either side: together they weigh a little more than the one.");
    }

    private static JudgedCriterion Fault(PracticeBench bench, Criterion criterion)
    {
        var named = bench.Named == bench.Wheel.Fault;
        return bench.Wheel.Fault switch
        {
            BenchFault.TyreOnWheel => Matched(bench, criterion, named),
            BenchFault.Calibration => new JudgedCriterion(criterion, named && bench.CalibratedAnew, null, null,
                named && bench.CalibratedAnew ? "" : $"One transducer showed {Amount.Number(100 * (bench.Wheel.Gains.First == 1 ? bench.Wheel.Gains.Second : bench.Wheel.Gains.First), "%", 0).Text} of what was there. A known mass on one side shows it: it is not called by its own grams in its own plane."),
            _ => new JudgedCriterion(criterion, named, null, null, named ? "" : $"The bench was left at {Words(bench.Wheel.Fault)} of another wheel. Hold every setting against a gauge before the first spin."),
        };
    }

    private static JudgedCriterion Matched(PracticeBench bench, Criterion criterion, bool named)
    {
        var much = Figures.Of("balance.muchInPlane");
        var heavy = bench.Wheel.Heavy(bench.TyreTurn);
        var most = Math.Max(heavy.Inner.MassAt(bench.Wheel.Planes.Inner.Radius).Grams, heavy.Outer.MassAt(bench.Wheel.Planes.Outer.Radius).Grams);
        var runout = bench.Runout.Amount * 2;
        var verdict = RunoutLimits.Judge(runout, RunoutPart.Assembly, RunoutDirection.Radial, RunoutMounting.OffVehicle, null, null);
        var met = named && most <= much.Value && verdict.WithinLimit != false;
        return new JudgedCriterion(criterion, met, Amount.Number(most, "g", 0), much.Limit(0),
            met ? "" : $"One side needs {Amount.Number(most, "g", 0).Text} and the tread runs out {runout.Text("mm", 2)}: tyre and wheel are heavy and high on the same side. Turn the tyre half a turn, spin, and from both spins find the turn that leaves least.");
    }

    /// <summary>A fault in words.</summary>
    /// <param name="fault">Which.</param>
    /// <source>common practice: the trade's words</source>
    public static string Words(BenchFault fault) => fault switch
    {
        BenchFault.None => "nothing",
        BenchFault.RimDistance => "the rim distance",
        BenchFault.RimDiameter => "the rim diameter",
        BenchFault.RimWidth => "the rim width",
        BenchFault.TyreOnWheel => "how the tyre stands on the wheel",
        BenchFault.Calibration => "the machine's calibration",
    };

    private static string Capital(string part) => part switch
    {
        "static" => "The static part",
        "couple" => "The couple",
        "inner" => "The inner plane",
        _ => "The outer plane",
    };
}
