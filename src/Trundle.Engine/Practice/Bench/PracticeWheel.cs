using Trundle.Engine.Balance;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Engine.Uniformity;
using Trundle.Measures;

namespace Trundle.Engine.Practice.Bench;

/// <summary>What a practice wheel is for, from easy to hard.</summary>
public enum PracticeLevel
{
    /// <summary>One weight against a static unbalance; clamped and set already.</summary>
    OneStaticWeight,

    /// <summary>Centre, measure, set, two planes.</summary>
    TwoPlanes,

    /// <summary>The outer weights go behind spokes only.</summary>
    SplitBehindSpokes,

    /// <summary>One of the three settings was left wrong: find it.</summary>
    WrongSetting,

    /// <summary>Tyre and wheel add up: the tyre has to be turned on the wheel first.</summary>
    MatchMounting,

    /// <summary>The machine does not read a known mass rightly: find out before the first weight.</summary>
    OutOfCalibration,
}

/// <summary>What may be wrong beside the wheel's own unbalance.</summary>
public enum BenchFault
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>The rim distance that the bench was left at.</summary>
    RimDistance,

    /// <summary>The rim diameter that the bench was left at.</summary>
    RimDiameter,

    /// <summary>The rim width that the bench was left at.</summary>
    RimWidth,

    /// <summary>Tyre and wheel stand so that their errors add.</summary>
    TyreOnWheel,

    /// <summary>The machine's calibration.</summary>
    Calibration,
}

/// <summary>What a wheel truly is, and the bench that it comes to. Everything follows from the seed and the level.</summary>
public sealed record PracticeWheel
{
    /// <summary>The seed that it was made from.</summary>
    public required ulong Seed { get; init; }

    /// <summary>What it is for.</summary>
    public required PracticeLevel Level { get; init; }

    /// <summary>What the gauges and the marking tell: the true settings.</summary>
    public required BalancerSettings Gauged { get; init; }

    /// <summary>What the bench stands at when the trainee comes.</summary>
    public required BalancerSettings LeftAt { get; init; }

    /// <summary>The bench's own profile: zero, weight places, steps of its display.</summary>
    public required BalancerProfile Profile { get; init; }

    /// <summary>What kind of weight the inner side takes.</summary>
    public required WeightKind InnerKind { get; init; }

    /// <summary>What kind of weight the outer side takes.</summary>
    public required WeightKind OuterKind { get; init; }

    /// <summary>The wheel's centre bore.</summary>
    public required Length Bore { get; init; }

    /// <summary>Tyre and wheel together.</summary>
    public required Mass Mass { get; init; }

    /// <summary>The tyre's heavy places as it stands at turn nothing, in the wheel's planes.</summary>
    public required UnbalancePair Tyre { get; init; }

    /// <summary>The wheel's own heavy places, in the same planes.</summary>
    public required UnbalancePair Wheel { get; init; }

    /// <summary>The tyre's radial runout, zero to peak, at turn nothing.</summary>
    public required HarmonicVector<Length> TyreRunout { get; init; }

    /// <summary>The wheel's radial runout, zero to peak.</summary>
    public required HarmonicVector<Length> WheelRunout { get; init; }

    /// <summary>Where weights go behind the spokes on the outer side; null where they go anywhere.</summary>
    public required SpokePlaces? Spokes { get; init; }

    /// <summary>How much the machine's two transducers show of what is there; both 1 where it is calibrated.</summary>
    public required (double First, double Second) Gains { get; init; }

    /// <summary>What is to be found.</summary>
    public required BenchFault Fault { get; init; }

    /// <summary>The planes that the wheel's weights go in.</summary>
    public PlanePair Planes => new(Profile.PlaceOf(Gauged, PlaneSide.Inner, InnerKind)!, Profile.PlaceOf(Gauged, PlaneSide.Outer, OuterKind)!);

    /// <summary>The wheel's heavy places with the tyre at a turn on it.</summary>
    public UnbalancePair Heavy(Angle tyreTurn)
    {
        var turned = new UnbalancePair(Turned(Tyre.Inner, tyreTurn), Turned(Tyre.Outer, tyreTurn));
        return turned + Wheel;
    }

    /// <summary>The marking on the tyre's sidewall: it tells the rim diameter.</summary>
    public string Marking
    {
        get
        {
            var stream = SeedStream.Of(Seed, "marking");
            return string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{stream.Between(18, 24)}5/{stream.Between(8, 13) * 5} R{Math.Round(Gauged.RimDiameter.Inches)} 91V");
        }
    }

    /// <summary>Only the static part is practised.</summary>
    public bool StaticOnly => Level == PracticeLevel.OneStaticWeight;

    /// <summary>What may be left: the usual 5 g a plane; where only the static part is practised, that alone.</summary>
    public BalanceTolerance Tolerance
    {
        get
        {
            if (!StaticOnly)
            {
                return BalanceTolerance.WhereNoneGiven;
            }

            var figure = Figures.Of("practice.static-tolerance");
            return new BalanceTolerance { Static = PlaneTolerance.Of(figure.As<Mass>()).At(Planes.Inner.Radius), Source = figure.Source };
        }
    }

    /// <summary>The drawer of the practice bench: clips and segments of 5 g steps.</summary>
    public static WeightStock Drawer { get; } = new(
        [.. Enumerable.Range(1, 12).Select(i => new StockItem(Mass.FromGrams(5 * i), null, null))],
        [new StockItem(Mass.FromGrams(5), null, null), new StockItem(Mass.FromGrams(10), null, null)]);

    /// <summary>The engine's own problem for a need that was read: what a choice of weights is made from.</summary>
    /// <param name="readings">What to add, in the planes of <paramref name="planes"/>.</param>
    /// <param name="planes">The planes that carry the weights.</param>
    public BalanceProblem Problem(UnbalancePair readings, PlanePair planes)
    {
        ArgumentNullException.ThrowIfNull(planes);
        return new BalanceProblem
        {
            Inner = new WeightPlane(InnerKind, planes.Inner, false),
            Outer = new WeightPlane(OuterKind, planes.Outer, Spokes is not null),
            Readings = readings,
            Spokes = Spokes,
            Stock = Drawer,
            Tolerance = Tolerance,
        };
    }

    private static UnbalanceVector Turned(UnbalanceVector vector, Angle turn) => UnbalanceVector.At(vector.Amount, vector.Place + turn);
}
