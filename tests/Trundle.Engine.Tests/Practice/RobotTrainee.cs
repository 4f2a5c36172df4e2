using Trundle.Engine.Balance;
using Trundle.Engine.Practice.Bench;
using Trundle.Engine.Uniformity;
using Trundle.Engine.Uniformity.Matching;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Practice;

/// <summary>One thing done wrong, all else right.</summary>
internal enum Mistake
{
    None,
    RimDistanceWrong,
    RimDiameterWrong,
    RimWidthWrong,
    ConeTurnedRound,
    ConeTooSmall,
    ConeTooLarge,
    NutNotFree,
    PlaceMirrored,
    SidesChanged,
    NoCheckSpin,
    MachineNotTried,
    TyreNotTurned,
    GuardUp,
}

/// <summary>A trainee that reads nothing but what a person could: gauges, dial, display.</summary>
internal static class RobotTrainee
{
    private const double Content = 3;

    public static PracticeBench Do(PracticeWheel wheel, Mistake mistake = Mistake.None, int mostRounds = 5)
    {
        var bench = Set(PracticeBench.For(wheel), mistake);
        bench = Clamp(bench, mistake);
        if (mistake == Mistake.GuardUp)
        {
            return bench.Spin(guardDown: false).Value;
        }

        bench = Spun(bench);
        if (wheel.Level == PracticeLevel.OutOfCalibration && mistake != Mistake.MachineNotTried)
        {
            bench = TryMachine(bench);
        }

        if (wheel.Level == PracticeLevel.MatchMounting && mistake != Mistake.TyreNotTurned)
        {
            bench = Match(bench, mistake);
        }

        for (var round = 0; round < mostRounds && (round == 0 || Most(bench) > Content); round++)
        {
            bench = Fit(bench, mistake);
            if (mistake == Mistake.NoCheckSpin)
            {
                return bench;
            }

            bench = Spun(bench);
        }

        return bench;
    }

    public static PracticeBench Set(PracticeBench bench, Mistake mistake)
    {
        var wheel = bench.Wheel;
        var read = wheel.Gauged;
        var wrong = mistake switch
        {
            Mistake.RimDistanceWrong => read with { RimDistance = read.RimDistance + Length.FromMillimetres(30) },
            Mistake.RimDiameterWrong => read with { RimDiameter = read.RimDiameter + Length.FromInches(2) },
            Mistake.RimWidthWrong => read with { RimWidth = read.RimWidth + Length.FromInches(2) },
            _ => read,
        };
        bench = bench.Enter(wrong, wheel.InnerKind, wheel.OuterKind);
        return wheel.Level != PracticeLevel.WrongSetting ? bench : bench.Name(
            wheel.LeftAt.RimDistance != read.RimDistance ? BenchFault.RimDistance
            : wheel.LeftAt.RimDiameter != read.RimDiameter ? BenchFault.RimDiameter
            : BenchFault.RimWidth);
    }

    public static PracticeBench Clamp(PracticeBench bench, Mistake mistake)
    {
        var bore = bench.Wheel.Bore;
        var cone = mistake switch
        {
            Mistake.ConeTooSmall => CentringCones.Set.Last(c => c.Large <= bore),
            Mistake.ConeTooLarge => CentringCones.Set.First(c => c.Small >= bore),
            _ => CentringCones.Set.First(c => c.Suits(bore)),
        };
        return bench.Clamp(new Clamping(cone, mistake != Mistake.ConeTurnedRound, mistake != Mistake.NutNotFree));
    }

    private static PracticeBench Spun(PracticeBench bench) => bench.Spin().Value;

    private static double Most(PracticeBench bench)
    {
        var shown = bench.Spins[^1];
        return bench.Wheel.StaticOnly ? shown.StaticMass.Grams : Math.Max(shown.MassAt(PlaneSide.Inner).Grams, shown.MassAt(PlaneSide.Outer).Grams);
    }

    private static PracticeBench TryMachine(PracticeBench bench)
    {
        var before = bench.Spins[^1];
        var known = Mass.FromGrams(60);
        var place = WheelAngle.FromDegrees(0);
        var tried = Spun(bench.Fit(PlaneSide.Inner, WeightKind.Clip, known, place));
        var change = before.Needed - tried.Spins[^1].Needed;
        var missed = new UnbalancePair(UnbalanceVector.OfMass(known, before.Planes.Inner.Radius, place), default) - change;
        var off = Math.Max(missed.Inner.MassAt(before.Planes.Inner.Radius).Grams, missed.Outer.MassAt(before.Planes.Outer.Radius).Grams);
        tried = tried.TakeOff(tried.Weights.Count - 1);
        return Spun(off > 4 ? tried.Calibrate().Name(BenchFault.Calibration) : tried);
    }

    private static PracticeBench Match(PracticeBench bench, Mistake mistake)
    {
        var half = Angle.FromDegrees(180);
        var first = bench.Spins[^1];
        bench = Spun(Clamp(bench.TurnTyre(half), mistake));
        var second = bench.Spins[^1];
        var parted = new[] { PlaneSide.Inner, PlaneSide.Outer }.Select(side => (PartingOutcome<Unbalance>.Parted)MountingParts.Part<Unbalance>(
            [new(Angle.FromDegrees(0), Heavy(first, side)), new(half, Heavy(second, side))], null)).ToList();
        var matched = (MatchOutcome<Unbalance>.Matched)SetMatch.Solve(new MatchProblem<Unbalance>
        {
            Tyres = [new MatchPart<Unbalance>("tyre", [.. parted.Select(p => p.Tyre)], true)],
            Wheels = [new MatchPart<Unbalance>("wheel", [.. parted.Select(p => p.Wheel)], true)],
        });
        var turn = Angle.FromDegrees(Math.Round(matched.Pairs[0].Turn!.Value.Degrees));
        return Spun(Clamp(bench.TurnTyre(turn - half).Name(BenchFault.TyreOnWheel), mistake));

        static HarmonicVector<Unbalance> Heavy(SpinShown shown, PlaneSide side)
        {
            var heavy = shown.Needed.At(side).Opposite;
            return HarmonicVector<Unbalance>.At(heavy.Amount, heavy.Place);
        }
    }

    private static PracticeBench Fit(PracticeBench bench, Mistake mistake)
    {
        var wheel = bench.Wheel;
        var shown = bench.Spins[^1];
        if (wheel.StaticOnly)
        {
            var grams = 5 * Math.Max(1, Math.Round(shown.StaticMass.Grams / 5, MidpointRounding.AwayFromZero));
            return bench.Fit(PlaneSide.Inner, WeightKind.Clip, Mass.FromGrams(Math.Min(60, grams)), Meant(shown.Static.Place));
        }

        var fine = PlaneTolerance.Of(Mass.FromGrams(2.5));
        var problem = wheel.Problem(shown.Needed, shown.Planes) with { Tolerance = new BalanceTolerance { Inner = fine, Outer = fine, Source = wheel.Tolerance.Source } };
        foreach (var weight in BalanceSolve.Run(problem, 400_000).Weights)
        {
            var side = mistake == Mistake.SidesChanged ? (weight.Plane == PlaneSide.Inner ? PlaneSide.Outer : PlaneSide.Inner) : weight.Plane;
            bench = bench.Fit(side, side == PlaneSide.Inner ? wheel.InnerKind : wheel.OuterKind, weight.Mass, Meant(weight.Place));
        }

        return bench;

        // The angle counted the other way round from the valve.
        WheelAngle Meant(WheelAngle place) => mistake == Mistake.PlaceMirrored ? WheelAngle.FromDegrees(360 - place.Degrees) : place;
    }
}
