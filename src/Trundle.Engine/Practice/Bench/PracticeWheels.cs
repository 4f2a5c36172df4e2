using Trundle.Engine.Balance;
using Trundle.Engine.Uniformity;
using Trundle.Measures;

namespace Trundle.Engine.Practice.Bench;

/// <summary>Practice wheels from seeds.</summary>
public static class PracticeWheels
{
    /// <summary>
    /// The wheel of a seed. All that is hidden is drawn in whole steps (grams, degrees, tenths of a millimetre, half inches), so it is the same on every machine.
    /// </summary>
    /// <param name="seed">Any number. The same seed and level are the same wheel.</param>
    /// <param name="level">What it is for.</param>
    /// <source>own choice for practice: docs/theory/practice.md (the wheel)</source>
    public static PracticeWheel Of(ulong seed, PracticeLevel level)
    {
        var stream = SeedStream.Of(seed, "wheel", (int)level);
        var gauged = new BalancerSettings(
            Length.FromMillimetres(stream.Between(40, 110)),
            Length.FromInches(stream.Between(14, 19)),
            Length.FromInches(stream.Between(12, 17) / 2.0));
        var alloy = level is PracticeLevel.SplitBehindSpokes || (level is not PracticeLevel.OneStaticWeight && stream.Coin());
        var (innerKind, outerKind) = (WeightKind.Clip, alloy ? WeightKind.Adhesive : WeightKind.Clip);
        var profile = Profile;
        var planes = new PlanePair(profile.PlaceOf(gauged, PlaneSide.Inner, innerKind)!, profile.PlaceOf(gauged, PlaneSide.Outer, outerKind)!);
        var (tyre, wheel) = Unbalances(stream, level, planes);
        var (tyreRunout, wheelRunout) = Runouts(stream, level, tyre, wheel);
        var fault = FaultOf(stream, level);
        return new PracticeWheel
        {
            Seed = seed,
            Level = level,
            Gauged = gauged,
            LeftAt = LeftAt(stream, level, fault, gauged),
            Profile = profile,
            InnerKind = innerKind,
            OuterKind = outerKind,
            Bore = Length.FromMillimetres(stream.Between(430, 880) / 10.0),
            Mass = Mass.FromKilograms(stream.Between(140, 240) / 10.0),
            Tyre = tyre,
            Wheel = wheel,
            TyreRunout = tyreRunout,
            WheelRunout = wheelRunout,
            Spokes = level == PracticeLevel.SplitBehindSpokes ? new SpokePlaces(stream.Between(5, 10), WheelAngle.FromDegrees(stream.Between(0, 71))) : null,
            Gains = fault == BenchFault.Calibration ? Gains(stream) : (1, 1),
            Fault = fault,
        };
    }

    private static BalancerProfile Profile { get; } = new()
    {
        DistanceZero = Length.FromMillimetres(60),
        InnerAdhesive = new WeightPlaceOffset(Length.FromMillimetres(-10), Length.FromMillimetres(20)),
        OuterAdhesive = new WeightPlaceOffset(Length.FromMillimetres(-20), Length.FromMillimetres(-50)),
        DisplayStep = Mass.FromGrams(1),
        DisplayAngleStep = Angle.FromDegrees(1),
    };

    private static (UnbalancePair Tyre, UnbalancePair Wheel) Unbalances(SeedStream stream, PracticeLevel level, PlanePair planes)
    {
        if (level == PracticeLevel.OneStaticWeight)
        {
            // Half of it in each plane is no couple.
            var half = UnbalanceVector.OfMass(Mass.FromGrams(stream.Between(20, 60) / 2.0), planes.Inner.Radius, Degrees(stream.Between(0, 359)));
            return (new UnbalancePair(half, half), default);
        }

        if (level == PracticeLevel.MatchMounting)
        {
            // Tyre and wheel are heavy on nearly the same side: together more than one side should carry.
            var side = stream.Between(0, 359);
            return (Pair(45, 60, side), Pair(30, 42, side));
        }

        var tyre = new UnbalancePair(At(planes.Inner, stream.Between(14, 40), stream.Between(0, 359)), At(planes.Outer, stream.Between(14, 40), stream.Between(0, 359)));
        return (tyre, new UnbalancePair(At(planes.Inner, stream.Between(0, 10), stream.Between(0, 359)), At(planes.Outer, stream.Between(0, 10), stream.Between(0, 359))));

        UnbalancePair Pair(int least, int most, int about) => new(
            At(planes.Inner, stream.Between(least, most), about + stream.Between(-20, 20)),
            At(planes.Outer, stream.Between(least, most), about + stream.Between(-20, 20)));

        static UnbalanceVector At(PlanePlace place, int grams, int degrees) => UnbalanceVector.OfMass(Mass.FromGrams(grams), place.Radius, Degrees(degrees));
    }

    private static (HarmonicVector<Length> Tyre, HarmonicVector<Length> Wheel) Runouts(SeedStream stream, PracticeLevel level, UnbalancePair tyre, UnbalancePair wheel)
    {
        // Zero to peak in hundredths: tyre and wheel of the level to be matched are high on the side on which they are heavy.
        var match = level == PracticeLevel.MatchMounting;
        var (t, w) = match ? (stream.Between(50, 65), stream.Between(30, 45)) : (stream.Between(5, 22), stream.Between(2, 15));
        var (tyreAt, wheelAt) = match ? (tyre.Static.Place, wheel.Static.Place) : (Degrees(stream.Between(0, 359)), Degrees(stream.Between(0, 359)));
        return (HarmonicVector<Length>.At(Length.FromMillimetres(t / 100.0), tyreAt), HarmonicVector<Length>.At(Length.FromMillimetres(w / 100.0), wheelAt));
    }

    private static BenchFault FaultOf(SeedStream stream, PracticeLevel level) => level switch
    {
        PracticeLevel.WrongSetting => stream.OneOf([BenchFault.RimDistance, BenchFault.RimDiameter, BenchFault.RimWidth]),
        PracticeLevel.MatchMounting => BenchFault.TyreOnWheel,
        PracticeLevel.OutOfCalibration => BenchFault.Calibration,
        PracticeLevel.OneStaticWeight or PracticeLevel.TwoPlanes or PracticeLevel.SplitBehindSpokes => BenchFault.None,
    };

    private static BalancerSettings LeftAt(SeedStream stream, PracticeLevel level, BenchFault fault, BalancerSettings gauged)
    {
        if (level is PracticeLevel.TwoPlanes or PracticeLevel.SplitBehindSpokes)
        {
            // The wheel before was another one.
            return new BalancerSettings(gauged.RimDistance + Signed(15, 40), gauged.RimDiameter + Steps(1, 2), gauged.RimWidth + (Steps(1, 2) / 2));
        }

        return fault switch
        {
            BenchFault.RimDistance => gauged with { RimDistance = gauged.RimDistance + Signed(15, 35) },
            BenchFault.RimDiameter => gauged with { RimDiameter = gauged.RimDiameter + Steps(1, 2) },
            BenchFault.RimWidth => gauged with { RimWidth = gauged.RimWidth + Steps(1, 2) },
            BenchFault.None or BenchFault.TyreOnWheel or BenchFault.Calibration => gauged,
        };

        Length Signed(int least, int most) => Length.FromMillimetres(stream.Between(least, most) * (stream.Coin() ? 1 : -1));

        Length Steps(int least, int most) => Length.FromInches(stream.Between(least, most) * (stream.Coin() ? 1 : -1));
    }

    private static (double First, double Second) Gains(SeedStream stream)
    {
        var wrong = (stream.Coin() ? stream.Between(70, 85) : stream.Between(118, 135)) / 100.0;
        return stream.Coin() ? (wrong, 1) : (1, wrong);
    }

    private static WheelAngle Degrees(int degrees) => WheelAngle.FromDegrees(degrees);
}
